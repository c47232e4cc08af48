"""How firmly each sentence speaks of people in general: results in, probably, may, very uncertain."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from scriptkit.computing.claims import Cues
from scriptkit.model import Episode, Headline, Judgement, Segment, Source, Weight, Worded


def hold(
    segments: Sequence[Segment],
    judgements: Mapping[str, tuple[Judgement, ...]],
    register: Mapping[str, Source],
    words: Mapping[str, tuple[str, ...]],
) -> dict[str, tuple[Worded, ...]]:
    """By segment, one a sentence."""
    return {segment.id: tuple(Worded(0) for _ in segment.sentences) for segment in segments}


def headlines(
    episode: Episode,
    segments: Sequence[Segment],
    weights: Mapping[str, tuple[Weight | None, ...]],
    cues: Cues,
) -> tuple[Headline, ...]:
    """The title, the question and the promises, judged as sentences."""
    return ()
