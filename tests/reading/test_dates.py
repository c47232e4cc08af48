"""A date is read where it can be read in one way, and nothing is guessed where it cannot."""

from __future__ import annotations

import pytest

from scriptkit.reading.dates import day


@pytest.mark.parametrize(
    "written",
    [
        "2026-03-02", "2026/3/2", "2026.03.02", "2026-03-02 00:00:00", "2026-03-02T00:00:00", "2 March 2026",
        "2nd of march 2026", "March 2, 2026", "Mar 2 2026", "02-Mar-2026", "Monday, 2 March 2026", " 2  Mar. 2026 ",
    ],
)  # fmt: skip
def test_a_date_is_read_however_it_is_written(written: str) -> None:
    assert day(written) == "2026-03-02"


@pytest.mark.parametrize(
    ("written", "read"),
    [
        ("31/03/2026", "2026-03-31"),
        ("3/31/2026", "2026-03-31"),
        ("31.3.2026", "2026-03-31"),
        ("4/4/2026", "2026-04-04"),
    ],
)
def test_day_and_month_need_no_order_where_only_one_is_possible(written: str, read: str) -> None:
    assert day(written) == read


@pytest.mark.parametrize("written", ["02/03/2026", "2.3.2026", "1-2-2026", "02/03/26", "13/03/26", "3 2", "20260302"])
def test_what_can_be_read_in_two_ways_is_not_guessed(written: str) -> None:
    assert day(written) == ""


@pytest.mark.parametrize(
    "written",
    [
        "", "soon", "46083", "2026-13-01", "2026-02-30", "2025-02-29", "30/02/2026", "2 Smarch 2026", "0026-03-02",
        "1926-03-02", "2026-03-02 14:05", "2026-03-02" * 50, "9" * 10_000,
    ],
)  # fmt: skip
def test_what_is_no_date_is_none(written: str) -> None:
    assert day(written) == ""


def test_a_leap_day_and_a_part_of_a_date_stay() -> None:
    assert (day("29 Feb 2028"), day("2026-03"), day("2026")) == ("2028-02-29", "2026-03", "2026")
