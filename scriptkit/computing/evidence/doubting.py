"""Gathers what is doubtful about the sources of each sentence: words that misread them, and what goes unsaid."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from scriptkit.computing.evidence.appraising import Appraisal, Said, supporters
from scriptkit.computing.evidence.lexicon import Lexicon, Words
from scriptkit.computing.hearing.clauses import split_words
from scriptkit.computing.numbers.holdings import described
from scriptkit.model import Doubt, Episode, Judgement, Segment, Sentence, Source

THE_PEOPLE = frozenset("people women men students adults workers participants volunteers patients girls boys".split())
Doubts = dict[tuple[str, int], tuple[Doubt, ...]]


class Case(NamedTuple):
    """A sentence with sources, what it says, and what each of its sources gives it."""

    segment: Segment
    number: int
    sentence: Sentence
    judgement: Judgement
    said: Said
    appraisals: tuple[Appraisal, ...]

    def for_it(self) -> list[Appraisal]:
        """The sources in the register that speak for the sentence; all of them, where none is said to support it."""
        return supporters([one for one in self.appraisals if one.known])

    def doubt(self, kind: str, words: Words | None, source: str, has: str = "") -> Doubt:
        """A doubt about some words of the sentence, or about all of it."""
        start, end = (words.start, words.end) if words else (0, len(self.sentence.text))
        return Doubt(kind, self.sentence.place_of(start), self.sentence.text[start:end], str(source), has)


class Talk:
    """What is said and shown in each segment: the kinds of words, looked up when somebody asks."""

    def __init__(self, lexicon: Lexicon) -> None:
        self.lexicon = lexicon
        self._kinds: dict[str, frozenset[str]] = {}
        self._sentences: dict[str, tuple[Sentence, ...]] = {}
        self._shown: dict[str, str] = {}
        self._told: set[tuple[str, str, str]] = set()

    def is_first(self, case: Case, what: str, one: Appraisal) -> bool:
        """Whether a segment is asked for the first time for something that it has to say once of a source."""
        key = (case.segment.id, what, str(one.link.id))
        is_new = key not in self._told
        self._told.add(key)
        return is_new

    def kinds_from(self, case: Case) -> frozenset[str]:
        """What a sentence and the one behind it say of their evidence."""
        near = self.sentences(case.segment)[case.number : case.number + 2]
        return frozenset().union(*(self.lexicon.kinds("evidence-said", one.text) for one in near))

    def kinds(self, segment: Segment) -> frozenset[str]:
        """What a segment says of its evidence and of people, on screen too."""
        known = self._kinds.get(segment.id)
        if known is None:
            texts = [*(sentence.text for sentence in self.sentences(segment)), *_on_screen(segment)]
            known = self._kinds[segment.id] = frozenset().union(
                *(self.lexicon.kinds(name, text) for text in texts for name in ("evidence-said", "people-kinds"))
            )
        return known

    def sentences(self, segment: Segment) -> tuple[Sentence, ...]:
        """The sentences of a segment."""
        if segment.id not in self._sentences:
            self._sentences[segment.id] = segment.sentences
        return self._sentences[segment.id]

    def names(self, sentence: Sentence, source: Source) -> bool:
        """Whether a sentence on a study names its people, by their number or a word of their description."""
        if all(link.id != source.id for link in sentence.links):
            return False
        counts = {f"{one}" for one in (source.n, source.n_per_group) if one is not None}
        return not (described(source) | counts | THE_PEOPLE).isdisjoint(split_words(sentence.text)[0])

    def shown(self, segment: Segment) -> str:
        """All words on screen in a segment."""
        if segment.id not in self._shown:
            self._shown[segment.id] = " ".join(_on_screen(segment))
        return self._shown[segment.id]


def _on_screen(segment: Segment) -> Iterator[str]:
    for paragraph in segment.paragraphs:
        for _, mark in (*paragraph.loose, *(cue for sentence in paragraph.sentences for cue in sentence.cues)):
            if mark.name == "screen" and mark.text:
                yield mark.text


def find(
    cases: Sequence[Case],
    judgements: Mapping[str, Sequence[Judgement]],
    lexicon: Lexicon,
    episode: Episode,
    register: Mapping[str, Source],
) -> Doubts:
    """The doubts of each sentence that has some, by segment and number."""
    from scriptkit.computing.evidence import candour, disagreeing, misreading

    talk = Talk(lexicon)
    found: dict[tuple[str, int], list[Doubt]] = {}
    silent = candour.unsaid(cases, judgements, talk)
    against = disagreeing.find(cases, talk, episode, register)
    for case in cases:
        key = (case.segment.id, case.number)
        doubts = [*misreading.find(case, talk), *silent.get(key, ()), *against.get(key, ())]
        if doubts:
            found.setdefault(key, []).extend(doubts)
    return {key: tuple(every) for key, every in found.items()}
