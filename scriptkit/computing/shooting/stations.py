"""Where and how a shot is filmed, what changes from one such station to the next, and what that takes."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from typing import NamedTuple

from scriptkit.model import CallSheet, PlannedShot


class Price(NamedTuple):
    """Seconds that each change takes. A larger change of the camera never takes less than a smaller one."""

    place: float
    side: float
    framing: float
    kit: float
    people: float

    @classmethod
    def of(cls, sheet: CallSheet) -> Price:
        """The author's prices."""
        side = max(sheet.side, sheet.reframe)
        return cls(max(sheet.setup, side), side, sheet.reframe, sheet.kit, sheet.people)


class Station(NamedTuple):
    """Shots that one set-up of camera, kit and people takes. The letter stands for all that the camera is."""

    talking: bool
    place: str
    plane: str
    kit: frozenset[str]
    people: tuple[frozenset[str], str]  # and what they have on
    letter: str

    @property
    def spot(self) -> Station:
        """The same without the framing: stations of one spot have nothing but the framing between them."""
        return self._replace(letter="")


def stations(shots: Sequence[PlannedShot]) -> list[Station]:
    """The station of each shot."""
    talk = {one.setup for one in shots if one.talking}
    return [_station(one, talk) for one in shots]


def _station(one: PlannedShot, talk: Collection[str]) -> Station:
    shot = one.shot
    return Station(
        one.setup in talk or _is_talk(one),
        plain(shot.place),
        shot.plane,
        frozenset(map(plain, shot.kit)),
        (frozenset(map(plain, shot.people)), plain(shot.wear)),
        one.setup,
    )


def _is_talk(one: PlannedShot) -> bool:
    """Whether somebody speaks to the camera and shows no exercise."""
    shot = one.shot
    speaks = shot.sound == "sync" or (one.reps_fit is None and plain(shot.of).startswith("presenter"))
    return speaks and not shot.reps and not shot.form


def plain(words: str) -> str:
    """Words of the author as they are compared: case and spaces do not count."""
    return " ".join(words.casefold().split())


def changes(before: Station, after: Station) -> tuple[str, ...]:
    """What changes from one station to another: one of place, side and framing, and with it kit or people.

    Other kit or other people before the same camera are framed anew as well.
    """
    if before == after:
        return ()
    camera = "place" if before.place != after.place else "side" if before.plane != after.plane else "framing"
    kit = ("kit",) if before.kit != after.kit else ()
    return (camera, *kit, "people") if before.people != after.people else (camera, *kit)


def seconds(before: Station, after: Station, price: Price) -> float:
    """What all that changes takes."""
    if before == after:
        return 0.0
    taken = camera(before, after, price)
    if before.kit != after.kit:
        taken += price.kit
    return taken + price.people if before.people != after.people else taken


def camera(before: Station, after: Station, price: Price) -> float:
    """What the camera alone takes from one station to another one."""
    if before.place != after.place:
        return price.place
    return price.side if before.plane != after.plane else price.framing
