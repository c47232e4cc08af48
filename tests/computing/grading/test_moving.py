"""What would have to change is held against trying it: every rating and every weight between now and there."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

import pytest
from hypothesis import given, settings

from scriptkit.computing.grading import moving
from scriptkit.computing.grading.moving import Rules
from scriptkit.model import Graded, Tips
from tests.computing.grading import tables
from tests.computing.grading.tables import Table, a_table, mean

HAIR = 1e-5
GRID = 60


def between(start: float, end: float) -> list[float]:
    """Many values on the way, both ends left out."""
    return [start + (end - start) * number / GRID for number in range(1, GRID)]


def tips_of(table: Table) -> Iterator[tuple[int, Tips, int, Rules]]:
    one, rules, field = table.first()
    number = table.step(rules, table.rows[0], table.shares())
    for place, tips in enumerate(moving.tips(one, rules, field)):
        assert tips.criterion == f"c{place}"
        yield place, tips, number, rules


def steps_at(table: Table, rules: Rules, place: int, ratings: Iterable[float]) -> list[int]:
    row = table.rows[0]
    return [table.step(rules, [*row[:place], one, *row[place + 1 :]], table.shares()) for one in ratings]


@settings(max_examples=80)
@given(a_table(whole=True))
def test_a_tip_of_a_whole_rating_is_the_nearest_step_that_makes_another_grade(table: Table) -> None:
    for place, tips, number, rules in tips_of(table):
        was = int(table.rows[0][place])
        for tip, ratings in ((tips.rating_up, range(was + 1, 6)), (tips.rating_down, range(was - 1, 0, -1))):
            found = dict(zip(ratings, steps_at(table, rules, place, ratings), strict=True))
            nearest = next((rating for rating, step in found.items() if step != number), None)
            assert (tip.at if tip else None) == nearest
            if tip and nearest is not None:
                assert tip.grade == rules.scale.steps[found[nearest]]
                assert not tip.under


@settings(max_examples=80)
@given(a_table(whole=False))
def test_a_tip_of_any_other_rating_is_the_edge_of_a_grade(table: Table) -> None:
    for place, tips, number, rules in tips_of(table):
        if rules.whole:
            continue  # tenths that happen to be whole
        was = table.rows[0][place]
        for tip, end in ((tips.rating_up, 5.0), (tips.rating_down, 1.0)):
            if tip is None:
                assert set(steps_at(table, rules, place, [*between(was, end), end])) == {number}
                continue
            beyond = tip.at - HAIR if tip.under else tip.at
            assert tip.under == (tip is tips.rating_down)
            assert 1 <= beyond <= 5
            assert [rules.scale.steps[step] for step in steps_at(table, rules, place, [beyond])] == [tip.grade]
            assert tip.grade != rules.scale.steps[number]
            assert set(steps_at(table, rules, place, [was, *between(was, tip.at)])) == {number}
            assert steps_at(table, rules, place, [tip.at])[0] == number or not tip.under


@settings(max_examples=120)
@given(a_table())
def test_a_tip_of_a_weight_is_the_share_beyond_which_the_grade_is_another(table: Table) -> None:
    for place, tips, number, rules in tips_of(table):
        row, was = table.rows[0], table.shares()[place]

        def steps(shares: Iterable[float], at: int = place, row: list[float] = row, rules: Rules = rules) -> list[int]:
            return [table.step(rules, row, table.with_share(at, share)) for share in shares]

        for tip, end, side in ((tips.weight_up, 1.0, 1), (tips.weight_down, 0.0, -1)):
            if tip is None:
                assert set(steps([*between(was, end), end])) == {number}
                continue
            beyond = tip.at + side * HAIR if tip.under else tip.at
            assert 0 <= beyond <= 1
            assert (tip.at - was) * side >= 0
            assert [rules.scale.steps[step] for step in steps([beyond])] == [tip.grade]
            assert tip.grade != rules.scale.steps[number]
            assert set(steps([was, *between(was, tip.at - side * HAIR / 10)])) == {number}
            assert not tip.under or steps([tip.at])[0] == number


@settings(max_examples=80)
@given(a_table(rows=3))
def test_an_exercise_stays_first_between_two_shares_and_no_further(table: Table) -> None:
    table = table._replace(floors={})

    def leads(place: int, share: float) -> bool:
        means = [mean(row, table.with_share(place, share)) for row in table.rows]
        return means[0] >= max(means) - 1e-9

    for place, tips, _, _ in tips_of(table):
        was = table.shares()[place]
        low, high = tips.first_low, tips.first_high
        if low is None or high is None:
            assert not any(leads(place, share) for share in (0.0, was, 1.0, *between(0.0, 1.0)))
            continue
        assert leads(place, was) == (low - 1e-9 <= was <= high + 1e-9)
        assert all(leads(place, share) for share in (low, *between(low, high), high))
        assert low == 0 or not leads(place, max(0.0, low - HAIR))
        assert high == 1 or not leads(place, min(1.0, high + HAIR))


def row(*ratings: float, weights: Sequence[float] = (50, 50), **more: object) -> tuple[Graded, Rules]:
    made = tables.episode({"x": ratings}, weights, **more)  # type: ignore[arg-type]
    return tables.grades(made)["x"], tables.rules(made)


def test_a_floor_is_a_tip_of_its_own() -> None:
    """2 and 5 earn an A+ by their score; below 2 on the first criterion the cap holds it at C+."""
    one, rules = row(2, 5, floors={0: 2.0}, weights=(5, 95))
    assert one.earned == "A+"
    assert moving.tips(one, rules, [one])[0].rating_down == (1, "C+", False)
    one, rules = row(1, 5, floors={0: 2.0}, weights=(5, 95))
    assert one.earned == "C+"
    assert moving.tips(one, rules, [one])[0].rating_up == (2, "A+", False)
    assert moving.tips(one, rules, [one])[1].rating_up is None


def test_another_broken_floor_keeps_every_rating_under_the_cap() -> None:
    one, rules = row(1, 3.5, weights=(10, 90), floors={0: 2.0})
    assert one.earned == "C+"
    assert moving.tips(one, rules, [one])[1].rating_up is None


def test_a_score_right_on_its_edge_falls_with_the_first_bit_of_weight() -> None:
    """3 and 5 at even weights are 4.0, the edge of a B here: whichever way it falls, the tip is where it stands."""
    one, rules = row(3, 5, grades={"A": 4.5, "B": 4.0, "C": 1.0}, signs=False)
    assert one.earned == "B"
    tips = moving.tips(one, rules, [one])
    assert tips[0].weight_up == (0.5, "C", True)
    assert tips[1].weight_down == (0.5, "C", True)


def test_an_edge_that_only_all_the_weight_reaches_is_not_fallen_below() -> None:
    """All weight on the 4 makes a 4.0, which is a B still."""
    one, rules = row(4, 4.4, grades={"A": 4.5, "B": 4.0, "C": 1.0}, signs=False)
    tips = moving.tips(one, rules, [one])
    assert (tips[0].weight_up, tips[0].weight_down, tips[1].weight_up, tips[1].weight_down) == (None,) * 4


def test_a_rating_right_on_the_edge_of_a_light_criterion_falls_too() -> None:
    """The score is on its edge, so the least bit less on a criterion of a ten-thousandth is enough."""
    one, rules = row(2.5, 2.5, grades={"A": 2.5, "B": 1.0}, signs=False, weights=(0.01, 99.99))
    tip = moving.tips(one, rules, [one])[0].rating_down
    assert tip is not None
    assert tip.at == pytest.approx(2.5)
    assert (tip.grade, tip.under) == ("B", True)


def test_one_criterion_has_no_other_weight_to_trade_with() -> None:
    one, rules = row(3, weights=(10,))
    tips = moving.tips(one, rules, [one])[0]
    assert (tips.weight_up, tips.weight_down, tips.first_low, tips.first_high) == (None, None, 0, 1)


def test_a_rating_without_weight_tips_nothing_but_its_floor() -> None:
    one, rules = row(3, 5, weights=(0, 50), floors={0: 2.0})
    tips = moving.tips(one, rules, [one])[0]
    assert (tips.rating_up, tips.rating_down) == (None, (1, "C+", False))


def test_nothing_is_told_of_a_rating_that_nobody_gave() -> None:
    """c1 weighs nought. x comes first without it; and where y has none, how much of it x could bear is not known."""
    made = tables.episode({"x": (4, None), "y": (3, 5)}, (50, 0), floors={1: 2.0})
    field = list(tables.grades(made).values())
    assert moving.tips(field[0], tables.rules(made), field)[1][1:] == (None,) * 6
    made = tables.episode({"x": (4, 3), "y": (3, None)}, (50, 0))
    field = list(tables.grades(made).values())
    c0, c1 = moving.tips(field[0], tables.rules(made), field)
    assert (c1.first_low, c1.first_high) == (None, None)
    assert c0.first_high == 1


def test_ratings_are_whole_where_the_scale_and_all_of_them_are() -> None:
    for rows, span, whole in (
        ({"x": (3, 4)}, (1, 5), True),
        ({"x": (3, 4.5)}, (1, 5), False),
        ({"x": (3, 4)}, (0.5, 5), False),
        ({"x": (3, None)}, (1, 5), True),
    ):
        assert tables.rules(tables.episode(rows, (1, 1), span=span)).whole is whole
