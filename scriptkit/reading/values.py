"""Shapes of single values: texts, ids, numbers, times, dates and choices, each typed by what it is."""

from __future__ import annotations

import re
from types import MappingProxyType
from typing import Any

from scriptkit import times
from scriptkit.model import Extent
from scriptkit.reading import faults
from scriptkit.reading.nodes import Node
from scriptkit.reading.shapes import ID, MISSING, Mapped, Reader, Shape
from scriptkit.wording import grade_parts

_COLOUR = re.compile(r"#(?:[0-9A-Fa-f]{3}|[0-9A-Fa-f]{6})")
A_DAY = 86_400  # seconds
_NUMBER = re.compile(r"[-+]?([0-9]{1,15}(\.[0-9]{0,15})?|\.[0-9]{1,15})")
_PERCENT = re.compile(r"([0-9]{1,3}(?:\.[0-9]{1,6})?) ?%")
_DAY = re.compile(r"([0-9]{4})(?:-(0[1-9]|1[0-2])(?:-(0[1-9]|[12][0-9]|3[01]))?)?")
_FLAGS = {"true": True, "yes": True, "on": True, "false": False, "no": False, "off": False}
_LONGEST_MONTH = (31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)


class Words(Shape):
    """A text as written, whatever YAML would make of it."""

    wanted = "a text"

    def read(self, node: Node, reader: Reader, what: str) -> Any:
        """The text, which knows its place."""
        if node.kind != "text" or node.nothing:
            return reader.wrong(node, what, self.wanted)
        return node.text(reader.file)

    def schema(self) -> dict[str, Any]:
        """Anything that is no list and no object: an editor's YAML takes `10.5555` for a number."""
        return {"type": ["string", "number", "boolean"]}


class Grade(Words):
    """A grade; a real minus or a dash behind it is kept as the hyphen that grades are compared by."""

    wanted = "a grade such as A-"

    def read(self, node: Node, reader: Reader, what: str) -> Any:
        """The grade at the place where the author wrote it."""
        value = super().read(node, reader, what)
        return value if value is MISSING else value.like("".join(grade_parts(value)))


class Grades(Mapped):
    """Grades with the lowest score that earns each; their signs are kept as those of an exercise's grade are."""

    def read(self, node: Node, reader: Reader, what: str) -> Any:
        """A mapping in the order written."""
        value = super().read(node, reader, what)
        if value is MISSING:
            return value
        return MappingProxyType({grade.like("".join(grade_parts(grade))): least for grade, least in value.items()})


class Path(Words):
    """A path of a file, kept as written; `files` decides whether it may be opened."""

    wanted = "a file name"


class Ident(Words):
    """An id."""

    wanted = "an id"

    def read(self, node: Node, reader: Reader, what: str) -> Any:
        """The id."""
        value = super().read(node, reader, what)
        if value is not MISSING and not ID.fullmatch(value):
            reader.findings.append(faults.bad_id(reader.place(node), value))
            return MISSING
        return value

    def schema(self) -> dict[str, Any]:
        """A text of the letters that an id may have."""
        return {"type": ["string", "integer"], "pattern": f"^{ID.pattern}$"}


class Number(Shape):
    """A number within bounds; `whole` for counts."""

    def __init__(self, low: float, high: float, *, whole: bool = False) -> None:
        self.low, self.high, self.whole = low, high, whole
        self.wanted = "a whole number such as 12" if whole else "a number such as 12 or 0.5"

    def read(self, node: Node, reader: Reader, what: str) -> Any:
        """The number."""
        written = node.value.strip() if node.kind == "text" else ""
        if not _NUMBER.fullmatch(written) or (self.whole and float(written) % 1):
            return reader.wrong(node, what, self.wanted)
        value = float(written)
        if not self.low <= value <= self.high:
            bounds = f"{self.low:,.10g} to {self.high:,.10g}"
            reader.findings.append(faults.out_of_range(reader.place(node), what, written, bounds))
            return MISSING
        return int(value) if self.whole else value

    def schema(self) -> dict[str, Any]:
        """A number, in quotes or not."""
        kind = "integer" if self.whole else "number"
        return {
            "anyOf": [
                {"type": kind, "minimum": self.low, "maximum": self.high},
                {"type": "string", "pattern": r"^[-+]?[0-9.]+$"},
            ]
        }


class Weight(Number):
    """A weight in any unit; a percent sign behind it says nothing more."""

    def __init__(self) -> None:
        super().__init__(0, 1e6)

    def read(self, node: Node, reader: Reader, what: str) -> Any:
        """A number from 0 on."""
        share = _percentage(node)
        return super().read(node, reader, what) if share is None else round(100 * share, 9)

    def schema(self) -> dict[str, Any]:
        """A text or a number."""
        return {"type": ["string", "number"]}


