"""Shots in an order laid on the clock of the day: set-ups, rests, takes and breaks."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from scriptkit.computing.shooting import arranging, stations
from scriptkit.computing.shooting.stations import Price, Station
from scriptkit.model import CallSheet, Changes, Clip, Pause, PlannedShot

SECONDS_A_CLIP = 10.0  # where nothing says how long it is
HANDLING = 1.5  # slate, settling and another try: what a second of a take takes
A_DAY = 86_400.0


class Laid(NamedTuple):
    """The day on its clock, in seconds after the call."""

    clips: tuple[Clip, ...]
    pauses: tuple[Pause, ...]
    changes: Changes
    end: float


def lay(shots: Sequence[PlannedShot], sheet: CallSheet) -> Laid:
    """Each shot with its set-up, its rest and its takes, and the breaks between two of them."""
    walk = _Walk(sheet, shots)
    for shot, station in zip(shots, walk.stations, strict=True):
        walk.film(shot, station)
    return Laid(tuple(walk.clips), tuple(walk.pauses), walk.changes(), walk.now)


def minutes_of(shots: Sequence[PlannedShot]) -> dict[str, float]:
    """The seconds that the author gives a set-up, by its letter; the most where its shots differ."""
    given: dict[str, float] = {}
    for one in shots:
        if one.shot.minutes is not None:
            given[one.setup] = max(given.get(one.setup, 0.0), one.shot.minutes * 60)
    return given


def taken(shot: PlannedShot, sheet: CallSheet) -> tuple[int, float, bool]:
    """Takes, the seconds of all of them with what goes with it, and whether their length is guessed."""
    takes = shot.shot.takes or sheet.takes
    return takes, takes * (_length(shot) or SECONDS_A_CLIP) * HANDLING, not _length(shot)


def _length(shot: PlannedShot) -> float:
    """Seconds of one take, less than it is seen in slow motion; 0 where nothing says it."""
    return max(shot.duration or 0.0, shot.needs or 0.0) / (shot.slow or 1.0)


def window(sheet: CallSheet) -> float | None:
    """The seconds between the call and the end that the author gives; None where nothing is said."""
    if sheet.hours is not None:
        return sheet.hours
    if sheet.until is None or sheet.call is None:
        return None
    return (sheet.until - sheet.call) % A_DAY


class Prices:
    """What the changes before a shot take, with the author's own minutes for a set-up."""

    def __init__(self, sheet: CallSheet, given: Mapping[str, float]) -> None:
        self.price, self.given = Price.of(sheet), given

    def seconds(self, before: Station | None, after: Station) -> float:
        """Seconds of the changes; of the first set-up where nothing is before."""
        own = self.given.get(after.letter)
        if before is None:
            return self.price.place if own is None else own
        if before == after:
            return 0.0
        whole = stations.seconds(before, after, self.price)
        if own is None or before.letter == after.letter:
            return whole
        return whole - stations.camera(before, after, self.price) + own


class _Walk:
    """The day so far."""

    def __init__(self, sheet: CallSheet, shots: Sequence[PlannedShot]) -> None:
        self.sheet = sheet
        self.stations = stations.stations(shots)
        self.prices = Prices(sheet, minutes_of(shots))
        self.now = 0.0
        self.clips: list[Clip] = []
        self.pauses: list[Pause] = []
        self.breaks = _breaks(sheet, sum(taken(one, sheet)[1] for one in shots))
        self._before: Station | None = None
        self._worked: dict[str, float] = {}  # when each person ended their last heavy set; "" for one nobody named
        self._counts = dict.fromkeys(("place", "side", "framing", "kit", "people"), 0)
        self._setups = 0.0

    def film(self, shot: PlannedShot, station: Station) -> None:
        """Film one shot."""
        setup = self.prices.seconds(self._before, station)
        changed = stations.changes(self._before, station) if self._before else ("place",)
        takes, rolled, guessed = taken(shot, self.sheet)
        # the rest between its own takes, which nothing else can fill
        inside = rolled + ((takes - 1) * self.sheet.rest if shot.heavy else 0.0)
        self._break_before(setup + inside)
        start = self.now
        ready = max(start + setup, self._rested(shot))
        self.now = ready + inside
        length = _length(shot) or SECONDS_A_CLIP
        clip = Clip(shot, start, setup, ready, self.now, changed, takes, rolled, guessed, station.talking, length)
        self.clips.append(clip)
        if shot.heavy:
            for name in arranging.names(shot) or ("",):
                self._worked[name] = self.now
        for one in changed:
            self._counts[one] += 1
        self._setups += setup
        self._before = station

    def changes(self) -> Changes:
        """All that was changed."""
        counts = self._counts
        return Changes(
            places=counts["place"],
            sides=counts["side"],
            framings=counts["framing"],
            kits=counts["kit"],
            people=counts["people"],
            seconds=self._setups,
        )

    def _rested(self, shot: PlannedShot) -> float:
        """When whoever is in a heavy shot or shows a fault has rested enough."""
        if not self._worked or not (shot.heavy or shot.shot.form == "fault"):
            return 0.0
        people = arranging.names(shot)
        ends = [end for name, end in self._worked.items() if not name or not people or name in people]
        return max(ends, default=-self.sheet.rest) + self.sheet.rest

    def _break_before(self, coming: float) -> None:
        """Take the breaks that are nearer to now than to the end of what comes next."""
        while self.breaks and self.now + coming / 2 > self.breaks[0][0] and self.clips:
            _, length = self.breaks.pop(0)
            self.pauses.append(Pause(self.now, self.now + length))
            self.now += length


def _breaks(sheet: CallSheet, filming: float) -> list[tuple[float, float]]:
    """When each break is due, in seconds after the call, and its length; without a time it divides the day."""
    whole = window(sheet) or filming
    due = []
    for number, one in enumerate(sheet.breaks, 1):
        start = whole * number / (len(sheet.breaks) + 1)
        if one.start is not None and sheet.call is not None:
            start = (one.start - sheet.call) % A_DAY
        due.append((start, one.length))
    return sorted(due)
