"""The good order holds every spot, is near to the best one and never worse than the groups it starts from."""

from __future__ import annotations

import random
from itertools import pairwise

import pytest

from scriptkit.computing.shooting import exactly, nearly
from scriptkit.computing.shooting.stations import Price, Station, seconds

PRICE = Price(place=900, side=480, framing=240, kit=300, people=180)


def spots(seed: int, count: int) -> list[Station]:
    chance = random.Random(seed)  # noqa: S311 - nothing secret
    made: dict[Station, None] = {}
    while len(made) < count:
        kit = frozenset(f"kit {one}" for one in range(3) if chance.random() < 0.4)
        people = (frozenset([f"person {chance.randrange(3)}"]), "")
        place = f"place {chance.randrange(4 + count // 50)}"
        made[Station(False, place, chance.choice(("side", "front", "45")), kit, people, "")] = None
    return list(made)


def whole(order: list[int], held: list[Station]) -> float:
    return sum(seconds(held[one], held[other], PRICE) for one, other in pairwise(order))


@pytest.mark.parametrize("seed", range(8))
def test_a_good_order_is_near_to_the_best_one(seed: int) -> None:
    held = spots(seed, 10)
    prices = [[int(seconds(one, other, PRICE)) for other in held] for one in held]
    best = whole(exactly.best(prices, [0] * 10), held)
    assert best <= whole(nearly.good(held, PRICE, [0] * 10), held) <= 1.05 * best


@pytest.mark.parametrize("count", [0, 1, 2, 30, 61, 150])
def test_every_spot_comes_once(count: int) -> None:
    held = spots(count, count)
    assert sorted(nearly.good(held, PRICE, [0] * count)) == list(range(count))


@pytest.mark.parametrize("count", [40, 150])
def test_it_has_less_to_change_than_the_order_it_was_given(count: int) -> None:
    held = spots(count, count)
    assert whole(nearly.good(held, PRICE, [0] * count), held) < 0.8 * whole(list(range(count)), held)


def test_it_is_the_same_order_each_time() -> None:
    held = spots(3, 40)
    assert nearly.good(held, PRICE, [0] * 40) == nearly.good(list(held), PRICE, [0] * 40)


def test_prices_by_number_are_those_by_what_changes() -> None:
    held = spots(5, 25)
    asked = nearly.pricing(held, PRICE)
    pairs = [(one, other) for one in range(25) for other in range(25) if one != other]
    assert [asked(*pair) for pair in pairs] == [seconds(held[one], held[other], PRICE) for one, other in pairs]
