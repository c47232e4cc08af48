"""Times as people write and read them."""

from __future__ import annotations

import time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scriptkit.times import clock, seconds, thousandths


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
