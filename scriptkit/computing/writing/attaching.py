"""Marks to the sentences they belong to."""

from bisect import bisect_right
from collections.abc import Sequence
from typing import NamedTuple

from scriptkit.computing.writing import marks, sentences
from scriptkit.computing.writing.paragraphs import RawParagraph
from scriptkit.model import Claim, Mark, Paragraph, Sentence
from scriptkit.places import Place, SourceFile, Text

_TIMED = frozenset({"shot", "screen", "pause", "hold", "promise", "payoff"})
_WHOLE = marks.SOURCE_MARKS | {"sponsor says"}  # alone in a paragraph, these cover all of the one before


class Home(NamedTuple):
    """Where a text stands: the author's file, or (None) the outline's place for stock words."""

    origin: SourceFile | None
    place: Place


def attach(raw: RawParagraph, read: list[tuple[int, Mark]], home: Home, lines: tuple[int, int]) -> Paragraph:
    """A paragraph of sentences, each with the marks inside it or right after its stop."""
    spans = sentences.split(raw.text) or [(0, len(raw.text))]
    starts = [start for start, _ in spans]
    made = [_sentence(raw, start, end, home) for start, end in spans]
    optional = None
    for offset, mark in read:
        number = max(0, bisect_right(starts, offset - 1) - 1 if offset else 0)
        within = min(max(0, offset - spans[number][0]), spans[number][1] - spans[number][0])
        made[number] = _marked(made[number], mark)._replace(cues=(*made[number].cues, (within, mark)))
        if mark.name == "optional":
            optional = mark.number
    return Paragraph(tuple(made), (), optional, *lines)


def attach_alone(made: list[Paragraph], read: list[tuple[int, Mark]], lines: tuple[int, int]) -> list[Mark]:
    """Marks that are a paragraph by themselves. Gives those that have nothing before them to cover.

    What is said of sentences covers the paragraph before; pictures and pauses stand where they are.
    """
    covering = [mark for _, mark in read if mark.name not in _TIMED]
    loose = tuple((0, mark) for _, mark in read if mark.name in _TIMED)
    before = next((number for number in range(len(made) - 1, -1, -1) if made[number].sentences), None)
    if before is not None:
        for mark in covering:
            made[before] = _covered(made[before], mark)
    if loose:
        made.append(Paragraph((), loose, None, *lines))
    return covering if before is None else []


def _covered(paragraph: Paragraph, mark: Mark) -> Paragraph:
    """A source, an opinion or an aside covers all of it, a caution or a reason the sentence just before."""
    changed = list(paragraph.sentences)
    for number in range(len(changed)) if mark.name in _WHOLE else (-1,):
        changed[number] = _marked(changed[number], mark)
    last = changed[-1]
    changed[-1] = last._replace(cues=(*last.cues, (len(last.text), mark)))
    optional = mark.number if mark.name == "optional" else paragraph.optional
    return paragraph._replace(sentences=tuple(changed), optional=optional)


def _sentence(raw: RawParagraph, start: int, end: int, home: Home) -> Sentence:
    first = max(0, bisect_right(raw.pieces, start, key=lambda piece: piece[0]) - 1)
    last = bisect_right(raw.pieces, end - 1, key=lambda piece: piece[0])
    pieces = tuple((offset - start, value, at) for offset, value, at in raw.pieces[first:last])
    sentence = Sentence(raw.text[start:end], home.place, pieces=pieces, origin=home.origin, home=home.place)
    if home.origin is not None:
        return sentence._replace(place=sentence.place_of(0))
    # a drafted sentence stands where the words it was made from stand
    made_from = next((offset for offset, value, _ in pieces if value is not None), None)
    return sentence if made_from is None else sentence._replace(place=sentence.place_of(max(0, made_from)))


def with_claims(paragraphs: Sequence[Paragraph], claims: Sequence[Claim]) -> tuple[Paragraph, ...]:
    """Drafted paragraphs, each sentence with the claim of the outline that it was made from."""
    made = []
    for paragraph in paragraphs:
        sentences = tuple(_with_claim(sentence, claims) for sentence in paragraph.sentences)
        made.append(paragraph._replace(sentences=sentences))
    return tuple(made)


def _with_claim(sentence: Sentence, claims: Sequence[Claim]) -> Sentence:
    values = {(value.file.name, value.start) for _, value, _ in sentence.pieces if value is not None}
    for claim in claims:
        at = (claim.say.file.name, claim.say.start) if isinstance(claim.say, Text) else None
        if at in values or (not values and sentence.text in claim.say):
            return sentence._replace(claim=claim)
    return sentence


def _marked(sentence: Sentence, mark: Mark) -> Sentence:
    """The sentence with what a mark says of it."""
    if mark.name == "from":
        return sentence._replace(links=(*sentence.links, *mark.links))
    if mark.name == "caution":
        return sentence._replace(cautions=(*sentence.cautions, *mark.ids))
    if mark.name == "opinion":
        return sentence._replace(opinion=True)
    if mark.name == "aside":
        return sentence._replace(aside=True)
    if mark.name == "override":
        return sentence._replace(override=True)
    return sentence._replace(sponsor_says=True) if mark.name == "sponsor says" else sentence
