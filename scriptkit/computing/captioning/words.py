"""Pieces to words, each with its time; what is too long for a line, or written without spaces, to smaller parts."""

import re
from collections.abc import Iterator, Sequence
from functools import lru_cache
from itertools import accumulate, groupby, pairwise
from typing import NamedTuple
from unicodedata import category, east_asian_width

from scriptkit.computing.aloud import saying
from scriptkit.computing.captioning.pieces import Piece
from scriptkit.computing.timing import COMMA, STOCK_LETTERS
from scriptkit.model.captions import LINE

JOINED = "\u200d"  # the sign that makes one picture of two
_SPACE = re.compile(r"[^\S\u00a0\u202f]+")  # what may be broken at
# Chinese and Japanese signs, between which a line may end
_UNSPACED = re.compile("[\u3001-\u30ff\u3400-\u4dbf\u4e00-\u9fff\uf900-\ufaff\uff01-\uff65\U00020000-\U0003ffff]")
_OPENING = frozenset("「『（【〈《〔［｛")
_NOT_FIRST = frozenset("、。，．！？：；・」』）】〉》〕］｝ーっゃゅょぁぃぅぇぉッャュョァィゥェォ々…")
_CUT_AFTER = frozenset("-/_.,;:&=?…–—")


class Word(NamedTuple):
    """A word, or a part of one that may stand on a line of its own.

    `spaced`: there is a space before it. `piece` is the number of its piece, `part` where that stands.
    """

    text: str
    spaced: bool
    start: float
    end: float
    piece: int
    part: tuple[int, int]


def timed(pieces: Sequence[Piece]) -> list[Word]:
    """All words in order. Within a piece its time is shared out by letters as they are spoken, and by commas.

    Left out are pieces in which nothing is heard, and within others what takes a line and more and is not heard: there
    is no time for it.
    """
    found: list[Word] = []
    for number, piece in enumerate(pieces):
        if silent(piece.text):
            continue
        texts = [text for text in _SPACE.split(piece.text) if text]
        spans = piece.words if len(piece.words) == len(texts) else list(_shared(texts, piece.start, piece.end))
        for text, (start, end) in _without_long_silence(list(zip(texts, spans, strict=True))):
            parts = parts_of(text)
            inner = list(_spread([len(part) for part in parts], start, end))
            found += [
                Word(part, not at, *span, number, piece.part)
                for at, (part, span) in enumerate(zip(parts, inner, strict=True))
            ]
    return found


_Timed = tuple[str, tuple[float, float]]


def _without_long_silence(words: Sequence[_Timed]) -> Iterator[_Timed]:
    """The words without runs of pictures and signs that would fill a line."""
    for unheard, run in groupby(words, lambda word: silent(word[0])):
        some = list(run)
        if not unheard or sum(size(text) for text, _ in some) < LINE:
            yield from some


@lru_cache(maxsize=4096)
def silent(text: str) -> bool:
    """Whether nothing of a text is heard, as of dashes and pictures."""
    return not any(one.isalnum() for one in text) and not saying.letters(saying.as_spoken(text))


def _shared(texts: Sequence[str], start: float, end: float) -> Iterator[tuple[float, float]]:
    return _spread([_weight(text) for text in texts], start, end)


def _spread(weights: Sequence[float], start: float, end: float) -> Iterator[tuple[float, float]]:
    """A time shared out by weights; evenly where nothing weighs anything."""
    if not any(weights):
        weights = [1] * len(weights)
    whole = sum(weights)
    edges = [start, *(start + (end - start) * (done / whole) for done in accumulate(weights))]
    return pairwise(edges)


@lru_cache(maxsize=4096)
def _weight(text: str) -> float:
    """How long a word is said, in letters; a comma lasts as long as some."""
    if text.isalpha():
        return len(text)
    return saying.letters(saying.as_spoken(text)) + COMMA * STOCK_LETTERS * saying.commas(text)


def size(text: str) -> int:
    """The room a text takes on a line: never less than its characters, and twice that for wide ones."""
    if text.isascii():
        return len(text)
    return len(text) + sum(east_asian_width(one) in {"W", "F"} for one in text)


def parts_of(text: str) -> list[str]:
    """A word as it is; cut between signs that are written without spaces, and where it is longer than a line."""
    if text.isascii() and len(text) <= LINE:
        return [text]
    parts: list[str] = []
    for sign in _signs(text):
        if parts and not _may_part(parts[-1], sign):
            parts[-1] += sign
        else:
            parts.append(sign)
    return [short for part in parts for short in _cut(part)]


def _signs(text: str) -> list[str]:
    """What a reader sees as one sign each: a letter with its accents, a picture with what is joined to it."""
    signs: list[str] = []
    for one in text:
        flag = "\U0001f1e6" <= one <= "\U0001f1ff"
        if signs and (
            category(one)[0] == "M"
            or one == JOINED
            or signs[-1][-1] == JOINED
            or "\U0001f3fb" <= one <= "\U0001f3ff"
            or "\U000e0020" <= one <= "\U000e007f"
            or (flag and len(signs[-1]) == 1 and "\U0001f1e6" <= signs[-1] <= "\U0001f1ff")
        ):
            signs[-1] += one
        else:
            signs.append(one)
    return signs


def _may_part(before: str, sign: str) -> bool:
    """Whether a line may end between two signs of one word."""
    if not _UNSPACED.match(before[-1]) and not _UNSPACED.match(sign):
        return False
    return before[-1] not in _OPENING and sign[0] not in _NOT_FIRST and category(sign[0]) not in {"Po", "Pe", "Pf"}


def _cut(part: str) -> Iterator[str]:
    """Parts that fit a line: cut behind a hyphen or dot where there is one in the second half, else anywhere."""
    if size(part) <= LINE:
        yield part
        return
    line: list[str] = []
    room = 0
    for sign in _fitting(_signs(part)):
        if room + size(sign) > LINE:
            end = next((at for at in range(len(line), len(line) // 2, -1) if line[at - 1] in _CUT_AFTER), len(line))
            yield "".join(line[:end])
            line = line[end:]
            room = size("".join(line))
        line.append(sign)
        room += size(sign)
    yield "".join(line)


def _fitting(signs: Sequence[str]) -> Iterator[str]:
    """The signs; one that would not fit a line by itself, for all its accents, falls apart."""
    for sign in signs:
        if size(sign) <= LINE:
            yield sign
        else:
            yield from sign
