"""What was claimed in front of the camera stays open until the script says it."""

from __future__ import annotations

import pytest

from scriptkit import keys
from tests.running import run
from tests.scripts import Write, worked_out

OUTLINE = """
    title: One
    exercises: {hang: {name: Bar hang}}
    order: [hang, talk-end]
    """
HANG = "I like this one. [opinion] It's cold here. [aside]"
SAID = "It builds a stronger grip than any row."


def said(*texts: str, segment: str = "hang", after: str = "") -> str:
    rows = ", ".join(
        f'{{"segment": "{segment}", "after": "{after}", "text": "{text}", "start": 75, "end": 78}}' for text in texts
    )
    return f'{{"length": 90, "sentences": [], "ad_libs": [{rows}]}}'


def files(take: str, hang: str = HANG) -> dict[str, str]:
    return {
        "outline.yaml": OUTLINE, "segments/hang.md": hang, "segments/talk-end.md": "Bye. [aside]", "take.json": take,
    }  # fmt: skip


def test_it_stands_behind_the_line_it_was_said_behind(episode: Write) -> None:
    take = said(SAID, after=keys.of("I like this one."))
    (one,) = worked_out(episode(files(take))).ad_libs
    assert (one.segment, one.line, one.text, one.start) == ("hang", 0, SAID, 75)


@pytest.mark.parametrize(("segment", "place"), [("hang", ("hang", 1)), ("gone", ("talk-end", 0))])
def test_where_that_line_or_its_segment_is_gone_it_stands_last(
    episode: Write, segment: str, place: tuple[str, int]
) -> None:
    (one,) = worked_out(episode(files(said(SAID, segment=segment)))).ad_libs
    assert (one.segment, one.line) == place


@pytest.mark.parametrize(
    "line",
    [
        f"{SAID} [opinion]",
        "In my view it builds a stronger grip than any row does. [opinion]",
        "Well, it builds a stronger grip than any row, in one trial of twelve climbers over eight weeks.",
    ],
)
def test_it_is_settled_where_the_script_says_it(episode: Write, line: str) -> None:
    assert worked_out(episode(files(said(SAID), f"{HANG}\n\n{line}"))).ad_libs == ()


def test_a_line_of_other_words_does_not_settle_it(episode: Write) -> None:
    assert worked_out(episode(files(said(SAID), f"{HANG}\n\nAny row builds a grip. [opinion]"))).ad_libs != ()


def test_the_ledger_shows_it_in_its_place_as_open(episode: Write) -> None:
    rows = run("claims", episode(files(said(SAID))), "--format", "json").json["sentences"]
    assert [row["text"] for row in rows] == ["I like this one.", "It's cold here.", SAID, "Bye."]
    assert [row["ad_lib"] for row in rows] == [False, False, True, False]
    assert (rows[2]["state"], rows[2]["status"], rows[2]["sources"]) == ("open", "ad-lib, needs a source", [])
    assert not rows[1]["findings"]


def test_many_episodes_have_none(episode: Write) -> None:
    made = files(said())
    del made["take.json"]
    assert worked_out(episode(made)).ad_libs == ()
