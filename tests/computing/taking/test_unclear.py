"""A line that was not made out was left out only where nobody speaks in its place."""

from __future__ import annotations

import pytest

from scriptkit.computing.hearing import claims
from scriptkit.computing.taking import taking
from scriptkit.model import Take
from scriptkit.model.recording import Recording, Utterance
from scriptkit.shipped import shipped
from tests.recorded import recording
from tests.scripts import worked_out

FACTS = worked_out(shipped("sample_episode"))
CAUTION = ("ledge-raise", 7)
MUMBLED = " ".join(["mumbled"] * 12)


def held(left_out: set[tuple[str, int]], *, speech: bool, more: float = 0.0) -> Take:
    """A recording without some lines, held as sound. In the place of each is a pause, or speech that is no line."""
    made, _, _ = recording(FACTS, instead={line: [MUMBLED] for line in left_out})
    words = tuple(word for word in made.words if word.text not in MUMBLED)
    spans = [Utterance(word.start, word.end) for word in (made.words if speech else words)]
    if more:
        spans.append(Utterance(made.length + 2, made.length + 2 + more))
    one = Recording(words, made.length + more, speech=tuple(spans))
    return taking.hold(FACTS, one, {}, claims.compile_cues({}))


def test_without_speech_in_its_place_a_caution_is_missing_and_stops_a_release() -> None:
    take = held({CAUTION}, speech=False)
    (change,) = take.changes
    assert (change.weight, change.kind, change.segment) == ("stop", "missing", "ledge-raise")
    assert take.unclear == 0


def test_with_speech_in_its_place_it_is_to_be_listened_to() -> None:
    take = held({CAUTION}, speech=True)
    (change,) = take.changes
    assert (change.weight, change.kind) == ("claim", "unclear")
    assert change.what == "the caution was not made out: listen whether it was said"
    assert take.unclear == 1
    assert take.pickups == ()


def test_other_lines_that_were_not_made_out_are_only_counted() -> None:
    take = held({("ledge-raise", 6)}, speech=True)
    assert (take.changes, take.unclear) == ((), 1)


@pytest.mark.parametrize(("speech", "state"), [(False, "missing"), (True, "unclear")])
def test_a_segment_without_a_line_is_missing_or_unclear(speech: bool, state: str) -> None:
    lines = {("open-question", at) for at in range(3)}
    take = held(lines, speech=speech)
    assert next(one for one in take.segments if one.id == "open-question").state == state


def test_of_many_lines_only_as_many_are_in_doubt_as_there_is_time_for() -> None:
    lines = {(segment.id, at) for segment in FACTS.segments[9:14] for at in range(len(segment.sentences))}
    made, _, _ = recording(FACTS, instead={line: [] for line in lines} | {min(lines): [MUMBLED]})
    words = tuple(word for word in made.words if word.text not in MUMBLED)
    speech = tuple(Utterance(word.start, word.end) for word in made.words)
    take = taking.hold(FACTS, Recording(words, made.length, speech=speech), {}, claims.compile_cues({}))
    assert 0 < take.unclear < 8
    assert [one.state for one in take.segments[10:13]] == ["missing"] * 3


def test_long_speech_that_can_be_no_line_is_added() -> None:
    take = held(set(), speech=False, more=30.0)
    (one,) = (one for one in take.segments if one.state == "added")
    assert one.end is not None
    assert one.start is not None
    assert one.end - one.start == pytest.approx(30, abs=0.1)


def test_wording_is_not_compared() -> None:
    made, _, _ = recording(FACTS, instead={("ledge-raise", 3): ["The ledge side gained 9.9 metres of muscle."]})
    words = made.words
    take = taking.hold(FACTS, Recording(words, made.length, speech=()), {}, claims.compile_cues({}))
    assert take.changes == ()
    assert not take.worded
