"""Units and sums of money in words."""

import pytest

from scriptkit.computing.aloud.measures import money, per, unit


@pytest.mark.parametrize(
    ("symbol", "one", "many"),
    [
        ("kg", "kilogram", "kilograms"),
        ("ft", "foot", "feet"),
        ("in", "inch", "inches"),
        ("Hz", "hertz", "hertz"),
        ("bpm", "beat per minute", "beats per minute"),
        ("mmHg", "millimeter of mercury", "millimeters of mercury"),
        ("°C", "degree Celsius", "degrees Celsius"),
        ("cm²", "square centimeter", "square centimeters"),
        ("m^3", "cubic meter", "cubic meters"),
    ],
)
def test_a_unit_is_singular_or_plural(symbol: str, one: str, many: str) -> None:
    assert (unit(symbol, one=True), unit(symbol, one=False)) == (one, many)


def test_what_is_no_unit_has_no_name() -> None:
    assert [unit(symbol, one=True) for symbol in ("", "KG2", "reps2", "s²")] == [None] * 4


def test_per_takes_units_and_words() -> None:
    assert (per("kg"), per("week")) == ("kilogram", "week")


def test_small_money_is_said_after_the_large() -> None:
    assert money("£", "1.01", "", "one point zero one") == "one pound and one penny"
    assert money("$", "3.00", "", "three point zero zero") == "three dollars"
    assert money("€", "2", "million", "two") == "two million euros"
