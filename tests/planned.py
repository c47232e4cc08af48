"""A planned shot for tests that lay shots on frames."""

from __future__ import annotations

from scriptkit.model import PlannedShot, Shot
from scriptkit.places import Place

NOWHERE = Place("outline.yaml", 1, 1)


def planned(number: int, start: float | None) -> PlannedShot:
    """Shot `number`, seen from `start` on; its set-up is one of five."""
    shot = Shot(of="x")
    return PlannedShot(number, "ABCDE"[number % 5], "hang", start, 1.0, shot, False, None, (), (), NOWHERE)
