"""A line that was said wrongly and then, somewhere else, rightly is told as a cut to make and not recorded again."""

from __future__ import annotations

import pytest

from scriptkit import build
from scriptkit.computing.hearing import claims
from scriptkit.computing.taking import taking
from scriptkit.model import Facts, Take
from scriptkit.reading import words
from scriptkit.shipped import shipped
from tests.recorded import recording

WRONG = "The ledge side gained 1.9 millimetres of muscle, and the floor side 1.0."


@pytest.fixture(scope="module")
def sample() -> Facts:
    return build.work_out(build.read(shipped("sample_episode")))


def line(facts: Facts, segment: str, starts: str) -> tuple[tuple[str, int], str]:
    own = next(one for one in facts.segments if one.id == segment)
    at, text = next((at, str(one.text)) for at, one in enumerate(own.sentences) if one.text.startswith(starts))
    return (segment, at), text


def held(facts: Facts, instead: dict[tuple[str, int], list[str]]) -> Take:
    made, _, _ = recording(facts, instead=instead)
    lists = words.load()
    return taking.hold(facts, made, lists, claims.compile_cues(lists))


def at_the_end(facts: Facts, *said: str) -> dict[tuple[str, int], list[str]]:
    """The wrong line in its place, and what is said behind the last line of the recording."""
    last = facts.segments[-1]
    number = len(last.sentences) - 1
    wrong, _ = line(facts, "ledge-raise", "The ledge side gained")
    return {wrong: [WRONG], (last.id, number): [str(last.sentences[number].text), *said]}


def test_a_wrong_line_is_to_be_recorded_again(sample: Facts) -> None:
    take = held(sample, at_the_end(sample))
    assert [(one.weight, one.kind) for one in take.changes] == [("stop", "number")]
    assert len(take.pickups) == 1


def test_a_line_put_right_at_the_end_is_a_cut_to_make(sample: Facts) -> None:
    _, right = line(sample, "ledge-raise", "The ledge side gained")
    take = held(sample, at_the_end(sample, right))
    assert [(one.weight, one.kind) for one in take.changes] == [("cut", "number")]
    assert "said as written at 10:" in take.changes[0].what
    assert take.pickups == ()


def test_a_line_that_is_wrong_again_is_still_to_be_recorded(sample: Facts) -> None:
    take = held(sample, at_the_end(sample, WRONG))
    assert ("stop", "number") in [(one.weight, one.kind) for one in take.changes]
    assert len(take.pickups) == 1


def test_a_line_that_is_right_once_of_two_more_tries_is_a_cut_to_make(sample: Facts) -> None:
    _, right = line(sample, "ledge-raise", "The ledge side gained")
    take = held(sample, at_the_end(sample, right, WRONG))
    assert take.pickups == ()


def test_a_wrong_grade_with_a_right_one_at_the_end_is_a_cut_to_make(sample: Facts) -> None:
    place, right = line(sample, "seated-raise", "My grade is")
    wrong = right.replace("an A minus", "a D plus")
    assert wrong != right
    last = sample.segments[-1]
    number = len(last.sentences) - 1
    ends = {(last.id, number): [str(last.sentences[number].text), right]}
    assert [(one.weight, one.kind) for one in held(sample, {place: [wrong]}).changes] == [("stop", "grade")]
    assert [(one.weight, one.kind) for one in held(sample, {place: [wrong], **ends}).changes] == [("cut", "grade")]
