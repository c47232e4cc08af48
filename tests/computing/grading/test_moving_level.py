"""What brings two exercises level, which are tied, and which one is better throughout."""

from __future__ import annotations

import pytest
from hypothesis import given, settings

from scriptkit.computing.grading import moving
from scriptkit.model import Swap
from tests.computing.grading import tables
from tests.computing.grading.tables import Table, a_table, mean


def swaps_of(table: Table) -> tuple[dict[str, Swap], float, bool]:
    _, rules, (mine, theirs) = table.first()
    found = moving.swaps(mine, theirs, rules)
    assert len({swap.kind for swap in found}) == len(found)
    return (
        {swap.kind: swap for swap in found},
        mean(table.rows[0], table.shares()) - mean(table.rows[1], table.shares()),
        rules.whole,
    )


@settings(max_examples=80)
@given(a_table(rows=2))
def test_no_smaller_change_of_one_weight_brings_two_level(table: Table) -> None:
    found, gap, _ = swaps_of(table)
    swap = found.get("weight")

    def sign(place: int, share: float) -> float:
        shares = table.with_share(place, share)
        return (mean(table.rows[0], shares) - mean(table.rows[1], shares)) * (1 if gap > 0 else -1)

    if abs(gap) < 1e-9:
        assert not found
        return
    size = 2.0
    if swap:
        place = int(swap.criterion[1:])
        assert sign(place, swap.to) == pytest.approx(0, abs=1e-8)
        assert swap.was == pytest.approx(table.shares()[place])
        size = abs(swap.to - swap.was)
    for place, was in enumerate(table.shares()):
        for share in (max(0.0, was - size * 0.999), min(1.0, was + size * 0.999)):
            assert sign(place, share) > 0


@settings(max_examples=80)
@given(a_table(rows=2))
def test_no_smaller_change_of_one_rating_brings_two_level(table: Table) -> None:
    found, gap, whole = swaps_of(table)
    swap = found.get("rating")

    def sign(whose: int, place: int, rating: float) -> float:
        rows = [list(row) for row in table.rows]
        rows[whose][place] = rating
        return (mean(rows[0], table.shares()) - mean(rows[1], table.shares())) * (1 if gap > 0 else -1)

    if abs(gap) < 1e-9:
        return
    size = 9.0
    if swap:
        whose, place = int(swap.whose[1:]), int(swap.criterion[1:])
        assert swap.was == table.rows[whose][place]
        assert 1 <= swap.to <= 5
        after = sign(whose, place, swap.to)
        assert after <= 1e-8 if whole else after == pytest.approx(0, abs=1e-8)
        assert not whole or swap.to == int(swap.to)
        size = abs(swap.to - swap.was)
    for whose, row in enumerate(table.rows):
        for place, was in enumerate(row):
            smaller = size - 1 if whole else size * 0.999
            for rating in (max(1.0, was - smaller), min(5.0, was + smaller)):
                assert sign(whose, place, rating) > 0


def test_of_equal_swaps_the_order_of_criteria_does_not_choose() -> None:
    rows = {"x": [4.0, 3.0, 3.0], "y": [3.0, 3.0, 3.0]}
    made = tables.episode(rows, [1, 1, 1])
    one, other = tables.grades(made).values()
    back, other_back = (row._replace(parts=row.parts[::-1]) for row in (one, other))
    assert moving.swaps(one, other, tables.rules(made)) == moving.swaps(back, other_back, tables.rules(made))


def test_nobody_is_brought_level_by_what_is_not_rated() -> None:
    """c1 weighs nought, so a row without it has a score; but what more weight on it would do is not known."""
    made = tables.episode({"x": (4, None), "y": (3, 5)}, (50, 0))
    one, other = tables.grades(made).values()
    assert {swap.criterion for swap in moving.swaps(one, other, tables.rules(made))} == {"c0"}
    assert {swap.criterion for swap in moving.swaps(other, one, tables.rules(made))} == {"c0"}


def test_a_criterion_without_weight_neither_makes_nor_hinders_dominance() -> None:
    for mine, theirs, beats in (((4, 1), (3, 5), True), ((4, None), (3, 5), True), ((4, 5), (4, 1), False)):
        one, other = tables.grades(tables.episode({"x": mine, "y": theirs}, (50, 0))).values()
        assert moving.dominates(one, other) is beats


@pytest.mark.parametrize(("theirs", "is_tied"), [((3, 3), True), ((4, 2), True), ((4, 3), False), ((3, 4), False)])
def test_two_are_tied_when_nearer_than_a_step_on_the_lightest_criterion(
    theirs: tuple[float, ...], is_tied: bool
) -> None:
    """By 40 and 60 the lightest step is 0.4: 3 and 3 against 4 and 2 are 0.2 apart, against 4 and 3 just 0.4."""
    made = tables.episode({"x": (3, 3), "y": theirs}, (40, 60))
    field = list(tables.grades(made).values())
    assert moving.tied(field[0], field, 1.0) == (("y",) if is_tied else ())


def test_a_criterion_without_weight_is_not_the_lightest() -> None:
    made = tables.episode({"x": (3, 3, 1), "y": (4, 2, 1)}, (40, 60, 0))
    field = list(tables.grades(made).values())
    assert moving.tied(field[0], field, 1.0) == ("y",)


@pytest.mark.parametrize(
    ("theirs", "beats"), [((3, 2), True), ((2, 2), True), ((3, 3), False), ((2, 4), False), ((3, None), False)]
)
def test_one_dominates_where_it_is_nowhere_worse_and_somewhere_better(
    theirs: tuple[float | None, ...], beats: bool
) -> None:
    one, other = tables.grades(tables.episode({"x": (3, 3), "y": theirs}, (40, 60))).values()
    assert moving.dominates(one, other) is beats
