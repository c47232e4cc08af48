"""One clause by itself: what it does, and how surely."""

from __future__ import annotations

import pytest

from scriptkit.computing.hearing.clauses import compile_cues, take_apart
from scriptkit.computing.hearing.kinds import Verdict, judge_clause
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
        ("ask me why", "mine"),
        ("hate it", "opinion"),
        ("the dog ate the cones", "mine"),
        ("he's leaving", "mine"),
        ("reckon the calf adapts", "claim"),
        ("people squat the bar", "claim"),
        ("loads the hip", "claim"),
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


def test_and_carries_on_what_the_speaker_tells_of_themselves() -> None:
    assert verdict("and had to sit down", before="mine").kind == "mine"


def test_a_share_for_the_viewer_states_an_effect() -> None:
    assert verdict("you get most of the strength").kind == "claim"
    assert verdict("you get the picture").kind == "other"
