"""Seeded draws of weights and of uncertain ratings: how often an exercise comes first, how often it keeps its grade."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import inf, log
from operator import mul
from random import Random
from typing import NamedTuple

from scriptkit.computing.grading.chance import CONCENTRATION

DRAWS = 10_000
SEED = 20_711  # any number does; this one is printed, so that everybody gets the same figures
ERROR = 0.01  # 1.96 times the root of a quarter over 10,000

Weightings = Sequence[Sequence[float]]  # of each draw, a weight for each criterion; only their proportions count


class Span(NamedTuple):
    """An uncertain rating: where it stands in its row, and what it may be; `whole` if only in whole steps."""

    place: int
    low: float
    high: float
    whole: bool


class Keep(NamedTuple):
    """The scores that keep a grade: at least `low` and less than `high`, where no rating lies below its floor."""

    low: float
    high: float


class Row(NamedTuple):
    """One exercise: its ratings, those that are uncertain, and what keeps its grade.

    `floors` are the floors of the uncertain ratings by their place in the row; `capped` says what keeps the grade where
    one of them is broken. A floor that a certain rating breaks is in both. A score counts no higher than `ceiling`, and
    no higher than `limit` where a floor of an uncertain rating is broken.
    """

    ratings: tuple[float, ...]
    spans: tuple[Span, ...] = ()
    keep: Keep = Keep(0.0, 0.0)
    capped: Keep = Keep(0.0, 0.0)
    floors: tuple[tuple[int, float], ...] = ()
    ceiling: float = inf
    limit: float = inf


def evenly(criteria: int, draws: int = DRAWS, seed: int = SEED) -> Weightings:
    """All weightings, each as likely as any other: Dirichlet(1, ..., 1)."""
    rng = _chances(seed)
    return [[-log(1.0 - rng.random()) for _ in range(criteria)] for _ in range(draws)]


def around(shares: Sequence[float], draws: int = DRAWS, seed: int = SEED) -> Weightings:
    """Weightings around the author's: Dirichlet(50 w)."""
    shapes, gamma = [CONCENTRATION * share for share in shares], _chances(seed).gammavariate
    return [[gamma(shape, 1.0) if shape > 0 else 0.0 for shape in shapes] for _ in range(draws)]


def first(rows: Sequence[Row], weightings: Weightings) -> list[float]:
    """The share of weightings under which each row has the highest weighted mean; ties are shared out."""
    counts, running = [0.0] * len(rows), _contenders(rows, weightings)
    table = [rows[number].ratings for number in running]
    held = [(place, rows[number].ceiling) for place, number in enumerate(running) if rows[number].ceiling < inf]
    for drawn in weightings:
        scores = [sum(map(mul, ratings, drawn)) for ratings in table]
        if held:
            total = sum(drawn)
            for place, ceiling in held:
                scores[place] = min(scores[place], ceiling * total)
        _count(counts, running, scores)
    return [count / len(weightings) for count in counts]


def unsure(rows: Sequence[Row], weightings: Weightings, seed: int = SEED) -> tuple[list[float], list[float]]:
    """The same with the uncertain ratings drawn as well; and the share of draws in which each row keeps its grade.

    A row without an uncertain rating gets no share of the second kind (it is 0): it is known without draws.
    """
    counts, stays, running = [0.0] * len(rows), [0.0] * len(rows), _contenders(rows, weightings)
    places = {number: place for place, number in enumerate(running)}
    open_rows = [(number, row) for number, row in enumerate(rows) if row.spans]
    held = [(place, rows[number].ceiling) for place, number in enumerate(running) if rows[number].ceiling < inf]
    table, rng = [rows[number].ratings for number in running], _chances(seed)
    for drawn in weightings:
        scores = [sum(map(mul, ratings, drawn)) for ratings in table]
        total = sum(drawn) or 1.0
        for number, row in open_rows:
            ratings = _drawn(row, rng)
            score = sum(map(mul, ratings, drawn))
            (low, high), limit = row.keep, inf
            if row.floors and any(ratings[place] < floor for place, floor in row.floors):
                (low, high), limit = row.capped, row.limit
            if low <= score / total < high:
                stays[number] += 1.0
            if number in places:
                scores[places[number]] = min(score, limit * total)
        for place, ceiling in held:
            scores[place] = min(scores[place], ceiling * total)
        _count(counts, running, scores)
    return [count / len(weightings) for count in counts], [count / len(weightings) for count in stays]


def _chances(seed: int) -> Random:
    return Random(seed)  # noqa: S311 - nothing secret


def _count(counts: list[float], running: Sequence[int], scores: Sequence[float]) -> None:
    """Give the first place of one draw to the highest score, in equal parts where several have it."""
    best = max(scores)
    winners = scores.count(best)
    if winners == 1:
        counts[running[scores.index(best)]] += 1.0
        return
    for place, score in enumerate(scores):
        if score == best:
            counts[running[place]] += 1.0 / winners


def _drawn(row: Row, rng: Random) -> list[float]:
    """The ratings with the uncertain ones drawn: each whole step in their range alike, or any value in it."""
    made, chance = list(row.ratings), rng.random
    for place, low, high, whole in row.spans:
        made[place] = low + int(chance() * (high - low + 1)) if whole else low + chance() * (high - low)
    return made


def _contenders(rows: Sequence[Row], weightings: Weightings) -> list[int]:
    """The rows that may come first: one that another beats somewhere, and equals everywhere else, never does.

    A criterion that never has a weight beats nobody.
    """
    heavy = [place for place in range(len(rows[0].ratings)) if any(drawn[place] for drawn in weightings)]
    highest = [_ends(row, (span.high for span in row.spans), heavy) for row in rows]
    # the few that beat most of the others are asked first, so that long lists do not take the square of their length
    order = sorted(range(len(rows)), key=lambda number: -sum(rows[number].ratings))
    lowest = [(number, _ends(rows[number], (span.low for span in rows[number].spans), heavy)) for number in order]
    surely = [min(row.ceiling, row.limit if row.floors else inf) for row in rows]

    def beaten(number: int) -> bool:
        mine = highest[number]
        return any(
            theirs != mine and surely[other] >= rows[number].ceiling and all(map(float.__ge__, theirs, mine))
            for other, theirs in lowest
            if other != number
        )

    return [number for number in range(len(rows)) if not beaten(number)]


def _ends(row: Row, ends: Iterable[float], heavy: Iterable[int]) -> tuple[float, ...]:
    made = [float(rating) for rating in row.ratings]
    for span, end in zip(row.spans, ends, strict=True):
        made[span.place] = float(end)
    return tuple(made[place] for place in heavy)
