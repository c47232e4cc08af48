"""JSON text to lists and mappings that know which one of the file they are, whatever stands in it."""

from __future__ import annotations

import json
import re
from collections.abc import Iterable
from typing import Any

from scriptkit.places import SourceFile
from scriptkit.reading.recordings.opening import Unreadable

MOST_RECORDS = 1_500_000  # three for each word that is read
_SIGNS = re.compile(r'"(?:[^"\\]|\\.)*"|[{}]', re.DOTALL)
_BLANK = re.compile(r"[\s,\x1e]*")


class Record(dict[str, Any]):
    """A mapping of the file; `number` counts them by their ends."""

    __slots__ = ("number",)
    number: int


def is_json(file: SourceFile) -> bool:
    """Whether a file looks like JSON."""
    return re.match(r"\s*[\[{]", file.text) is not None


def values(file: SourceFile) -> list[Any]:
    """The values of a file: one as a rule, several where each line is one."""
    counted = 0

    def record(pairs: dict[str, Any]) -> Record:
        nonlocal counted
        if counted >= MOST_RECORDS:
            raise Unreadable(f"it has more than {MOST_RECORDS:,} entries, and no recording has")
        made = Record(pairs)
        made.number = counted
        counted += 1
        return made

    decoder = json.JSONDecoder(object_hook=record, parse_int=float, strict=False)
    found: list[Any] = []
    text = file.text
    at = _skip(text, 0)
    while at < len(text):
        try:
            value, at = decoder.raw_decode(text, at)
        except RecursionError:
            raise Unreadable("its brackets are nested deeper than any recogniser's") from None
        except ValueError as error:
            is_cut = str(error).startswith("Unterminated string")
            raise Unreadable(_fault(file, len(text) if is_cut else getattr(error, "pos", at))) from None
        found.append(value)
        at = _skip(text, at)
    return found


def offsets(file: SourceFile, numbers: Iterable[int]) -> dict[int, int]:
    """Where the mappings with these numbers start."""
    wanted = set(numbers)
    found: dict[int, int] = {}
    opened: list[int] = []
    closed = 0
    for sign in _SIGNS.finditer(file.text) if wanted else ():
        if sign[0] == "{":
            opened.append(sign.start())
        elif sign[0] == "}" and opened:
            start = opened.pop()
            if closed in wanted:
                found[closed] = start
            closed += 1
    return found


def _skip(text: str, at: int) -> int:
    found = _BLANK.match(text, at)
    return found.end() if found else at


def _fault(file: SourceFile, offset: int) -> str:
    place = file.place(offset)
    if not file.text[offset:].strip():
        return "it is JSON that ends in the middle. Save it again, whole"
    return f"it looks like JSON, and cannot be read from line {place.line}, column {place.column} on"
