"""The words by which a listener hears an opinion."""

from __future__ import annotations

import pytest

from scriptkit.computing.hearing.clauses import Clause, compile_cues, take_apart
from scriptkit.computing.hearing.voicing import grades, marked_opinion
from scriptkit.reading.words import load

CUES = compile_cues(load())


def is_voiced(sentence: str) -> bool:
    speech = take_apart(sentence, CUES)
    return bool(marked_opinion(speech, Clause(0, len(speech.words), ""), CUES))


@pytest.mark.parametrize(
    ("sentence", "spoken"),
    [
        ("It gets an A", ["A"]),
        ("a B plus and a C", ["B plus", "C"]),
        ("A rope is cheap", []),
        ("vitamin D helps", []),
        ("to be clear", []),
        ("S tier", ["S tier"]),
        ("most coaches teach B skips", []),
    ],
)
def test_letter_grades_are_told_from_letters(sentence: str, spoken: list[str]) -> None:
    speech = take_apart(sentence, CUES)
    assert list(speech.written(grades(speech, Clause(0, len(speech.words), "")))) == spoken


def test_the_words_that_voice_an_opinion_are_found() -> None:
    speech = take_apart("I still like it, and my first pick is clear.", CUES)
    marks = marked_opinion(speech, Clause(0, len(speech.words), ""), CUES)
    assert speech.written(marks) == ("I still like", "my first pick")


def test_a_feeling_is_heard_however_the_speaker_is_joined_to_it() -> None:
    for sentence in ("I am unconvinced.", "I'm unconvinced.", "We are fond of it."):
        assert is_voiced(sentence), sentence
    assert not is_voiced("I am tall.")
