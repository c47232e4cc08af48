"""When each word of a caption is spoken: as its times say, or its share of the caption's time by its letters."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate

from scriptkit.model.recording import TimedWord
from scriptkit.reading.recordings.heard import Piece, letters

SECONDS_A_LETTER = 0.076  # where an end is not told; the stock pace of computing/timing.py


def likely_seconds(pieces: Sequence[Piece]) -> float:
    """How long these words take, where nothing tells it."""
    return SECONDS_A_LETTER * sum(letters(piece.text) for piece in pieces)


def timed(pieces: Sequence[Piece], start: float, end: float, *, exact: bool = False) -> list[TimedWord]:
    """The words of a caption that is spoken from `start` to `end`.

    A time between its words that does not go on from the one before, or lies outside, is as good as none. A word is
    exact where it stands alone between two times, and alone in its caption if such captions are `exact`.
    """
    marks = [(0, start)]
    for number, piece in enumerate(pieces):
        if piece.at is not None and marks[-1][1] <= piece.at <= end:
            if number == marks[-1][0]:
                marks.pop()
            marks.append((number, piece.at))
    if len(marks) == 1 and pieces and pieces[0].at is None:
        return shared([piece.text for piece in pieces], start, end, exact=exact and len(pieces) == 1)
    found: list[TimedWord] = []
    for (first, since), (last, until) in zip(marks, [*marks[1:], (len(pieces), end)], strict=True):
        found += shared([piece.text for piece in pieces[first:last]], since, until, exact=last - first == 1)
    return found


def shared(texts: Sequence[str], start: float, end: float, *, exact: bool = False) -> list[TimedWord]:
    """Words that share a time by their letters."""
    sums = [0, *accumulate(map(letters, texts))]
    rate = (end - start) / (sums[-1] or 1)
    times = [round(start + rate * one, 3) for one in sums[:-1]] + [round(end, 3)]
    return [TimedWord(text, times[number], times[number + 1], exact) for number, text in enumerate(texts)]
