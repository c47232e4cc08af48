"""Shots to shooting order: what one set-up takes together, and these in the order with the least to change."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby, pairwise
from typing import NamedTuple

from scriptkit.computing.shooting import arranging, exactly, nearly, stations
from scriptkit.computing.shooting.stations import Price, Station
from scriptkit.model import CallSheet, PlannedShot

_A_MILLISECOND = 10**6  # of changes, in what is held against each other: it outweighs all that follows
_SPONSOR, _HEAVY = 2, 1  # for each spot that comes before one of these
_TIRED, _SHORT = 2_000, 1_000  # a fault right after heavy work; heavy work again before the rest is over
MOST_GROUPS = 300  # of which some are moved forward


class Ordered(NamedTuple):
    """Shots in shooting order; `exact` where no order has less to change."""

    shots: tuple[PlannedShot, ...]
    exact: bool


class Spot(NamedTuple):
    """Stations that have nothing but the framing between them, with their shots as they will be filmed."""

    station: Station
    parts: tuple[tuple[PlannedShot, ...], ...]  # by station
    early: int

    @property
    def first(self) -> PlannedShot:
        """What is filmed first in it."""
        return self.parts[0][0]

    @property
    def last(self) -> PlannedShot:
        """What is filmed last in it."""
        return self.parts[-1][-1]


def ordered(shots: Sequence[PlannedShot], sheet: CallSheet, sponsor: str = "") -> Ordered:
    """The shots in the order with the least to change; of several the one with sponsor and heavy work early.

    `sponsor` is the id of the sponsor's segment.
    """
    price = Price.of(sheet)
    spots = _spots(shots, sponsor)
    exact = len(spots) <= exactly.MOST
    order = _exact(spots, sheet, price) if exact else _good(spots, price)
    return Ordered(_rested([spots[at] for at in order]), exact)


def _spots(shots: Sequence[PlannedShot], sponsor: str) -> list[Spot]:
    grouped: dict[Station, dict[Station, list[PlannedShot]]] = {}
    for station, shot in zip(stations.stations(shots), shots, strict=True):
        grouped.setdefault(station.spot, {}).setdefault(station, []).append(shot)
    return [_spot(spot, list(held.values()), sponsor) for spot, held in grouped.items()]


def _spot(spot: Station, held: list[list[PlannedShot]], sponsor: str) -> Spot:
    """The shots of a spot by station, the sponsor's first, each kind of work where it belongs."""
    own = [arranging.arranged(_sponsor_first(part, sponsor), arranging.kind) for part in held]
    own.sort(key=lambda part: not any(_is_sponsors(one, sponsor) for one in part))
    parts = tuple(tuple(part) for part in arranging.arranged(own, arranging.kind_of_all))
    shots = [one for part in parts for one in part]
    early = _SPONSOR * any(_is_sponsors(one, sponsor) for one in shots) + _HEAVY * any(one.heavy for one in shots)
    return Spot(spot, parts, early)


def _sponsor_first(shots: Sequence[PlannedShot], sponsor: str) -> list[PlannedShot]:
    return sorted(shots, key=lambda one: not _is_sponsors(one, sponsor))


def _is_sponsors(one: PlannedShot, sponsor: str) -> bool:
    return bool(sponsor) and one.segment == sponsor


def _exact(spots: Sequence[Spot], sheet: CallSheet, price: Price) -> list[int]:
    prices = [[_weighed(one, other, sheet, price) for other in spots] for one in spots]
    return exactly.best(prices, [one.early for one in spots], [one.station.talking for one in spots])


def _weighed(one: Spot, other: Spot, sheet: CallSheet, price: Price) -> int:
    """What changes from a spot to another in one number: seconds first, then how it falls on somebody's strength."""
    if one is other:
        return 0
    taken = stations.seconds(one.station, other.station, price) if one.station != other.station else 0.0
    before, after = one.last, other.first
    tired = 0
    if _right_after_heavy(before, after):
        tired = _TIRED
    elif before.heavy and after.heavy and taken < sheet.rest and arranging.share_somebody(before, after):
        tired = _SHORT
    return round(taken * 1000) * _A_MILLISECOND + tired


def _right_after_heavy(before: PlannedShot, after: PlannedShot) -> bool:
    """Whether somebody shows a fault right after heavy work of their own."""
    return before.heavy and after.shot.form == "fault" and arranging.share_somebody(before, after)


def _rested(spots: Sequence[Spot]) -> tuple[PlannedShot, ...]:
    """The shots of the spots, with a light station moved between heavy work and a fault where the spot has one."""
    order: list[PlannedShot] = []
    for spot in spots:
        parts = list(spot.parts)
        if order and _right_after_heavy(order[-1], parts[0][0]):
            light = [part for part in parts if arranging.kind_of_all(part) == "light"][:1]
            parts = light + [part for part in parts if part not in light]
        order += [one for part in parts for one in part]
    return tuple(order)


def _good(spots: Sequence[Spot], price: Price) -> list[int]:
    """The talk first, in one go; then the rest by a good order, with heavy work early where that costs nothing."""
    talk = [at for at, one in enumerate(spots) if one.station.talking]
    rest = [at for at, one in enumerate(spots) if not one.station.talking]
    made: list[int] = []
    for part in (talk, rest):
        held = [spots[at] for at in part]
        order = nearly.good([one.station for one in held], price, _groups(held))
        made += [part[at] for at in _forward(order, held, price)]
    return made


def _groups(spots: Sequence[Spot]) -> list[int]:
    """For each spot 0 where its place has something that should come early, else 1."""
    early = {one.station.place for one in spots if one.early}
    return [int(one.station.place not in early) for one in spots]


def _forward(order: list[int], spots: Sequence[Spot], price: Price) -> list[int]:
    """The order with what should come early moved to the front, a place or side at a time, where that costs nothing."""
    asked = nearly.pricing([one.station for one in spots], price)
    for key in (lambda at: spots[at].station.place, lambda at: (spots[at].station.place, spots[at].station.plane)):
        groups = [list(group) for _, group in groupby(order, key=key)]
        if len(groups) > MOST_GROUPS:
            break
        front = 0
        for number in range(len(groups)):
            if not any(spots[at].early for at in groups[number]):
                continue
            tried = [*groups[:front], groups[number], *groups[front:number], *groups[number + 1 :]]
            if _joints(tried, asked) <= _joints(groups, asked):
                groups = tried
                front += 1
        order = [at for group in groups for at in group]
    return order


def _joints(groups: Sequence[Sequence[int]], asked: nearly.Pricing) -> float:
    """What the changes between groups take."""
    return sum(asked(one[-1], other[0]) for one, other in pairwise(groups))
