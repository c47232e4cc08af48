"""What sound cannot settle: lines that were not made out where somebody spoke, and speech that is no line."""

from __future__ import annotations

from collections.abc import Sequence
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

    Those are the gap behind the line before and the one before the line behind, where somebody speaks long enough.
    """
    doubtful = {}
    for number, match in enumerate(matches):
        if match is not None or not found:
            continue
        before = next((one for one in reversed(matches[:number]) if one), None)
        behind = next((one for one in matches[number + 1 :] if one), None)
        places = {_at(found, recorded.end(before.last)) if before else 0}
        places.add(_at(found, recorded.start(behind.first)) if behind else len(found) - 1)
        fitting = {at for at in places if found[at].speech >= HALF * seconds(script[number])}
        if fitting:
            doubtful[number] = fitting
    return doubtful


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
