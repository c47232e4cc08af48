"""Which score earns which grade, how far a cap lets it, and which of two grades is better."""

from __future__ import annotations

from math import inf

import pytest

from scriptkit.computing.grading import scale
from scriptkit.computing.grading.scale import GradeScale
from scriptkit.model import Checklist, Episode, Exercise, Graded

LETTERS = {"A": 4.2, "B": 3.4, "C": 2.6, "D": 1.0}


def episode(
    grades: dict[str, float], *, cap: str = "", signs: bool = True, span: tuple[float, ...] = (1.0, 5.0)
) -> Episode:
    return Episode(checklist=Checklist("one", span, cap, signs), grades=grades)


def on(grades: dict[str, float], *, cap: str = "", signs: bool = True, span: tuple[float, ...] = (1, 5)) -> GradeScale:
    made = scale.of(episode(grades, cap=cap, signs=signs, span=span))
    assert made is not None
    return made


def earned(made: GradeScale, score: float, *, capped: bool = False) -> str:
    return made.steps[made.number(score, capped=capped)]


def test_without_a_checklist_there_is_no_scale() -> None:
    assert scale.of(Episode(grades=LETTERS)) is None


def test_plus_and_minus_are_thirds_of_a_band_and_the_top_one_ends_with_the_scale() -> None:
    made = on({"A": 4.1, "B": 2.0})
    assert made.steps == ("A+", "A", "A-", "B+", "B", "B-")
    assert made.least == pytest.approx((4.7, 4.4, 4.1, 3.4, 2.7, -inf))
    assert made.bands == ("A", "A", "A", "B", "B", "B")


def test_without_signs_every_band_is_one_grade() -> None:
    assert on(LETTERS, signs=False)[:3] == (("A", "B", "C", "D"), (4.2, 3.4, 2.6, -inf), ("A", "B", "C", "D"))


@pytest.mark.parametrize("minus", ["A-", "A−"])
def test_a_scale_that_lists_a_sign_gets_no_more(minus: str) -> None:
    grades = {"A": 4.5, minus: 4.0, "B": 1.0}
    assert on(grades).steps == ("A", minus, "B")
    assert not scale.has_signs(episode(grades))
    assert scale.has_signs(episode({"A": 4.5, "B": 1.0}))


def test_a_top_grade_out_of_reach_has_no_thirds() -> None:
    assert on({"S": 5.0, "A": 2.0}).steps == ("S", "A+", "A", "A-")


def test_grades_go_by_what_they_need_and_not_by_how_they_are_listed() -> None:
    assert on({"low": 1.0, "high": 4.0}, signs=False).steps == ("high", "low")
    assert not scale.is_in_order(episode({"low": 1.0, "high": 4.0}))
    assert scale.is_in_order(episode({"high": 4.0, "low": 1.0}))
    assert not scale.is_in_order(episode({"high": 4.0, "low": 4.0}))


def test_an_exact_edge_earns_the_grade_whatever_floats_make_of_it() -> None:
    made = on({"A": 4.2, "B": 1.0}, signs=False)
    for score, grade in ((4.2, "A"), (4.2 - 5e-10, "A"), (4.2 - 2e-9, "B"), (4.199, "B"), (5, "A"), (1, "B")):
        assert earned(made, score) == grade


def test_below_the_last_edge_is_the_last_grade() -> None:
    assert earned(on({"A": 4.2, "B": 3.0}, signs=False), 1) == "B"


@pytest.mark.parametrize(
    ("cap", "signs", "best"),
    [
        ("C", True, "C+"),
        ("C", False, "C"),
        ("C-", True, "C-"),
        ("C+", True, "C+"),
        ("C+", False, "C"),
        ("B−", False, "B"),
        ("A", True, "A+"),
        ("", True, "C+"),
        ("nosuch", False, "C"),
    ],
)
def test_a_cap_lets_its_own_grade_and_none_better(cap: str, signs: bool, best: str) -> None:
    made = on(LETTERS, cap=cap, signs=signs)
    assert earned(made, 5, capped=True) == best
    assert earned(made, 5) == made.steps[0]
    assert earned(made, 1, capped=True) == made.steps[-1]


