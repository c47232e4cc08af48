"""The paces of earlier takes are read like any other file."""

from __future__ import annotations

import pytest

from scriptkit import build
from tests.running import SMALLEST, run
from tests.scripts import Write


def test_the_paces_in_the_order_of_the_file(episode: Write) -> None:
    text = "takes:\n  - {episode: one, pace: 150}\n  - {episode: two, pace: 170.5, words: 900, seconds: 316}\n"
    read = build.read(episode({"outline.yaml": SMALLEST, "takes.yaml": text}))
    assert [(one.episode, one.pace) for one in read.takes] == [("one", 150), ("two", 170.5)]


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("takes: [{episode: one, pace: fast}]\n", "wrong-type"),
        ("takes: [{episode: one, pace: 20}]\n", "out-of-range"),
        ("taks: []\n", "unknown-key"),
        ("takes: [\n", "yaml-syntax"),
    ],
)
def test_whatever_is_wrong_is_a_finding_and_the_script_has_another_pace(episode: Write, text: str, name: str) -> None:
    folder = episode({"outline.yaml": SMALLEST, "takes.yaml": text})
    found = run("check", folder, "--format", "json").json["findings"]
    assert name in {one["name"] for one in found if one["file"] == "takes.yaml"}
    assert run("runtime", folder, "--format", "json").json["pace_from"] == "stock"
