"""Script and recogniser write numbers, units and contractions in their own ways, and mean the same."""

from __future__ import annotations

import pytest

from scriptkit.computing.taking.tokens import pieces, tokens


def keys(text: str) -> list[str]:
    return [one.key for one in tokens([piece.text for piece in pieces(text)])]


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("38 trained runners", "thirty-eight trained runners"),
        ("in 2021", "in twenty twenty-one"),
        ("in 1999", "in nineteen ninety nine"),
        ("1.6 millimetres", "one point six millimetres"),
        ("30 %", "thirty percent"),
        ("212 people", "two hundred and twelve people"),
        ("1,000 steps", "one thousand steps"),
        ("52 kg", "fifty-two kilograms"),
        ("12 weeks", "twelve week"),
        ("HILL10", "hill ten"),
        ("HILL10", "H I L L ten"),
        ("38 %", "thirty eight per cent"),
        ("an A-, for now", "an A minus for now"),
        ("a B+", "a B plus"),
        ("It\u2019s", "it's"),
        ("you can't", "You cant"),
    ],
)
def test_two_ways_to_write_it_are_one(one: str, other: str) -> None:
    assert keys(one) == keys(other)


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("15 reps", "50 reps"),
        ("4 litres", "4 millilitres"),
        ("1.6", "16"),
        ("ten twelve reps", "1012 reps"),
        ("can", "can't"),
    ],
)
def test_what_differs_stays_apart(one: str, other: str) -> None:
    assert keys(one) != keys(other)


def test_a_token_knows_its_words() -> None:
    (number, unit) = tokens(["two", "hundred", "and", "twelve", "grams"])
    assert (number.key, number.first, number.last) == ("#212", 0, 3)
    assert (unit.first, unit.last) == (4, 4)