def test_without_a_word_the_cap_is_the_last_grade_but_one() -> None:
    assert earned(on({"yes": 4.0, "perhaps": 3.0, "no": 1.0}, signs=False), 5, capped=True) == "perhaps"
    assert earned(on({"yes": 4.0, "no": 1.0}, signs=False), 5, capped=True) == "yes"
    assert earned(on({"yes": 1.0}, signs=False), 5, capped=True) == "yes"


def test_a_grade_without_a_sign_means_its_whole_band() -> None:
    made = on(LETTERS)
    assert [made.span(grade) for grade in ("A", "B", "B-", "A+", "D-", "Z")] == [
        (0, 2),
        (3, 5),
        (5, 5),
        (0, 0),
        (11, 11),
        None,
    ]


def test_between_its_edges_lie_all_scores_that_earn_a_grade() -> None:
    made = on(LETTERS, signs=False)
    assert [made.between(step, step) for step in range(4)] == [(4.2, inf), (3.4, 4.2), (2.6, 3.4), (-inf, 2.6)]
    assert made.between(1, 2) == (2.6, 4.2)


def test_under_the_cap_its_grade_has_no_upper_edge() -> None:
    made = on(LETTERS, cap="C", signs=False)
    assert [made.between(step, step, capped=True) for step in (2, 3)] == [(2.6, inf), (-inf, 2.6)]
    assert made.between(2, 2) == (2.6, 3.4)


def test_without_grades_the_bands_are_fifths_of_the_scale() -> None:
    assert [(name, least) for name, least in scale.bands(episode({}, span=(0, 10)))] == [
        ("A", 8),
        ("B", 6),
        ("C", 4),
        ("D", 2),
        ("F", 0),
    ]
    assert scale.bands(episode({}, span=(10, 0))) == scale.bands(episode({}, span=(0, 10)))
    assert scale.bands(Episode()) == ()


def test_the_words_of_a_scale_are_its_grades_and_then_those_given_besides() -> None:
    given = {"x": Exercise("x", grade="B+"), "y": Exercise("y", grade="S-"), "z": Exercise("z")}
    assert scale.scale_words(episode(LETTERS)._replace(exercises=given)) == ("A", "B", "C", "D", "S")


def test_without_a_scale_single_letters_go_by_the_alphabet_an_s_before_them() -> None:
    def words(*grades: str) -> tuple[str, ...]:
        return scale.scale_words(Episode(exercises={grade: Exercise(grade, grade=grade) for grade in grades}))

    assert words("C", "A-", "S", "B+") == ("S", "A", "B", "C")
    assert words("must-do", "skip", "A") == ("must-do", "skip", "A")


def test_a_grade_without_its_sign() -> None:
    assert [scale.unsigned(grade) for grade in ("A+", "A-", "A−", "A", "must-do", "-")] == [
        "A",
        "A",
        "A",
        "A",
        "must-do",
        "-",
    ]


@pytest.mark.parametrize(
    ("span", "step"), [((1, 5), 1), ((0, 10), 1), ((5, 1), 1), ((0, 2), 1), ((0, 1), 0.25), ((0, 1.9), 0.475)]
)
def test_a_step_is_one_or_a_quarter_of_a_short_scale(span: tuple[float, ...], step: float) -> None:
    assert scale.step_of(Checklist("one", span)) == pytest.approx(step)


def graded(name: str, grade: str, score: float | None = None) -> Graded:
    return Graded(name, score, None, None, None, None, grade)


def test_a_plus_is_better_than_none_and_that_better_than_a_minus() -> None:
    given = {grade: graded(grade, grade) for grade in ("B", "A-", "B+", "A", "", "A+", "C")}
    assert scale.by_grade(given, ("A", "B")) == ["A+", "A", "A-", "B+", "B", "C", ""]


def test_equal_grades_go_by_score_and_then_as_they_are_listed() -> None:
    given = {"x": graded("x", "A", 4.3), "y": graded("y", "A", 4.5), "z": graded("z", "A", 4.3)}
    assert scale.by_grade(given, ("A",)) == ["y", "x", "z"]


def test_a_sign_that_the_scale_lists_itself_is_a_grade_like_any_other() -> None:
    given = {grade: graded(grade, grade) for grade in ("B", "A", "A-", "A+")}
    assert scale.by_grade(given, ("A+", "A", "A-", "B")) == ["A+", "A", "A-", "B"]
