"""Scores are weighted means, grades are bands of them with thirds for plus and minus, and a floor caps."""

from __future__ import annotations

import pytest

from scriptkit.computing.grading import chance, scale, scores
from scriptkit.model import Checklist, Criterion, Episode, Exercise, Graded, Rating

GRADES = {"A": 4.2, "B": 3.4, "C": 2.6, "D": 1.0}


def checklist(cap: str = "", floor: float | None = None, *, signs: bool = True) -> Checklist:
    criteria = {"long": Criterion("long", "", 35, floor=floor), "steady": Criterion("steady", "", 65)}
    return Checklist("one", (1.0, 5.0), cap, signs, criteria)


def graded(
    long: float | None,
    steady: float | None,
    given: str = "",
    like: Checklist | None = None,
    grades: dict[str, float] | None = None,
) -> Graded:
    ratings = {name: Rating(score) for name, score in (("long", long), ("steady", steady)) if score is not None}
    episode = Episode(checklist=like or checklist(), grades=GRADES if grades is None else grades)
    return scores.grade(Exercise("e", "E", grade=given, ratings=ratings), episode)


def test_the_score_is_the_weighted_mean() -> None:
    assert graded(5, 3).score == pytest.approx(0.35 * 5 + 0.65 * 3)


def test_a_weight_left_out_is_one() -> None:
    for weights, shares in (((None, None), (0.5, 0.5)), ((None, 3.0), (0.25, 0.75)), ((0.0, None), (0, 1))):
        criteria = {name: Criterion(name, "", one) for name, one in zip(("long", "steady"), weights, strict=True)}
        assert tuple(scores.shares(Checklist("one", criteria=criteria)).values()) == shares


@pytest.mark.parametrize(
    ("score", "earned"),
    [
        (5, "A+"),
        (4.74, "A+"),
        (4.73, "A"),
        (4.47, "A"),
        (4.46, "A-"),
        (4.2, "A-"),
        (4.19, "B+"),
        (3.4, "B-"),
        (3.39, "C+"),
        (2.6, "C-"),
        (1, "D-"),
    ],
)
def test_an_exact_edge_earns_its_grade_and_signs_are_thirds_of_a_band(score: float, earned: str) -> None:
    assert graded(score, score).earned == earned


def test_without_signs_a_band_is_one_grade() -> None:
    assert graded(5, 5, like=checklist(signs=False)).earned == "A"


def test_a_scale_that_lists_its_signs_gets_no_more_of_them() -> None:
    grades = {"A": 4.5, "A-": 4.0, "B+": 3.0, "B": 1.0}
    assert [graded(score, score, grades=grades).earned for score in (5, 4.2, 3.9, 1)] == ["A", "A-", "B+", "B"]


@pytest.mark.parametrize(("cap", "earned"), [("C", "C+"), ("C-", "C-"), ("B", "B+"), ("", "C+"), ("nosuch", "C+")])
def test_a_rating_below_its_floor_caps_the_grade(cap: str, earned: str) -> None:
    one = graded(1, 5, like=checklist(cap, floor=2))
    assert graded(1, 5).earned == "B-" if cap == "B" else True
    assert one.capped == ("long",)
    assert one.earned == (earned if cap != "B" else "B-")


def test_a_cap_lifts_nothing() -> None:
    assert graded(1, 1, like=checklist("B", floor=2)).earned == "D-"


def test_a_missing_rating_leaves_the_score_open_and_an_uncertain_one_has_its_range() -> None:
    one = graded(5, None)
    assert (one.score, one.earned, one.missing) == (None, None, ("steady",))
    assert (one.score_low, one.score_high) == pytest.approx((0.35 * 5 + 0.65, 5))
    episode = Episode(checklist=checklist(), grades=GRADES)
    unsure = scores.grade(Exercise("e", "E", ratings={"long": Rating(3, (2, 4)), "steady": Rating(3)}), episode)
    assert (unsure.score_low, unsure.score, unsure.score_high) == pytest.approx((2.65, 3, 3.35))


