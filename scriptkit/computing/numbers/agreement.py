"""Holds the numbers of a sentence against those of the sources it names."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from scriptkit.computing.numbers import fitting, misfits
from scriptkit.computing.numbers.fitting import Claimed
from scriptkit.computing.numbers.holdings import Holding, Holdings, Together, described
from scriptkit.computing.numbers.quantities import Quantity, Reading, Vocabulary, read, vocabulary
from scriptkit.computing.numbers.swaps import Directions, directions, swapped
from scriptkit.model import Judgement, Link, NumberTrouble, Segment, Sentence, Source

UNJUDGED = frozenset(("instruction", "question"))


_Trouble = tuple[str, Quantity, str, str]  # kind, number, what the register has, source


class _Register:
    """The register as it is asked for: each link's numbers are gathered once."""

    def __init__(self, register: Mapping[str, Source], words: Mapping[str, Sequence[str]]) -> None:
        self._register = register
        self._held: dict[tuple[str, str], Holdings | None] = {}
        self.known: Vocabulary = vocabulary(words)
        self.directions: Directions = directions(words)

    def of(self, link: Link) -> Holdings | None:
        key = (str(link.id), str(link.finding))
        if key not in self._held:
            source = self._register.get(link.id)
            self._held[key] = Holdings(source, link.finding, self.known) if source else None
        return self._held[key]

    def people(self, links: Sequence[Link]) -> frozenset[str]:
        return frozenset().union(*(described(self._register[link.id]) for link in links if link.id in self._register))


def troubles(
    segments: Sequence[Segment],
    judgements: Mapping[str, tuple[Judgement, ...]],
    register: Mapping[str, Source],
    words: Mapping[str, Sequence[str]],
) -> tuple[NumberTrouble, ...]:
    """Every spoken number that is not the source's, in the order of speech."""
    asked: _Register | None = None
    found: list[NumberTrouble] = []
    for segment in segments:
        for sentence, judgement in zip(segment.sentences, judgements[segment.id], strict=True):
            if sentence.links and judgement.kind not in UNJUDGED and _has_numbers(sentence, judgement):
                asked = asked or _Register(register, words)
                found += (_told(segment, sentence, one) for one in _of_sentence(sentence, judgement, asked))
    return tuple(found)


def _has_numbers(sentence: Sentence, judgement: Judgement) -> bool:
    """Whether there is anything to hold against the sources; a year is no figure of a judgement."""
    return bool(judgement.numbers) or any(map(str.isdigit, sentence.text))


def _told(segment: Segment, sentence: Sentence, trouble: _Trouble) -> NumberTrouble:
    """A trouble with its place in the author's text."""
    kind, number, has, source = trouble
    said = sentence.text[number.start : number.end]
    place = sentence.place_of(number.start)
    return NumberTrouble(kind, segment.id, place, sentence.text, said, has, source)


def _of_sentence(sentence: Sentence, judgement: Judgement, asked: _Register) -> Iterator[_Trouble]:
    """What is wrong with the numbers of one sentence."""
    sources = [one for one in map(asked.of, sentence.links) if one is not None]
    if not sources:
        return
    held: list[Holding] = [*sources, Together(sources)] if len(sources) > 1 else [*sources]
    reading = read(sentence.text, asked.known, asked.people(sentence.links))
    claimed = fitting.claimed(reading, held, opinion=sentence.opinion or judgement.kind == "opinion")
    yield from _unfitting(reading, claimed, held)
    source = ", ".join(dict.fromkeys(one.source for one in held if one.source))
    for number, has in swapped(reading, claimed, held, asked.directions):
        yield "swapped", number, has, source


def _unfitting(reading: Reading, claimed: Sequence[Claimed], held: Sequence[Holding]) -> Iterator[_Trouble]:
    """The numbers that the register does not have; of those that it cannot be held against, the first."""
    source = ", ".join(dict.fromkeys(one.source for one in held if one.source))
    unheld = False
    for one in claimed:
        if one.fit in ("exact", "skip"):
            continue
        kind, has = misfits.verdict(one, reading, claimed, held)
        if not kind or (kind == "unheld" and unheld):
            continue
        unheld = unheld or kind == "unheld"
        yield kind, one.number, has, source
