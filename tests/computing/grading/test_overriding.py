"""A grade that its ratings do not earn needs a reason, and viewers have to hear it."""

from __future__ import annotations

import pytest

from scriptkit.computing.grading import overriding, scale, scores
from scriptkit.model import NOWHERE, Episode, GradeDoubt, Paragraph, Segment, Sentence, Spot
from scriptkit.places import Place
from tests.computing.grading import tables

HERE = Place("segments/x.md", 1, 1)
LITTLE = frozenset("a an and because but i in is it no not of on the there there's to".split())
REASON = "A bar hangs in every park and machines stand in halls."


def segment(*texts: str, marked: int | None = None) -> Segment:
    said = tuple(Sentence(text, HERE, override=number == marked) for number, text in enumerate(texts))
    return Segment("x", "verdict", "X", "x", (Paragraph(said),), drafted=False, file="segments/x.md", at=NOWHERE)


def one(given: str, override: str = "", cells: tuple[float | None, ...] = (3, 3)) -> Episode:
    """One exercise, whose ratings of 3 and 3 earn a C."""
    made = tables.episode({"x": cells}, (1, 1))
    spot = Spot(HERE, {"grade": Place("outline.yaml", 7, 12), "override": Place("outline.yaml", 9, 15)})
    return made._replace(exercises={"x": made.exercises["x"]._replace(grade=given, override=override, at=spot)})


def doubts(episode: Episode, *segments: Segment) -> list[GradeDoubt]:
    return list(overriding.find(episode, scores.grades(episode), segments, LITTLE))


def test_a_grade_that_is_not_earned_needs_a_reason() -> None:
    (found,) = doubts(one("A"))
    assert found == GradeDoubt("no-override", Place("outline.yaml", 7, 12), "A", "x", "C")


@pytest.mark.parametrize("given", ["", "C"])
def test_a_grade_that_is_earned_or_left_out_needs_none(given: str) -> None:
    assert doubts(one(given)) == []


@pytest.mark.parametrize(("given", "said"), [("C", "C"), ("", "C")])
def test_a_reason_for_a_grade_that_is_earned_anyway_is_idle(given: str, said: str) -> None:
    (found,) = doubts(one(given, REASON))
    assert found == GradeDoubt("idle-override", Place("outline.yaml", 9, 15), said, "x", "C")


def test_a_reason_is_not_idle_while_nothing_is_earned_yet() -> None:
    assert doubts(one("C", REASON, (3, None))) == []


def test_with_a_rating_missing_a_grade_is_held_against_all_that_may_be_earned() -> None:
    """3 and something from 1 to 5 is a D+ at worst and a B+ at best."""
    assert [(found.kind, found.other) for found in doubts(one("A", cells=(3, None)))] == [("no-override", "D to B+")]


def test_a_reason_has_to_be_spoken() -> None:
    (found,) = doubts(one("A", REASON), segment("I give it an A.", "It is steady."))
    assert found == GradeDoubt("unspoken-override", Place("outline.yaml", 9, 15), "A", "x", "C")


@pytest.mark.parametrize(
    ("said", "is_heard"),
    [
        ("A bar hangs in every park and machines stand in halls.", True),
        ("There's a bar in every park, and a machine is in a hall.", True),  # 5 of 7: bar, every, park, machine, hall
        ("A bar is in every park, machine.", True),  # 4 of 7
        ("A bar is in every park.", False),  # 3 of 7
        ("Because it is in the and of a.", False),
    ],
)
def test_most_of_its_words_in_one_sentence_are_enough(said: str, is_heard: bool) -> None:
    assert (doubts(one("A", REASON), segment("One.", said)) == []) is is_heard


def test_its_words_may_not_be_scattered_over_more_sentences_than_it_has() -> None:
    scattered = segment("Bars hang here.", "Every park is green.", "Machines stand in halls.")
    assert [found.kind for found in doubts(one("A", REASON), scattered)] == ["unspoken-override"]


@pytest.mark.parametrize(
    "reason", ["Bars hang in parks. Machines stand in halls.", "Bars hang in parks! Machines stand in halls"]
)
def test_a_reason_of_two_sentences_may_be_spoken_in_two(reason: str) -> None:
    assert doubts(one("A", reason), segment("It slips.", "A bar hangs in parks.", "A machine stands.")) == []
    far = segment("A bar hangs.", "It slips.", "A machine stands.")
    assert [found.kind for found in doubts(one("A", reason), far)] == ["unspoken-override"]


def test_the_mark_says_that_it_is_spoken_in_other_words() -> None:
    assert doubts(one("A", REASON), segment("I give it an A.", "You have one at home.", marked=1)) == []


def test_a_reason_of_little_words_alone_is_never_heard() -> None:
    assert [found.kind for found in doubts(one("A", "It is not."), segment("It is not."))] == ["unspoken-override"]


def test_a_curled_apostrophe_and_a_plural_are_the_same_word() -> None:
    assert doubts(one("A", "Nobody’s ankle complains"), segment("Nobody's ankles complain.")) == []


def test_an_exercise_without_a_segment_is_not_asked_for_its_words() -> None:
    assert doubts(one("A", REASON)) == []


def pair(better: str, worse: str, override: str = "", *, beaten: tuple[float, ...] = (3, 3)) -> list[GradeDoubt]:
    """An exercise of 4 and 3, and one of `beaten`, with these grades."""
    made = tables.episode({"better": (4, 3), "worse": beaten}, (1, 1))
    exercises = {
        name: exercise._replace(grade=grade, at=Spot(HERE, {"grade": Place("outline.yaml", line, 9)}))
        for (name, exercise), grade, line in zip(made.exercises.items(), (better, worse), (5, 6), strict=True)
    }
    exercises["worse"] = exercises["worse"]._replace(override=override)
    made = made._replace(exercises=exercises)
    return list(overriding.dominated(made, scores.grades(made), scale.of(made)))


def test_what_is_better_throughout_may_not_have_the_lower_grade() -> None:
    assert pair("C", "B") == [GradeDoubt("dominated", Place("outline.yaml", 5, 9), "C", "better", "worse", "B")]
    assert pair("B-", "B") == []  # a B may be a B-
    assert pair("B-", "B+") != []
    assert pair("B", "B") == []
    assert pair("A", "B") == []


def test_a_reason_makes_it_an_exception() -> None:
    assert [found.kind for found in pair("C", "B", REASON)] == ["overridden-order"]


def test_what_is_better_somewhere_and_worse_elsewhere_may_have_any_grade() -> None:
    assert pair("D", "A", beaten=(3, 4)) == []
    assert pair("D", "A", beaten=(4, 3)) == []


def test_a_grade_that_is_not_on_the_scale_is_held_against_nothing() -> None:
    assert pair("Z", "A") == []
    assert pair("D", "Z") == []


def test_without_a_scale_nothing_is_held() -> None:
    made = tables.episode({"better": (4, 3), "worse": (3, 3)}, (1, 1))
    assert list(overriding.dominated(made, scores.grades(made), None)) == []


def test_of_several_that_are_better_the_best_is_named() -> None:
    made = tables.episode({"good": (4, 3), "best": (5, 5), "worse": (3, 3)}, (1, 1))
    given = dict(zip(made.exercises, ("D", "D", "B"), strict=True))
    made = made._replace(exercises={name: one._replace(grade=given[name]) for name, one in made.exercises.items()})
    (found,) = overriding.dominated(made, scores.grades(made), scale.of(made))
    assert (found.exercise, found.other) == ("best", "worse")
