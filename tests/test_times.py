"""Times as people write and read them."""

from __future__ import annotations

import time
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scriptkit.reading.outline import RATES
from scriptkit.times import clock, frame, frame_rate, length, milliseconds, minutes_meant, seconds, thousandths


@pytest.mark.parametrize(
    ("written", "value"),
    [
        ("9:30", 570), ("0:05", 5), ("1:02:03", 3723), ("90:00", 5400), ("9:30.5", 570.5), ("570s", 570),
        ("570", 570), ("0.5", 0.5), ("9m30s", 570), ("9m 30s", 570), ("9 min", 540), ("9 minutes 30 seconds", 570),
        ("1h", 3600), ("1 hour 5m", 3900), ("2.5s", 2.5), (" 9:30 ", 570), ("9M30S", 570), ("0", 0),
    ],
)  # fmt: skip
def test_what_people_write(written: str, value: float) -> None:
    assert seconds(written) == value


@pytest.mark.parametrize(
    ("written", "meant"),
    [
        ("10.05", "10:05"), ("9.30", "9:30"), (" 10 ", "10:00"), ("9.5", "9:30"), ("10.75", "10:45"), ("90", "1:30:00"),
        ("10s", ""), ("10:05", ""), ("570", ""), ("570.25", ""), ("9m", ""), ("soon", ""), ("", ""),
    ],
)  # fmt: skip
def test_a_short_number_without_a_unit_may_be_meant_as_minutes(written: str, meant: str) -> None:
    assert minutes_meant(written) == meant


@pytest.mark.parametrize(
    "written",
    [
        "",
        " ",
        "soon",
        "9:3",
        "9:60",
        "9:75",
        ":30",
        "9:",
        "-5",
        "-9:30",
        "1e3",
        "9,5",
        "s",
        "m",
        "9 x",
        "9s30m",
        "²",
        "1_0",
        "inf",
        "nan",
    ],
)
def test_what_is_no_time(written: str) -> None:
    assert seconds(written) is None


@pytest.mark.parametrize("unit", [" ", "1", "9:", "9m", "h", ".", "1 "])
def test_a_long_text_is_no_time_at_once(unit: str) -> None:
    start = time.process_time()
    assert seconds("1h" + unit * 500_000 + "x") is None
    assert time.process_time() - start < 1


@pytest.mark.parametrize(
    ("value", "read"),
    [
        (0, "0:00"),
        (5, "0:05"),
        (59.5, "1:00"),
        (570, "9:30"),
        (3599.4, "59:59"),
        (3600, "1:00:00"),
        (-5, "-0:05"),
        (-0.2, "0:00"),
    ],
)
def test_what_people_read(value: float, read: str) -> None:
    assert clock(value) == read


@given(st.integers(0, 359_999))
def test_what_is_written_is_what_was_read(whole: int) -> None:
    assert seconds(clock(whole)) == whole


def test_thousandths() -> None:
    assert (thousandths(1.23456), str(thousandths(-0.0))) == (1.235, "0.0")


def test_frame_rates_are_exact() -> None:
    exact = {"23.976": Fraction(24000, 1001), "29.97": Fraction(30000, 1001), "59.94": Fraction(60000, 1001)}
    for written in RATES:
        assert frame_rate(written) == exact.get(written.removesuffix("df")) or frame_rate(written) == int(written)
    assert frame_rate("") == 25


@pytest.mark.parametrize(("value", "rate", "number"), [(0, 25, 0), (0.02, 25, 1), (0.019, 25, 0), (3600, 25, 90000)])
def test_the_nearest_frame(value: float, rate: int, number: int) -> None:
    assert frame(value, Fraction(rate)) == number


def test_frames_do_not_drift_at_ntsc_rates() -> None:
    rate = frame_rate("29.97df")
    assert frame(3600, rate) == 107892
    assert all(frame(float(number / rate), rate) == number for number in range(0, 3_000_000, 99_991))


@pytest.mark.parametrize(
    ("value", "number"), [(Fraction(1, 2000), 1), (Fraction(1, 2001), 0), (Fraction(1001, 30), 33367)]
)
def test_the_nearest_millisecond(value: Fraction, number: int) -> None:
    assert milliseconds(value) == number


@pytest.mark.parametrize(
    ("value", "wanted"),
    [(0, "0 s"), (59, "59 s"), (60, "1 min"), (89, "1 min"), (90, "2 min"), (3600, "1 h"), (4800, "1 h 20 min")],
)
def test_a_length_is_told_in_hours_and_minutes(value: float, wanted: str) -> None:
    assert length(value) == wanted
