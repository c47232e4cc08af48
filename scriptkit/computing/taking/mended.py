"""Lines said wrongly in their place and rightly elsewhere: nothing to record again, a cut to make."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from scriptkit.computing.taking import aligning, differing
from scriptkit.computing.taking.added import Extra
from scriptkit.computing.taking.aligning import RUN
from scriptkit.computing.taking.hearing_out import Recorded, Spoken
from scriptkit.model import TakeChange
from scriptkit.times import clock

TRIED = 20  # places at which a line is looked for
CELLS = 200_000  # comparisons of two words that one line may cost, so that a long one is looked for at fewer places
ENOUGH = 0.8  # share of a line's words that have to be there

Runs = Mapping[tuple[str, ...], Sequence[tuple[int, Extra]]]


def mend(
    changes: Sequence[TakeChange],
    script: Sequence[Spoken],
    extras: Sequence[Extra],
    recorded: Recorded,
    watched: differing.Watched,
) -> list[TakeChange]:
    """The changes, with those that another try of the same line puts right told as a cut to make."""
    runs = _runs(extras, recorded)
    lines = {(one.segment.id, one.at): one for one in script}
    right: dict[tuple[str, int], float | None] = {}
    made = []
    for change in changes:
        key = (change.segment, change.line)
        line = lines.get(key)
        if change.weight == "wording" or line is None or change.kind == "order":
            made.append(change)
            continue
        if key not in right:
            right[key] = _said_rightly(line, runs, recorded, watched)
        at = right[key]
        what = f"{change.what}; it was said as written at {clock(at)}, so cut that in" if at is not None else ""
        made.append(change._replace(weight="cut", what=what) if what else change)
    return made


def _runs(extras: Sequence[Extra], recorded: Recorded) -> Runs:
    """Where each run of words stands in the stretches that are another try at a line."""
    found: dict[tuple[str, ...], list[tuple[int, Extra]]] = {}
    for extra in extras:
        for at in range(extra.first, extra.end - RUN + 1) if extra.kind == "again" else ():
            found.setdefault(tuple(recorded.keys[at : at + RUN]), []).append((at, extra))
    return found


def _said_rightly(line: Spoken, runs: Runs, recorded: Recorded, watched: differing.Watched) -> float | None:
    """When a line was said with nothing in it that stops a release; of several tries the last."""
    keys = [token.key for token in line.tokens]
    length = len(keys)
    starts = {
        (place - at, extra)
        for at in range(length - RUN + 1)
        for place, extra in runs.get(tuple(keys[at : at + RUN]), ())[-TRIED:]
    }
    tried = min(TRIED, max(1, CELLS // (3 * length * length)))
    for start, extra in sorted(starts, reverse=True)[:tried]:
        low, high = max(extra.first, start - length), min(extra.end, start + 2 * length)
        match = aligning.compare(keys, recorded.keys, low, high)
        if match is None or match.score < ENOUGH * length:
            continue
        whole = differing.stretched(match, extra.first - 1, extra.end, recorded)
        if all(one.weight != "stop" for one in differing.changes(line, whole, recorded, watched)):
            return recorded.start(whole.first)
    return None
