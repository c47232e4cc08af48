"""Values are found as they are spoken, and words that only look like values are passed over."""

from __future__ import annotations

import pytest

from scriptkit.computing.hearing.clauses import compile_cues, take_apart
from scriptkit.reading.words import load

CUES = compile_cues(load())


def values(sentence: str) -> list[float]:
    return [round(figure.value, 3) for figure in take_apart(sentence, CUES).figures]


@pytest.mark.parametrize(
    ("sentence", "spoken"),
    [
        ("a trial of 38 climbers", [38]),
        ("thirty-eight climbers", [38]),
        ("one hundred and twenty people", [120]),
        ("a hundred people", [100]),
        ("two thousand three hundred steps", [2300]),
        ("1,200 steps", [1200]),
        ("three-fifty in a scoop", [350]),
        ("it rose by a fifth", [0.2]),
        ("two thirds of them", [0.667]),
        ("half of them", [0.5]),
        ("two and a half times", [2.5]),
        ("one point six millimetres", [1.6]),
        ("0.41 units", [0.41]),
        ("20% more", [20]),
        ("twice as much", [2]),
        ("it doubled", [2]),
        ("from ten to twelve reps", [10, 12]),
        ("longer than a minute", [1]),
        ("under one fall per thousand steps", [1, 1000]),
        ("one in three lifters", [1, 3]),
        ("lifters in their thirties", [30]),
        ("half a dozen lifters", [6]),
        ("cut in half", [0.5]),
        ("one to three reps", [1, 3]),
        ("a tenfold rise", [10]),
    ],
)
def test_a_value_is_read_as_it_is_spoken(sentence: str, spoken: list[float]) -> None:
    assert values(sentence) == spoken


@pytest.mark.parametrize(
    "sentence",
    [
        "this one is fun",
        "one thing",
        "the two lifts",
        "number three on the list",
        "zone two",
        "in 2021",
        "zero reason",
        "the second half",
        "a rep",
        "half squats",
        "half true",
        "a half-life",
        "in twenty nineteen",
        "since nineteen eighty-four",
        "in two thousand and six",
        "a 2019 trial",
    ],
)
def test_a_word_that_no_record_could_hold_is_no_value(sentence: str) -> None:
    assert values(sentence) == []


def test_a_number_nobody_would_say_does_not_overflow() -> None:
    assert values("9" * 5000) == []
    assert all(value < 1e20 for value in values("million " * 500 + "hundred " * 500 + "a " + "hundred " * 500))


def test_a_third_session_is_no_third() -> None:
    assert values("A third weekly session adds little.") == []
    assert values("A third of them left.") == [0.333]
