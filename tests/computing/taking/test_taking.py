"""A recording of the sample held against its script: every change that was made in it is found, and nothing else."""

from __future__ import annotations

from statistics import median

import pytest

from scriptkit import build
from scriptkit.computing.hearing import claims
from scriptkit.computing.taking import taking
from scriptkit.computing.timing import SENTENCE_END, TOPIC_CHANGE, letters_a_second
from scriptkit.model import Facts, Take, TakeChange
from scriptkit.model.recording import Recording, TimedWord
from scriptkit.reading import words
from scriptkit.shipped import shipped
from tests.recorded import recording


@pytest.fixture(scope="module")
def sample() -> Facts:
    return build.work_out(build.read(shipped("sample_episode")))


def held(facts: Facts, **changes: object) -> tuple[Take, dict[str, float], dict[tuple[str, int], float]]:
    made, segments, sentences = recording(facts, **changes)  # type: ignore[arg-type]
    lists = words.load()
    return taking.hold(facts, made, lists, claims.compile_cues(lists)), segments, sentences


def stops(take: Take) -> list[TakeChange]:
    return [one for one in take.changes if one.weight == "stop"]


def line(facts: Facts, segment: str, starts: str) -> tuple[str, int]:
    """Segment and number of the sentence that starts with these words."""
    own = next(one for one in facts.segments if one.id == segment)
    return segment, next(at for at, one in enumerate(own.sentences) if one.text.startswith(starts))


def test_a_recording_word_for_word_has_no_change_and_its_own_times(sample: Facts) -> None:
    take, segments, _ = held(sample)
    assert take.changes == ()
    assert take.pickups == ()
    assert {one.state for one in take.segments} == {"said"}
    assert {one.id: one.start for one in take.segments} == pytest.approx(segments, abs=0.01)


def test_what_goes_wrong_in_front_of_a_camera_is_found_and_nothing_worse(sample: Facts) -> None:
    """Little words dropped, doubled, misheard, fillers, a number, a "not", an ad-libbed claim, a segment moved."""
    number = line(sample, "ledge-raise", "The ledge side gained")
    denied = line(sample, "skipping", "That's force and not growth")
    said = line(sample, "donkey-raise", "My complaint is")
    order = list(range(len(sample.segments)))
    order.insert(12, order.pop(6))
    instead = {
        number: ["The ledge side gained 1.9 millimetres of muscle, and the floor side 1.0."],
        denied: ["That's force and growth: the study didn't measure muscle."],
        said: ["My complaint is the weight.", "Donkey raises build more calf muscle than running does."],
    }
    take, segments, sentences = held(
        sample, order=order, instead=instead, fillers=0.03, dropped=0.01, doubled=0.01, misheard=0.01
    )
    assert [(one.kind, one.segment) for one in stops(take)] == [("number", "ledge-raise"), ("negation", "skipping")]
    for change, where in zip(stops(take), (number, denied), strict=True):
        assert change.at == pytest.approx(sentences[where], abs=3)
    added = [one for one in take.changes if one.kind == "ad-lib"]
    assert [one.said for one in added] == ["Donkey raises build more calf muscle than running does."]
    assert added[0].at == pytest.approx(sentences[said] + 1.5, abs=2)
    assert [one.id for one in take.segments if one.state == "moved"] == [sample.segments[6].id]
    apart = [abs((one.start or 0) - segments[one.id]) for one in take.segments]
    assert median(apart) < 1
    assert take.fillers > 20
    assert [one.line for one in take.pickups] == [sample_line(sample, where) for where in (number, denied)]


def sample_line(facts: Facts, where: tuple[str, int]) -> str:
    segment = next(one for one in facts.segments if one.id == where[0])
    return str(segment.sentences[where[1]].text)


STOPS = (
    ("ledge-raise", "I give it", "I give it a B minus: hard where the calf is long.", "grade"),
    ("ledge-raise", "First up", "First up: seated calf raise.", "exercise"),
    ("ledge-raise", "So the ledge", "So the ledge builds more, and I wouldn't bet my shoes on it.", "certainty"),
    ("ledge-raise", "If the tendon", "If the tendon above your heel is sore, ask a clinician.", "caution"),
    ("sponsor", "Quennick Socks paid", "Quennick Socks sponsored this part.", "disclosure"),
    ("sponsor", "The code is", "The code is HILL20, and it works at https://example.org/hill.", "code"),
    (
        "skipping",
        "In a lab",
        "In a lab study of 60 runners, a small one, each skip landed with 2.9 times body weight.",
        "number",
    ),
    ("seated-raise", "The big calf", "The big calf muscle above it gained 4 litres seated and 22 standing.", "unit"),
)


