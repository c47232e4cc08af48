"""What the hours do not hold: which shots go, the least needed first, and of these as few as possible."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations, groupby

from scriptkit.computing.shooting import clock, stations
from scriptkit.model import CallSheet, PlannedShot

NEEDED_LEAST_FIRST = ("nice", "should", "must")
MOST_TRIED = 12  # shots of one priority of which every choice is tried
MOST_LAID = 30_000  # shots laid on a clock for that, all choices together
STOCK_PRIORITY = "must"  # what the author gave no priority is not given up easily


def fitting(shots: Sequence[PlannedShot], sheet: CallSheet) -> tuple[PlannedShot, ...]:
    """Of shots in shooting order those that the hours hold. All where no hours are given."""
    window = clock.window(sheet)
    kept = list(shots)
    if window is None:
        return tuple(kept)
    for priority in NEEDED_LEAST_FIRST:
        if clock.lay(kept, sheet).end <= window:
            break
        kept = _without_some(kept, priority, sheet, window)
    return tuple(_put_back(shots, kept, sheet, window))


def _put_back(
    shots: Sequence[PlannedShot], kept: list[PlannedShot], sheet: CallSheet, window: float
) -> list[PlannedShot]:
    """What of the shots that went fits after all: the most needed first, of these the shortest."""
    there = {one.number for one in kept}
    gone = [one for one in shots if one.number not in there]
    gone.sort(key=lambda one: (-NEEDED_LEAST_FIRST.index(priority(one)), one.duration or 0.0, one.number))
    for one in gone[: MOST_LAID // max(1, len(shots))]:
        tried = [other for other in shots if other.number in there or other is one]
        if clock.lay(tried, sheet).end <= window:
            kept, there = tried, {*there, one.number}
    return kept


def priority(one: PlannedShot) -> str:
    """How much a shot is needed."""
    return str(one.shot.priority) or STOCK_PRIORITY


def _without_some(shots: list[PlannedShot], least: str, sheet: CallSheet, window: float) -> list[PlannedShot]:
    """The shots without as few of one priority as are too many; without all of them where that is not enough."""
    loose = [one for one in shots if priority(one) == least]
    rest = [one for one in shots if priority(one) != least]
    if not loose or clock.lay(rest, sheet).end > window:
        return rest
    if len(loose) <= MOST_TRIED and len(shots) << len(loose) <= MOST_LAID:
        return _fewest(shots, loose, sheet, window)
    return _few(shots, loose, sheet, window)


def _fewest(
    shots: Sequence[PlannedShot], loose: Sequence[PlannedShot], sheet: CallSheet, window: float
) -> list[PlannedShot]:
    """Every choice is tried, the smallest first; of those as small the one that leaves the day fullest."""
    for count in range(1, len(loose)):
        ways: list[tuple[float, int, list[PlannedShot]]] = []
        for gone in combinations(loose, count):
            numbers = {one.number for one in gone}
            kept = [one for one in shots if one.number not in numbers]
            end = clock.lay(kept, sheet).end
            if end <= window:
                ways.append((-end, len(ways), kept))
        if ways:
            return min(ways)[2]
    return _without(shots, loose)


def _few(
    shots: Sequence[PlannedShot], loose: Sequence[PlannedShot], sheet: CallSheet, window: float
) -> list[PlannedShot]:
    """Those that free most go first, as many as it takes; what fits after all comes back."""
    order = _freeing_most_first(shots, {one.number for one in loose}, sheet)
    low, high = 1, len(order)
    while low < high:
        middle = (low + high) // 2
        if clock.lay(_without(shots, order[:middle]), sheet).end <= window:
            high = middle
        else:
            low = middle + 1
    gone = order[:low]
    for one in order[max(0, low - MOST_TRIED) : low]:
        tried = [other for other in gone if other is not one]
        if clock.lay(_without(shots, tried), sheet).end <= window:
            gone = tried
    return _without(shots, gone)


def _freeing_most_first(shots: Sequence[PlannedShot], loose: set[int], sheet: CallSheet) -> list[PlannedShot]:
    """The shots that may go, by the time each takes; a set-up that may go whole is shared out among its shots."""
    laid = clock.lay(shots, sheet)
    freed: list[tuple[float, int, PlannedShot]] = []
    pairs = zip(stations.stations(shots), laid.clips, strict=True)
    for _, group in groupby(pairs, key=lambda pair: pair[0]):
        clips = [clip for _, clip in group]
        whole = all(clip.shot.number in loose for clip in clips)
        share = sum(clip.setup for clip in clips) / len(clips) if whole else 0.0
        freed += [
            (-(clip.end - clip.ready) - share, -clip.shot.number, clip.shot)
            for clip in clips
            if clip.shot.number in loose
        ]
    return [shot for _, _, shot in sorted(freed)]


def _without(shots: Sequence[PlannedShot], gone: Sequence[PlannedShot]) -> list[PlannedShot]:
    numbers = {one.number for one in gone}
    return [one for one in shots if one.number not in numbers]
