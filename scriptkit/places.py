"""Where things stand: a file's text, a place in it, and words that know where they were written."""

from __future__ import annotations

import re
from bisect import bisect_right
from typing import NamedTuple


class Place(NamedTuple):
    """A file (relative to the episode folder, `/` between folders), a line and a column, both from 1."""

    file: str
    line: int
    column: int


class SourceFile:
    """The text of one file and the name it goes by in messages; byte-order mark and CR LF are already gone."""

    __slots__ = ("_starts", "name", "text")

    def __init__(self, name: str, text: str) -> None:
        self.name = name
        self.text = text
        self._starts: list[int] | None = None

    def starts(self) -> list[int]:
        """Offsets at which the lines start."""
        if self._starts is None:
            self._starts = [0, *(found.end() for found in re.finditer("\n", self.text))]
        return self._starts

    def place(self, offset: int) -> Place:
        """The place of the character at `offset`."""
        starts = self.starts()
        line = bisect_right(starts, max(0, min(offset, len(self.text))))
        return Place(self.name, line, max(0, offset) - starts[line - 1] + 1)

    def line(self, number: int) -> str:
        """The text of line `number` (from 1); empty where there is no such line."""
        starts = self.starts()
        if not 1 <= number <= len(starts):
            return ""
        end = starts[number] - 1 if number < len(starts) else len(self.text)
        return self.text[starts[number - 1] : end]


class Text(str):
    """Words from an author's file. A `str` in every way, which also knows the span of the file it was read from."""

    __slots__ = ("end", "file", "start")
    file: SourceFile
    start: int
    end: int

    def __new__(cls, value: str, file: SourceFile, start: int, end: int) -> Text:
        """Words `value`, written in `file` from offset `start` to `end`."""
        text = super().__new__(cls, value)
        text.file, text.start, text.end = file, start, end
        return text

    def place(self, offset: int = 0) -> Place:
        """The place of the character at `offset` of these words, found by following them through the source."""
        raw = self.file.text[self.start : self.end]
        if raw.startswith(self):
            return self.file.place(self.start + offset)
        return self.file.place(self.start + follow(self, raw, offset))

    def like(self, value: str) -> Text:
        """Other words that stand at the same place."""
        return Text(value, self.file, self.start, self.end)


def follow(text: str, raw: str, offset: int) -> int:
    """The offset in `raw` of the character at `offset` of `text`, where `raw` is `text` as it was written:
    with quotes, escapes, indents and line breaks that reading took away. Linear in `raw`.
    """
    at = last = 0
    for wanted in text[: offset + 1]:
        found = at
        if wanted.isspace():
            while found < len(raw) and not raw[found].isspace():
                found += 1
            last = found
            at = found + 1
            continue
        # an escape such as \u00e9 has no such character in the source: stay where we are, the next one will be found
        found = raw.find(wanted, at, at + 400)
        if found >= 0:
            last = found
            at = found + 1
    return last


def nowhere(file: str) -> Place:
    """The place of something missing from a whole file."""
    return Place(file, 1, 1)
