"""The order of many spots with little to change: grouped, then mended until no small move makes it better."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from scriptkit.computing.shooting.stations import Price, Station

FEW = 60  # spots that any move may reach
TRIES, TRIED = 12, 2_400  # beginnings, and pairs of spots in all of them together: what is tried must not take long
NEAREST, FARTHEST = 12, 40  # places that a move may reach where there are more
REACHED = 12_000  # of all spots together, so that a long list takes no longer than its length
MOST_ROUNDS = 12
_SEGMENT = 3  # spots that are moved together
Pricing = Callable[[int, int], float]


def good(spots: Sequence[Station], price: Price, groups: Sequence[int]) -> list[int]:
    """An order with little to change; `groups` says, smallest first, which places come early.

    It is the same one each time. Spots of the talk are no part of this.
    """
    count = len(spots)
    asked = pricing(spots, price)
    starts = [_grouped(spots, groups)]
    if count <= FEW:
        tries = min(TRIES, count, 1 + TRIED // (count * count + 1))
        starts += [_nearest(count * one // tries, count, asked) for one in range(tries)]
    mended = [_mended(start, asked) for start in starts]
    return min(mended, key=lambda order: _whole(order, asked))


def pricing(spots: Sequence[Station], price: Price) -> Pricing:
    """What the changes between two spots take, by their numbers; quicker than by what they hold."""
    places = _codes([one.place for one in spots])
    sides = _codes([(one.place, one.plane) for one in spots])
    kits = _codes([one.kit for one in spots])
    people = _codes([one.people for one in spots])

    def asked(one: int, other: int) -> float:
        if sides[one] == sides[other]:
            taken = price.framing
        else:
            taken = price.side if places[one] == places[other] else price.place
        if kits[one] != kits[other]:
            taken += price.kit
        return taken + price.people if people[one] != people[other] else taken

    return asked


def _codes(values: Sequence[object]) -> list[int]:
    known: dict[object, int] = {}
    return [known.setdefault(value, len(known)) for value in values]


def _grouped(spots: Sequence[Station], groups: Sequence[int]) -> list[int]:
    """By place, side, kit and people, each in the order in which it is first asked for."""
    places = _codes([one.place for one in spots])
    planes = _codes([one.plane for one in spots])
    kits = _codes([one.kit for one in spots])
    people = _codes([one.people for one in spots])
    return sorted(
        range(len(spots)), key=lambda one: (groups[one], places[one], planes[one], kits[one], people[one], one)
    )


def _nearest(first: int, count: int, asked: Pricing) -> list[int]:
    """Always on to what is nearest."""
    left = [one for one in range(count) if one != first]
    order = [first]
    while left:
        last = order[-1]
        at = min(range(len(left)), key=lambda place: asked(last, left[place]))
        order.append(left.pop(at))
    return order


def _mended(order: list[int], asked: Pricing) -> list[int]:
    """The order after every turn and every move that takes less than before."""
    count = len(order)
    reach = count if count <= FEW else max(NEAREST, min(FARTHEST, REACHED // count))
    for _ in range(MOST_ROUNDS):
        turned = _turn(order, asked, reach)
        if not (_move(order, asked, reach) or turned):
            break
    return order


def _turn(order: list[int], asked: Pricing, reach: int) -> bool:
    """Turn parts around where that takes less; whether it ever did."""
    found = False
    count = len(order)
    for start in range(count - 1):
        before = order[start - 1] if start else None
        first = order[start]
        into = asked(before, first) if before is not None else 0.0
        for end in range(start + 1, min(count, start + reach)):
            last = order[end]
            gain = into - (asked(before, last) if before is not None else 0.0)
            if end + 1 < count:
                after = order[end + 1]
                gain += asked(last, after) - asked(first, after)
            if gain > 0:
                order[start : end + 1] = order[start : end + 1][::-1]
                found = True
                first = order[start]
                into = asked(before, first) if before is not None else 0.0
    return found


def _move(order: list[int], asked: Pricing, reach: int) -> bool:
    """Move a few spots elsewhere where that takes less; whether it ever did."""
    found = False
    for length in range(1, _SEGMENT + 1):
        start = 0
        while start + length <= len(order):
            better = _better_place(order, start, length, asked, reach)
            if better is None:
                start += 1
                continue
            to, turned = better
            part = order[start : start + length]
            del order[start : start + length]
            order[to:to] = part[::-1] if turned else part
            found = True
            start += 1
    return found


def _better_place(order: Sequence[int], start: int, length: int, asked: Pricing, reach: int) -> tuple[int, bool] | None:
    """Where a part had better stand in the order without it, and whether turned around; None where it stands well."""
    end = start + length
    first, last = order[start], order[end - 1]
    before = order[start - 1] if start else None
    after = order[end] if end < len(order) else None
    gain = (asked(before, first) if before is not None else 0.0) + (asked(last, after) if after is not None else 0.0)
    if before is not None and after is not None:
        gain -= asked(before, after)
    if gain <= 0:
        return None
    best, found = gain, None
    for to in _near(start, len(order) - length, reach):
        left = order[to - 1 if to - 1 < start else to - 1 + length] if to else None
        right = order[to if to < start else to + length] if to < len(order) - length else None
        gap = asked(left, right) if left is not None and right is not None else 0.0
        for turned in (False, True) if length > 1 else (False,):
            head, tail = (last, first) if turned else (first, last)
            cost = (asked(left, head) if left is not None else 0.0) + (asked(tail, right) if right is not None else 0.0)
            if cost - gap < best:
                best, found = cost - gap, (to, turned)
    return found


def _near(start: int, count: int, reach: int) -> Iterator[int]:
    """The places within reach of another one, which itself is left out."""
    for to in range(max(0, start - reach), min(count, start + reach) + 1):
        if to != start:
            yield to


def _whole(order: Sequence[int], asked: Pricing) -> float:
    return sum(map(asked, order, order[1:]))
