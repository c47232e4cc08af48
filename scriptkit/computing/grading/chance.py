"""The share of weightings under which a score lies between two others, worked out and not drawn.

Weightings around the author's are Dirichlet(50 w), w adding up to 1. Such a weighting is a set of independent gamma
variables divided by their sum. So "the weighted mean is at least c" is "the sum of gamma_i (r_i - c) is at least 0",
and the chance of that is one integral over the characteristic function of the sum (Gil-Pelaez 1951, Imhof 1961).
"""

from __future__ import annotations

from collections.abc import Sequence
from math import atan, exp, inf, log1p, pi, sin, sqrt
from operator import mul

CONCENTRATION = 50.0  # of the weightings around the author's: a weight of .30 then varies by .064 (standard deviation)
NOTHING = 1e-6  # a share this small is none
_STEP = 0.2  # of the logarithm of the variable that is integrated over: errors stay under 1e-5
_START = -20.0
_FAR = 40.0  # where the size of the characteristic function is e to the minus this, the rest adds nothing
_NEARLY = 0.9  # of the largest variable of the bound at which it still has a value


def between(
    ratings: Sequence[float], shares: Sequence[float], low: float, high: float, concentration: float = CONCENTRATION
) -> float:
    """The share of weightings around `shares` whose weighted mean is at least `low` and less than `high`, 0 to 1."""
    over = 0.0 if high == inf else at_least(ratings, shares, high, concentration)
    return max(0.0, (1.0 if low == -inf else at_least(ratings, shares, low, concentration)) - over)


def at_least(
    ratings: Sequence[float], shares: Sequence[float], edge: float, concentration: float = CONCENTRATION
) -> float:
    """The share of weightings whose weighted mean is at least `edge`; every edge counts as reached from 1e-9 below."""
    given = [(rating - edge, share) for rating, share in zip(ratings, shares, strict=True) if share > 0]
    if all(above >= -1e-9 for above, _ in given):
        return 1.0
    if all(above < 1e-9 for above, _ in given):
        return 0.0
    largest = max(abs(above) for above, _ in given)
    terms = [(above / largest, concentration * share) for above, share in given if abs(above) > 1e-9]
    mean = sum(factor * shape for factor, shape in terms)
    if _bound(terms, mean) < NOTHING / 100:
        return 1.0 if mean > 0 else 0.0
    return _positive(terms)


def spread(values: Sequence[float], shares: Sequence[float], concentration: float = CONCENTRATION) -> float:
    """The standard deviation of the weighted mean under weightings around `shares`."""
    mean = sum(map(mul, values, shares))
    return sqrt(
        sum(share * (value - mean) ** 2 for value, share in zip(values, shares, strict=True)) / (concentration + 1)
    )


def _bound(terms: Sequence[tuple[float, float]], mean: float) -> float:
    """No less than the chance that a sum of gamma variables lies across nought from its mean (Chernoff 1952).

    A weight close to nought has a long tail, so a number of standard deviations would not do.
    """
    side = -1.0 if mean > 0 else 1.0
    at = min(_NEARLY, abs(mean) / sum(factor * factor * shape for factor, shape in terms))
    return exp(-sum(shape * log1p(-at * side * factor) for factor, shape in terms))


def _positive(terms: Sequence[tuple[float, float]]) -> float:
    """The chance that a sum of gamma variables is above 0; `terms` are factor and shape of each."""
    total, at = 0.0, _START
    while True:
        t = exp(at)
        size = turn = 0.0
        for factor, shape in terms:
            turn += shape * atan(factor * t)
            size += shape * log1p((factor * t) ** 2)
        if size / 2 > _FAR or at > 300:
            break
        total += sin(turn) * exp(-size / 2)
        at += _STEP
    return min(1.0, max(0.0, 0.5 + _STEP * total / pi))
