"""Overused and underused are held against a figure of use, its source and date, and the score."""

from __future__ import annotations

from collections.abc import Sequence
from statistics import linear_regression, stdev

import pytest

from scriptkit.computing.grading import scores, usage
from scriptkit.computing.grading.firm_words import Passage
from scriptkit.model import Episode, GradeDoubt, Link, Spot, Use
from scriptkit.places import Place
from scriptkit.reading import words
from tests.computing.grading import tables

HERE, OUTLINE = Place("segments/x0.md", 3, 1), Place("outline.yaml", 8, 10)
WORDS = words.load()
Figure = tuple[float, float | None]  # a rating, and a share of people


def of(*figures: Figure, source: bool = True, seen: str = "2026-01") -> Episode:
    """Exercises x0, x1, ... called Row 0, Row 1, ... with one rating each."""
    made = tables.episode({f"x{at}": (rating,) for at, (rating, _) in enumerate(figures)}, (1,))
    links = (Link("gym-tally"),) if source else ()
    exercises = {
        name: one._replace(name=f"Row {at}", use=None if share is None else Use(share, links, seen, Spot(OUTLINE)))
        for at, ((name, one), (_, share)) in enumerate(zip(made.exercises.items(), figures, strict=True))
    }
    return made._replace(exercises=exercises)


def said(text: str, episode: Episode, *, opinion: bool = False) -> list[GradeDoubt]:
    passage = Passage(text, HERE, "x0", "x0", opinion=opinion)
    return list(usage.find([passage], episode, scores.grades(episode), WORDS))


def kinds(text: str, episode: Episode, *, opinion: bool = False) -> list[str]:
    return [found.kind for found in said(text, episode, opinion=opinion)]


def leanings(*figures: Figure) -> list[float]:
    made = of(*figures)
    return list(usage.leanings(made, scores.grades(made)).values())


def test_the_words_need_a_figure() -> None:
    (found,) = said("It is overused.", of((1, None), (5, None)))
    assert found == GradeDoubt("no-use", HERE, "overused", "x0")


def test_as_an_opinion_they_need_none() -> None:
    assert said("I think it is overused.", of((1, None), (5, None)), opinion=True) == []


@pytest.mark.parametrize(
    ("source", "seen", "lacks"), [(True, "", "date"), (False, "2026-01", "source"), (False, "", "source")]
)
def test_the_figure_needs_a_source_and_a_date(source: bool, seen: str, lacks: str) -> None:
    (found,) = said("It is overused.", of((1, 0.9), (5, None), source=source, seen=seen))
    assert found == GradeDoubt("bare-use", OUTLINE, "overused", "x0", "", lacks)


def test_a_plain_figure_bears_the_words_and_its_contrary_does_not() -> None:
    """The worst of two, done by 90 in a hundred; and the best of two, done by 10."""
    for rating, share, right, wrong in ((1, 0.9, "overused", "underused"), (5, 0.1, "underused", "overused")):
        made = of((rating, share), (3, None))
        assert said(f"It is {right}.", made) == []
        (found,) = said(f"It is {wrong}.", made)
        assert (found.kind, found.has) == ("use-against", f"{share:.0%}")
        assert kinds(f"It is {wrong}.", made, opinion=True) == ["use-against"]


def test_a_figure_that_just_leans_that_way_is_slight_unless_it_is_an_opinion() -> None:
    made = of((1, 0.29), (3, None))
    (found,) = said("It is overused.", made)
    assert (found.kind, found.has) == ("use-slight", "29%")
    assert said("It is overused.", made, opinion=True) == []
    assert kinds("It is overused.", of((1, 0.3), (3, None))) == []


def test_a_figure_right_at_its_merit_bears_neither() -> None:
    made = of((5, 1.0), (1, None))
    assert kinds("It is overused.", made) == kinds("It is underused.", made) == ["use-against"]


def test_questions_and_denials_say_nothing() -> None:
    made = of((1, None), (5, None))
    for text in ("Is it overused?", "It is not overused.", "It is useful.", "“Is it overused?”"):
        assert said(text, made) == []


def test_an_exercise_that_is_named_is_meant_and_else_that_of_the_segment() -> None:
    made = of((1, 0.9), (5, None))
    assert [found.exercise for found in said("Row 1 is overused.", made)] == ["x1"]
    assert said("Row 0 is overused.", made) == []
    nobody = Passage("It is overused.", HERE)
    assert list(usage.find([nobody], made, scores.grades(made), WORDS)) == []


def test_one_passage_is_told_once() -> None:
    assert kinds("It is overused and done too much.", of((1, None), (5, None))) == ["no-use"]


def test_without_a_second_score_use_is_held_against_nothing() -> None:
    assert leanings((3, 0.9)) == []
    assert kinds("It is overused.", of((3, 0.9))) == []


def test_one_or_two_figures_are_held_against_the_share_of_the_list_scored_above() -> None:
    """It scores above one of four others and equals one: 0.375 of the list; 0.3 over that is plain."""
    figures: Sequence[Figure] = ((3, 0.675), (1, None), (3, None), (4, None), (5, None))
    assert leanings(*figures) == pytest.approx([1.0])
    assert leanings((3, 0.075), *figures[1:]) == pytest.approx([-1.0])
    assert leanings((1, 0.3), (5, 0.7)) == pytest.approx([1.0, -1.0])


def test_three_to_seven_figures_are_held_by_their_places() -> None:
    """Of five, 1.5 places are plain; equal figures share their places."""
    lean = leanings((1, 0.9), (2, 0.1), (3, 0.2), (4, 0.3), (5, 0.4))
    assert lean == pytest.approx([4 / 1.5, *[-1 / 1.5] * 4])
    assert leanings((1, 0.5), (2, 0.5), (3, 0.9)) == pytest.approx([0.5 / 0.9, -0.5 / 0.9, 0])
    assert leanings((2, 0.1), (2, 0.5), (3, 0.9)) == pytest.approx([-0.5 / 0.9, 0.5 / 0.9, 0])
    assert len(leanings((1, 0.1), (2, 0.2), (3, 0.3), (4, None))) == 3
    assert leanings(*[(1 + at / 2, at / 10) for at in range(6)], (4.5, 0.05)) == pytest.approx(
        [0, *[1 / 2.1] * 5, -5 / 2.1]
    )


def test_eight_figures_are_fitted_on_merit() -> None:
    figures = [(1, 0.9), (1.5, 0.2), (2, 0.3), (2.5, 0.25), (3, 0.5), (3.5, 0.45), (4, 0.7), (5, 0.1)]
    merit, use = zip(*figures, strict=True)
    slope, start = linear_regression(merit, use)
    rest = [share - start - slope * score for score, share in figures]
    assert leanings(*figures) == pytest.approx([one / stdev(rest) for one in rest])


def test_eight_of_one_merit_are_held_against_their_mean() -> None:
    lean = leanings(*[(3, share / 10) for share in range(8)])
    assert lean == pytest.approx([(share - 3.5) / stdev(range(8)) for share in range(8)])


def test_figures_right_on_the_line_lean_nowhere() -> None:
    assert leanings(*[(1 + at / 2, at / 10) for at in range(8)]) == pytest.approx([0] * 8, abs=1e-12)


def test_an_exercise_that_is_not_fully_rated_is_left_out() -> None:
    made = tables.episode({"x0": (3, None), "x1": (4, 4), "x2": (5, 5)}, (1, 1))
    exercises = {name: one._replace(use=Use(0.5)) for name, one in made.exercises.items()}
    assert set(usage.leanings(made._replace(exercises=exercises), scores.grades(made))) == {"x1", "x2"}
