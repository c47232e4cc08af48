"""Dates, years, decades, times of day and durations, as they are spoken."""

import re
from functools import lru_cache

from scriptkit.computing.aloud import numerals

Spoken = tuple[str, int]  # the words, and where in the text that which they stand for ends

_MONTHS = "January February March April May June July August September October November December".split()
_MONTH_OF = {name: name for name in _MONTHS} | {name[:3]: name for name in _MONTHS} | {"Sept": "September"}
_YEAR_AFTER = frozenset(
    "in since from by until till before after during circa ca year years early late mid spring summer autumn fall "
    "winter".split()
) | {name.lower() for name in _MONTH_OF}
_COUNT_AFTER = frozenset(
    "about roughly nearly over under only exactly approximately almost least per with another total averaging eat burn "
    "= ≈ ~ < > ≥ ≤ ±".split()
)
_COUNTED = frozenset(
    "steps calories kilocalories reps meters metres miles grams pounds kilograms feet watts newtons hertz times "
    "dollars euros units words milligrams milliliters of more or views".split()
)
_CROWDS = frozenset("people men women children folks".split())
_NOT_COUNTED = frozenset(
    "was is has this as its plus versus does across us yes besides perhaps towards always less".split()
)
_DECADE_AFTER = frozenset("the their his her my your our early mid late".split())

_ORDINAL_MARKS = ("st", "nd", "rd", "th")

_PATTERNS = {
    "iso": r"(\d{4})-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])(?![\d-])",
    "month": r"((?:19|20)\d\d)-(0[1-9])(?![\d-])",
    "slashes": r"(\d{1,2})/(\d{1,2})/(\d{4}|\d{2})(?![\d/])",
    "clock": r"(\d{1,2}):([0-5]\d)(?::([0-5]\d))?(?![\d:])",
    "ratio": r"\d{1,4}(?::\d{1,4}){1,6}(?![\d:])",
    "lasting": r"(?:(\d{1,4})h ?)?(\d{1,4})m(?:in)? ?(\d{1,2})s(?!\w)|(\d{1,4})h ?(\d{1,2})(?:m|min)?(?!\w)",
    "height": r"(\d)['’′](\d{1,2})(?:[\"”″]|'')",
    "half day": r"\s?[ap]\.?m(?!\w)",
    "next": r"[ \u00a0\n-]([A-Za-z]{1,16})",
}


@lru_cache(maxsize=len(_PATTERNS))
def _pattern(name: str) -> re.Pattern[str]:
    return re.compile(_PATTERNS[name], re.ASCII)


def _at(name: str, text: str, pos: int) -> re.Match[str] | None:
    return _pattern(name).match(text, pos)


def earlier_word(text: str, pos: int) -> str:
    """The word or sign before this place, in lower case; "" at the start of the text or right after a stop."""
    pieces = text[max(0, pos - 20) : pos].rstrip("-–'’(").split()
    return pieces[-1].lstrip("(\"'“‘").lower() if pieces and pieces[-1][-1] not in ".,;:!?" else ""


def _next_word(text: str, pos: int) -> str:
    found = _at("next", text, pos)
    return found[1] if found else ""


def spoken_moment(text: str, pos: int, end: int) -> Spoken | None:
    """A date, time or duration in figures, of which the first number lies between `pos` and `end`.

    None if there is none.
    """
    for name, say in _GOING_ON.get(text[end : end + 1], ()):
        if found := _at(name, text, pos):
            return say(found), found.end()
    return None


def _date(found: re.Match[str]) -> str:
    year, month, day = found.groups()
    return f"{_MONTHS[int(month) - 1]} {numerals.ordinal(_bare(day))} {numerals.year(year)}"


def _month(found: re.Match[str]) -> str:
    return f"{_MONTHS[int(found[2]) - 1]} {numerals.year(found[1])}"


def _slashes(found: re.Match[str]) -> str:
    last = numerals.year(found[3]) if len(found[3]) == 4 else numerals.whole(found[3])
    return f"{numerals.whole(_bare(found[1]))} {numerals.whole(_bare(found[2]))} {last}"


def _ratio(found: re.Match[str]) -> str:
    return " to ".join(numerals.whole(part) for part in found[0].split(":"))


def _height(found: re.Match[str]) -> str:
    return f"{numerals.whole(found[1])} foot {numerals.whole(_bare(found[2]))}"


def _bare(digits: str) -> str:
    return digits.lstrip("0") or "0"


def _clock(found: re.Match[str]) -> str:
    """A time: 9:30 "nine thirty", 9:05 "nine oh five", 9:00 "nine o'clock", with "am" just "nine"."""
    hours, minutes, seconds = found.groups()
    said = numerals.whole(_bare(hours))
    if minutes == "00" and seconds is None and 1 <= int(hours) <= 12:
        return said if _at("half day", found.string, found.end()) else f"{said} o'clock"
    if minutes == "00" and seconds is None:
        return f"{said} hundred"
    return " ".join([said, *(_minutes(part) for part in (minutes, seconds) if part is not None)])


