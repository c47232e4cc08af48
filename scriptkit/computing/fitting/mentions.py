"""Sees to it that a cut takes no claim's only mention of a source."""

from __future__ import annotations

from collections.abc import Sequence

from scriptkit.computing.fitting.passages import Part
from scriptkit.model import Facts, Sentence


class Mentions:
    """For each source that only optional passages mention: which of them, and which segments need it.

    A segment that is cut as a whole takes its claims with it. So a source may go unmentioned only together with every
    segment that speaks of it or whose exercise the outline rests on it.
    """

    def __init__(self, facts: Facts, parts: Sequence[Part]) -> None:
        holding: dict[int, frozenset[int]] = {}  # by sentence, the parts it goes with
        for number, part in enumerate(parts):
            for sentence in part.sentences:
                holding[id(sentence)] = holding.get(id(sentence), frozenset()) | {number}
        self.wholes = {part.segment.id: number for number, part in enumerate(parts) if part.cut.lines is None}
        self.mentions: dict[str, list[frozenset[int]]] = {}
        self.needed: dict[
            str, set[int | None]
        ] = {}  # parts that are the segments in need of it; None for one that stays
        firm: set[str] = set()
        for segment in facts.segments:
            for sentence in segment.sentences:
                for name in _sources(sentence):
                    within = holding.get(id(sentence), frozenset())
                    self.mentions.setdefault(name, []).append(within)
                    self.needed.setdefault(name, set()).add(self.wholes.get(segment.id))
                    firm |= set() if within else {name}
            for name in _rested_on(facts, segment.exercise):
                self.needed.setdefault(name, set()).add(self.wholes.get(segment.id))
        for name in firm:
            del self.mentions[name]

    def hanging(self) -> frozenset[int]:
        """The segments whose cut decides whether a source has to be mentioned."""
        return frozenset(one for name in self.mentions for one in self.needed[name] if one is not None)

    def too_much(self, chosen: frozenset[int]) -> frozenset[int] | None:
        """Of a set that takes a source away from something that stays, the passages of which one has to stay."""
        name = self.taken(chosen)
        return chosen & frozenset().union(*self.mentions[name]) if name else None

    def taken(self, chosen: frozenset[int]) -> str:
        """The first source that a set takes away from something that stays; empty where there is none."""
        for name, mentions in self.mentions.items():
            if all(chosen & within for within in mentions) and not self.needed[name] <= chosen:
                return name
        return ""


def _sources(sentence: Sentence) -> frozenset[str]:
    return frozenset(str(link.id) for link in sentence.links)


def _rested_on(facts: Facts, exercise: str) -> frozenset[str]:
    """The sources that claims, ratings and use of an exercise rest on in the outline."""
    about = facts.episode.exercises.get(exercise)
    if about is None:
        return frozenset()
    links = [link for claim in about.claims for link in claim.source]
    links += [link for rating in about.ratings.values() for link in rating.source]
    links += about.use.source if about.use else ()
    return frozenset(str(link.id) for link in links if link.id in facts.register)
