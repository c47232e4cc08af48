"""Whether a paragraph takes back a part of a claim before it: a caveat that may be cut, but not without a word."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from scriptkit.computing.safeguards.phrases import Phrases, spots
from scriptkit.model import Facts, Paragraph, Segment, Sentence
from scriptkit.wording import quoted

NEAR = 2  # sentences before a caveat of which one may be its claim


class Qualifying:
    """The words that qualify, and what each segment claims."""

    def __init__(self, facts: Facts, words: Mapping[str, Sequence[str]]) -> None:
        self.facts = facts
        self.openings, self.anywhere = Phrases(words, "qualifying-openings"), Phrases(words, "qualifying")

    def lost(self, segment: Segment, gone: Sequence[Paragraph]) -> Iterator[str]:
        """What a viewer would take for more than it is once these paragraphs of a segment are gone."""
        away = {id(sentence) for paragraph in gone for sentence in paragraph.sentences}
        claims = [one.kind == "claim" for one in self.facts.judgements[segment.id]]
        for number, sentence in enumerate(segment.sentences):
            if id(sentence) not in away or not self._qualifies(sentence):
                continue
            before = range(number - 1, max(-1, number - 1 - NEAR), -1)
            claim = next((at for at in before if claims[at]), None)
            if claim is not None and id(segment.sentences[claim]) not in away:
                yield f"it qualifies the claim before it: {quoted(segment.sentences[claim].text, 40)}"
                return

    def _qualifies(self, sentence: Sentence) -> bool:
        said = spots(sentence.text)
        return any(not hit.first for hit in self.openings.find(said)) or bool(self.anywhere.find(said))
