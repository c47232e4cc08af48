"""The keys of `day:`, the day of the shoot: its hours, its breaks, its people, what changes cost, the cards."""

from __future__ import annotations

import re
from typing import Any

from scriptkit import model
from scriptkit.reading import faults
from scriptkit.reading.nodes import Node
from scriptkit.reading.shapes import MISSING, Field, Listed, Reader, Record
from scriptkit.reading.values import A_DAY, Day, Number, Seconds, Words

_TIME_OF_DAY = re.compile(r"([01]?[0-9]|2[0-3])[:.h]([0-5][0-9])")
_BARE = re.compile(r"\d{1,4}(?:\.\d{1,3})?")
_HOURS_AND_MINUTES = re.compile(r"(\d{1,2}):([0-5]\d)")


class TimeOfDay(Words):
    """A time of day, as 09:00, in seconds since midnight."""

    wanted = "a time of day such as 09:00"

    def read(self, node: Node, reader: Reader, what: str) -> Any:
        """Seconds since midnight."""
        found = _TIME_OF_DAY.fullmatch(node.value.strip()) if node.kind == "text" else None
        return int(found[1]) * 3600.0 + int(found[2]) * 60 if found else reader.wrong(node, what, self.wanted)


class Minutes(Seconds):
    """A length of time in which a bare number counts minutes."""

    wanted = "a time such as 15m or 1h30m"
    unit = 60

    def read(self, node: Node, reader: Reader, what: str) -> Any:
        """Seconds."""
        written = node.value.strip() if node.kind == "text" else ""
        value = self.bare(written)
        if value is None:
            return super().read(node, reader, what)
        if value > A_DAY:
            reader.findings.append(faults.out_of_range(reader.place(node), what, written, "at most a day"))
            return MISSING
        return value

    def bare(self, written: str) -> float | None:
        """Seconds of a number without a unit; None where it is something else."""
        return float(written) * self.unit if _BARE.fullmatch(written) else None


class Hours(Minutes):
    """The length of a day: a bare number counts hours, and 7:30 is seven and a half of them."""

    wanted = "a length such as 8h or 7h30m"
    unit = 3600

    def bare(self, written: str) -> float | None:
        """Seconds of hours, or of hours and minutes."""
        found = _HOURS_AND_MINUTES.fullmatch(written)
        return int(found[1]) * 3600.0 + int(found[2]) * 60 if found else super().bare(written)


BREAK = Record(
    model.Break,
    {
        "start": Field(TimeOfDay(), "when; left out, where it fits"),
        "length": Field(Minutes(), "how long", needed=True),
    },
    short="length",
)
DAY = Record(
    model.CallSheet,
    {
        "on": Field(Day(), "the date"),
        "call": Field(TimeOfDay(), "when everybody is there"),
        "hours": Field(Hours(), "how long the day may be, breaks and all"),
        "until": Field(TimeOfDay(), "when it has to be over, in the place of `hours`"),
        "breaks": Field(Listed(BREAK), "the breaks; `[]` for none"),
        "address": Field(Words(), "where to come"),
        "parking": Field(Words(), "gate and parking"),
        "contacts": Field(Listed(Words()), "whom to call, with the number"),
        "hospital": Field(Words(), "the nearest one with an emergency department"),
        "emergency": Field(Words(), "the local emergency number"),
        "weather": Field(Words(), "weather, sunrise, sunset"),
        "note": Field(Words(), "anything else for everybody"),
        "setup": Field(Minutes(), "to set up at a new place; 15m if left out"),
        "side": Field(Minutes(), "to move the camera to another side; 8m if left out"),
        "reframe": Field(Minutes(), "to frame anew on the same side; 4m if left out"),
        "kit": Field(Minutes(), "to bring other kit; 5m if left out"),
        "people": Field(Minutes(), "for other people or clothes; 3m if left out"),
        "rest": Field(Minutes(), "between heavy sets of one person; 3m if left out"),
        "takes": Field(Number(1, 100, whole=True), "how often a shot is filmed that says nothing else; 3 if left out"),
        "mbps": Field(Number(1, 10_000), "data rate of the camera in megabits a second"),
        "card_gb": Field(Number(1, 100_000), "size of a card in gigabytes"),
        "cards": Field(Number(1, 1000, whole=True), "how many cards there are"),
        "card_speed": Field(Number(1, 100_000), "sustained speed of a card in megabytes a second"),
    },
)
