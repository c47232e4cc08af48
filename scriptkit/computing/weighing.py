"""Weighs what a claim stands on: the level of each pair of study and claim, and the certainty of the claim."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from scriptkit.model import Episode, Judgement, Segment, Source, Weight


def weigh(
    segments: Sequence[Segment],
    judgements: Mapping[str, tuple[Judgement, ...]],
    register: Mapping[str, Source],
    episode: Episode,
    words: Mapping[str, tuple[str, ...]],
) -> dict[str, tuple[Weight | None, ...]]:
    """By segment, one a sentence; None where no source is linked."""
    return {segment.id: tuple(None for _ in segment.sentences) for segment in segments}
