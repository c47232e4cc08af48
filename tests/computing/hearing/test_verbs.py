"""The verb of a clause is found where a word may be a verb or a noun."""

from __future__ import annotations

import pytest

from scriptkit.computing.hearing.clauses import compile_cues, take_apart
from scriptkit.computing.hearing.verbs import finite_verb, is_command
from scriptkit.reading.words import load

CUES = compile_cues(load())


def verb(sentence: str) -> tuple[str, bool] | None:
    speech = take_apart(sentence, CUES)
    found = finite_verb(speech, speech.clauses[0], 0, CUES)
    return found and (speech.words[found[0]], found[1])


def commands(sentence: str) -> bool:
    speech = take_apart(sentence, CUES)
    return is_command(speech, speech.clauses[0], 0, CUES)


@pytest.mark.parametrize(
    ("sentence", "word"),
    [
        ("the soleus is flat", "is"),
        ("bands help the knee", "help"),
        ("the pad forces the hip open", "forces"),
        ("grip strength fell", "fell"),
        ("the bar's on the rack", "bar's"),
        ("they're tired", "they're"),
        ("beetroot raises endurance", "raises"),
        ("long walks raise appetite", "raise"),
        ("the subscapularis turns the arm", "turns"),
        ("it soaks up the heat", "soaks"),
    ],
)
def test_a_statement_has_a_verb(sentence: str, word: str) -> None:
    assert verb(sentence) == (word, True)


@pytest.mark.parametrize(
    "sentence", ["three heavy squats", "the work of the calf", "a matched group", "my coach's bar", "calf raises next"]
)
def test_a_name_has_none(sentence: str) -> None:
    assert verb(sentence) is None


def test_the_verb_of_a_side_remark_does_not_carry_the_clause() -> None:
    assert verb("the weight you lift") == ("lift", False) or verb("the weight you lift") is None
    assert verb("the weight you lift is heavy") == ("is", True)


@pytest.mark.parametrize(
    "sentence", ["press the floor", "don't rush", "do two sets", "be patient", "go find a step", "slow down"]
)
def test_a_command_opens_with_a_verb(sentence: str) -> None:
    assert commands(sentence)


@pytest.mark.parametrize(
    "sentence",
    ["press strength rose", "don't they", "do the heels lift?", "rest of the day is yours", "balance boards look fun"],
)
def test_a_name_or_a_question_is_no_command(sentence: str) -> None:
    assert not commands(sentence)
