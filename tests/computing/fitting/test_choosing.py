"""What is chosen is what trying every set would choose: by numbers from the highest down, then by seconds."""

from __future__ import annotations

import time
from itertools import combinations
from random import Random

import pytest

from scriptkit.computing.fitting import choosing
from scriptkit.computing.fitting.choosing import SLACK, Chosen, Item, choose, counts

Case = tuple[list[Item], dict[Chosen, float], list[Chosen]]


def case(random: Random, size: int) -> Case:
    """Random passages, some inside a segment, some that change what others save; and sets that may not go together."""
    items = [Item(random.randint(1, 3), round(random.uniform(1, 20), 3)) for _ in range(size)]
    if size > 2 and random.random() < 0.6:
        inside = frozenset(random.sample(range(1, size), random.randint(1, min(2, size - 1))))
        saves = items[0].saves + sum(items[one].saves for one in inside)
        items[0] = Item(items[0].number, saves, inside, alone=False)
    hanging = [one for one in range(size) if not items[one].alone or random.random() < 0.2]
    items = [item._replace(alone=one not in hanging) for one, item in enumerate(items)]
    twist = {
        frozenset(part): random.uniform(-2, 2)
        for number in range(2, len(hanging) + 1)
        for part in combinations(hanging, number)
    }
    never = [
        frozenset(random.sample(range(size), random.randint(1, min(3, size)))) for _ in range(random.randint(0, 2))
    ]
    return items, twist, never


def allowed(items: list[Item]) -> list[Chosen]:
    """Every set in which nothing stands beside the segment that it goes with."""
    every = [frozenset(part) for size in range(len(items) + 1) for part in combinations(range(len(items)), size)]
    return [one for one in every if not any(items[part].inside & one for part in one)]


def left(chosen: Chosen, items: list[Item], twist: dict[Chosen, float], whole: float = 300.0) -> float:
    hanging = frozenset(one for one in chosen if not items[one].alone)
    return whole - sum(items[one].saves for one in chosen) + twist.get(hanging, 0.0)


@pytest.mark.parametrize("seed", range(300))
def test_the_choice_is_the_one_that_trying_every_set_makes(seed: int) -> None:
    random = Random(seed)  # noqa: S311 - nothing secret
    items, twist, never = case(random, random.randint(1, 7))
    limit = 300.0 - random.uniform(0.0, 1.1) * sum(item.saves for item in items)

    def total(chosen: Chosen) -> float:
        return left(chosen, items, twist)

    def too_much(chosen: Chosen) -> Chosen | None:
        return next((one for one in never if one <= chosen), None)

    sets = [one for one in allowed(items) if too_much(one) is None]
    fits = [one for one in sets if total(one) <= limit + SLACK]
    choice = choose(items, total, limit, too_much)
    assert choice.exact
    assert choice.reached == bool(fits)
    assert too_much(choice.chosen) is None
    assert choice.left == pytest.approx(total(choice.chosen))
    if fits:
        best = min((counts(one, items), -total(one)) for one in fits)
        assert counts(choice.chosen, items) == best[0]
        assert -total(choice.chosen) == pytest.approx(best[1], abs=1e-6)
    else:
        assert total(choice.chosen) == pytest.approx(min(map(total, sets)), abs=1e-6)


@pytest.mark.parametrize("seed", range(40))
def test_summing_in_milliseconds_gives_what_trying_gives(seed: int, monkeypatch: pytest.MonkeyPatch) -> None:
    random = Random(seed)  # noqa: S311 - nothing secret
    items = [Item(random.randint(1, 2), random.randint(500, 30_000) / 1000) for _ in range(random.randint(2, 9))]
    limit = 300.0 - random.uniform(0.1, 0.95) * sum(item.saves for item in items)

    def total(chosen: Chosen) -> float:
        return 300.0 - sum(items[one].saves for one in chosen)

    tried = choose(items, total, limit, lambda _: None)
    monkeypatch.setattr(choosing, "MOST_WAYS", 0)
    summed = choose(items, total, limit, lambda _: None)
    assert counts(summed.chosen, items) == counts(tried.chosen, items)
    assert summed.left == pytest.approx(tried.left, abs=0.0021)
    assert summed.left <= limit + SLACK


def test_forty_passages_are_chosen_from_at_once() -> None:
    random = Random(7)  # noqa: S311 - nothing secret
    items = [Item(random.randint(1, 3), random.uniform(2, 25)) for _ in range(40)]
    limit = 900.0 - 0.6 * sum(item.saves for item in items)
    began = time.process_time()
    choice = choose(items, lambda chosen: 900.0 - sum(items[one].saves for one in chosen), limit, lambda _: None)
    assert time.process_time() - began < 5
    assert choice.reached
    assert choice.exact
    assert choice.left <= limit + SLACK
    cut = [items[one] for one in choice.chosen]
    spared = [item for one, item in enumerate(items) if one not in choice.chosen]
    # whatever is spared in the place of another of its number, by so much that it tells, leaves too much
    swaps = [one.saves - other.saves for one in cut for other in spared if one.number == other.number]
    assert not [less for less in swaps if 0.04 < less <= limit - choice.left]


def test_one_of_the_highest_number_weighs_more_than_all_below() -> None:
    items = [Item(2, 10.0), Item(1, 4.0), Item(1, 4.0), Item(1, 4.0)]
    choice = choose(items, lambda chosen: 100.0 - sum(items[one].saves for one in chosen), 90.0, lambda _: None)
    assert choice.chosen == {1, 2, 3}


def test_of_as_many_passages_those_go_that_take_the_fewest_seconds() -> None:
    items = [Item(1, 30.0), Item(1, 12.0), Item(1, 11.0)]
    choice = choose(items, lambda chosen: 100.0 - sum(items[one].saves for one in chosen), 90.0, lambda _: None)
    assert choice.chosen == {2}


def test_too_many_that_hang_together_are_told() -> None:
    items = [Item(1, 1.0, alone=False) for _ in range(20)]
    choice = choose(items, lambda chosen: 100.0 - len(chosen), 81.0, lambda _: None)
    assert choice.reached
    assert not choice.exact


def test_very_many_are_chosen_from_in_bounds_and_that_is_told() -> None:
    random = Random(9)  # noqa: S311 - nothing secret
    items = [Item(random.randint(1, 3), random.uniform(2, 25)) for _ in range(400)]
    whole = sum(item.saves for item in items)
    began = time.process_time()
    choice = choose(items, lambda chosen: 9000.0 - sum(items[one].saves for one in chosen), 9000 - whole / 2, _nothing)
    assert time.process_time() - began < 20
    assert choice.reached
    assert choice.left <= 9000 - whole / 2 + SLACK
    assert not choice.exact


def _nothing(_chosen: Chosen) -> None:
    """No set is too much."""
