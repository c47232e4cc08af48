"""A grade depends on the ratings and on the shares of the weights, and on nothing else; better is never worse."""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

import pytest
from hypothesis import Phase, given, settings
from hypothesis import strategies as st

from scriptkit.computing.grading import ranking, scale, scores
from scriptkit.model import Checklist, Criterion, Episode, Exercise, Graded, Rating, Standing, Tips

GRADES = [
    {"A": 4.2, "B": 3.4, "C": 2.6, "D": 1.0},
    {},
    {"A": 4.5, "A-": 4.0, "B": 2.0},
    {"9": 4.0, "8": 3.0, "1": 1.0},
    {"do": 3.0, "skip": 1.0},
    {"must-do": 4.0, "worth a try": 3.0, "spare-time only": 2.0, "skip": 1.0},
    {"S+": 4.7, "S": 4.5, "S-": 4.3, "A+": 4.0, "A": 3.5, "A-": 3.0, "B": 2.5, "C": 2.0, "D": 1.0},
    dict(zip("987654321", (4.6, 4.2, 3.8, 3.4, 3.0, 2.6, 2.2, 1.8, 1.0), strict=True)),
]
CAPS = ["", "A", "B", "C-", "skip", "8", "2", "A-"]
# a table takes a fifth of a second to draw: few of them, and a failing one is told as it was found, not made smaller
DRAWN = settings(max_examples=9, phases=[Phase.explicit, Phase.generate])
FIGURES = ("first_all", "first_near", "first_ratings", "first_in_group", "kept_all", "kept_ratings", "gap")


class Cell(NamedTuple):
    """A rating, and what it may be; without a score it is missing."""

    score: float | None
    low: float = 0.0
    high: float = 0.0


class Table(NamedTuple):
    """Rows of ratings by exercise, weights and floors by criterion, and the scale of grades."""

    rows: dict[str, list[Cell]]
    weights: list[float]
    floors: list[float | None]
    grades: Mapping[str, float]
    cap: str
    signs: bool

    def episode(self, *, unit: float = 1.0, back: bool = False) -> Episode:
        """The weights in another unit, or criteria and exercises listed from behind."""
        turn = -1 if back else 1
        criteria = {
            f"c{at}": Criterion(f"c{at}", "", weight * unit, floor=floor)
            for at, (weight, floor) in list(enumerate(zip(self.weights, self.floors, strict=True)))[::turn]
        }
        exercises = {name: self._exercise(name, row) for name, row in list(self.rows.items())[::turn]}
        return Episode(
            checklist=Checklist("one", (1.0, 5.0), self.cap, self.signs, criteria),
            grades=dict(self.grades),
            exercises=exercises,
        )

    def _exercise(self, name: str, row: list[Cell]) -> Exercise:
        ratings = {
            f"c{at}": Rating(one.score, (one.low, one.high) if one.low < one.high else ())
            for at, one in enumerate(row)
            if one.score is not None
        }
        return Exercise(name, name, group=f"g{int(name[1:]) % 2}", ratings=ratings)

    def graded(self, *, unit: float = 1.0, back: bool = False) -> dict[str, Graded]:
        return scores.grades(self.episode(unit=unit, back=back))


@st.composite
def a_rating(draw: st.DrawFn, *, missing: bool = True, steps: bool = False) -> Cell:
    number = st.integers(1, 5).map(float) if steps else st.floats(1, 5) | st.integers(1, 5).map(float)
    low, score, high = sorted(draw(st.tuples(number, number, number)))
    kind = draw(st.sampled_from(["sure", "sure", "unsure", "missing" if missing else "sure"]))
    if kind == "missing":
        return Cell(None)
    return Cell(score, low, high) if kind == "unsure" else Cell(score)


@st.composite
def a_table(draw: st.DrawFn, *, least: int = 1, missing: bool = True, steps: bool = False) -> Table:
    """Weights are whole, so that they add up alike in any order."""
    criteria, rows = draw(st.integers(1, 5)), draw(st.integers(least, 4))
    row = st.lists(a_rating(missing=missing, steps=steps), min_size=criteria, max_size=criteria)
    weights = st.lists(st.integers(0, 40).map(float), min_size=criteria, max_size=criteria).filter(any)
    floors = st.lists(st.none() | st.sampled_from([2.0, 2.5, 4.0]), min_size=criteria, max_size=criteria)
    return Table(
        {f"x{at}": draw(row) for at in range(rows)},
        draw(weights),
        draw(floors),
        draw(st.sampled_from(GRADES)),
        draw(st.sampled_from(CAPS)),
        draw(st.booleans()),
    )


def place(grade: str | None, table: Table) -> int:
    """Lower is better, by the names of the scale alone: each grade with a plus before it and a minus behind it."""
    order = [f"{name}{sign}" for name in (table.grades or dict(scale.STOCK_SHARES)) for sign in ("+", "", "-")]
    return order.index(grade or "")


def better(table: Table, data: st.DataObject) -> Table:
    """The same with one rating higher, or one end of what it may be, or with a missing one given its best."""
    row = list(table.rows["x0"])
    at = data.draw(st.integers(0, len(row) - 1))
    one = row[at]
    if one.score is None:
        row[at] = Cell(5.0)
    elif one.low < one.high:
        low = data.draw(st.floats(one.low, one.score))
        row[at] = Cell(data.draw(st.floats(one.score, one.high)), low, data.draw(st.floats(one.high, 5)))
    else:
        row[at] = Cell(data.draw(st.floats(one.score, 5)))
    return table._replace(rows={**table.rows, "x0": row})


