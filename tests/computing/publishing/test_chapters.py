"""Chapters: the first at 0:00, each long enough, short segments with a neighbour, titles that are names of segments."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scriptkit.computing.publishing.chapters import chapters
from scriptkit.computing.publishing.pasting import Paste
from scriptkit.model import KINDS, Limits, Segment, TimedSegment, Timeline
from scriptkit.model.base import NOWHERE
from scriptkit.model.publishing import Chapter

LIMITS = Limits(chapters=3, chapter_seconds=10, chapter_title_characters=49)
Told = tuple[str, str, float]  # kind, title, seconds


def made(*told: Told, start: float = 0.0, limits: Limits = LIMITS) -> list[Chapter]:
    segments, timed = [], []
    for number, (kind, title, seconds) in enumerate(told):
        segments.append(Segment(f"s{number}", kind, title, "", (), drafted=False, file="", at=NOWHERE))
        timed.append(TimedSegment(f"s{number}", kind, start, seconds, 0.0, seconds, seconds, seconds, 1, (), ()))
        start += seconds
    return chapters(segments, Timeline(150, "outline", None, start, start, start, tuple(timed)), limits, Paste())


def lines(*told: Told, start: float = 0.0) -> list[str]:
    return [one.line for one in made(*told, start=start)]


def test_a_segment_of_its_own_is_a_chapter_from_its_whole_second_on() -> None:
    assert lines(("opening", "Opening", 12.9), ("verdict", "Bar hang", 20), ("close", "Close", 10.2)) == [
        "0:00 Opening",
        "0:12 Bar hang",
        "0:32 Close",
    ]


def test_a_recording_that_begins_late_still_has_its_first_chapter_at_nought() -> None:
    assert lines(("opening", "Opening", 12), ("verdict", "Bar hang", 20), start=3.4)[0] == "0:00 Opening"


def test_hours_are_told_from_an_hour_on() -> None:
    assert lines(("talk", "Long", 3599), ("talk", "Late", 60), ("talk", "Later", 60)) == [
        "0:00 Long",
        "59:59 Late",
        "1:00:59 Later",
    ]


@pytest.mark.parametrize(
    ("short", "told"),
    [
        (
            ("group", "Straight knee", 4.7),
            ["0:00 One", "0:20 Two", "0:44 Three"],
        ),  # announces what follows
        (("recap", "Recap", 9), ["0:00 One", "0:29 Two", "0:49 Three"]),  # looks back
        (("verdict", "Wall sit", 9), ["0:00 One", "0:20 Wall sit, Two", "0:49 Three"]),  # no exercise goes unnamed
        (("talk", "A word", 9), ["0:00 One", "0:20 Two", "0:49 Three"]),
        (("sponsor", "Sponsor", 9), ["0:00 One", "0:20 Sponsor, Two", "0:49 Three"]),  # nor what is paid for
    ],
)
def test_a_short_segment_joins_a_neighbour(short: Told, told: list[str]) -> None:
    assert lines(("verdict", "One", 20), short, ("verdict", "Two", 20), ("verdict", "Three", 20)) == told


def test_the_last_chapter_is_long_enough_too() -> None:
    assert lines(("verdict", "One", 20), ("verdict", "Two", 20), ("close", "Close", 9.9)) == ["0:00 One", "0:20 Two"]


def test_seconds_are_counted_as_they_are_shown() -> None:
    """From 0:09 to 0:19 are ten seconds, whatever the thousandths say."""
    assert lines(("verdict", "One", 10.9), ("verdict", "Two", 10.0), ("verdict", "Three", 10.0)) == [
        "0:00 One", "0:10 Two", "0:20 Three",
    ]  # fmt: skip
    assert len(lines(("verdict", "One", 10.0), ("verdict", "Two", 9.9), ("verdict", "Three", 30))) == 2


def test_a_long_title_ends_behind_a_word() -> None:
    (one,) = made(("verdict", "Single-leg ledge raise with the knee straight and slow", 30))
    assert one.title == "Single-leg ledge raise with the knee straight…"
    assert one.whole == "Single-leg ledge raise with the knee straight and slow"


def test_no_segments_are_no_chapters() -> None:
    assert made() == []
    assert made(("opening", "Opening", 9.0)) == []


@given(
    st.lists(st.tuples(st.sampled_from(KINDS), st.sampled_from(["One", "Two", "<3"]), st.floats(0, 40)), max_size=12)
)
def test_whatever_the_segments_every_rule_is_kept(told: Sequence[Told]) -> None:
    found = made(*told)
    whole = sum(seconds for _, _, seconds in told)
    if found:
        assert found[0].start == 0
        assert int(whole) - found[-1].start >= 10
    assert all(after.start - before.start >= 10 for before, after in pairwise(found))
    assert not any(sign in one.line for one in found for sign in "<>\n")
    if whole >= 11:
        assert found
