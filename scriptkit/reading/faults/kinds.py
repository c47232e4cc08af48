"""The register of the reading room's kinds of findings, and the decorator that takes a function into it."""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps

from scriptkit.findings import Finding, Kind, kind_name, make
from scriptkit.places import Place

KINDS: dict[str, Kind] = {}
Said = tuple[str, str]  # message and help


def fault(severity: str, stage: str = "draft") -> Callable[[Callable[..., Said]], Callable[..., Finding]]:
    """A function that gives message and help becomes one that takes a place as well and gives the finding."""

    def keep(function: Callable[..., Said]) -> Callable[..., Finding]:
        kind = Kind(kind_name(function), severity, stage, protects=False, maker=function)
        KINDS[kind.name] = kind

        @wraps(function)
        def found(place: Place, *details: str) -> Finding:
            return make(kind, place, *function(*details))

        return found

    return keep


def perhaps(nearest: str, otherwise: str) -> str:
    """`Did you mean ...?` where there is a near name, something else where there is none."""
    return f'Did you mean "{nearest}"?' if nearest else otherwise
