"""A second rating beside the first: how far they are apart, which grades change, and what does not belong there."""

from __future__ import annotations

import pytest

from scriptkit.computing.grading import again, scores
from scriptkit.model import Episode, RatedAgain, RatingsAgain, SecondRating, Spot
from scriptkit.places import Place
from tests.computing.grading import tables
from tests.computing.grading.tables import Cell

ROW, SCORE, TOP = (
    Place("ratings-again.yaml", 4, 8),
    Place("ratings-again.yaml", 4, 16),
    Place("ratings-again.yaml", 2, 1),
)


def second(**rows: dict[str, float | None]) -> RatingsAgain:
    rated = {
        name: {
            criterion: RatedAgain(score, f"why {name}", Spot(ROW, {"score": SCORE})) for criterion, score in row.items()
        }
        for name, row in rows.items()
    }
    return RatingsAgain("Q. N.", "2026-03-01", rated, Spot(TOP))


def compared(rows: dict[str, tuple[Cell, ...]], again_: RatingsAgain, **more: object) -> SecondRating:
    made = tables.episode(rows, [1] * len(next(iter(rows.values()))), **more)  # type: ignore[arg-type]
    found = again.compare(made, scores.grades(made), again_)
    assert found is not None
    return found


def test_without_a_second_rating_or_a_checklist_there_is_nothing_to_compare() -> None:
    made = tables.episode({"x": (3,)}, (1,))
    assert again.compare(made, scores.grades(made), None) is None
    assert again.compare(Episode(), {}, second(x={"c0": 3})) is None


def test_every_rating_that_both_give_is_a_pair() -> None:
    found = compared({"x": (3, 4), "y": (5, None)}, second(x={"c0": 3, "c1": 2}, y={"c1": 4}))
    assert (found.by, found.on) == ("Q. N.", "2026-03-01")
    assert [one[:5] for one in found.pairs] == [("x", "c0", 3, 3, 0), ("x", "c1", 4, 2, 2)]
    assert [(one.answer, one.place) for one in found.pairs] == [("why x", SCORE)] * 2
    assert (found.exact, found.largest, found.unrated) == (0.5, 2, 1)


def test_a_rating_left_open_is_no_pair() -> None:
    found = compared({"x": (3, 4)}, second(x={"c0": None, "c1": 4}))
    assert ([one.criterion for one in found.pairs], found.unrated, found.off) == (["c1"], 1, ())


def test_with_no_pair_nothing_is_said_of_agreement() -> None:
    found = compared({"x": (3, 4)}, second())
    assert (found.pairs, found.exact, found.largest, found.unrated, found.changed) == ((), None, None, 2, ())


def test_apart_is_counted_in_steps_of_the_scale() -> None:
    """A scale of 0 to 1 has steps of a quarter, one of 0 to 10 steps of one; 0.1 + 0.2 is 0.3 here."""
    bands = {"A": 0.5, "B": 0.0}
    assert compared({"x": (0.25,)}, second(x={"c0": 0.75}), span=(0, 1), grades=bands).largest == 2
    assert compared({"x": (2,)}, second(x={"c0": 9}), span=(0, 10)).largest == 7
    assert compared({"x": (0.1 + 0.2,)}, second(x={"c0": 0.3}), span=(0, 1), grades=bands).exact == 1


def test_a_grade_that_comes_out_otherwise_is_told() -> None:
    rows: dict[str, tuple[Cell, ...]] = {"x": (5, 5), "y": (3, 3), "z": (1, 1)}
    found = compared(rows, second(x={"c0": 3}, y={"c0": 3}, z={"c0": 1, "c1": 5}), signs=False)
    assert found.changed == (("x", "A", "B"), ("z", "D", "C"))


def test_what_is_earned_is_compared_and_not_what_was_given() -> None:
    made = tables.episode({"x": (5, 5)}, (1, 1), signs=False)
    made = made._replace(exercises={"x": made.exercises["x"]._replace(grade="B")})
    found = again.compare(made, scores.grades(made), second(x={"c0": 3}))
    assert found is not None
    assert found.changed == (("x", "A", "B"),)


def test_a_floor_counts_for_the_second_rating_too() -> None:
    found = compared({"x": (3, 5)}, second(x={"c0": 2}), floors={0: 3.0}, signs=False, grades={"A": 3, "B": 2, "C": 1})
    assert found.changed == (("x", "A", "B"),)


def test_an_exercise_without_a_whole_row_changes_no_grade() -> None:
    assert compared({"x": (5, None)}, second(x={"c0": 1})).changed == ()


def test_what_the_outline_does_not_rate_is_unknown() -> None:
    found = compared({"x": (3,)}, second(nobody={"c0": 3}, x={"nothing": 3, "c0": 3}))
    assert found.unknown == (("nobody", "", TOP), ("x", "nothing", ROW))
    assert len(found.pairs) == 1


@pytest.mark.parametrize(("score", "is_off"), [(0.9, True), (1, False), (5, False), (5.1, True)])
def test_a_rating_off_the_scale_is_told_and_counts_for_nothing(score: float, is_off: bool) -> None:
    found = compared({"x": (3,)}, second(x={"c0": score}))
    assert found.off == ((("x", "c0", score, SCORE),) if is_off else ())
    assert len(found.pairs) == (0 if is_off else 1)
