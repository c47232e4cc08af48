"""Chooses what to cut: the fewest passages of the highest number, then of the next, then the fewest seconds."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from itertools import combinations, product
from math import ceil, comb, prod
from typing import NamedTuple

SLACK = 0.0005  # seconds: times are told in thousandths
EXACT = 1e-9  # seconds that adding up may be off by
MOST_WAYS = 50_000  # of the same numbers of passages that are tried one by one; more are summed in milliseconds
MOST_BITS = 2e9  # of all sums that are kept, a quarter of a gigabyte
MILLISECOND = 0.001
MOST_SPLITS = 100_000  # ways to cut the segments that other passages hang on
MOST_TIMED = 500  # of them that may be good enough to ask for the time that is left
FEW = 9  # that are tried in every way where all of them are too many


class Item(NamedTuple):
    """A passage that may be cut. `inside` are the passages that go with it and then do not count themselves.

    `alone` where what it saves does not hang on what else is cut; only such a passage may be summed.
    """

    number: int
    saves: float
    inside: frozenset[int] = frozenset()
    alone: bool = True


Chosen = frozenset[int]
Total = Callable[[Chosen], float]
Broken = Callable[[Chosen], Chosen | None]


class Choice(NamedTuple):
    """What is chosen and the seconds that should be left without it.

    Not `reached` where all that may go is not enough; not `exact` where there were too many ways to try each.
    """

    chosen: Chosen
    left: float
    reached: bool
    exact: bool


def counts(chosen: Chosen, items: Sequence[Item]) -> tuple[int, ...]:
    """How many passages of each number are cut, the highest number first; what goes with another does not count."""
    gone = frozenset().union(*(items[one].inside for one in chosen))
    numbers = sorted({item.number for item in items}, reverse=True)
    held = [items[one].number for one in chosen - gone]
    return tuple(held.count(number) for number in numbers)


def choose(items: Sequence[Item], total: Total, limit: float, broken: Broken, apart: float = float("inf")) -> Choice:
    """The best of the allowed sets whose `total` is at most `limit`.

    `total` gives the seconds that are left without a set. Passages that are not `alone` are tried in every way; the
    others are summed from what each saves. `broken` gives, of a set that cuts too much, the passages of which one must
    stay; None where it may go as a whole. No passage that is not `alone` makes more than `apart` seconds of difference
    to what the others save; by that most splits can be left out unasked.
    """
    search = _Search(items, total, limit + SLACK, broken)
    search.apart = apart
    search.run()
    if search.best is not None:
        return Choice(search.best[2], -search.best[1], reached=True, exact=search.exact)
    return Choice(search.shortest[1], search.shortest[0], reached=False, exact=search.exact)


class _Search:
    """One search: the splits of what hangs together, and under each what is summed."""

    def __init__(self, items: Sequence[Item], total: Total, limit: float, broken: Broken) -> None:
        self.items, self.total, self.limit, self.broken = items, total, limit, broken
        self.best: tuple[tuple[int, ...], float, Chosen] | None = None
        self.shortest: tuple[float, Chosen] = (total(frozenset()), frozenset())
        self.exact, self.apart, self.timed = True, float("inf"), 0
        self.every: Chosen = frozenset()
        self.whole = self.shortest[0]

    def run(self) -> None:
        """Try every split of the passages that are not alone; where they are too many, some as if they were alone."""
        hanging = [one for one, item in enumerate(self.items) if not item.alone]
        while not self._all_splits(hanging):
            self.exact = False
            hanging = hanging[: min(len(hanging) - 1, FEW)]

    def _all_splits(self, hanging: Sequence[int]) -> bool:
        """Whether every split that may be the best was tried, those first that count the least."""
        self.every, self.timed = frozenset(hanging), 0
        inside = frozenset().union(*(self.items[one].inside for one in hanging))
        self._split(self.every - inside)  # how far it gets at most is known by that
        numbers = sorted({item.number for item in self.items}, reverse=True)
        levels = [[one for one in hanging if self.items[one].number == number] for number in numbers]
        seen = 0
        for sizes in product(*(range(len(level) + 1) for level in levels)):
            if self.best is not None and sizes > self.best[0]:
                return True
            for parts in product(*(combinations(level, size) for level, size in zip(levels, sizes, strict=True))):
                seen += 1
                if seen > MOST_SPLITS or self.timed > MOST_TIMED:
                    return False
                self._split(frozenset(one for part in parts for one in part))
        return True

    def _split(self, split: Chosen) -> None:
        gone = frozenset().union(*(self.items[one].inside for one in split))
        if gone & split:
            return
        free = [one for one in range(len(self.items)) if one not in self.every and one not in gone]
        saved = sum(self.items[one].saves for one in (*split, *free))
        if not split or self.whole - saved <= max(self.limit, self.shortest[0]) + self.apart * len(split):
            self.timed += 1
            self._under(split, free, self.total(split))

    def _under(self, split: Chosen, free: list[int], left: float) -> None:
        """The best set that cuts `split` and only what is `free` of the rest; where that is too much, each way out."""
        ranked, need = self._ranked(free), left - self.limit
        sizes = _sizes(ranked, need)
        if sizes is None:
            if left - sum(self.items[one].saves for one in free) < self.shortest[0]:
                self._keep(split, free, left, split | frozenset(free), enough=False)
            return
        base = counts(split, self.items)
        if self.best is None or tuple(map(sum, zip(base, sizes, strict=True))) <= self.best[0]:
            fewest, to_the_millisecond = _fewest_seconds(ranked, sizes, need)
            self.exact = self.exact and to_the_millisecond
            self._keep(split, free, left, split | fewest, enough=True)

    def _keep(self, split: Chosen, free: list[int], left: float, chosen: Chosen, *, enough: bool) -> None:
        """Keep a set if it is the best so far and may go; else let each that it may not cut together stay in turn."""
        after = left - sum(self.items[one].saves for one in chosen - split)
        rank = (counts(chosen, self.items), -after, chosen)
        if enough and self.best is not None and rank[:2] >= self.best[:2]:
            return
        too_much = self.broken(chosen)
        if too_much is None and enough:
            self.best = rank
        elif too_much is None:
            self.shortest = (after, chosen)
        else:
            for one in sorted(too_much & frozenset(free)):
                self._under(split, [other for other in free if other != one], left)

    def _ranked(self, free: Sequence[int]) -> list[list[tuple[int, float]]]:
        """The free passages by number, the highest first, each with what it saves."""
        numbers = sorted({item.number for item in self.items}, reverse=True)
        return [
            [(one, self.items[one].saves) for one in free if self.items[one].number == number] for number in numbers
        ]


def _sizes(ranked: Sequence[Sequence[tuple[int, float]]], need: float) -> list[int] | None:
    """How many passages of each number have to go to save `need`; None where all of them do not."""
    if sum(saves for level in ranked for _, saves in level) < need - EXACT:
        return None
    sizes: list[int] = []
    sure = 0.0  # saved by as many of the higher numbers as have to go, those that save the most
    for number, level in enumerate(ranked):
        lower = sum(saves for rest in ranked[number + 1 :] for _, saves in rest)
        longest = sorted((saves for _, saves in level), reverse=True)
        size = next((one for one in range(len(level)) if sure + lower + sum(longest[:one]) >= need - EXACT), len(level))
        sizes.append(size)
        sure += sum(longest[:size])
    return sizes


def _fewest_seconds(
    ranked: Sequence[Sequence[tuple[int, float]]], sizes: Sequence[int], need: float
) -> tuple[Chosen, bool]:
    """The set of these sizes that saves the least that is enough, and whether that is so to the millisecond."""
    if prod(comb(len(level), size) for level, size in zip(ranked, sizes, strict=True)) <= MOST_WAYS:
        return _by_trying(ranked, sizes, need), True
    # a sum takes a bit for each millisecond, before each passage and for each count: very many are summed more coarsely
    bits = sum(saves for level in ranked for _, saves in level) * 1000
    bits *= sum(len(level) * (size + 1) for level, size in zip(ranked, sizes, strict=True))
    unit = max(1.0, bits / MOST_BITS) / 1000
    summed = _by_summing(ranked, sizes, need, unit)
    if summed is not None:
        return summed, unit <= MILLISECOND
    longest = (sorted(level, key=lambda one: -one[1])[:size] for level, size in zip(ranked, sizes, strict=True))
    return frozenset(one for level in longest for one, _ in level), unit <= MILLISECOND


def _by_trying(ranked: Sequence[Sequence[tuple[int, float]]], sizes: Sequence[int], need: float) -> Chosen:
    """The set of these sizes that saves the least that is enough, each one tried."""
    ways = product(*(combinations(level, size) for level, size in zip(ranked, sizes, strict=True)))
    enough = (
        (saved, [one for part in way for one, _ in part])
        for way in ways
        if (saved := sum(saves for part in way for _, saves in part)) >= need - EXACT
    )
    return frozenset(min(enough)[1])


def _by_summing(
    ranked: Sequence[Sequence[tuple[int, float]]], sizes: Sequence[int], need: float, unit: float
) -> Chosen | None:
    """The same in units of time: one bit for each sum that so many passages can save, number after number.

    Each passage counts with the whole units that it surely saves, so a set that is found is enough.
    """
    steps: list[tuple[int, int, list[int]]] = []  # passage, units, the sums by count before it
    sums = 1
    for level, size in zip(ranked, sizes, strict=True):
        by_count = [sums, *[0] * size]
        for one, saves in level:
            weight = max(0, int(saves / unit))
            steps.append((one, weight, list(by_count)))
            for count in range(size, 0, -1):
                by_count[count] |= by_count[count - 1] << weight
        sums = by_count[size]
    least = ceil(need / unit - 1e-6)
    above = sums >> least
    if not above:
        return None
    return frozenset(_back(steps, sizes, [len(level) for level in ranked], least + (above & -above).bit_length() - 1))


def _back(
    steps: list[tuple[int, int, list[int]]], sizes: Sequence[int], lengths: Sequence[int], reached: int
) -> Iterator[int]:
    """The passages that make a sum, found from the last one back."""
    for size, length in zip(reversed(sizes), reversed(lengths), strict=True):
        count = size
        for _ in range(length):
            one, weight, before = steps.pop()
            if before[count] >> reached & 1:
                continue
            yield one
            count, reached = count - 1, reached - weight
