"""The day of the shoot: the shots that its hours hold, in shooting order, and what cards they fill."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil

from scriptkit.computing.shooting import clock, dropping, ordering
from scriptkit.model import CallSheet, Day, Dropped, Episode, PlannedShot

GB_A_MINUTE = 0.0075  # for each megabit a second
RESERVE = 1.2  # what is recorded beside the takes
FILLED = 0.92  # of a card, before it is changed


def plan(shots: Sequence[PlannedShot], episode: Episode) -> Day:
    """The day that films these shots, with what is usual where the outline has no `day:`."""
    sheet = episode.day or CallSheet()
    sponsor = str(episode.sponsor.segment) if episode.sponsor else ""
    first = ordering.ordered(shots, sheet, sponsor)
    kept = dropping.fitting(first.shots, sheet)
    # without what is dropped another order may have less to change
    best = first if len(kept) == len(first.shots) else ordering.ordered(_as_listed(kept), sheet, sponsor)
    laid, script = clock.lay(best.shots, sheet), clock.lay(_as_listed(kept), sheet)
    if laid.end > clock.lay(kept, sheet).end:  # fewer changes, and more rests that nothing fills
        best, laid = first._replace(shots=kept, exact=False), clock.lay(kept, sheet)
    rolled = sum(one.rolled for one in laid.clips)
    gigabytes = rolled / 60 * sheet.mbps * GB_A_MINUTE * RESERVE if sheet.mbps else None
    return Day(
        clips=laid.clips,
        pauses=laid.pauses,
        dropped=_dropped(first.shots, kept, sheet),
        changes=laid.changes,
        script=script.changes,
        exact=best.exact,
        end=laid.end,
        window=clock.window(sheet),
        rolled=rolled,
        gigabytes=gigabytes,
        cards=ceil(gigabytes / (sheet.card_gb * FILLED)) if gigabytes and sheet.card_gb else None,
    )


def _as_listed(shots: Sequence[PlannedShot]) -> list[PlannedShot]:
    return sorted(shots, key=lambda one: one.number)


def _dropped(shots: Sequence[PlannedShot], kept: Sequence[PlannedShot], sheet: CallSheet) -> tuple[Dropped, ...]:
    """What is dropped, the most needed first, each with its takes and with the changes that it alone asks for."""
    held = {one.number for one in kept}
    if len(held) == len(shots):
        return ()
    clips = clock.lay(shots, sheet).clips
    gone = [Dropped(one.shot, one.end - one.start) for one in clips if one.shot.number not in held]
    least = dropping.NEEDED_LEAST_FIRST
    return tuple(sorted(gone, key=lambda one: (-least.index(dropping.priority(one.shot)), one.shot.number)))
