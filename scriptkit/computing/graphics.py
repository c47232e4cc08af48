"""All that stands on screen: the author's cards, labels of shots, and the source of each number that is spoken."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import zip_longest
from typing import NamedTuple

from scriptkit.computing.publishing.citing import authors
from scriptkit.computing.reading_time import seconds as reads
from scriptkit.model import Card, Graphic, Judgement, Passage, Segment, Source, SpokenGrade, TimedSegment, Timeline
from scriptkit.places import Place

UNSEEN = 0.25  # seconds that nobody misses
TITLE = 40  # letters of a title that stands for an author


class Shown(NamedTuple):
    """What cards are told apart by."""

    segments: Sequence[Segment]
    timeline: Timeline
    cards: Sequence[Card]
    judgements: Mapping[str, Sequence[Judgement]]
    register: Mapping[str, Source]
    grades: Sequence[SpokenGrade]
    passages: Sequence[Passage]


def find(shown: Shown, *, citations: bool = True) -> tuple[Graphic, ...]:
    """All of it in the order in which it comes on screen."""
    kinds = {segment.id: segment.kind for segment in shown.segments}
    paid = {one.card_place for one in shown.passages}
    graded = {(one.place, one.text) for one in shown.grades}
    made = [
        Graphic(
            _kind(card, kinds[card.segment], paid, graded),
            card.segment,
            card.text,
            card.start,
            card.end,
            card.reads,
            (),
            card.place,
            _enough(card.start, card.end, card.reads),
        )
        for card in shown.cards
    ]
    if citations:
        made += _citations(shown)
    return tuple(sorted(made, key=lambda one: (one.start, one.end)))


def _kind(card: Card, segment: str, paid: set[Place], graded: set[tuple[Place, str]]) -> str:
    if card.what == "label":
        return "label"
    if card.place in paid:
        return "disclosure"
    if (card.place, card.text) in graded:
        return "grade"
    return "checklist" if segment == "checklist" else "card"


def _enough(start: float, end: float, needed: float) -> bool:
    return end - start + UNSEEN >= needed


def _citations(shown: Shown) -> Iterator[Graphic]:
    """A card for each number that is spoken with a source: until it is read, or the next one comes.

    Sentences in a row that rest on the same sources share one.
    """
    for segment, timed in zip(shown.segments, shown.timeline.segments, strict=True):
        own = list(_numbers(segment, timed, shown))
        for one, following in zip_longest(own, own[1:]):
            end = max(one.end, one.start + one.reads)
            end = end if following is None else min(end, following.start)
            yield one._replace(end=end, enough=_enough(one.start, end, one.reads))


def _numbers(segment: Segment, timed: TimedSegment, shown: Shown) -> Iterator[Graphic]:
    last: Graphic | None = None
    for sentence, time, judged in zip(segment.sentences, timed.sentences, shown.judgements[segment.id], strict=True):
        ids = tuple(dict.fromkeys(str(link.id) for link in sentence.links if link.id in shown.register))
        if not ids or "numeric" not in judged.flags:
            continue
        if last and last.sources == ids:
            last = last._replace(end=time.end)
            continue
        if last:
            yield last
        text = "; ".join(short(shown.register[name]) for name in ids)
        last = Graphic("citation", segment.id, text, time.start, time.end, reads(text), ids, sentence.place)
    if last:
        yield last


def short(source: Source) -> str:
    """A source as it fits under a picture: surnames and year, by its title where it has no author; with its journal."""
    names = [one.family for one in authors(source)]
    title = str(source.title or source.id)
    if len(title) > TITLE:
        title = f"{title[: TITLE - 1].rstrip()}…"
    who = f"{names[0]} et al." if len(names) > 2 else " & ".join(names) or title
    told = " ".join(part for part in (who, str(source.year)) if part)
    marks = ["retracted"] if source.status == "retracted" else []
    parts = [told, str(source.journal), *marks, *(["invented"] if source.invented else [])]
    return ", ".join(part for part in parts if part)