@pytest.mark.parametrize(
    ("low", "high", "worst", "best"), [(1, 3, "C+", "A"), (2, 3, "A-", "A"), (1, 2, "C+", "A-"), (1, 1.5, "C+", "C+")]
)
def test_the_worst_grade_breaks_a_floor_that_the_best_may_keep(low: float, high: float, worst: str, best: str) -> None:
    """5 on the rest earn an A- with a 2, the floor, and an A with a 3; what is below the floor is capped."""
    ratings = {"long": Rating(low, (low, high)), "steady": Rating(5)}
    criteria = {"long": Criterion("long", "", 25, floor=2), "steady": Criterion("steady", "", 75)}
    episode = Episode(checklist=Checklist("one", (1.0, 5.0), "C", criteria=criteria), grades=GRADES)
    one = scores.grade(Exercise("e", "E", ratings=ratings), episode)
    assert (one.earned_low, one.earned_high) == (worst, best)


def test_without_ratings_nothing_is_earned_and_the_given_grade_stands() -> None:
    one = graded(None, None, "B")
    assert (one.score, one.score_low, one.earned, one.given, one.grade) == (None, None, None, "B", "B")


def test_the_given_grade_is_said_else_the_earned_one() -> None:
    assert (graded(5, 5, "B").grade, graded(5, 5, "B").earned) == ("B", "A+")
    assert (graded(5, 5).grade, graded(5, 5).given) == ("A+", None)


def test_without_grades_fifths_of_the_scale_are_used() -> None:
    assert [graded(score, score, grades={}).earned for score in (4.2, 3.4, 2.6, 1.8, 1)] == [
        "A-",
        "B-",
        "C-",
        "D-",
        "F-",
    ]


def test_a_given_grade_without_a_sign_agrees_with_its_band() -> None:
    assert [graded(4.2, 4.2, given).agrees for given in ("A", "A-", "A+", "B")] == [True, True, False, False]


@pytest.mark.parametrize(
    ("given", "agrees"), [("A", True), ("A+", False), ("B", True), ("C", True), ("C-", False), ("D", False)]
)
def test_with_a_rating_missing_a_given_grade_agrees_if_it_may_still_be_earned(given: str, agrees: bool) -> None:
    """A 4 at 65 and something from 1 to 5 at 35 are between 2.95 and 4.35, a C and an A-."""
    assert graded(None, 4, given).agrees is agrees


def test_best_come_first_and_those_without_a_grade_last() -> None:
    scores = {
        "a": ("B+", 3.9),
        "b": ("", None),
        "c": ("A-", 4.2),
        "d": ("B+", 4.0),
        "e": ("B-", None),
        "f": ("A", None),
    }
    given = {name: Graded(name, score, None, None, None, None, grade) for name, (grade, score) in scores.items()}
    assert scale.by_grade(given, ("A", "B")) == ["f", "c", "d", "a", "e", "b"]


def test_a_rating_right_on_its_floor_caps_nothing() -> None:
    assert graded(2, 5, like=checklist("C", floor=2)).capped == ()


def test_weights_that_are_all_nought_earn_nothing() -> None:
    nought = {name: Criterion(name, "", 0) for name in ("long", "steady")}
    one = graded(5, 3, "B", like=Checklist("one", (1.0, 5.0), "", signs=True, criteria=nought))
    assert (one.score, one.earned, one.grade) == (None, None, "B")


def test_a_rating_off_the_scale_is_as_good_as_none_and_a_range_ends_with_the_scale() -> None:
    assert (graded(6, 3).score, graded(0.9, 3).score) == (None, None)
    assert graded(6, 3).score_high == pytest.approx(3.7)
    episode = Episode(checklist=checklist(), grades=GRADES)
    wide = scores.grade(Exercise("e", "E", ratings={"long": Rating(3, (0, 9)), "steady": Rating(3)}), episode)
    assert [(part.low, part.high) for part in wide.parts] == [(1, 5), (3, 3)]


