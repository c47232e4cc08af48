"""Gathers what may mislead a viewer about who pays, or may hurt one; what no episode needs is not looked for."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from scriptkit.computing.safeguards import hard_efforts, red_flags, scope
from scriptkit.computing.safeguards.watching import Lists, watch
from scriptkit.model import (
    Agreed,
    Card,
    Episode,
    Graded,
    Judgement,
    Passage,
    Risk,
    Segment,
    Source,
    Timeline,
    Worded,
)


class Script(NamedTuple):
    """What is looked at: the episode, what is spoken and shown and when, and the word lists."""

    episode: Episode
    register: Mapping[str, Source]
    grades: Mapping[str, Graded]
    segments: Sequence[Segment]
    plain: Mapping[str, Sequence[str]]  # by segment, each sentence as plain words
    judgements: Mapping[str, Sequence[Judgement]]
    worded: Mapping[str, Sequence[Worded]]
    timeline: Timeline
    cards: Sequence[Card]
    words: Mapping[str, Sequence[str]]


STRONGER = ("never-say", "never-claimed")
WEAKER = {"never-claimed": ("never-say",), "unbacked": ("never-say",), "cure": STRONGER, "clinical": STRONGER}


class Guarded(NamedTuple):
    """What was found."""

    passages: tuple[Passage, ...] = ()
    uncovered_markets: tuple[str, ...] = ()
    agreed: tuple[Agreed, ...] = ()
    sponsor_hash: str = ""
    risks: tuple[Risk, ...] = ()


def guard(script: Script) -> Guarded:
    """All of it, in the order of the script for each kind."""
    passages: tuple[Passage, ...] = ()
    lists = Lists(script.words)
    seen = list(watch(script, lists))
    told: list[Risk] = [
        *red_flags.find(script, seen, lists),
        *scope.find(script, seen, lists),
        *hard_efforts.find(script, seen, lists),
    ]
    key = ""
    markets: tuple[str, ...] = ()
    agreed: tuple[Agreed, ...] = ()
    paid = [segment for segment in script.segments if segment.kind == "sponsor" and segment.sentences]
    if paid:
        from scriptkit import keys  # only an episode with a sponsor needs these
        from scriptkit.computing.safeguards import backing, disclosing, keeping, sponsoring

        passages = disclosing.passages(script, paid)
        markets = disclosing.uncovered(script.episode.markets)
        told += sponsoring.find(script, paid)
        agreed = keeping.find(script, paid)
        told += backing.find(script, paid, lists)
        key = keys.of_passage(sentence.text for segment in paid for sentence in segment.sentences)
    told = _once(told)
    if script.episode.interests or script.episode.sponsor:
        from scriptkit.computing.safeguards import interests

        told += interests.find(script, [one.segment for one in passages if one.told is None], lists)
    return Guarded(passages, markets, agreed, key, tuple(told))


def _once(told: list[Risk]) -> list[Risk]:
    """One for each fault: what has to go for one reason is not told again for a weaker one."""
    of = {kind: {(one.segment, one.sentence) for one in told if one.kind == kind} for kind in STRONGER}
    gone = {kind: set().union(*(of[one] for one in stronger)) for kind, stronger in WEAKER.items()}
    return [one for one in told if (one.segment, one.sentence) not in gone.get(one.kind, ())]
