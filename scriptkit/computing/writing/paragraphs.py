"""A rendered text back to paragraphs: its codes taken out, each word with the place it comes from."""

import re
from typing import NamedTuple

from scriptkit import codes
from scriptkit.computing.writing.filling import Expanded
from scriptkit.places import Text

_CODE = re.compile("([\x01\x03\x06])(-?\\d+)\x02|\x04(\\d+)\x02([^\x05]*)\x05")
_INNER_CODE = re.compile("[\x01\x03\x06]-?\\d+\x02")
_WORD = re.compile(r"\S+")
_CLOSES = tuple(".,;:!?)…")

Piece = tuple[int, Text | None, int]


class RawParagraph(NamedTuple):
    """A paragraph before it is split into sentences: its words, the pieces they come from, and marks at offsets."""

    text: str
    pieces: list[Piece]
    marks: list[tuple[int, str, int]]  # offset in text, what stands between the brackets, offset in the file
    number: int


def raw_paragraphs(expanded: Expanded, *, is_stock: bool) -> list[RawParagraph]:
    """Take the codes out of a rendered text: paragraphs of words, each word with the place it comes from.

    In stock text a place is an offset in words of the outline, where a value is such words, and none elsewhere;
    in an author's file it is an offset in that file, for a value that of its tag.
    """
    made: list[RawParagraph] = []
    builder = _Builder(0, moves=False)
    position = 0
    for found in [*_CODE.finditer(expanded.text), None]:
        chunk = expanded.text[position : found.start() if found else len(expanded.text)]
        if chunk:
            builder.words(chunk)
        if found is None:
            break
        position = found.end()
        if found[1] == codes.PARAGRAPH:
            builder.finish(made)
            builder = _Builder(int(found[2]), moves=False)
        elif found[1] == codes.AT:
            builder.stand(None, -1 if is_stock else int(found[2]), moves=not is_stock)
        elif found[1] == codes.VALUE:
            known = expanded.values[int(found[2])] if is_stock and int(found[2]) >= 0 else None
            if isinstance(known, Text):
                builder.stand(known, 0, moves=True)
            else:
                builder.stand(None, -1 if is_stock else builder.at, moves=False)
        else:
            builder.mark(_INNER_CODE.sub("", found[4]), int(found[3]))
    builder.finish(made)
    return made


class _Builder:
    """Gathers the words and marks of one paragraph."""

    def __init__(self, number: int, *, moves: bool) -> None:
        self.number = number
        self.value: Text | None = None
        self.at, self.moves = -1, moves
        self.parts: list[str] = []
        self.pieces: list[Piece] = []
        self.marks: list[tuple[int, str, int]] = []
        self.size = 0
        self.space = False
        self.after_mark = False

    def stand(self, value: Text | None, at: int, *, moves: bool) -> None:
        """What follows stands at offset `at` of the file or of a value; all of it stands there unless it `moves`."""
        self.value, self.at, self.moves = value, at, moves

    def words(self, chunk: str) -> None:
        """Add text."""
        if chunk[0].isspace():
            self.space = True
        for found in _WORD.finditer(chunk):
            word = found[0]
            self.space = self.space or found.start() > 0
            if self.space and self.size and not (self.after_mark and word.startswith(_CLOSES)):
                self.parts.append(" ")
                self.size += 1
            self.space = self.after_mark = False
            self.pieces.append((self.size, self.value, self.at + found.start() if self.moves else self.at))
            self.parts.append(word)
            self.size += len(word)
        if chunk[-1].isspace():
            self.space = True
        if self.moves:
            self.at += len(chunk)

    def mark(self, raw: str, at: int) -> None:
        """Add a mark."""
        self.marks.append((self.size, raw, at))
        self.after_mark = True

    def finish(self, made: list[RawParagraph]) -> None:
        """Close the paragraph; an empty one vanishes."""
        text = "".join(self.parts)
        if text or self.marks:
            made.append(RawParagraph(text, self.pieces, self.marks, self.number))
