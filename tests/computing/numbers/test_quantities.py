"""Numbers are read with what they count, how exactly they are meant, and per what."""

from __future__ import annotations

import pytest

from scriptkit.computing.numbers.quantities import read, stem, vocabulary
from scriptkit.reading.words import load

KNOWN = vocabulary(load())


def found(text: str) -> list[tuple[float, str]]:
    """Value and what is counted of each number."""
    return [(round(one.value, 3), one.family) for one in read(text, KNOWN).quantities]


@pytest.mark.parametrize(
    ("text", "numbers"),
    [
        ("For 10 weeks, 38 trained runners raised one heel", [(10, "long"), (38, "people")]),
        ("1.6 millimetres, and the floor side 1.0", [(1.6, "length"), (1, "")]),
        ("one point six mm", [(1.6, "length")]),
        ("2.9 times body weight", [(2.9, "ratio")]),
        ("three times a week", [(3, "times a")]),
        ("about a fifth", [(0.2, "share")]),
        ("rose by twenty-two percent", [(22, "percent")]),
        ("22 per cent", [(22, "percent")]),
        ("22 percentage points", [(22, "points")]),
        ("18-22%", [(18, "percent"), (22, "percent")]),
        ("between 5 and 9 kilos", [(5, "mass"), (9, "mass")]),
        ("twice as much", [(2, "ratio")]),
        ("two dozen people", [(24, "people")]),
        ("half an hour", [(0.5, "short")]),
        ("in a 2021 trial", [(2021, "year")]),
        ("76 legs", [(76, "limb")]),
        ("34.1 strokes a minute", [(34.1, "stroke")]),
        ("22 in each group", [(22, "people")]),
        ("4 square centimetres", [(4, "square")]),
    ],
)
def test_a_number_has_what_it_counts(text: str, numbers: list[tuple[float, str]]) -> None:
    assert found(text) == numbers


@pytest.mark.parametrize(
    "text",
    ["half-kneeling", "a double-leg raise", "$40 a month", "50-year-old runners", "HILL10", "a month and a half"],
)
def test_what_counts_nothing_is_no_number(text: str) -> None:
    assert found(text) == []


@pytest.mark.parametrize(
    ("text", "about"),
    [
        ("about 40", "about"),
        ("more than 40", "over"),
        ("just over 40", "past"),
        ("nearly 40", "almost"),
        ("up to 40", "under"),
        ("40", ""),
    ],
)
def test_a_rough_number_is_known_by_the_words_before_it(text: str, about: str) -> None:
    assert [one.about for one in read(text, KNOWN).quantities] == [about]


@pytest.mark.parametrize(
    ("text", "step"), [("1.6 mm", 0.05), ("38 people", 0.5), ("120 people", 0.5), ("2,300 steps", 50)]
)
def test_half_of_the_last_place_is_what_rounding_hides(text: str, step: float) -> None:
    assert [one.step for one in read(text, KNOWN).quantities] == [pytest.approx(step)]


def test_what_a_number_is_per_is_kept() -> None:
    assert [one.rate for one in read("11 seconds a session", KNOWN).quantities] == ["session"]


def test_a_plural_loses_its_ending() -> None:
    assert (stem("weeks"), stem("press"), stem("is")) == ("week", "press", "is")


def test_a_huge_text_is_read() -> None:
    assert len(read("7 kilos and " * 5000, KNOWN).quantities) == 5000


def test_a_rate_is_one_number_with_its_base() -> None:
    one, *more = read("1.4 injuries per thousand hours", KNOWN).quantities
    assert (one.value, one.rate, more) == (1.4, "1000", [])
    assert [one.value for one in read("4.1 cases of heart trouble per thousand a year", KNOWN).quantities] == [4.1]


def test_a_comma_parts_two_numbers_and_against_joins_them() -> None:
    assert found("Over 65, two years")[0] == (65.0, "")
    assert [family for _, family in found("66 against 31 cubic centimetres")] == ["cubic", "cubic"]


def test_times_is_a_multiple_only_of_something() -> None:
    assert found("2.9 times body weight") == [(2.9, "ratio")]
    assert found("They stood up 14 times.") == [(14.0, "")]
