"""Times as people write them, in seconds, and seconds as people read them."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from fractions import Fraction

_CLOCK = re.compile(r"(?:(\d{1,2}):)?(\d{1,3}):(\d{2}(?:\.\d{1,3})?)")
_UNITS = re.compile(
    r"(?:(\d{1,3}(?:\.\d+)?)\s*h(?:ours?)?)?\s*(?:(\d{1,5}(?:\.\d+)?)\s*m(?:in(?:utes?)?)?)?\s*(?:(\d{1,6}(?:\.\d+)?)\s*s(?:ec(?:onds?)?)?)?"
)
_LONGEST = 40  # characters: nobody writes a longer time
_BARE = re.compile(r"\d{1,6}(?:\.\d{1,3})?")
_MINUTES = re.compile(r"(\d{1,2})(?:\.(\d{1,3}))?")  # a number that nobody would give in seconds
STOCK_FRAME_RATE = "25"
NTSC = {"23.976": 24, "29.97": 30, "59.94": 60}  # what is written for so many thousand frames in 1,001 seconds


def seconds(written: str) -> float | None:
    """Seconds of `9:30`, `1:02:03`, `570s`, `9m30s`, `9 min`, or bare `570`; None where it is no time."""
    if len(written) > _LONGEST:
        return None
    written = written.strip().lower()
    clock = _CLOCK.fullmatch(written)
    if clock:
        hours, minutes, rest = clock.groups()
        return None if float(rest) >= 60 else int(hours or 0) * 3600 + int(minutes) * 60 + float(rest)
    if _BARE.fullmatch(written):
        return float(written)
    units = _UNITS.fullmatch(written)
    if not units or not written:
        return None
    parts = [float(part or 0) for part in units.groups()]
    return parts[0] * 3600 + parts[1] * 60 + parts[2]


def minutes_meant(written: str) -> str:
    """What a short number without a unit was perhaps meant to be: 10:05 for `10.05`, 10:00 for `10`; "" for others."""
    found = _MINUTES.fullmatch(written.strip()) if len(written) <= _LONGEST else None
    if not found:
        return ""
    minutes, part = int(found[1]), found[2] or ""
    as_clock = len(part) == 2 and int(part) < 60
    return clock(60 * minutes + int(part)) if as_clock else clock(60 * float(written))


def clock(value: float) -> str:
    """Seconds as m:ss, from an hour on as h:mm:ss, rounded to the nearest second."""
    whole = int(abs(value) + 0.5)
    sign = "-" if value < 0 and whole else ""
    hours, rest = divmod(whole, 3600)
    if hours:
        return f"{sign}{hours}:{rest // 60:02}:{rest % 60:02}"
    return f"{sign}{rest // 60}:{rest % 60:02}"


def length(seconds: float) -> str:
    """Seconds as hours and minutes: `1 h 20 min`, `4 min`, `30 s` below a minute."""
    if seconds < 59.5:
        return f"{seconds:.0f} s"
    hours, minutes = divmod(int(seconds / 60 + 0.5), 60)
    return " ".join(part for part in (f"{hours} h" if hours else "", f"{minutes} min" if minutes else "") if part)


def thousandths(value: float) -> float:
    """Seconds with three decimals, as every file of ours gives them."""
    return round(value + 0.0, 3)


def frame_rate(written: str) -> Fraction:
    """Frames a second of `25`, `29.97` or `29.97df`, exactly. Drop-frame counts frames otherwise, in the same time."""
    from fractions import Fraction  # only what lies on frames needs it

    written = (written or STOCK_FRAME_RATE).removesuffix("df")
    return Fraction(NTSC[written] * 1000, 1001) if written in NTSC else Fraction(written)


def frame(value: float, rate: Fraction) -> int:
    """The frame nearest to a time in seconds; the later one of two as near."""
    return _nearest(value, rate)


def milliseconds(value: Fraction) -> int:
    """The millisecond nearest to a time in seconds; the later one of two as near."""
    return _nearest(value, 1000)


def _nearest(value: float | Fraction, parts: int | Fraction) -> int:
    from fractions import Fraction
    from math import floor

    return floor(Fraction(value) * parts + Fraction(1, 2))
