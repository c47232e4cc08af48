"""Looks once through a script for the words that safety is judged by, and keeps the sentences that hold some."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import islice
from typing import TYPE_CHECKING, NamedTuple

from scriptkit.computing.safeguards.phrases import Hit, Phrases, Spot, denied, spots, written
from scriptkit.computing.writing.likeness import plain
from scriptkit.model import Judgement, Risk, Segment, Sentence

if TYPE_CHECKING:
    from scriptkit.computing.safeguards.guarding import Script

WATCHED = ("emergency-signs", "clinician-signs", "diagnoses", "scope-errors", "scope-warnings", "hard-efforts")
EXCEPTIONS = {
    "emergency-signs": "not-signs",
    "clinician-signs": "not-signs",
    "scope-errors": "not-scope",
    "scope-warnings": "not-scope",
}
MOST = 20  # of a sentence; nobody mends more at once
YOU = frozenset("you your you're you've you'll you'd yours yourself".split())


class Seen(NamedTuple):
    """A sentence that holds some of the words, where it stands in its segment, and its words as they are looked at."""

    segment: Segment
    number: int
    sentence: Sentence
    judgement: Judgement
    plain: str
    said: tuple[Spot, ...]
    hits: tuple[Hit, ...]

    def of(self, *lists: str) -> list[Hit]:
        """The words of these lists."""
        return [hit for hit in self.hits if hit.entry.list in lists]

    def words(self) -> set[str]:
        """All words of the sentence."""
        return {spot.word for spot in self.said}

    def speaks_to_viewer(self) -> bool:
        """Whether the viewer is spoken to."""
        return not YOU.isdisjoint(spot.word for spot in self.said) or self.judgement.kind == "instruction"

    def written(self, hit: Hit) -> str:
        """Words of it as the author wrote them."""
        return written(self.sentence.text, self.said, hit)

    def risk(self, kind: str, hit: Hit, hint: str = "") -> Risk:
        """What a check gets to see."""
        place = self.sentence.place_of(self.said[hit.first].start)
        return Risk(kind, self.segment.id, place, self.written(hit), self.sentence.text, hint or hit.entry.hint)


class Lists:
    """The word lists, each made ready when it is first asked for."""

    def __init__(self, words: Mapping[str, Sequence[str]]) -> None:
        self.words = words
        self.watched = Phrases(words, *WATCHED)
        self._made: dict[str, Phrases] = {}
        self._plain: dict[str, tuple[str, ...]] = {}

    def __getitem__(self, name: str) -> Phrases:
        if name not in self._made:
            self._made[name] = Phrases(self.words, name)
        return self._made[name]

    def holds(self, name: str, said: Sequence[Spot]) -> list[Hit]:
        """The words of a list in a sentence that nothing before them denies."""
        return [hit for hit in self[name].find(said) if not denied(said, hit, self["denials"])]

    def hears(self, name: str, plain_words: str) -> bool:
        """Whether an entry of a list is among plain words, letter by letter and whatever denies it."""
        if name not in self._plain:
            self._plain[name] = tuple(f" {plain(one)} " for one in self.words.get(name, ()))
        heard = f" {plain_words} "
        return any(one in heard for one in self._plain[name])


def watch(script: Script, lists: Lists) -> Iterator[Seen]:
    """Every sentence with words of the watched lists, in order."""
    for segment in script.segments:
        rows = zip(segment.sentences, script.judgements[segment.id], script.plain[segment.id], strict=True)
        for number, (sentence, judged, own) in enumerate(rows):
            if lists.watched.may_be_in(own):
                said = spots(sentence.text)
                hits = found_in(said, lists)
                if hits:
                    yield Seen(segment, number, sentence, judged, own, said, hits)


def found_in(said: Sequence[Spot], lists: Lists) -> tuple[Hit, ...]:
    """The watched words of a sentence, the first of them, without those that a phrase of an exception holds."""
    hits = lists.watched.find(said)
    held = {
        name: {number for one in lists[name].find(said) for number in range(one.first, one.last + 1)}
        for name in {EXCEPTIONS[hit.entry.list] for hit in hits if hit.entry.list in EXCEPTIONS}
    }
    kept = (hit for hit in hits if held.get(EXCEPTIONS.get(hit.entry.list, ""), set()).isdisjoint(_span(hit)))
    return tuple(islice(kept, MOST))


def _span(hit: Hit) -> range:
    return range(hit.first, hit.last + 1)
