"""Scores are weighted means, grades are bands of them with thirds for plus and minus, and a floor caps."""

from __future__ import annotations

import pytest

from scriptkit.computing.grading import scale, scores
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


def test_what_can_be_earned_is_the_outlines_scale_or_the_stock_one_where_something_is_rated() -> None:
    rated = Exercise("e", "E", ratings={"long": Rating(3), "steady": Rating(3)})
    for episode, names in (
        (Episode(checklist=checklist(), grades=GRADES, exercises={"e": rated}), "ABCD"),
        (Episode(checklist=checklist(), exercises={"e": rated}), "ABCDF"),
        (Episode(checklist=checklist(), exercises={"e": Exercise("e", "E", grade="must-do")}), ""),
        (Episode(exercises={"e": Exercise("e", "E", grade="must-do")}), ""),
    ):
        assert "".join(scale.earnable(episode, scores.grades(episode))) == names
