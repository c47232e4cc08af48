"""The order of a few spots with the least to change: exact, by dynamic programming over what has been filmed."""

from __future__ import annotations

from collections.abc import Sequence
from operator import add

MOST = 13  # spots: twice the time for each more
_NEVER = 1 << 62


def best(prices: Sequence[Sequence[int]], early: Sequence[int], block: Sequence[bool] = ()) -> list[int]:
    """The order in which the sum of `prices[before][after]` is least, and `early` times its place of each as well.

    What is in the `block` comes in one go. Of several such orders it is the same one each time.
    """
    count = len(early)
    if not count:
        return []
    together = sum(1 << one for one in range(len(block)) if block[one])
    columns = [[row[to] for row in prices] for to in range(count)]
    costs = [[_NEVER] * count for _ in range(1 << count)]
    for one in range(count):
        costs[1 << one][one] = 0
    for done in range(3, 1 << count):
        place = done.bit_count() - 1
        if not place:
            continue
        row = costs[done]
        for one in range(count):
            before = done & ~(1 << one)
            if before == done or _left(before, one, together):
                continue
            row[one] = min(map(add, costs[before], columns[one])) + place * early[one]
    return _backwards(costs, columns, early)


def _left(before: int, one: int, together: int) -> bool:
    """Whether a block would be left before all of it is filmed."""
    begun = before & together
    return bool(begun) and begun != together and not together >> one & 1


def _backwards(costs: Sequence[Sequence[int]], columns: Sequence[Sequence[int]], early: Sequence[int]) -> list[int]:
    """The order that the costs tell of, from its end."""
    count = len(early)
    done = (1 << count) - 1
    last = min(range(count), key=costs[done].__getitem__)
    order = [last]
    while done != 1 << last:
        cost = costs[done][last] - (done.bit_count() - 1) * early[last]
        done &= ~(1 << last)
        last = next(one for one in range(count) if costs[done][one] + columns[last][one] == cost)
        order.append(last)
    return order[::-1]