@settings(max_examples=50)
@given(a_table(), st.data())
def test_a_better_rating_never_lowers_a_score_or_a_grade(table: Table, data: st.DataObject) -> None:
    before, after = table.graded()["x0"], better(table, data).graded()["x0"]
    if before.score_low is None or before.score_high is None:
        return  # nothing is rated
    assert (after.score_low or 0) >= before.score_low
    assert (after.score_high or 0) >= before.score_high or before.missing
    assert place(after.earned_low, table) <= place(before.earned_low, table)
    assert place(after.earned_high, table) <= place(before.earned_high, table)
    if before.score is not None:
        assert (after.score or 0) >= before.score
        assert place(after.earned, table) <= place(before.earned, table)


@settings(max_examples=50)
@given(a_table())
def test_what_is_earned_lies_between_the_worst_and_the_best_that_may_be(table: Table) -> None:
    for one in table.graded().values():
        if one.score_low is None or one.score_high is None:
            continue
        assert 1 - 1e-6 <= one.score_low <= one.score_high <= 5 + 1e-6
        assert place(one.earned_high, table) <= place(one.earned_low, table)
        if one.score is not None:
            assert one.score_low <= one.score <= one.score_high
            assert place(one.earned_high, table) <= place(one.earned, table) <= place(one.earned_low, table)


@settings(max_examples=30)
@given(a_table(missing=False))
def test_firmness_is_a_share_and_a_band_is_no_less_firm_than_its_grade(table: Table) -> None:
    for one in table.graded().values():
        assert one.firmness is not None
        assert one.band_firmness is not None
        assert 0 <= one.firmness <= one.band_firmness + 1e-4 <= 1 + 1e-4
        assert (one.neighbour == "") == (one.firmness > 1 - 1e-5) or one.firmness == pytest.approx(1, abs=1e-4)


def assert_alike(some: Mapping[str, Graded], others: Mapping[str, Graded]) -> None:
    assert set(some) == set(others)
    for name, one in some.items():
        other = others[name]
        for told in ("score", "score_low", "score_high", "firmness", "band_firmness", "spread"):
            assert getattr(one, told) == pytest.approx(getattr(other, told), abs=1e-8), told
        for told in ("earned", "grade", "earned_low", "earned_high", "agrees"):
            assert getattr(one, told) == getattr(other, told), told
        assert set(one.capped) == set(other.capped)
        assert set(one.missing) == set(other.missing)


@settings(max_examples=25)
@given(a_table(), st.sampled_from([0.25, 3.0, 0.01, 1024.0]))
def test_the_unit_of_the_weights_changes_no_grade(table: Table, unit: float) -> None:
    assert_alike(table.graded(), table.graded(unit=unit))


@settings(max_examples=25)
@given(a_table())
def test_the_order_of_criteria_and_exercises_changes_no_grade(table: Table) -> None:
    assert_alike(table.graded(), table.graded(back=True))


def standings(table: Table, *, unit: float = 1.0, back: bool = False) -> Mapping[str, Standing]:
    episode = table.episode(unit=unit, back=back)
    found = ranking.rank(episode, scores.grades(episode))
    return found.standings if found else {}


def told(tips: Tips) -> list[object]:
    """All that a tip says, floats rounded."""
    plain: list[object] = []
    for one in tips:
        plain += one if isinstance(one, tuple) else [one]
    return [round(one, 6) if isinstance(one, float) else one for one in plain]


def assert_standing_alike(some: Mapping[str, Standing], others: Mapping[str, Standing], error: float) -> None:
    assert set(some) == set(others)
    for name, one in some.items():
        other = others[name]
        for figure in FIGURES:
            assert getattr(one, figure) == pytest.approx(getattr(other, figure), abs=error), figure
        assert (one.rank, set(one.tied), one.rival) == (other.rank, set(other.tied), other.rival)
        assert [(swap[:2], swap.whose) for swap in one.swaps] == [(swap[:2], swap.whose) for swap in other.swaps]
        assert {tips.criterion: told(tips) for tips in one.tips} == {tips.criterion: told(tips) for tips in other.tips}


@DRAWN
@given(a_table(least=2, steps=True))
def test_the_order_of_criteria_and_exercises_changes_no_share_rank_or_tip(table: Table) -> None:
    """And the shares of first place are one in all."""
    found = standings(table)
    assert_standing_alike(found, standings(table, back=True), 1e-9)
    for figure in ("first_all", "first_near", "first_ratings"):
        shares = [getattr(one, figure) for one in found.values()]
        assert not any(shares) or sum(share or 0.0 for share in shares) == pytest.approx(1)


@DRAWN
@given(a_table(least=2, steps=True), st.sampled_from([3.0, 0.01]))
def test_the_unit_of_the_weights_changes_no_share_rank_or_tip(table: Table, unit: float) -> None:
    assert_standing_alike(standings(table), standings(table, unit=unit), 1e-3)


@settings(max_examples=25)
@given(a_table(least=2), st.data())
def test_an_exercise_taken_out_changes_nothing_among_the_rest(table: Table, data: st.DataObject) -> None:
    """A scale that is stretched to the list would let one exercise turn the order of two others."""
    gone = data.draw(st.sampled_from(sorted(table.rows)))
    fewer = table._replace(rows={name: row for name, row in table.rows.items() if name != gone})
    before, after = table.graded(), fewer.graded()
    assert {name: one for name, one in before.items() if name != gone} == after
    words = tuple(table.grades or dict(scale.STOCK_SHARES))
    assert [name for name in scale.by_grade(before, words) if name != gone] == scale.by_grade(after, words)
