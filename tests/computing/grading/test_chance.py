"""The share of weightings that bear a score is exact: held against closed forms and against a Beta distribution."""

from __future__ import annotations

from math import exp, inf, lgamma, log, prod
from random import Random

import pytest

from scriptkit.computing.grading import chance

EXACT = 2e-5


def evenly(ratings: list[float], edge: float) -> float:
    """The share of all weightings under which the mean of different ratings is at least `edge`, by its closed form."""
    above = [rating - edge for rating in ratings]
    return sum(
        one ** (len(above) - 1) / prod(one - other for other in above if other != one) for one in above if one > 0
    )


def beta_above(edge: float, share: float, concentration: float = 50.0) -> float:
    """The chance that a weight drawn around `share` is more than `edge`: Simpson's rule over the logarithm of it."""
    first, second = concentration * share, concentration * (1 - share)
    steps = 4000
    start, end = log(edge), 0.0
    width = (end - start) / steps

    def density(at: float) -> float:
        x = exp(at)
        size = first * at + (second - 1) * log(max(1e-300, 1 - x))
        return exp(size + lgamma(first + second) - lgamma(first) - lgamma(second))

    inner = sum((4 if number % 2 else 2) * density(start + number * width) for number in range(1, steps))
    return width / 3 * (density(start) + inner + density(end))


@pytest.mark.parametrize("criteria", [2, 3, 4, 6, 8])
def test_over_all_weightings_it_is_the_closed_form(criteria: int) -> None:
    rng = Random(criteria)  # noqa: S311 - nothing secret
    for _ in range(12):
        ratings = [rng.uniform(1, 5) for _ in range(criteria)]
        edge = rng.uniform(min(ratings), max(ratings))
        share = chance.at_least(ratings, [1 / criteria] * criteria, edge, concentration=float(criteria))
        assert share == pytest.approx(evenly(ratings, edge), abs=EXACT)


@pytest.mark.parametrize("share", [0.03, 0.1, 0.3, 0.5, 0.8, 0.95])
@pytest.mark.parametrize("edge", [0.02, 0.1, 0.25, 0.3, 0.5, 0.7, 0.9])
def test_with_two_criteria_it_is_the_tail_of_a_beta_distribution(share: float, edge: float) -> None:
    # a rating of 5 on the first and of 1 on the second make a score of 1 + 4 w
    assert chance.at_least((5, 1), (share, 1 - share), 1 + 4 * edge) == pytest.approx(
        beta_above(edge, share), abs=EXACT
    )


@pytest.mark.parametrize("share", [0.001, 0.004, 0.01])
@pytest.mark.parametrize("edge", [0.01, 0.04, 0.1])
def test_a_tiny_weight_keeps_its_long_tail(share: float, edge: float) -> None:
    """The tail is far more than any number of standard deviations lets expect."""
    assert chance.at_least((5, 1), (share, 1 - share), 1 + 4 * edge) == pytest.approx(
        beta_above(edge, share), abs=EXACT
    )


def test_a_weighting_varies_as_fifty_draws_say() -> None:
    """A weight of 0.30 has a standard deviation of the root of 0.3 x 0.7 / 51."""
    assert chance.spread((1, 0), (0.3, 0.7)) == pytest.approx((0.3 * 0.7 / 51) ** 0.5)
    assert chance.spread((5, 1), (0.3, 0.7)) == pytest.approx(4 * (0.3 * 0.7 / 51) ** 0.5)


def test_equal_ratings_have_one_score_whatever_the_weights() -> None:
    row = ((3.0, 3.0, 3.0), (0.2, 0.3, 0.5))
    assert chance.spread(*row) == 0
    assert [chance.at_least(*row, edge) for edge in (2.9, 3.0, 3.0 + 1e-10, 3.1)] == [1, 1, 1, 0]


def test_an_edge_that_only_one_rating_reaches_is_reached_by_no_weighting() -> None:
    """Every weight is above nought, so the best rating alone never makes the score."""
    assert chance.at_least((5, 3), (0.5, 0.5), 5) == 0
    assert chance.at_least((5, 3), (0.5, 0.5), 3) == 1


def test_one_criterion_is_the_score() -> None:
    assert [chance.at_least((4,), (1,), edge) for edge in (3.9, 4.0, 4.1)] == [1, 1, 0]


def test_a_weight_of_nought_has_no_say() -> None:
    for edge in (2.0, 3.0, 3.4):
        assert chance.at_least((5, 1, 3), (0.0, 0.4, 0.6), edge) == chance.at_least((1, 3), (0.4, 0.6), edge)
    assert chance.at_least((5, 3), (0.0, 1.0), 3.1) == 0


def test_the_score_is_as_often_above_as_below_where_all_is_even() -> None:
    assert chance.at_least((5, 1), (0.5, 0.5), 3) == pytest.approx(0.5, abs=EXACT)


def test_between_two_edges_lies_what_reaches_one_and_not_the_other() -> None:
    row = ((5, 1, 3), (0.3, 0.3, 0.4))
    low, high = chance.at_least(*row, 2.9), chance.at_least(*row, 3.2)
    assert 0.1 < low - high < 0.9
    assert chance.between(*row, 2.9, 3.2) == pytest.approx(low - high)
    assert chance.between(*row, 2.9, inf) == pytest.approx(low)
    assert chance.between(*row, -inf, 3.2) == pytest.approx(1 - high)
    assert chance.between(*row, -inf, inf) == 1
    assert chance.between(*row, 3.2, 2.9) == 0


def test_a_narrower_spread_of_weightings_makes_a_score_surer() -> None:
    wide, narrow = (chance.at_least((5, 1), (0.5, 0.5), 2.8, concentration=some) for some in (10.0, 1000.0))
    assert wide < 0.7
    assert narrow > 0.99
