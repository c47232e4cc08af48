"""A take that was kept is read whole or not at all: half of a clock is none."""

from __future__ import annotations

import pytest

from scriptkit import build
from tests.running import SMALLEST, run
from tests.scripts import Write

GOOD = '{"about": "x", "length": 9, "sentences": [{"segment": "bar-hang", "key": "s-1", "start": 0.5, "end": 2}]}'


def test_length_and_sentences(episode: Write) -> None:
    found = build.read(episode({"outline.yaml": SMALLEST, "take.json": GOOD})).recording
    assert found is not None
    assert found.length == 9
    assert [(one.segment, one.key, one.start, one.end) for one in found.sentences] == [("bar-hang", "s-1", 0.5, 2)]


def test_the_script_of_that_time_and_a_file_without_it(episode: Write) -> None:
    assert build.read(episode({"outline.yaml": SMALLEST, "take.json": GOOD})).recording.script == ()  # type: ignore[union-attr]
    more = GOOD[:-1] + ', "script": [{"segment": "bar-hang", "keys": ["s-1", "s-2"]}]}'
    found = build.read(episode({"outline.yaml": SMALLEST, "take.json": more})).recording
    assert found is not None
    assert [(one.segment, one.keys) for one in found.script] == [("bar-hang", ("s-1", "s-2"))]


def test_what_has_to_be_mended_and_a_file_without_it(episode: Write) -> None:
    assert build.read(episode({"outline.yaml": SMALLEST, "take.json": GOOD})).recording.changes == ()  # type: ignore[union-attr]
    change = '{"segment": "bar-hang", "key": "s-1", "weight": "stop", "what": "the caution was not said"}'
    more = f'{GOOD[:-1]}, "changes": [{change}]}}'
    found = build.read(episode({"outline.yaml": SMALLEST, "take.json": more})).recording
    assert found is not None
    assert [(one.key, one.weight, one.start, one.said) for one in found.changes] == [("s-1", "stop", None, "")]


@pytest.mark.parametrize(
    "text",
    [
        "",
        "{",
        "[]",
        '{"length": 9}',
        GOOD.replace("0.5", '"soon"'),
        GOOD.replace("9,", "-1,"),
        GOOD.replace("2}", "1e99}"),
        GOOD[:-1] + ', "script": [{"segment": "bar-hang"}]}',
        GOOD[:-1] + ', "changes": [{"segment": "bar-hang", "key": "s-1", "weight": "a lot", "what": "it"}]}',
    ],
)
def test_one_that_is_not_whole_is_told_and_the_plan_goes_on(episode: Write, text: str) -> None:
    folder = episode({"outline.yaml": SMALLEST, "take.json": text})
    assert build.read(folder).recording is None
    found = run("check", folder, "--format", "json").json["findings"]
    assert any(one["file"] == "take.json" for one in found) or text == ""
    assert run("runtime", folder).status in (0, 1)
