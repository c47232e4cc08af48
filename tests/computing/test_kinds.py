"""One clause by itself: what it does, and how surely."""

from __future__ import annotations

import pytest

from scriptkit.computing.clauses import Clause, compile_cues, take_apart
from scriptkit.computing.kinds import Verdict, grades, judge_clause, marked_opinion
from scriptkit.reading.words import load

CUES = compile_cues(load())


def verdict(clause: str, before: str = "") -> Verdict:
    speech = take_apart(clause, CUES)
    return judge_clause(speech, speech.clauses[0], CUES, before)


@pytest.mark.parametrize(
    ("clause", "kind"),
    [
        ("the lats extend the shoulder", "claim"),
        ("the lats", "fragment"),
        ("if the lats extend the shoulder", "condition"),
        ("hold the bar", "instruction"),
        ("knees out", "instruction"),
        ("it is lovely", "opinion"),
        ("I walked home", "mine"),
        ("I think", "belief"),
        ("I think the calf adapts", "claim"),
        ("here's the plan", "transition"),
        ("this video is long", "transition"),
        ("of course", "other"),
    ],
)
def test_what_a_clause_does(clause: str, kind: str) -> None:
    assert verdict(clause).kind == kind


def test_a_clause_of_the_fields_own_matters_weighs_more_than_its_form_alone() -> None:
    assert [verdict(clause).weight for clause in ("it is long", "the hip is long", "it strengthens the hip")] == [
        0,
        1,
        2,
    ]


def test_and_carries_a_statement_on() -> None:
    assert verdict("and hold the bar", before="claim").kind == "claim"
    assert verdict("and hold the bar", before="instruction").kind == "instruction"


@pytest.mark.parametrize(
    ("sentence", "spoken"),
    [
        ("It gets an A", ["A"]),
        ("a B plus and a C", ["B plus", "C"]),
        ("A rope is cheap", []),
        ("vitamin D helps", []),
        ("to be clear", []),
        ("S tier", ["S tier"]),
    ],
)
def test_letter_grades_are_told_from_letters(sentence: str, spoken: list[str]) -> None:
    speech = take_apart(sentence, CUES)
    assert list(speech.written(grades(speech, Clause(0, len(speech.words), "")))) == spoken


def test_the_words_that_voice_an_opinion_are_found() -> None:
    speech = take_apart("I still like it, and my first pick is clear.", CUES)
    marks = marked_opinion(speech, Clause(0, len(speech.words), ""), CUES)
    assert speech.written(marks) == ("I still like", "my first pick")
