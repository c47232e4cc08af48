"""What may be cut from a script so that it fits a time, what was chosen, and where things fall on the clock."""

from typing import NamedTuple

from scriptkit.places import Place


class Cut(NamedTuple):
    """A segment or paragraph that the author marked optional; `number` 1 goes first.

    `lines` are those of a paragraph in its file, None where the whole segment goes. `keeps` says why it may not go,
    nothing where it may; `breaks` what a viewer misses or another place leans on.
    """

    segment: str
    number: int
    lines: tuple[int, int] | None
    place: Place
    words: str
    saves: float = 0.0  # seconds, by itself
    keeps: str = ""
    breaks: tuple[str, ...] = ()


class Fit(NamedTuple):
    """What to cut so that the episode takes `wanted` seconds or less.

    Where nothing allowed is enough, `reached` is false, `cuts` is what brings it nearest, and `pace` the pace in words
    a minute at which the rest would fit (None where no pace of a human does). `exact` is false where there were too
    many dependent passages to try each way. `news` are warnings that `check` would then give and does not give now.
    """

    wanted: float
    before: float
    after: float
    cuts: tuple[Cut, ...] = ()
    kept: tuple[Cut, ...] = ()  # optional ones that may not go
    reached: bool = True
    pace: int | None = None
    exact: bool = True
    news: tuple[str, ...] = ()


class Landing(NamedTuple):
    """A sponsor's passage on the clock; the window in seconds, None where it has no such end."""

    segment: str
    start: float
    end: float
    total: float
    after: float | None
    before: float | None


class Still(NamedTuple):
    """A stretch without a change of picture, and what is seen."""

    segment: str
    start: float
    end: float
    seen: str


class PromiseTimes(NamedTuple):
    """When a promise is made and kept."""

    id: str
    text: str
    made: tuple[float, ...]
    paid: tuple[float, ...]


class Outweighs(NamedTuple):
    """A segment that takes more time than its part in the episode: `than` says against what it was held."""

    segment: str
    total: float
    limit: float
    than: str


class Bearings(NamedTuple):
    """Where things fall on the clock."""

    sponsor: tuple[Landing, ...]
    still: Still | None
    promises: tuple[PromiseTimes, ...]
    outweighs: tuple[Outweighs, ...]
