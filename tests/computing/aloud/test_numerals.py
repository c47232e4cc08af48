"""Numbers in words agree with num2words, apart from its commas and its "and" in years."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from num2words import num2words

from scriptkit.computing.aloud import numerals


@given(st.integers(min_value=0, max_value=10**36 - 1))
def test_whole_numbers_agree(value: int) -> None:
    assert numerals.whole(str(value)) == num2words(value).replace(",", "")


@given(st.integers(min_value=0, max_value=10**36 - 1))
def test_ordinals_agree(value: int) -> None:
    assert numerals.ordinal(str(value)) == num2words(value, to="ordinal").replace(",", "")


def test_small_numbers_agree_one_by_one() -> None:
    said = [numerals.whole(str(value)) for value in range(2000)]
    assert said == [num2words(value).replace(",", "") for value in range(2000)]


def test_years_agree() -> None:
    expected = [
        num2words(value, to="year").replace("oh-", "oh ").replace("thousand and", "thousand")
        for value in range(1000, 2100)
    ]
    assert [numerals.year(str(value)) for value in range(1000, 2100)] == expected


@given(st.decimals(min_value=0, max_value=10**6, places=3))
def test_decimals_agree(value: object) -> None:
    said = numerals.number(f"{value}")
    assert said.split(" point ")[0] == num2words(int(f"{value}".split(".")[0])).replace(",", "")
    assert len(said.split(" point ")[1].split()) == 3


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("1,250.5", "one thousand two hundred and fifty point five"),
        ("007", "zero zero seven"),
        (".5", "point five"),
        ("1.2.3", "one point two point three"),
        ("1" + 36 * "0", " ".join(["one"] + 36 * ["zero"])),
    ],
)
def test_other_ways_to_write_a_number(written: str, said: str) -> None:
    assert numerals.number(written) == said


@pytest.mark.parametrize(
    ("top", "under", "said"),
    [
        ("1", "2", "one half"), ("3", "2", "three halves"), ("1", "4", "one quarter"), ("3", "4", "three quarters"),
        ("2", "3", "two thirds"), ("7", "10", "seven out of ten"), ("24", "7", "twenty-four seven"),
        ("120", "80", "one hundred and twenty over eighty"), ("1", "0", "one over zero"),
    ],
)  # fmt: skip
def test_fractions(top: str, under: str, said: str) -> None:
    assert numerals.fraction(top, under) == said


@pytest.mark.parametrize(
    ("head", "top", "under", "said"),
    [
        ("1", 1, 2, "one and a half"),
        ("2", 3, 4, "two and three quarters"),
        ("", 1, 2, "one half"),
        ("1", 1, 8, "one and an eighth"),
    ],
)
def test_numbers_with_a_fraction(head: str, top: int, under: int, said: str) -> None:
    assert numerals.mixed(head, top, under) == said


@pytest.mark.parametrize(
    ("digits", "said"), [("1990", "nineteen nineties"), ("30", "thirties"), ("2000", "two thousands")]
)
def test_decades(digits: str, said: str) -> None:
    assert numerals.decade(digits) == said
