"""After a take, everything stands on its clock: segments in the order they were said, sentences, marks and captions."""

from __future__ import annotations

from itertools import pairwise

import pytest

from scriptkit import build, keys
from scriptkit.computing.taking import clock
from scriptkit.model import Facts
from scriptkit.model.taking import KeptRecording, KeptSentence, ScriptOf
from tests.scripts import GRIP, Write, worked_out

Times = dict[str, list[tuple[float, float] | None]]
TEXTS = {
    "segments/hang.md": "I like it. [opinion]\n[hold 2s: one rep]\n[screen: A-] I give it an A minus. [opinion]",
    "segments/row.md": "The ring row is fine, I think. [opinion] It's a B for me. [opinion]",
}


@pytest.fixture
def facts(episode: Write) -> Facts:
    return worked_out(episode({"outline.yaml": GRIP + "\n    order: [hang, row]\n", **TEXTS}))


def kept(facts: Facts, times: Times, length: float = 60.0) -> KeptRecording:
    found = []
    for segment in facts.segments:
        for one, span in zip(segment.sentences, times.get(segment.id, []), strict=False):
            if span:
                found.append(KeptSentence(segment.id, keys.of(one.text), *span))
    return KeptRecording(length, tuple(found))


def read(facts: Facts, times: Times, length: float = 60.0) -> clock.Clock:
    made = clock.read(facts.segments, facts.timeline, kept(facts, times, length))
    assert made is not None
    return made


BOTH: Times = {"hang": [(1.0, 3.0), (8.0, 11.0)], "row": [(20.0, 23.0), (24.0, 26.0)]}


def test_each_segment_lasts_until_the_next_one_begins(facts: Facts) -> None:
    made = read(facts, BOTH)
    assert [(one.id, one.start, one.total) for one in made.timeline.segments] == [
        ("hang", 1.0, 19.0),
        ("row", 20.0, 40.0),
    ]
    assert (made.timeline.total, made.timeline.low, made.timeline.high, made.timeline.pace_from) == (60, 60, 60, "take")


def test_segments_come_in_the_order_in_which_they_were_said(facts: Facts) -> None:
    made = read(facts, {"hang": [(30.0, 33.0), (38.0, 41.0)], "row": [(2.0, 3.0), (4.0, 6.0)]})
    assert [one.id for one in made.segments] == ["row", "hang"]
    starts = [one.start for part in made.timeline.segments for one in part.sentences]
    assert starts == sorted(starts)


def test_a_mark_keeps_its_place_within_its_sentence(facts: Facts) -> None:
    card = next(mark for mark in read(facts, BOTH).timeline.segments[0].marks if mark.mark.name == "screen")
    assert card.start == pytest.approx(8.0, abs=0.5)


def test_captions_are_said_when_their_words_were_heard(facts: Facts) -> None:
    made = read(facts, BOTH)
    assert [(one.start, one.end) for one in made.pieces] == [(1, 3), (8, 11), (20, 23), (24, 26)]
    shown = build.as_built(facts, kept(facts, BOTH)).captions
    assert shown[0].start == 1
    assert all(one.end <= other.start for one, other in pairwise(shown))


def test_the_day_of_the_shoot_is_that_of_the_shots_on_the_recordings_clock(facts: Facts) -> None:
    built = build.as_built(build.with_day(facts), kept(facts, BOTH))
    assert built.day is not None
    assert built.shots != facts.shots
    assert sorted(one.shot.number for one in built.day.clips) == [one.number for one in built.shots]
    assert {one.shot for one in built.day.clips} == set(built.shots)


def test_a_sentence_that_was_not_heard_takes_no_time_and_has_no_caption(facts: Facts) -> None:
    made = read(facts, {**BOTH, "hang": [(1.0, 3.0), None]})
    first, second = made.timeline.segments[0].sentences
    assert first.start == 1.0
    assert second.start == 3.0
    assert len(made.pieces) == 3


def test_a_segment_that_was_not_recorded_is_left_out_and_named(facts: Facts) -> None:
    made = read(facts, {"hang": BOTH["hang"]})
    assert [one.id for one in made.segments] == ["hang"]
    assert made.clocked == ((), ("row",))


def test_other_words_than_were_recorded_are_named_by_segment(facts: Facts) -> None:
    old = kept(facts, BOTH)
    changed = (*old.sentences[:1], old.sentences[1]._replace(key="s-other"), *old.sentences[2:])
    made = clock.read(facts.segments, facts.timeline, old._replace(sentences=changed))
    assert made is not None
    assert made.clocked == (("hang",), ())


def by_script(facts: Facts, **scripts: list[str]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """What is told as stale and as absent, where both segments were said and the script was like this."""
    then = tuple(ScriptOf(name, tuple(lines)) for name, lines in scripts.items())
    made = clock.read(facts.segments, facts.timeline, kept(facts, BOTH)._replace(script=then))
    assert made is not None
    return made.clocked


def test_more_less_or_moved_text_is_named_by_segment_where_the_script_was_kept(facts: Facts) -> None:
    hang, row = ([keys.of(one.text) for one in part.sentences] for part in facts.segments)
    assert by_script(facts, hang=hang, row=row) == ((), ())
    assert by_script(facts, hang=hang[:1], row=row) == (("hang",), ())
    assert by_script(facts, hang=hang, row=[*row, "s-more"]) == (("row",), ())
    assert by_script(facts, hang=hang[::-1], row=row[:1]) == (("hang", "row"), ())


def test_a_segment_that_is_new_is_not_recorded_and_not_stale(facts: Facts) -> None:
    old = kept(facts, {"hang": BOTH["hang"]})
    hang = tuple(keys.of(one.text) for one in facts.segments[0].sentences)
    made = clock.read(facts.segments, facts.timeline, old._replace(script=(ScriptOf("hang", hang),)))
    assert made is not None
    assert made.clocked == ((), ("row",))


def test_a_recording_of_something_else_is_no_clock(facts: Facts) -> None:
    assert clock.read(facts.segments, facts.timeline, KeptRecording(9.0, (KeptSentence("x", "s-1", 0, 1),))) is None
    built = build.as_built(facts, KeptRecording(9.0, ()))
    assert built.clocked is None
    assert built.timeline == facts.timeline


def test_the_same_words_twice_in_a_segment_are_taken_in_turn(episode: Write) -> None:
    text = "I like it. [opinion] It's dull. [opinion] I like it. [opinion]"
    made = worked_out(episode({"outline.yaml": GRIP + "\n    order: [hang]\n", "segments/hang.md": text}))
    clocked = read(made, {"hang": [(1, 2), (3, 4), (5, 6)]})
    assert [one.start for one in clocked.pieces] == [1, 3, 5]
