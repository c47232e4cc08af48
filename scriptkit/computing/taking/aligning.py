"""Finds where in a recording each sentence of the script was said: the last good take of it, wherever it was moved to.

Runs of three words that stand in both are where a sentence may have been said. Each such place is compared word by
word, and of all of them the chain is chosen that keeps most of the script in order at the least leaps. Where it leaps,
the places beside the neighbours are compared too: of many lines that are nearly alike each may stand in its own place.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Callable, Sequence
from itertools import pairwise
from math import log
from typing import NamedTuple

RUN = 3  # words in a row that a place begins with
MOST_PLACES = 24  # of one run of words: a run that stands more often says nothing
MOST_CANDIDATES = 6  # places of one sentence that are compared
ENOUGH = 0.45  # share of a sentence's words that have to be there, in order
FILLED = 0.5  # the same for a line between its neighbours
ROUNDS = 3  # of looking beside the neighbours: so many lines in a row, from each side, may all be nearly alike
BACK = 80  # sentences before one that its place is chained to
LEAP, WITHIN = 2.5, 4.0  # what it costs to go back in the recording, and more so within a segment
MISSED = 0.35  # for each word of the script that is passed over
AWAY = 0.15  # for a stretch of the recording that is passed over, by the logarithm of its words


Tell = Callable[[int, int], object]  # is told how many steps are done, and of how many


class Line(NamedTuple):
    """A sentence of the script as it is compared: its words, and the number of its segment."""

    keys: tuple[str, ...]
    segment: int


class Match(NamedTuple):
    """Where a line was said: first and last word of the recording; for each word of the line its word there, or -1."""

    first: int
    last: int
    words: tuple[int, ...]
    score: float  # words that match


def align(lines: Sequence[Line], said: Sequence[str], tell: Tell | None = None) -> list[Match | None]:
    """For each line where it was said; None where it was not."""
    tell = tell or _nobody
    places = _places(said)
    candidates = []
    for number, line in enumerate(lines):
        candidates.append(_candidates(line, places, said))
        tell(number + 1, 2 * len(lines))
    chosen = _chain(lines, candidates, tell)
    for _ in range(ROUNDS):
        if not _beside(lines, chosen, candidates, said):
            break
        chosen = _chain(lines, candidates, _nobody)
    return _filled(lines, chosen, said)


def _nobody(_done: int, _of: int) -> None:
    """Nobody is told."""


def _places(said: Sequence[str]) -> dict[tuple[str, ...], list[int]]:
    found: dict[tuple[str, ...], list[int]] = {}
    for at in range(len(said) - RUN + 1):
        found.setdefault(tuple(said[at : at + RUN]), []).append(at)
    return found


def _candidates(line: Line, places: dict[tuple[str, ...], list[int]], said: Sequence[str]) -> list[Match]:
    """The places where most words of a line stand in order, best first."""
    seeds: list[int] = []
    for at in range(len(line.keys) - RUN + 1):
        found = places.get(line.keys[at : at + RUN], ())
        if len(found) <= MOST_PLACES:
            seeds += [place - at for place in found]
    room = 4 + len(line.keys) // 3
    groups: list[list[int]] = []
    for start in sorted(seeds):
        if groups and start - groups[-1][-1] <= room:
            groups[-1].append(start)
        else:
            groups.append([start])
    groups.sort(key=lambda group: -len(group))
    made = []
    for group in groups[:MOST_CANDIDATES]:
        low, high = max(0, group[0] - room), min(len(said), group[-1] + len(line.keys) + room)
        match = compare(line.keys, said, low, high)
        if match is not None and match.score >= ENOUGH * len(line.keys):
            made.append(match)
    return made


def compare(keys: Sequence[str], said: Sequence[str], low: int, high: int) -> Match | None:
    """The words of a line against a stretch of the recording: the most in one order, as close together as can be."""
    window = said[low:high]
    width = len(window)
    # best[j]: score with the words so far against the first j of the window; a match is 1, a word passed over inside
    # the line .05, one of the recording between two matches .02
    rows: list[list[float]] = [[0.0] * (width + 1)]
    for key in keys:
        before = rows[-1]
        row = [before[0] - 0.05]
        left, corner = row[0], before[0]
        for word, above in zip(window, before[1:], strict=True):
            best = above - 0.05
            if left - 0.02 > best:  # noqa: PLR1730 - the innermost loop: a call would cost more than the rest
                best = left - 0.02
            if word == key and corner + 1.0 > best:
                best = corner + 1.0
            row.append(best)
            left, corner = best, above
        rows.append(row)
    last = rows[-1]
    j = max(range(width + 1), key=lambda place: (round(last[place], 6), place))  # of two takes the later
    places = [-1] * len(keys)
    for i in range(len(keys), 0, -1):
        while j > 0 and rows[i][j] == rows[i][j - 1] - 0.02:
            j -= 1
        if j > 0 and window[j - 1] == keys[i - 1] and rows[i][j] == rows[i - 1][j - 1] + 1.0:
            j -= 1
            places[i - 1] = low + j
    matched = [place for place in places if place >= 0]
    return Match(matched[0], matched[-1], tuple(places), float(len(matched))) if matched else None


class _Step(NamedTuple):
    """What a chain that ends in a place is worth, and the place before it: number of its line, and of the place."""

    worth: float
    link: tuple[int, int] | None


def _chain(lines: Sequence[Line], candidates: Sequence[Sequence[Match]], tell: Tell) -> list[Match | None]:
    """One place for each line, or none, so that the whole is worth most."""
    passed = [0.0]  # what it costs to pass over all lines before each
    for line in lines:
        passed.append(passed[-1] + MISSED * len(line.keys))
    best: list[list[_Step]] = []
    far = _Step(0.0, None)  # the best chain further back than is looked; its cost is taken off where it is used
    for number, line in enumerate(lines):
        if number > BACK:
            gone = number - BACK - 1
            ends = [_Step(step.worth + passed[gone + 1], (gone, at)) for at, step in enumerate(best[gone])]
            far = max([far, *ends], key=lambda step: step.worth)
        row = []
        for match in candidates[number]:
            top, link = far.worth - passed[number] - (LEAP if far.link else 0.0), far.link
            # the nearest first: most of the others are then worth less before the leap is counted; of equals the first
            for earlier in range(number - 1, max(0, number - BACK) - 1, -1):
                skipped = passed[number] - passed[earlier + 1]
                for at in range(len(best[earlier]) - 1, -1, -1):
                    worth = best[earlier][at].worth - skipped
                    if worth < top:
                        continue
                    worth -= _leap(lines[earlier], candidates[earlier][at], line, match)
                    if worth > top or (worth == top and link != far.link):
                        top, link = worth, (earlier, at)
            row.append(_Step(top + match.score, link))
        best.append(row)
        tell(len(lines) + number + 1, 2 * len(lines))
    return _followed(best, candidates, passed)


def _followed(
    best: Sequence[Sequence[_Step]], candidates: Sequence[Sequence[Match]], passed: Sequence[float]
) -> list[Match | None]:
    """The places of the chain that is worth most."""
    ends = [
        (step.worth - (passed[-1] - passed[number + 1]), (number, at))
        for number, row in enumerate(best)
        for at, step in enumerate(row)
    ]
    chosen: list[Match | None] = [None] * len(candidates)
    link: tuple[int, int] | None = max(ends)[1] if ends else None
    while link is not None:
        number, place = link
        chosen[number] = candidates[number][place]
        link = best[number][place].link
    return chosen


def _beside(
    lines: Sequence[Line], chosen: Sequence[Match | None], candidates: Sequence[list[Match]], said: Sequence[str]
) -> bool:
    """Add places beside the neighbours to those of each line that is far from them; whether there were new ones."""
    found = False
    for number, (line, match) in enumerate(zip(lines, chosen, strict=True)):
        before = chosen[number - 1] if number else None
        behind = chosen[number + 1] if number + 1 < len(lines) else None
        room = 3 * len(line.keys) + 12
        windows = []
        if match and before and not 0 < match.first - before.last <= room:
            windows.append((before.last + 1, before.last + 1 + room))
        if match and behind and not 0 < behind.first - match.last <= room:
            windows.append((max(0, behind.first - room), behind.first))
        for low, high in windows:
            near = compare(line.keys, said, low, min(high, len(said)))
            if near and near.score >= ENOUGH * len(line.keys) and near not in candidates[number]:
                candidates[number].append(near)
                found = True
    return found


def _leap(line: Line, place: Match, following: Line, then: Match) -> float:
    """What it costs to go from one place to the next."""
    away = then.first - place.last - 1
    if away >= 0:
        return AWAY * log(1 + away)
    return LEAP + (WITHIN if line.segment == following.segment else 0.0) + (2.0 if then.last >= place.first else 0.0)


def _filled(lines: Sequence[Line], chosen: list[Match | None], said: Sequence[str]) -> list[Match | None]:
    """The lines without a place looked for beside those of their neighbours: short ones, and ones said otherwise."""
    made = _apart(lines, chosen)
    starts = sorted(one.first for one in chosen if one)
    for number, line in enumerate(lines):
        if made[number] is not None or not line.keys:
            continue
        room = 3 * len(line.keys) + 12
        before = next((one for one in reversed(made[:number]) if one), None)
        behind = next((one for one in made[number + 1 :] if one), None)
        windows = []
        if before is not None or number == 0:
            low = before.last + 1 if before else 0
            windows.append((low, min(low + room, _next(starts, low, len(said)))))
        if behind is not None or number == len(lines) - 1:
            high = behind.first if behind else len(said)
            windows.append((max(0, high - room), high))
        found = [match for low, high in windows if low < high and (match := compare(line.keys, said, low, high))]
        best = max(found, key=lambda match: match.score, default=None)
        if best is not None and best.score >= FILLED * len(line.keys) and not _is_taken(best, made):
            made[number] = best
    return made


def _apart(lines: Sequence[Line], chosen: Sequence[Match | None]) -> list[Match | None]:
    """The places without those in which another line stands better: nothing is said twice at once."""
    made = list(chosen)
    order = sorted((number for number, one in enumerate(chosen) if one), key=lambda number: chosen[number].first)  # type: ignore[union-attr]
    for number, other in pairwise(order):
        one, two = made[number], made[other]
        if one and two and two.first <= one.last:
            worse = min(number, other, key=lambda at: made[at].score / len(lines[at].keys))  # type: ignore[union-attr]
            made[worse] = None
    return made


def _next(starts: Sequence[int], low: int, end: int) -> int:
    """Where the next line begins in the recording."""
    at = bisect_left(starts, low)
    return starts[at] if at < len(starts) else end


def _is_taken(match: Match, made: Sequence[Match | None]) -> bool:
    """Whether another line was said there."""
    return any(one is not None and one.first <= match.last and match.first <= one.last for one in made)
