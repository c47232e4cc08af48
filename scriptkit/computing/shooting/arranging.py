"""What comes after what where nothing has to be set up anew: hard work, what fills its rests, and faults."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from typing import TypeVar

from scriptkit.model import PlannedShot

Part = TypeVar("Part")


def kind(one: PlannedShot) -> str:
    """`fault` where one is shown, `heavy` where the load is, else `light`."""
    if one.shot.form == "fault":
        return "fault"
    return "heavy" if one.heavy else "light"


def kind_of_all(shots: Iterable[PlannedShot]) -> str:
    """Of shots that stay together: `heavy` where one is, `fault` where all are."""
    kinds = set(map(kind, shots))
    if "heavy" in kinds:
        return "heavy"
    return "fault" if kinds == {"fault"} else "light"


def arranged(parts: Sequence[Part], kind_of: Callable[[Part], str]) -> list[Part]:
    """Heavy ones first, light ones in the rests between them, and faults last.

    Where no light one is left to stand between the last heavy one and a fault, faults come first, by fresh people.
    """
    heavy, light, faults = ([one for one in parts if kind_of(one) == asked] for asked in ("heavy", "light", "fault"))
    if not heavy or not light:
        return [*light, *faults, *heavy]
    kept = light[-1:] if faults else []
    fillers = light[: len(light) - len(kept)]
    order: list[Part] = []
    for number, one in enumerate(heavy):
        order.append(one)
        order += fillers[number : number + 1] if number < len(heavy) - 1 else fillers[number:]
    return [*order, *kept, *faults]


def share_somebody(one: PlannedShot, other: PlannedShot) -> bool:
    """Whether the same person may be in both; a shot that names nobody may show anybody."""
    ours, theirs = names(one), names(other)
    return not ours or not theirs or not ours.isdisjoint(theirs)


def names(one: PlannedShot) -> frozenset[str]:
    """Who is in a shot, as compared: case and spaces do not count."""
    return frozenset(" ".join(name.casefold().split()) for name in one.shot.people)
