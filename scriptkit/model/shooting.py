"""The day of the shoot as it was worked out: which shot when, what changes between them, what it all takes."""

from typing import NamedTuple

from scriptkit.model.facts import PlannedShot


class Changes(NamedTuple):
    """How often an order of shots changes what, and the seconds that takes, the first set-up with them.

    `sides` are moves of the camera to another side of the same place, `framings` those on the same side.
    """

    places: int = 0
    sides: int = 0
    framings: int = 0
    kits: int = 0
    people: int = 0
    seconds: float = 0.0

    @property
    def every(self) -> int:
        """All changes."""
        return self.places + self.sides + self.framings + self.kits + self.people


class Clip(NamedTuple):
    """One shot on the day, all its takes. Times are seconds after the call.

    From `start` on `changed` is changed (place, side, framing, kit, people), which takes `setup` seconds; then
    somebody rests until `ready`; from there to `end` it is filmed, `rolled` seconds of it with the camera running.
    One take is `length` seconds long, `guessed` where nothing says how long it is.
    """

    shot: PlannedShot
    start: float
    setup: float
    ready: float
    end: float
    changed: tuple[str, ...]
    takes: int
    rolled: float
    guessed: bool = False
    talking: bool = False  # to the camera, so it belongs to the block of talk
    length: float = 0.0

    @property
    def rest(self) -> float:
        """Seconds that everybody waits, because one of them has to rest."""
        return round(self.ready - self.start - self.setup, 3)


class Pause(NamedTuple):
    """A break, in seconds after the call."""

    start: float
    end: float


class Dropped(NamedTuple):
    """A shot that the hours do not hold, and the seconds it would take."""

    shot: PlannedShot
    seconds: float


class Day(NamedTuple):
    """The shots in shooting order, on the clock of the day.

    `exact` where no order has less to change. `window` is how many seconds the author gives, breaks and all; None where
    nothing is said. `gigabytes` is what one copy takes, a reserve with it; None where the data rate is not known.
    """

    clips: tuple[Clip, ...]
    pauses: tuple[Pause, ...]
    dropped: tuple[Dropped, ...]
    changes: Changes
    script: Changes  # of the same shots in script order
    exact: bool
    end: float
    window: float | None
    rolled: float
    gigabytes: float | None = None
    cards: int | None = None  # of the author's size, for one copy