@pytest.mark.parametrize(("segment", "starts", "said", "kind"), STOPS)
def test_each_thing_that_stops_a_release_is_told_as_what_it_is(
    sample: Facts, segment: str, starts: str, said: str, kind: str
) -> None:
    take, _, sentences = held(sample, instead={line(sample, segment, starts): [said]})
    found = stops(take)
    assert found
    assert {one.segment for one in found} == {segment}
    assert kind in {one.kind for one in found}
    assert found[0].at == pytest.approx(sentences[line(sample, segment, starts)], abs=6)
    assert take.pickups


def test_another_try_at_a_line_is_no_change_and_the_last_one_counts(sample: Facts) -> None:
    where = line(sample, "ledge-raise", "The ledge side gained")
    text = sample_line(sample, where)
    take, _, sentences = held(sample, instead={where: ["The ledge side gained 1.6", text]})
    assert take.changes == ()
    assert take.retakes == 1
    heard = next(one for one in take.sentences if one.segment == "ledge-raise" and one.start > sentences[where])
    assert heard.start > sentences[where] + 1


def test_a_missing_segment_a_missing_caution_and_a_kept_promise_before_it_is_made(sample: Facts) -> None:
    order = [number for number, one in enumerate(sample.segments) if one.id != "wall-raise"]
    take, _, _ = held(sample, order=order)
    assert [one.id for one in take.segments if one.state == "missing"] == ["wall-raise"]
    swap = next(number for number, one in enumerate(sample.segments) if one.id == "the-swap")
    order = [swap, *(number for number in range(len(sample.segments)) if number != swap)]
    take, _, _ = held(sample, order=order)
    assert any("kept before it was made" in one.what for one in take.changes)
    caution = line(sample, "ledge-raise", "If the tendon")
    take, _, _ = held(sample, instead={caution: []})
    assert [(one.kind, one.what, one.at) for one in stops(take)] == [("missing", "the caution was not said", None)]


def test_what_a_recogniser_invents_over_silence_is_told_as_that(sample: Facts) -> None:
    where = line(sample, "wall-raise", "Slide down the wall")
    take, _, _ = held(sample, instead={where: [sample_line(sample, where), "Thanks for watching."]})
    assert [one.kind for one in take.changes] == ["invented"]


def test_the_pace_is_that_of_the_words_said(sample: Facts) -> None:
    take, _, _ = held(sample)
    counted = sum(one.words for one in sample.timeline.segments)
    assert take.pace == pytest.approx(60 * counted / take.length, rel=0.005)


def test_letters_a_second_are_those_of_a_script_that_was_said_as_planned(sample: Facts) -> None:
    assert sample.timeline.pace_from == "outline"
    take = taking.hold(sample, as_planned(sample), words.load(), claims.compile_cues(words.load()))
    assert take.letters == pytest.approx(letters_a_second(sample.timeline.pace), rel=0.005)


def as_planned(facts: Facts) -> Recording:
    """A recording in which each sentence lasts as long as the plan says, its words evenly in it."""
    said = []
    for segment, timed in zip(facts.segments, facts.timeline.segments, strict=True):
        for sentence, span in zip(segment.sentences, timed.sentences, strict=True):
            parts = str(sentence.text).split()
            pause = SENTENCE_END + (TOPIC_CHANGE if span is timed.sentences[-1] else 0.0)
            step = (span.spoken - pause) / len(parts)
            said += [
                TimedWord(word, span.start + at * step, span.start + (at + 1) * step, exact=True)
                for at, word in enumerate(parts)
            ]
    return Recording(tuple(said), facts.timeline.total)


def test_the_pace_is_the_same_where_every_line_was_said_twice(sample: Facts) -> None:
    twice = {
        (segment.id, at): [str(one.text)] * 2 for segment in sample.segments for at, one in enumerate(segment.sentences)
    }
    once, _, _ = held(sample)
    again, _, _ = held(sample, instead=twice)
    assert again.pace == pytest.approx(once.pace, rel=0.005)
