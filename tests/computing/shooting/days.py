"""Shots and spots for tests of the day of the shoot, and what an order of them changes."""

from __future__ import annotations

import random
from collections.abc import Sequence
from itertools import pairwise
from typing import Any

from scriptkit.computing.shooting import stations
from scriptkit.computing.shooting.stations import Price
from scriptkit.model import CallSheet, PlannedShot, Shot
from scriptkit.places import Place

HERE = Place("outline.yaml", 1, 1)
SHEET = CallSheet()


def planned(number: int, setup: str = "A", seconds: float = 10.0, **more: Any) -> PlannedShot:
    """A shot of ten seconds. Of `more`, `talking`, `heavy` and `segment` are the shot's, all else is what is filmed."""
    talking, heavy, segment = more.pop("talking", False), more.pop("heavy", False), more.pop("segment", "hang")
    fit = None if talking else 1
    return PlannedShot(number, setup, segment, 0.0, seconds, Shot(**more), talking, fit, (), (), HERE, heavy=heavy)


def drawn(seed: int, count: int) -> list[PlannedShot]:
    """Shots whose place, side, kit, people and work are drawn by lot; some share a set-up, the first may be talk."""
    chance = random.Random(seed)  # noqa: S311 - nothing secret
    made = []
    for number in range(1, count + 1):
        place, plane, kit, who = (chance.randrange(most) for most in (3, 2, 2, 2))
        kind = chance.choice(("light", "heavy", "fault"))
        talking = chance.random() < 0.15
        shot = planned(
            number,
            "T" if talking else f"{place}{plane}{chance.randrange(2)}",
            talking=talking,
            heavy=kind == "heavy" and not talking,
            place="" if talking else f"place {place}",
            plane="front" if talking else ("side", "front")[plane],
            kit=() if talking else (f"kit {kit}",),
            people=() if talking else (f"person {who}",),
            form="fault" if kind == "fault" and not talking else "",
        )
        made.append(shot)
    return made


def minutes_changed(shots: Sequence[PlannedShot], sheet: CallSheet = SHEET) -> float:
    """What the changes of an order take, by the prices of the call sheet."""
    price = Price.of(sheet)
    return sum(stations.seconds(one, other, price) for one, other in pairwise(stations.stations(shots))) / 60


def in_one_block(shots: Sequence[PlannedShot]) -> bool:
    """Whether the talk comes in one go."""
    at = [place for place, one in enumerate(shots) if one.talking]
    return not at or at[-1] - at[0] == len(at) - 1
