"""The exact order equals the best of all permutations."""

from __future__ import annotations

import random
from collections.abc import Sequence
from itertools import pairwise, permutations

import pytest

from scriptkit.computing.shooting import exactly

Table = Sequence[Sequence[int]]


def cost(order: Sequence[int], prices: Table, early: Sequence[int]) -> int:
    return sum(prices[one][other] for one, other in pairwise(order)) + sum(
        place * early[one] for place, one in enumerate(order)
    )


def together(order: Sequence[int], block: Sequence[bool]) -> bool:
    places = [place for place, one in enumerate(order) if block[one]]
    return not places or places[-1] - places[0] == len(places) - 1


@pytest.mark.parametrize("count", range(1, 8))
def test_no_permutation_is_better(count: int) -> None:
    chance = random.Random(count)  # noqa: S311 - nothing secret
    for _ in range(12 if count < 7 else 4):
        prices = [[chance.randrange(10) for _ in range(count)] for _ in range(count)]
        early = [chance.randrange(3) for _ in range(count)]
        block = [chance.random() < 0.4 for _ in range(count)]
        order = exactly.best(prices, early, block)
        allowed = [one for one in permutations(range(count)) if together(one, block)]
        assert together(order, block)
        assert sorted(order) == list(range(count))
        assert cost(order, prices, early) == min(cost(one, prices, early) for one in allowed)


def test_nothing_has_an_order_too() -> None:
    assert exactly.best([], []) == []


def test_of_orders_as_good_it_is_the_same_one_each_time() -> None:
    flat = [[1] * 6 for _ in range(6)]
    assert {tuple(exactly.best(flat, [0] * 6)) for _ in range(5)} == {tuple(exactly.best(flat, [0] * 6))}


def test_what_should_come_early_does_where_it_costs_nothing() -> None:
    assert exactly.best([[1] * 4 for _ in range(4)], [0, 0, 0, 1])[0] == 3
