"""Captions put in order, so that each word is there once: sorted, doubles dropped, lines that roll on taken once."""

from __future__ import annotations

from collections import Counter
from itertools import pairwise
from typing import NamedTuple

from scriptkit.model.recording import TimedWord
from scriptkit.reading.recordings.captions import Cue
from scriptkit.reading.recordings.heard import Piece, label, pieces
from scriptkit.reading.recordings.noting import Notes
from scriptkit.reading.recordings.opening import MOST_WORDS, Unreadable
from scriptkit.reading.recordings.sharing import likely_seconds, timed

ROLLING_FROM = 4  # a file rolls where one caption in four, or more, repeats the line before and goes on
MOST_LINES, MOST_WORDS_REPEATED = 8, 60  # that a caption may repeat
LEAST_REPEATED = 4  # words that were broken into other lines; fewer may have been said twice


class Shown(NamedTuple):
    """A caption with its words; `plain` are these without their signs and case."""

    start: float
    end: float
    pieces: list[Piece]
    plain: list[str]


def words(cues: list[Cue], notes: Notes) -> list[TimedWord]:
    """The words of captions, each once, in the order they are spoken."""
    _tell_order(cues, notes)
    speakers = _speakers(cues)
    shown = []
    count = 0
    for cue in sorted(cues, key=lambda one: one.start):
        found = pieces(cue.lines, speakers)
        count += len(found)
        if count > MOST_WORDS:
            raise Unreadable(f"it has more than {MOST_WORDS:,} words, and no recording has")
        if found:
            shown.append(Shown(cue.start, cue.end, found, [_plain(piece.text) for piece in found]))
    shown = _stacked(_without_doubles(shown))
    shown = _unrolled(shown)
    single = sum(len(one.pieces) == 1 for one in shown) * 2 > len(shown)  # a caption for each word
    said: list[TimedWord] = []
    for number, one in enumerate(shown):
        following = shown[number + 1].start if number + 1 < len(shown) else None
        said += timed(one.pieces, one.start, _end(one, following), exact=single)
    return said


def _tell_order(cues: list[Cue], notes: Notes) -> None:
    back = [cue for before, cue in pairwise(cues) if cue.start < before.start]
    if back:
        told = "This caption starts before the one above it"
        told += f", as {len(back) - 1:,} more do." if len(back) > 1 else "."
        rest = "All were put in order by their times. If this is two files joined, name each of them instead."
        notes.note("order", back[0].offset, f"{told} {rest}")


def _speakers(cues: list[Cue]) -> frozenset[str]:
    """The names that stand in capitals before a colon at the start of two lines or more."""
    counted = Counter(name for cue in cues for line in cue.lines if ":" in line and (name := label(line)))
    return frozenset(name for name, times in counted.items() if times > 1)


def _plain(word: str) -> str:
    return "".join(filter(str.isalnum, word)).casefold() or word


def _without_doubles(shown: list[Shown]) -> list[Shown]:
    """Without captions that say the same as one before, at the same time for the most part."""
    kept: list[Shown] = []
    for one in shown:
        for number in range(len(kept) - 1, max(-1, len(kept) - 4), -1):
            before = kept[number]
            both = min(before.end, one.end) - one.start
            shorter = min(before.end - before.start, one.end - one.start)
            if before.plain == one.plain and (before.start == one.start or (both > 0 and both * 2 >= shorter)):
                kept[number] = before._replace(end=max(before.end, one.end))
                break
        else:
            kept.append(one)
    return kept


def _stacked(shown: list[Shown]) -> list[Shown]:
    """Captions that start at once become one, the first one's words first."""
    kept: list[Shown] = []
    for one in shown:
        if kept and kept[-1].start == one.start:
            before = kept.pop()
            line = before.pieces[-1].line + 1
            below = [piece._replace(line=piece.line + line) for piece in one.pieces]
            end = max(before.end, one.end)
            kept.append(Shown(one.start, end, before.pieces + below, before.plain + one.plain))
        else:
            kept.append(one)
    return kept


def _unrolled(shown: list[Shown]) -> list[Shown]:
    """Without the lines that captions repeat, in a file whose captions do; a word said twice elsewhere stays."""
    if not shown:
        return []
    heads = [0, *(_repeated(before, one) for before, one in pairwise(shown))]
    going_on = sum(0 < head < len(one.plain) for head, one in zip(heads, shown, strict=True))
    if not going_on or going_on * ROLLING_FROM < len(shown) - 1:
        return shown
    return [
        one._replace(pieces=one.pieces[head:], plain=one.plain[head:])
        for head, one in zip(heads, shown, strict=True)
        if head < len(one.plain)
    ]


def _repeated(before: Shown, one: Shown) -> int:
    """With how many words a caption begins that are the last lines of the one before, or many of its last words."""
    lines = [
        number
        for number, piece in enumerate(before.pieces)
        if not number or piece.line != before.pieces[number - 1].line
    ]
    size = len(before.pieces)
    starts: set[int] = {*lines[-MOST_LINES:]}
    starts.update(range(max(0, size - MOST_WORDS_REPEATED), size - LEAST_REPEATED + 1))
    for start in sorted(starts):
        length = len(before.plain) - start
        if one.plain[0] == before.plain[start] and one.plain[:length] == before.plain[start:]:
            return length
    return 0


def _end(one: Shown, following: float | None) -> float:
    """When a caption's words end: where the next one starts, if that is before it goes."""
    end = one.end if one.end > one.start else one.start + likely_seconds(one.pieces)
    return end if following is None else max(one.start, min(end, following))
