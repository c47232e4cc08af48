"""Signposts: whether the text of an exercise says early which exercise it is."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import groupby

from scriptkit.computing.delivery.lines import ALIKE, Line, words_of
from scriptkit.model import Card, Episode, Stumble, TimedSegment

EARLY = 2  # sentences


def find(
    lines: Sequence[Line],
    episode: Episode,
    cards: Sequence[Card],
    timed: Sequence[TimedSegment],
    words: Mapping[str, tuple[str, ...]],
) -> Iterator[Stumble]:
    """Texts of more than two sentences that never say their exercise's name, or say it late and show it late."""
    little = frozenset(words.get("little-words", ()))
    clocks = {one.id: one for one in timed}
    for name, group in groupby(lines, key=lambda line: line.segment.id):
        own = list(group)
        exercise = episode.exercises.get(own[0].segment.exercise)
        if exercise is None or own[0].segment.drafted or len(own) <= EARLY:
            continue
        wanted = {word[:ALIKE] for word in words_of(exercise.name)}
        wanted = {word for word in wanted if word not in little} or wanted
        said = next((number for number in range(len(own)) if _names(own[number : number + 2], wanted)), None)
        first = own[0].sentence
        if (said is not None and said < EARLY) or _shown(exercise.name, name, cards, clocks[name]):
            continue
        kind, hint = ("unnamed", "") if said is None else ("late", str(said + 1))
        yield Stumble(kind, name, first.place, exercise.name, first.text, hint)


def _names(lines: Sequence[Line], wanted: set[str]) -> bool:
    """Whether two sentences in a row hold half of a name or more, the first of them some of it."""
    heard = [{word[:ALIKE] for word in line.words} & wanted for line in lines]
    return bool(heard[0]) and 2 * len(set().union(*heard)) >= len(wanted)


def _shown(exercise: str, segment: str, cards: Sequence[Card], timed: TimedSegment) -> bool:
    """Whether a card shows the name while the first sentences are spoken."""
    until = timed.sentences[EARLY - 1].end
    name = exercise.lower()
    return any(card.segment == segment and card.start < until and name in card.text.lower() for card in cards)
