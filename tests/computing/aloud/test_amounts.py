"""A number takes along what hangs on it, and no more."""

import pytest

from scriptkit.computing.aloud.amounts import spoken_amount


@pytest.mark.parametrize(
    ("text", "said", "rest"),
    [
        ("8-12 reps", "eight to twelve reps", ""),
        ("3×10 and", "three by ten", " and"),
        ("3 x 8-12 x 2", "three by eight to twelve by two", ""),
        ("5 — 10", "five", " — 10"),
        ("5 kg. Then", "five kilograms", ". Then"),
        ("5 kgs'", "five", " kgs'"),
        ("5 in the gym", "five", " in the gym"),
        ("5in", "five inches", ""),
        ("3 L-sits", "three", " L-sits"),
        ("3 L of it", "three liters", " of it"),
        ("30 s hold", "thirty seconds", " hold"),
        ("5 kg/m²", "five kilograms per square meter", ""),
        ("1-1.5 h", "one to one point five hours", ""),
        ("$3k", "three thousand dollars", ""),
        ("4-0-2-1", "four zero two one", ""),
        ("10 1/2", "ten and a half", ""),
        ("10 3/2", "ten", " 3/2"),
        ("¾ in.", "three quarters of an inch", "."),
        ("1,23", "one", ",23"),
        ("5.", "five", "."),
    ],
)
def test_a_number_ends_where_its_unit_ends(text: str, said: str, rest: str) -> None:
    spoken = spoken_amount(text, 0)
    assert spoken is not None
    assert (spoken[0], text[spoken[1] :]) == (said, rest)


@pytest.mark.parametrize("text", ["$", "$ x", "x", "٣ sets", "²"])
def test_what_is_no_number_is_left(text: str) -> None:
    assert spoken_amount(text, 0) is None
