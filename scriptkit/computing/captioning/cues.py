"""Words to captions: the cheapest way to cut them, then each caption on its frames."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import accumulate
from math import ceil, floor, inf
from typing import NamedTuple

from scriptkit import times
from scriptkit.computing.captioning import phrases
from scriptkit.computing.captioning.pieces import Piece
from scriptkit.computing.captioning.words import Word, size, timed
from scriptkit.model.captions import FAST, FASTEST, LINE, LINES, LONGEST, SHORTEST, Caption

GAP_FRAMES = 2
LINGER = 0.5  # seconds that a caption stays behind its last word, and below which a gap is closed to two frames
PAUSE = 2 * LINGER  # over a longer silence no caption stays, and none is joined
# what the ways to cut cost, beside the breaks of `phrases`
EACH, TWO_SENTENCES, TWO_PARAGRAPHS, STRADDLING, TOO_SHORT, TOO_FAST = 30, 25, 100, 50, 400, 150
UNEVEN, BEHIND_FAST = 0.4, 8  # for each character that two lines differ by, for each character a second over FAST
FEW, EACH_FEWER = 14, 4  # characters that look lost on a screen of their own
BROKEN_WORD = 40


class _Cue(NamedTuple):
    """A caption before it lies on frames."""

    lines: tuple[str, ...]
    start: float
    end: float


def captions(
    pieces: Sequence[Piece], rate: Fraction, until: float | None = None, whole: Sequence[str] = ()
) -> tuple[Caption, ...]:
    """The captions of what is said, at `rate` frames a second, none longer on than `until`.

    The texts of `whole`, like a disclosure, are kept in one caption where they fit one.
    """
    words = timed(pieces)
    kept = _kept(words, whole)
    cues: list[_Cue] = []
    for first, last in _runs(words):
        after = words[last].start if last < len(words) else until
        cues += _Run(words[first:last], kept[first:last], after, GAP_FRAMES / float(rate)).cues()
    return tuple(_on_frames(cues, rate, until))


def _runs(words: Sequence[Word]) -> Iterator[tuple[int, int]]:
    """Stretches of words between pauses and changes of segment."""
    first = 0
    for at in range(1, len(words) + 1):
        if at == len(words) or (
            words[at].part[0] != words[at - 1].part[0] or words[at].start - words[at - 1].end >= PAUSE
        ):
            yield first, at
            first = at


def _kept(words: Sequence[Word], whole: Sequence[str]) -> list[bool]:
    """For each word whether the one before it belongs to the same text of `whole`."""
    kept = [False] * len(words)
    spoken = [_plain(word.text) for word in words]
    for text in whole:
        wanted = [plain for plain in map(_plain, text.split()) if plain]
        for at in range(len(words) - len(wanted) + 1 if wanted else 0):
            if spoken[at : at + len(wanted)] == wanted:
                kept[at + 1 : at + len(wanted)] = [True] * (len(wanted) - 1)
    return kept


def _plain(text: str) -> str:
    return "".join(one for one in text.casefold() if one.isalnum())


class _Run:
    """One stretch of words without a pause; between any two of them a caption may end, at a cost."""

    def __init__(self, words: Sequence[Word], kept: Sequence[bool], after: float | None, gap: float) -> None:
        self.words, self.after, self.gap = words, after, gap
        self.room = [0, *accumulate(size(word.text) + word.spaced for word in words)]
        self.breaks = _breaks(words)
        self.ends = [
            cost * 1.5 + 5 * phrases.NEVER * held for cost, held in zip(self.breaks, kept, strict=True)
        ]  # a caption's end parts more than a line's
        self.joins = [0, *accumulate(_joining(words, at) for at in range(len(words)))]

    def cues(self) -> list[_Cue]:
        """The cheapest way to cut the run."""
        count = len(self.words)
        best: list[tuple[float, int, int]] = [(0.0, 0, 0)] + [(inf, 0, 0)] * count
        for last in range(1, count + 1):
            for first in range(last - 1, -1, -1):
                alone = first == last - 1
                if self.width(first, last) > LINES * LINE + 1:
                    break
                if not alone and self.words[last - 1].end - self.words[first].start > LONGEST:
                    break
                cost = best[first][0] + self.cost(first, last)
                if cost >= best[last][0]:
                    continue  # its lines need not be looked at
                split, more = self.lines(first, last)
                if cost + more < best[last][0]:
                    best[last] = (cost + more, first, split)
        found: list[_Cue] = []
        while count:
            _, first, split = best[count]
            texts = [self.text(first, split), self.text(split, count)] if split else [self.text(first, count)]
            found.append(_Cue(tuple(texts), self.words[first].start, self.words[count - 1].end))
            count = first
        return found[::-1]

    def width(self, first: int, last: int) -> int:
        """The room the words take on one line."""
        return self.room[last] - self.room[first] - self.words[first].spaced

    def text(self, first: int, last: int) -> str:
        """The words as one line."""
        return "".join(" " * word.spaced + word.text for word in self.words[first:last]).strip()

    def lines(self, first: int, last: int) -> tuple[int, float]:
        """The word that begins the second line, 0 where one line is enough, and what that costs."""
        if self.width(first, last) <= LINE:
            return 0, 0.0
        best = (0, inf)
        for at in range(last - 1, first, -1):
            above, below = self.width(first, at), self.width(at, last)
            if below > LINE:
                break
            if above <= LINE and (cost := self.breaks[at] + UNEVEN * abs(above - below)) < best[1]:
                best = (at, cost)
        return best

    def cost(self, first: int, last: int) -> float:
        """What it costs to show these words in one caption, whatever its lines."""
        room = self.width(first, last)
        cost = EACH + (self.ends[last] if last < len(self.words) else 0.0)
        if joined := self.joins[last] - self.joins[first + 1]:
            cost += joined + STRADDLING * (not (self.opens(first) and self.opens(last)))
        cost += max(0, FEW - room) * EACH_FEWER
        shown = self.shown(first, last, room)
        if shown < SHORTEST:
            cost += TOO_SHORT
        if room > FAST * shown:
            cost += BEHIND_FAST * min(20.0, room / max(shown, 0.001) - FAST) + TOO_FAST * (room > FASTEST * shown)
        return cost

    def opens(self, at: int) -> bool:
        """Whether a piece begins there."""
        return at in {0, len(self.words)} or self.words[at].piece != self.words[at - 1].piece

    def shown(self, first: int, last: int, room: int) -> float:
        """Seconds that they would stay on."""
        start, end = self.words[first].start, self.words[last - 1].end
        after = self.words[last].start if last < len(self.words) else self.after
        return _last_moment(start, end, room, None if after is None else after - self.gap) - start


def _breaks(words: Sequence[Word]) -> list[float]:
    """What it costs to end a line before each word."""
    costs: list[float] = []
    before: list[str] = []  # the words of this piece so far
    for at, word in enumerate(words):
        if not at or word.piece != words[at - 1].piece:
            before = []
            costs.append(phrases.SENTENCE)
        elif not word.spaced:
            costs.append(phrases.CLAUSE if before[-1][-1] in "、。，！？；：…" else BROKEN_WORD)
        else:
            costs.append(phrases.cost([*before[-3:], word.text], min(3, len(before))))
        before.append(word.text)
    return costs


def _joining(words: Sequence[Word], at: int) -> float:
    """What it costs to have a word in the same caption as the one before it."""
    if not at or words[at].piece == words[at - 1].piece:
        return 0
    return TWO_SENTENCES if words[at].part == words[at - 1].part else TWO_PARAGRAPHS


def _last_moment(start: float, end: float, characters: int, limit: float | None) -> float:
    """When a caption goes: a little behind its last word, later where it needs to be read, never behind `limit`."""
    wanted = max(end + LINGER, start + SHORTEST, start + characters / FAST)
    if limit is not None and limit - wanted < LINGER:
        wanted = limit
    return min(wanted, start + LONGEST)


def _on_frames(cues: Sequence[_Cue], rate: Fraction, until: float | None) -> Iterator[Caption]:
    """Each caption from frame to frame: apart by at least two frames, or closed."""
    starts: list[int] = []
    for cue in cues:
        starts.append(max(times.frame(cue.start, rate), starts[-1] + 1 if starts else 0))
    close = None if until is None else floor(Fraction(until) * rate)
    for at, cue in enumerate(cues):
        start = starts[at]
        after = starts[at + 1] if at + 1 < len(starts) else None
        characters = sum(map(len, cue.lines))
        limit = close if after is None else after - GAP_FRAMES
        needed = ceil(max(Fraction(SHORTEST), Fraction(characters, FASTEST)) * rate)
        if after is not None and limit is not None and limit - start < needed:
            limit = after  # rather closed than too short
        end = _last_frame(cue, start, limit, characters, rate)
        yield Caption(start / rate, max(end, start + 1) / rate, cue.lines)


def _last_frame(cue: _Cue, start: int, limit: int | None, characters: int, rate: Fraction) -> int:
    """The frame on which a caption goes."""
    until = None if limit is None else float(limit / rate)
    wanted = ceil(Fraction(_last_moment(float(start / rate), cue.end, characters, until)) * rate)
    shortest, longest = start + ceil(SHORTEST * rate), start + floor(LONGEST * rate)
    wanted = min(max(wanted, shortest), longest)
    return wanted if limit is None else min(wanted, limit)