def _minutes(digits: str) -> str:
    if digits == "00":
        return "zero zero"
    return f"oh {numerals.whole(digits[1])}" if digits[0] == "0" else numerals.whole(digits)


def _lasting(found: re.Match[str]) -> str:
    """9m30s "nine minutes thirty seconds", 1h20 "one hour twenty minutes"."""
    values = ((found[1] or found[4], "hour"), (found[2] or found[5], "minute"), (found[3], "second"))
    said = (f"{numerals.whole(_bare(value))} {name}{'' if int(value) == 1 else 's'}" for value, name in values if value)
    return " ".join(said)


# The forms by the character after their first number.
_GOING_ON = {
    "-": (("iso", _date), ("month", _month)),
    "/": (("slashes", _slashes),),
    ":": (("clock", _clock), ("ratio", _ratio)),
    "h": (("lasting", _lasting),),
    "m": (("lasting", _lasting),),
    "'": (("height", _height),),
    "’": (("height", _height),),
    "′": (("height", _height),),
}


def spoken_day(text: str, pos: int, end: int) -> Spoken | None:
    """A whole number that is an ordinal, a decade or the day of a month: "22nd", "1990s", "2 March", "March 2"."""
    digits = numerals.bare(text[pos:end])
    if not digits.isdigit():
        return None
    mark = text[end : end + 3]
    if mark[:2].lower() in _ORDINAL_MARKS and not mark[2:].isalnum():
        return numerals.ordinal(digits), end + 2
    length = 2 if mark[:2] in ("'s", "’s") else 1 if mark[:1] == "s" else 0
    if length and digits[-1] == "0" and not mark[length : length + 1].isalnum() and _of_decade(text, pos, digits):
        return numerals.decade(digits), end + length
    return _of_month(text, pos, end, digits) if len(digits) <= 2 and 1 <= int(digits) <= 31 else None


def _of_decade(text: str, pos: int, digits: str) -> bool:
    if len(digits) == 4:
        return digits[0] in "12"
    apostrophe = text[pos - 1 : pos] in ("'", "’") or text[pos + 2 : pos + 3] in ("'", "’")
    return len(digits) == 2 and (apostrophe or earlier_word(text, pos) in _DECADE_AFTER)


def _of_month(text: str, pos: int, end: int, digits: str) -> Spoken | None:
    """The day before or after the name of a month, which begins with a capital; "May 3 sets" is no date."""
    after = _at("next", text, end) if text[end + 1 : end + 2].isupper() and text[end] != "-" else None
    if after and after[1] in _MONTH_OF and earlier_word(text, pos) not in _COUNT_AFTER:
        article = "" if earlier_word(text, pos) == "the" else "the "
        return f"{article}{numerals.ordinal(_bare(digits))} of {_MONTH_OF[after[1]]}", after.end()
    near = text[max(0, pos - 12) : pos].split() if text[pos - 1 : pos].isspace() else []
    if not near or near[-1].rstrip(".") not in _MONTH_OF or text[end : end + 1] in tuple("%-–:/°"):
        return None
    return None if _counts(_next_word(text, end)) else (numerals.ordinal(_bare(digits)), end)


def _counts(word: str) -> bool:
    return word in _COUNTED or word in _CROWDS or (word.endswith("s") and len(word) > 2 and word not in _NOT_COUNTED)


def is_year(text: str, pos: int, end: int) -> bool:
    """Whether the four digits from `pos` to `end` read like a year: by their size and the words around them."""
    value = int(text[pos:end])
    if not 1100 <= value <= 2099 or text[end : end + 1] == "%":
        return False
    before, after = earlier_word(text, pos), _next_word(text, end)
    if after in _COUNTED or before in _COUNT_AFTER:
        return False
    if before in _YEAR_AFTER:
        return value >= 1950 or not _counts(after)
    return value >= 1900 and not _counts(after)


def year_range(text: str, pos: int, dash: int, start: int, end: int) -> str | None:
    """Two years with a dash between, 2019-2021 or 2019-21, in words; None where they read like amounts."""
    first, second = text[pos:dash], text[start:end]
    if len(first) != 4 or not first.isdigit() or not second.isdigit() or not is_year(text, pos, dash):
        return None
    if _next_word(text, end) in _COUNTED:
        return None
    if len(second) == 2 and int(second) > int(first[2:]):
        return f"{numerals.year(first)} to {numerals.whole(second)}"
    if len(second) == 4 and int(first) < int(second) <= 2099:
        return f"{numerals.year(first)} to {numerals.year(second)}"
    return None
