"""Looks words of evidence up in a text: designs, outcomes, measures, people, what a script says of its sources."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from scriptkit.computing.safeguards.phrases import Phrases, spots

LISTS = ("designs", "outcomes", "measures", "people-kinds", "evidence-said", "no-difference")
MOST_LETTERS = 2000  # of one text that are looked at


class Words(NamedTuple):
    """Words of a list in a text: what kind they are of, and where they start and end."""

    kind: str
    start: int
    end: int


class Lexicon:
    """The word lists that evidence is weighed by. What was looked up once is kept."""

    def __init__(self, words: Mapping[str, Sequence[str]]) -> None:
        self._words = words
        self._phrases = Phrases(words, *LISTS)
        self._known: dict[str, Mapping[str, tuple[Words, ...]]] = {}

    def look(self, text: str) -> Mapping[str, tuple[Words, ...]]:
        """The words of each list in a text, in order; where two stretches overlap, the one that begins first."""
        text = str(text[:MOST_LETTERS])
        found = self._known.get(text)
        if found is None:
            found = self._known[text] = self._find(text)
        return found

    def _find(self, text: str) -> Mapping[str, tuple[Words, ...]]:
        said = spots(text)
        found: dict[str, list[Words]] = {}
        ends: dict[str, int] = {}
        for hit in self._phrases.find(said):
            name = hit.entry.list
            if hit.first >= ends.get(name, 0):
                ends[name] = hit.last + 1
                found.setdefault(name, []).append(Words(hit.entry.hint, said[hit.first].start, said[hit.last].end))
        return {name: tuple(every) for name, every in found.items()}

    def kinds(self, name: str, text: str) -> frozenset[str]:
        """The kinds of a list that a text has words of."""
        return frozenset(one.kind for one in self.look(text).get(name, ()))

    def first(self, name: str, text: str, kind: str = "") -> Words | None:
        """The first words of a list in a text, of one kind if asked."""
        return next((one for one in self.look(text).get(name, ()) if not kind or one.kind == kind), None)

    def names(self, name: str) -> tuple[str, ...]:
        """The entries of a list, each in its first spelling."""
        lines = (line.partition(" = ")[0].split() for line in self._words.get(name, ()))
        return tuple(" ".join(part.partition("/")[0] for part in parts if part != "...") for parts in lines)
