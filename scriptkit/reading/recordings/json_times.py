"""When a mapping of a recogniser's JSON says that it starts and ends, whatever it calls that and in whatever unit."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from functools import lru_cache
from typing import Any, NamedTuple

from scriptkit.reading.recordings import clock

_BASES = {
    "start": ("start", "starttime", "begin", "begintime", "from", "ts", "startts", "tsstart", "st",
              "offset", "startoffset", "beginoffset", "offsetstart", "onset", "time", "timestamp", "timestart",
              "timefrom", "audiostart", "in"),
    "end": ("end", "endtime", "to", "endts", "tsend", "et", "endoffset", "offsetend", "stop", "stoptime",
            "finish", "until", "offsetto", "timeend", "timeto", "audioend", "out"),
    "length": ("duration", "dur", "length", "len", "d"),
}  # fmt: skip
# in seconds with a unit, else as a rule in letters of the text
_OF_TEXT = frozenset(("startoffset", "beginoffset", "offsetstart", "endoffset", "offsetend", "offsetto"))
_BOTH = frozenset(
    ("timestamp", "timestamps", "time", "times", "offset", "offsets", "span", "interval", "range", "timing", "timespan")
)
_UNITS = {
    "milliseconds": 1e-3, "millisecond": 1e-3, "millis": 1e-3, "msec": 1e-3, "ms": 1e-3, "microseconds": 1e-6,
    "micros": 1e-6, "us": 1e-6, "nanoseconds": 1e-9, "nanos": 1e-9, "ns": 1e-9, "ticks": 1e-7, "seconds": 1.0,
    "secs": 1.0, "sec": 1.0, "s": 1.0,
}  # fmt: skip
_ROLES = {name: role for role, names in _BASES.items() for name in names}
_NUMBER = re.compile(r"\s*(-?\d{1,25}(?:\.\d{1,25})?(?:[eE][+-]?\d{1,3})?)\s*([A-Za-z]{0,12})\s*")
_ISO = re.compile(r"PT(?:(\d{1,6})H)?(?:(\d{1,6})M)?(?:(\d{1,9}(?:\.\d{1,12})?)S)?")
# how many of a unit make a second, from which on a number for each letter can only be in it, since nobody says a
# letter in less than 0.02 s, and a second for each letter is no speech
_BY_SIZE = ((1e9, 2e7), (1e7, 2e5), (1e6, 2e4), (1e3, 20.0))


class When(NamedTuple):
    """Start and end as numbers; `unit` is how many seconds one is, or 0 where only their size can tell."""

    start: float | None
    end: float | None
    unit: float


class _Amount(NamedTuple):
    value: float
    unit: float  # 0: not told


def when(record: Mapping[str, Any]) -> When | None:
    """The start and the end of a mapping, None where it has no start."""
    found: dict[str, _Amount] = {}
    both: When | None = None
    for key, value in record.items():
        if value is None or isinstance(value, bool):
            continue
        role, unit = role_of(key)
        if isinstance(value, list | Mapping) and plain_name(key) in _BOTH:
            both = _better(both, _pair(value, unit))
        amount = _amount(value, unit) if role else None
        if amount and not amount.unit and plain_name(key) in _OF_TEXT:
            continue
        if amount and (role not in found or (amount.unit and not found[role].unit)):
            found[role] = amount
    own = _joined(found)
    return both if own and both and own.end is None and both.end is not None else _better(own, both)


@lru_cache(1000)
def role_of(key: str) -> tuple[str, float]:
    """What a key tells, "start", "end", "length" or nothing, and its unit, 0 where it names none."""
    plain = plain_name(key)
    if plain in _ROLES:
        return _ROLES[plain], 0.0
    for name, unit in _UNITS.items():
        if plain.endswith(name):
            base = plain.removesuffix(name)
            for one in (base, base.removesuffix("in"), base[1:]):
                if one in _ROLES:
                    return _ROLES[one], unit
    return "", 0.0


def unit_by_size(lengths: list[tuple[float, int]]) -> float:
    """The unit in seconds, from how long texts of so many letters take."""
    rates = sorted(length / letters for length, letters in lengths if length > 0)
    middle = rates[len(rates) // 2] if rates else 0.0
    return next((1 / unit for unit, least in _BY_SIZE if middle >= least), 1.0)


@lru_cache(1000)
def plain_name(key: str) -> str:
    """A key without its case and signs: `startTime`, `start_time` and `Start-Time` are the same."""
    return "".join(filter(str.isalnum, key[:60])).lower()


def _better(one: When | None, other: When | None) -> When | None:
    """Of two tellings the one that knows its unit, the first if both or none do."""
    if one is None or other is None:
        return one or other
    return other if other.unit and not one.unit else one


def _joined(found: Mapping[str, _Amount]) -> When | None:
    if "start" not in found:
        return None
    start, end, length = found["start"], found.get("end"), found.get("length")
    if end is None and length is not None:
        if start.unit and length.unit:
            end = _Amount(start.value * start.unit + length.value * length.unit, 1.0)
        elif start.unit == length.unit:
            end = _Amount(start.value + length.value, 0.0)
    if end is None or start.unit == end.unit:
        return When(start.value, end.value if end else None, start.unit)
    if not start.unit or not end.unit:  # whoever tells one unit means it for both
        return When(start.value, end.value, start.unit or end.unit)
    return When(start.value * start.unit, end.value * end.unit, 1.0)


def _pair(value: Any, unit: float) -> When | None:
    """A start and an end that stand together, as a list of two or a mapping."""
    if isinstance(value, Mapping):
        return None if _BOTH & set(map(plain_name, value)) else when(value)
    if len(value) != 2:
        return None
    start, end = (_amount(one, unit) for one in value)
    return _joined({"start": start, **({"end": end} if end else {})}) if start else None


def _amount(value: Any, unit: float) -> _Amount | None:
    """A number with its unit, from a number or from a text such as `1.2s`, `PT1.2S` or `00:00:01,200`."""
    if isinstance(value, float):
        return _Amount(value, unit) if math.isfinite(value) else None
    if isinstance(value, Mapping) and ("seconds" in value or "nanos" in value):
        whole, rest = (_amount(value.get(name, 0.0), 1.0) for name in ("seconds", "nanos"))
        return _Amount(whole.value + rest.value * 1e-9, 1.0) if whole and rest else None
    if not isinstance(value, str) or len(value) > 60:
        return None
    number = _NUMBER.fullmatch(value)
    if number:
        told = _UNITS.get(number[2].lower(), 0.0) if number[2] else unit
        return _Amount(float(number[1]), told) if not number[2] or told else None
    iso = _ISO.fullmatch(value.strip())
    if iso:
        parts = [float(one or 0) for one in iso.groups()]
        return _Amount(parts[0] * 3600 + parts[1] * 60 + parts[2], 1.0)
    read = clock.seconds(value)
    return None if read is None else _Amount(read, 1.0)
