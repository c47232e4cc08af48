"""Where things stand: a file's text, a place in it, and words that know where they were written."""

from __future__ import annotations

import re
import sys
from bisect import bisect_right
from typing import NamedTuple

# characters that no text should hold: control characters, halves of characters, marks of byte order
NO_TEXT = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x84\x86-\x9f\ud800-\udfff\ufeff\ufffe\uffff]")

LONG_LINE = 300  # characters; ten thousand findings in one line may not repeat all of it ten thousand times


class Place(NamedTuple):
    """A file (relative to the episode folder, `/` between folders), a line and a column, both from 1."""

    file: str
    line: int
    column: int


class SourceFile:
    """The text of one file and the name it goes by in messages; byte-order mark and CR are already gone."""

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
        offset = max(0, min(offset, len(self.text)))
        line = bisect_right(starts, offset)
        return Place(self.name, line, offset - starts[line - 1] + 1)

    def line(self, number: int) -> str:
        """The text of line `number` (from 1); empty where there is no such line."""
        starts = self.starts()
        if not 1 <= number <= len(starts):
            return ""
        end = starts[number] - 1 if number < len(starts) else len(self.text)
        return self.text[starts[number - 1] : end]

    def excerpt(self, place: Place) -> str:
        """The line of a place without the spaces around it; of a very long line what stands around the place."""
        starts = self.starts()
        if not 1 <= place.line <= len(starts):
            return ""
        start = starts[place.line - 1]
        end = starts[place.line] - 1 if place.line < len(starts) else len(self.text)
        if end - start <= LONG_LINE:
            return self.text[start:end].strip()
        at = min(start + place.column - 1, end)
        first, last = max(start, at - LONG_LINE // 2), min(end, at + LONG_LINE // 2)
        dots = ("… " if first > start else "", " …" if last < end else "")
        return self.text[first:last].strip().join(dots)


class Text(str):
    """Words from an author's file. A `str` in every way, which also knows the span of the file it was read from."""

    __slots__ = ("_offsets", "end", "file", "start")
    file: SourceFile
    start: int
    end: int
    _offsets: list[int] | None  # of each character from `start`; None: not asked for yet; empty: written as it is

    def __new__(cls, value: str, file: SourceFile, start: int, end: int) -> Text:  # noqa: PYI034 - a subclass is not meant
        """Words `value`, written in `file` from offset `start` to `end`."""
        text = super().__new__(cls, value)
        text.file, text.start, text.end, text._offsets = file, start, end, None
        return text

    def place(self, offset: int = 0) -> Place:
        """The place of the character at `offset` of these words, found by following them through the source."""
        if self._offsets is None:
            written = self.file.text.startswith(self, self.start)
            quote = self.file.text[self.start - 1 : self.start]
            self._offsets = [] if written else offsets(self, self.file.text[self.start : self.end], quote)
        if self._offsets:
            offset = self._offsets[max(0, min(offset, len(self._offsets) - 1))]
        return self.file.place(self.start + offset)

    def like(self, value: str) -> Text:
        """Other words that stand at the same place."""
        return Text(value, self.file, self.start, self.end)


def place_of(words: str, otherwise: Place, offset: int = 0) -> Place:
    """Where words were written; `otherwise` for words that do not know it."""
    return words.place(offset) if isinstance(words, Text) else otherwise


def offsets(text: str, raw: str, quote: str) -> list[int]:
    """The offset in `raw` of each character of `text`, where `raw` is `text` as it was written.

    Reading took quotes, escapes, indents and line breaks away. What is left the same are the characters that are no
    white space, in their order: an escape in double quotes and a quote written twice in single quotes count as one.
    """
    signs = _signs(raw, quote)
    found: list[int] = []
    number = after = 0
    for character in text:
        if character.isspace() or number >= len(signs):
            found.append(after)
            continue
        found.append(signs[number])
        after = signs[number] + 1
        number += 1
    return found


def _signs(raw: str, quote: str) -> list[int]:
    """Offsets of the characters that are no white space once they are read."""
    if quote == "'":
        return [found.start() for found in re.finditer(r"''|[^\s']", raw)]
    if quote != '"':
        return [found.start() for found in re.finditer(r"\S", raw)]
    escape = r"\\(?:x[0-9A-Fa-f]{2}|u[0-9A-Fa-f]{4}|U[0-9A-Fa-f]{8}|.)|[^\s\\]"
    return [found.start() for found in re.finditer(escape, raw) if not _is_blank(found[0])]


def _is_blank(sign: str) -> bool:
    """Whether an escape stands for white space or for a character that is no text and is read as a space."""
    if len(sign) < 2:
        return False
    if len(sign) == 2:
        return sign[1] in "0abtnvfre N_LP\t"
    number = int(sign[2:], 16)  # noqa: FURB166 - behind the backslash stands YAML's letter, not Python's
    meant = chr(number) if number <= sys.maxunicode else "\ufffd"
    return meant.isspace() or NO_TEXT.match(meant) is not None
