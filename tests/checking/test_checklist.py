"""The checklist is fixed and described before anything is rated."""

from __future__ import annotations

import pytest

from tests.scripts import Write, found, worked_out

LIST = "title: One\nchecklist: {scale: %s, criteria: {steady: {ask: Is it?, anchors: {%s}}}}\n"
RATED = "exercises: {hang: {name: Bar hang, ratings: {steady: %s}}}\n"


@pytest.mark.parametrize(
    ("scale", "anchors", "lacking"),
    [
        ("[1, 5]", "1: no, 3: so so, 5: yes", ""),
        ("[1, 5]", "1: no, 5: yes", "its middle rating means"),
        ("[1, 5]", "3: so so", "its lowest and highest ratings mean"),
        ("[1, 5]", "", "its lowest, middle and highest ratings mean"),
        ("[1, 4]", "1: no, 2: hardly, 4: yes", ""),
        ("[0, 10]", "0: no, 5: half, 10: yes", ""),
        ("[0, 10]", "0: no, 2: hardly, 10: yes", "its middle rating means"),
        ("[0, 1]", "0: no, 1: yes", ""),
    ],
)
def test_both_ends_and_the_middle_are_described(episode: Write, scale: str, anchors: str, lacking: str) -> None:
    facts = worked_out(episode({"outline.yaml": LIST % (scale, anchors) + RATED % "1"}))
    messages = [message for _, message in found(facts, "anchor-missing")]
    assert messages == ([f'"steady" does not say what {lacking}.'] if lacking else [])


def test_a_checklist_that_rates_nothing_yet_is_left_alone(episode: Write) -> None:
    facts = worked_out(episode({"outline.yaml": LIST % ("[1, 5]", "") + "exercises: {hang: {name: Bar hang}}\n"}))
    assert found(facts, "anchor-missing") == []


def test_an_anchor_that_measures_by_the_list_is_told_at_its_words(episode: Write) -> None:
    anchors = "1: no, 3: so so, 5: clearly the best of the ten"
    facts = worked_out(episode({"outline.yaml": LIST % ("[1, 5]", anchors) + RATED % "4"}))
    (place, _), *more = found(facts, "anchor-relative")
    line = (LIST % ("[1, 5]", anchors)).splitlines()[1]
    assert (place, more) == (f"outline.yaml:2:{line.index('best of') + 1}", [])


@pytest.mark.parametrize(
    ("first", "second", "names"),
    [
        (50, 50, []),
        (51, 49, ["weight-decides"]),
        (1, 0, ["weight-decides", "weight-nought"]),
        (0, 0, ["weight-nought", "weight-nought"]),
    ],
)
def test_no_weight_decides_alone_and_none_is_nought(episode: Write, first: int, second: int, names: list[str]) -> None:
    outline = "title: One\nchecklist: {criteria: {a: {ask: A?, weight: %d}, b: {ask: B?, weight: %d}}}\n"
    facts = worked_out(episode({"outline.yaml": outline % (first, second) + "exercises: {hang: {name: Bar hang}}\n"}))
    assert sorted(name for name, _ in found(facts) if name.startswith("weight")) == names


def alike(episode: Write, first: str, second: str) -> list[str]:
    rows = ", ".join(
        f"e{at}: {{name: Exercise {at}, ratings: {{a: {one}, b: {two}}}}}"
        for at, (one, two) in enumerate(zip(first, second, strict=True))
    )
    outline = f"title: One\nchecklist: {{criteria: {{a: A?, b: B?}}}}\nexercises: {{{rows}}}\n"
    return [message for _, message in found(worked_out(episode({"outline.yaml": outline})), "criteria-alike")]


@pytest.mark.parametrize(
    ("first", "second", "told"),
    [
        ("123455", "123445", True),
        ("12345", "12345", False),  # five exercises tell nothing
        ("123455", "554321", False),  # the opposite order
        ("111111", "123455", False),  # one never changes
        ("112233", "213132", False),
    ],
)
def test_two_questions_with_one_answer_are_told(episode: Write, first: str, second: str, told: bool) -> None:
    assert bool(alike(episode, first, second)) is told


def test_rank_correlation_is_what_it_says(episode: Write) -> None:
    (message,) = alike(episode, "123455", "123445")
    # by hand: ranks 0 1 2 3 4.5 4.5 and 0 1 2 3.5 3.5 5, so 16.25 over the root of 17 times 17
    assert "rank correlation 0.96" in message


@pytest.mark.parametrize(("count", "told"), [(1, True), (2, False), (9, False), (10, True)])
def test_two_to_nine_grades(episode: Write, count: int, told: bool) -> None:
    grades = ", ".join(f"G{at}: {20 - at}" for at in range(count))
    facts = worked_out(episode({"outline.yaml": f"title: One\ngrades: {{{grades}}}\nexercises: {{hang: Bar hang}}\n"}))
    assert bool(found(facts, "grades-count")) is told
