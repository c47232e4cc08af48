"""What the author gives for the day of the shoot, under `day:` of the outline."""

from typing import NamedTuple

from scriptkit.model.base import NOWHERE, Spot
from scriptkit.places import Text


class Break(NamedTuple):
    """A break of the day. `start` is in seconds since midnight; None where it may come when it fits best."""

    start: float | None = None
    length: float = 0.0
    at: Spot = NOWHERE


class CallSheet(NamedTuple):
    """The day of the shoot as the author gives it. Times of day are seconds since midnight, lengths are seconds.

    `setup` is what a new place costs, `side` the camera on another side of it, `reframe` another framing, `kit` other
    things, `people` other people or clothes; `rest` lies between heavy sets of one person. `card_speed` is the
    sustained speed of the cards in MB a second.
    """

    on: str = ""
    call: float | None = None
    hours: float | None = None
    until: float | None = None
    breaks: tuple[Break, ...] = ()
    address: str = ""
    parking: str = ""
    contacts: tuple[Text, ...] = ()
    hospital: str = ""
    emergency: str = ""
    weather: str = ""
    note: str = ""
    setup: float = 900.0
    side: float = 480.0
    reframe: float = 240.0
    kit: float = 300.0
    people: float = 180.0
    rest: float = 180.0
    takes: int = 3
    mbps: float | None = None
    card_gb: float | None = None
    cards: int | None = None
    card_speed: float | None = None
    at: Spot = NOWHERE