def test_what_weighs_nought_may_be_unrated() -> None:
    criteria = {"long": Criterion("long", "", 0), "steady": Criterion("steady", "", 5)}
    one = graded(None, 4, like=Checklist("one", (1.0, 5.0), criteria=criteria))
    assert (one.score, one.earned, one.missing) == (4, "B+", ("long",))


def test_what_can_be_earned_is_the_outlines_scale_or_the_stock_one_where_something_is_rated() -> None:
    rated = Exercise("e", "E", ratings={"long": Rating(3), "steady": Rating(3)})
    for episode, names in (
        (Episode(checklist=checklist(), grades=GRADES, exercises={"e": rated}), "ABCD"),
        (Episode(checklist=checklist(), exercises={"e": rated}), "ABCDF"),
        (Episode(checklist=checklist(), exercises={"e": Exercise("e", "E", grade="must-do")}), ""),
        (Episode(exercises={"e": Exercise("e", "E", grade="must-do")}), ""),
    ):
        assert "".join(scale.earnable(episode, scores.grades(episode))) == names


def even(first: float, second: float, *, floor: float | None = None) -> Graded:
    """Two ratings of the same weight, and grades from 4, 3 and 1 on, with signs."""
    criteria = {"long": Criterion("long", "", 5, floor=floor), "steady": Criterion("steady", "", 5)}
    episode = Episode(checklist=Checklist("one", (1.0, 5.0), "B", criteria=criteria), grades={"A": 4, "B": 3, "C": 1})
    return scores.grade(Exercise("e", "E", ratings={"long": Rating(first), "steady": Rating(second)}), episode)


@pytest.mark.parametrize(
    ("ratings", "earned", "neighbour", "otherwise"),
    [
        ((5, 2.9), "B+", "A-", "A"),  # 3.95
        ((5, 3.1), "A-", "B+", "B"),  # 4.05
        ((4.8, 2.4), "B", "B+", "A"),  # 3.6
        ((4.2, 2), "B-", "C+", "C"),  # 3.1
        ((1, 1), "C-", "", ""),
        ((3.5, 3.5), "B", "", ""),
    ],
)
def test_a_grade_has_a_neighbour_that_it_would_mostly_have_instead(
    ratings: tuple[float, float], earned: str, neighbour: str, otherwise: str
) -> None:
    one = even(*ratings)
    assert (one.earned, one.neighbour, one.otherwise) == (earned, neighbour, otherwise)


def test_firmness_is_the_share_of_weightings_that_keep_the_grade_and_its_band() -> None:
    """5 and 1 at even weights are a B from 3 on, just as often as not; up to 3.333 it is a B-, up to 4 any B."""
    one = even(5, 1)
    ratings, shares = (5, 1), (0.5, 0.5)
    assert one.firmness == pytest.approx(chance.between(ratings, shares, 3, 3 + 1 / 3), abs=1e-6)
    assert one.band_firmness == pytest.approx(chance.between(ratings, shares, 3, 4), abs=1e-6)
    assert (one.firmness or 0) + 0.1 < (one.band_firmness or 0) < 0.51
    assert one.spread == pytest.approx(chance.spread(ratings, shares), abs=1e-8)


def test_under_a_cap_no_weighting_makes_a_better_grade() -> None:
    """2.4 and 5 are a B+ that leans to an A; capped at B, all that it can do is fall."""
    assert (even(2.4, 5).earned, even(2.4, 5).otherwise) == ("B+", "A")
    one, row = even(2.4, 5, floor=2.5), ((2.4, 5), (0.5, 0.5))
    assert (one.earned, one.neighbour, one.otherwise) == ("B+", "B", "C")
    assert one.firmness == pytest.approx(chance.at_least(*row, 3 + 2 / 3), abs=1e-6)
    assert one.band_firmness == pytest.approx(chance.at_least(*row, 3), abs=1e-6)


@pytest.mark.parametrize(("share", "is_close"), [(None, False), (0.69, True), (0.7, False), (1.0, False)])
def test_a_grade_is_close_that_keeps_its_band_less_than_seven_times_in_ten(share: float | None, is_close: bool) -> None:
    assert scores.is_close(even(3, 3)._replace(band_firmness=share)) is is_close