class Flag(Shape):
    """Yes or no."""

    wanted = "true or false"

    def read(self, node: Node, reader: Reader, what: str) -> Any:
        """True or false."""
        value = _FLAGS.get(node.value.strip().lower()) if node.kind == "text" else None
        return reader.wrong(node, what, self.wanted) if value is None else value

    def schema(self) -> dict[str, Any]:
        """A boolean, or a word for it."""
        return {"anyOf": [{"type": "boolean"}, {"enum": list(_FLAGS)}]}


class Seconds(Shape):
    """A length of time: 9:30, 570s, 9m30s, 570."""

    wanted = "a time such as 9:30, 45s or 9m30s"

    def read(self, node: Node, reader: Reader, what: str) -> Any:
        """Seconds."""
        value = times.seconds(node.value) if node.kind == "text" else None
        if value is None:
            return reader.wrong(node, what, self.wanted)
        if value > A_DAY:
            reader.findings.append(faults.out_of_range(reader.place(node), what, node.value, "at most a day"))
            return MISSING
        return value

    def schema(self) -> dict[str, Any]:
        """A text or a number."""
        return {"type": ["string", "number"]}


def _percentage(node: Node) -> float | None:
    found = _PERCENT.fullmatch(node.value.strip()) if node.kind == "text" else None
    return float(found[1]) / 100 if found and float(found[1]) <= 100 else None


class Length(Seconds):
    """A length of time or a share of the runtime, as an Extent."""

    wanted = "a time such as 45s, or a share such as 15%"

    def read(self, node: Node, reader: Reader, what: str) -> Any:
        """An Extent with seconds or a share."""
        share = _percentage(node)
        if share is not None:
            return Extent(share=share)
        value = super().read(node, reader, what)
        return value if value is MISSING else Extent(seconds=value)


class Share(Number):
    """A share of 0 to 1, also written as a percentage."""

    def __init__(self) -> None:
        super().__init__(0, 1)
        self.wanted = "a share of 0 to 1, or a percentage"

    def read(self, node: Node, reader: Reader, what: str) -> Any:
        """A number of 0 to 1."""
        share = _percentage(node)
        return super().read(node, reader, what) if share is None else share

    def schema(self) -> dict[str, Any]:
        """A text or a number."""
        return {"type": ["string", "number"]}


class Choice(Words):
    """One of some words; case does not matter."""

    def __init__(self, what: str, options: tuple[str, ...]) -> None:
        self.what, self.options = what, options
        self.wanted = "one of " + ", ".join(options)

    def read(self, node: Node, reader: Reader, what: str) -> Any:
        """The word as we spell it, at the place where the author wrote it."""
        value = super().read(node, reader, what)
        if value is MISSING:
            return value
        for option in self.options:
            if option.lower() == value.lower().strip():
                return value.like(option)
        nearest = reader.near(value, self.options)
        known = ", ".join(self.options)
        reader.findings.append(faults.unknown_word(reader.place(node), self.what, value, nearest, known))
        return MISSING

    def schema(self) -> dict[str, Any]:
        """One of the words, also where an editor's YAML takes it for a number or for nothing."""
        numbers = [float(one) if "." in one else int(one) for one in self.options if _NUMBER.fullmatch(one)]
        return {"enum": [*self.options, *numbers, *([None] if "null" in self.options else [])]}


class Day(Words):
    """A date as YYYY-MM-DD, perhaps without day or month."""

    wanted = "a date such as 2026-03-02"

    def read(self, node: Node, reader: Reader, what: str) -> Any:
        """The date as written."""
        value = super().read(node, reader, what)
        if value is MISSING:
            return value
        return value if is_day(value) else reader.wrong(node, what, self.wanted)


class Colour(Words):
    """A colour as #RRGGBB or #RGB."""

    wanted = 'a colour such as "#1C1F1E", in quotes, since # begins a comment'

    def read(self, node: Node, reader: Reader, what: str) -> Any:
        """The colour as written."""
        value = super().read(node, reader, what)
        if value is MISSING:
            return value
        return value if _COLOUR.fullmatch(value.strip()) else reader.wrong(node, what, self.wanted)

    def schema(self) -> dict[str, Any]:
        """A text of that form."""
        return {"type": "string", "pattern": _COLOUR.pattern}


def is_day(written: str) -> bool:
    """Whether a text is a date as YYYY-MM-DD, perhaps without day or month."""
    found = _DAY.fullmatch(written)
    return found is not None and _is_in_month(*found.groups())


def _is_in_month(year: str, month: str | None, day: str | None) -> bool:
    """Whether the month of that year has that day."""
    if day is None or month is None:
        return True
    leap = int(year) % 4 == 0 and (int(year) % 100 != 0 or int(year) % 400 == 0)
    return int(day) <= _LONGEST_MONTH[int(month) - 1] - (month == "02" and not leap)
