"""Gathers what a listener trips over in a script, from figures to repetitions."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from scriptkit.computing.delivery import ear, repetition, signposts, terms
from scriptkit.computing.delivery.lines import lines
from scriptkit.computing.hearing.clauses import Cues
from scriptkit.model import Card, Episode, Judgement, Segment, Stumble, Timeline

Words = Mapping[str, tuple[str, ...]]


def find(
    segments: Sequence[Segment],
    judgements: Mapping[str, Sequence[Judgement]],
    timeline: Timeline,
    cards: Sequence[Card],
    episode: Episode,
    words: Words,
    cues: Cues,
) -> tuple[Stumble, ...]:
    """Everything that a listener trips over, each with its place and what would help."""
    heard = lines(segments)
    return (
        *ear.figures(heard, judgements, words, cues),
        *ear.misheard_words(heard, episode, words),
        *ear.misheard_numbers(heard, judgements, cards),
        *ear.cues(heard, words),
        *terms.find(heard, episode, words),
        *signposts.find(heard, episode, cards, timeline.segments, words),
        *repetition.find(heard, episode, words),
    )
