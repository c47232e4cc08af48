"""What sound cannot settle: lines that were not made out where somebody spoke, and speech that is no line."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from scriptkit.computing.aloud import saying
from scriptkit.computing.taking.aligning import Match
from scriptkit.computing.taking.hearing_out import Recorded, Spoken
from scriptkit.computing.timing import STOCK_LETTERS
from scriptkit.model.recording import Utterance

HALF = 0.5  # of the time that a line takes: with less other speech in its place it was not said
LONG = 10.0  # seconds of other speech from which on it is a part of its own


class Gap(NamedTuple):
    """What lies between two lines in a recording: from when to when; how long somebody speaks, from first to last."""

    start: float
    end: float
    speech: float
    first: float
    last: float


def gaps(matches: Sequence[Match | None], recorded: Recorded, speech: Sequence[Utterance]) -> list[Gap]:
    """What lies before, between and behind the lines that were said, in the order of the recording."""
    spans = sorted((recorded.start(one.first), recorded.end(one.last)) for one in matches if one)
    ends = [0.0, *(end for _, end in spans)]
    starts = [*(start for start, _ in spans), max([ends[-1], *(one.end for one in speech)])]
    made = []
    for low, high in zip(ends, starts, strict=True):
        within = [(max(one.start, low), min(one.end, high)) for one in speech if one.start < high and low < one.end]
        seconds = sum(end - start for start, end in within)
        made.append(Gap(low, high, seconds, within[0][0] if within else low, within[-1][1] if within else low))
    return made


def lines(
    script: Sequence[Spoken], matches: Sequence[Match | None], recorded: Recorded, found: Sequence[Gap]
) -> dict[int, set[int]]:
    """By number the lines that were not made out and may have been said, and the numbers of the gaps they may be in.

    Of lines in a row that were not made out, each may have been said behind the line before them if there is time
    enough for it and for those before it, and likewise before the line behind them.
    """
    doubtful: dict[int, set[int]] = {}
    for first, end in _runs(matches) if found else ():
        before, behind = matches[first - 1] if first else None, matches[end] if end < len(matches) else None
        after = _at(found, recorded.end(before.last)) if before else 0
        until = _at(found, recorded.start(behind.first)) if behind else len(found) - 1
        for gap, numbers in ((after, range(first, end)), (until, range(end - 1, first - 1, -1))):
            needed = 0.0
            for number in numbers:
                needed += HALF * seconds(script[number])
                if needed <= found[gap].speech:
                    doubtful.setdefault(number, set()).add(gap)
    return doubtful


def _runs(matches: Sequence[Match | None]) -> Iterator[tuple[int, int]]:
    """The runs of lines that were not made out: the first, and the one behind the last."""
    first = 0
    for number, match in enumerate([*matches, Match(0, 0, (), 0.0)]):
        if match is not None:
            if first < number:
                yield first, number
            first = number + 1


def added(script: Sequence[Spoken], found: Sequence[Gap], doubtful: dict[int, set[int]]) -> list[Utterance]:
    """Long speech between lines that is more than those which may have been said there."""
    made = []
    for at, gap in enumerate(found):
        meant = sum(seconds(script[number]) for number, places in doubtful.items() if at in places)
        if gap.speech - 2 * meant >= LONG:
            made.append(Utterance(gap.first, gap.last))
    return made


def seconds(line: Spoken) -> float:
    """About how long a line takes."""
    return saying.letters(saying.as_spoken(str(line.sentence.text))) / STOCK_LETTERS


def _at(found: Sequence[Gap], time: float) -> int:
    """The gap that begins or ends at a time."""
    return min(range(len(found)), key=lambda at: min(abs(found[at].start - time), abs(found[at].end - time)))
