"""Holds the numbers of a sentence against those of the sources it names."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from scriptkit.model import Judgement, NumberTrouble, Segment, Source


def troubles(
    segments: Sequence[Segment],
    judgements: Mapping[str, tuple[Judgement, ...]],
    register: Mapping[str, Source],
) -> tuple[NumberTrouble, ...]:
    """Every spoken number that is not the source's."""
    return ()
