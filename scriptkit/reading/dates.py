"""Dates as people and spreadsheets write them; one that can be read in two ways is asked about and never guessed."""

from __future__ import annotations

import re

_MONTHS = {
    month: number
    for number, names in enumerate(
        (
            *("january jan", "february feb", "march mar", "april apr", "may", "june jun", "july jul"),
            *("august aug", "september sept sep", "october oct", "november nov", "december dec"),
        ),
        1,
    )
    for month in names.split()
}
_YEAR_FIRST = re.compile(r"(\d{4})[-/. ](\d{1,2})[-/. ](\d{1,2})\.?(?:[t ]00:00(?::00(?:\.0+)?)?)?")
_YEAR_LAST = re.compile(r"(\d{1,2})[-/. ]{1,2}(\d{1,2})[-/. ]{1,2}(\d{4})\.?")
_DAY_MONTH = re.compile(r"(?:[a-z]{3,9},? )?(\d{1,2})(?:st|nd|rd|th)?[-. ]{1,2}(?:of )?([a-z]{3,9})[-.,]{0,2} ?(\d{4})")
_MONTH_DAY = re.compile(r"(?:[a-z]{3,9},? )?([a-z]{3,9})\.? (\d{1,2})(?:st|nd|rd|th)?,? (\d{4})")
_PART = re.compile(r"(20\d\d)(?:-(?:0[1-9]|1[0-2]))?")  # of a kept verdict that was written by hand
_LONGEST = 40  # characters
_DAYS = (31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
FIRST_YEAR, LAST_YEAR = 2000, 2099


def day(written: str) -> str:
    """YYYY-MM-DD of a date, or nothing where it is none or can be read in more than one way."""
    if len(written) > _LONGEST:
        return ""
    plain = " ".join(written.lower().split())
    if _PART.fullmatch(plain):
        return plain
    readings = {one for one in _readings(plain) if one}
    return readings.pop() if len(readings) == 1 else ""


def _readings(plain: str) -> list[str]:
    if found := _YEAR_FIRST.fullmatch(plain):
        return [_made(found[1], found[2], found[3])]
    if found := _YEAR_LAST.fullmatch(plain):
        return [_made(found[3], found[2], found[1]), _made(found[3], found[1], found[2])]
    if found := _DAY_MONTH.fullmatch(plain):
        return [_made(found[3], _MONTHS.get(found[2], 0), found[1])]
    if found := _MONTH_DAY.fullmatch(plain):
        return [_made(found[3], _MONTHS.get(found[1], 0), found[2])]
    return []


def _made(year: str | int, month: str | int, number: str | int) -> str:
    """A date, or nothing where there is no such day."""
    y, m, d = int(year), int(month), int(number)
    if not (FIRST_YEAR <= y <= LAST_YEAR and 1 <= m <= 12 and 1 <= d <= _DAYS[m - 1]):
        return ""
    if (m, d) == (2, 29) and y % 4:
        return ""
    return f"{y:04}-{m:02}-{d:02}"
