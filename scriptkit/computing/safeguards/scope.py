"""Finds words by which a trainer cures, diagnoses or promises safety, and clinical or frightening ones."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from scriptkit.computing.safeguards.phrases import Hit, Spot, denied, denied_after, denied_inside, spots, written
from scriptkit.computing.safeguards.watching import YOU, Lists, Seen, found_in
from scriptkit.computing.writing.likeness import plain
from scriptkit.model import Risk
from scriptkit.places import Place, place_of

if TYPE_CHECKING:
    from scriptkit.computing.safeguards.guarding import Script

ERRORS, WARNINGS = "scope-errors", "scope-warnings"
DIAGNOSES = "diagnoses"
CONDITIONS = frozenset("if when whenever unless whether who suppose say".split())
PADDING = frozenset("a an some bit of case just probably likely definitely surely classic textbook simple got".split())
HAS = ("you have", "you've have", "that is", "this is", "it is", "that means", "it means", "sounds like", "looks like")
DENYING = frozenset("no nobody none not never neither without cannot".split())
SIGN_OF = frozenset("sign signs symptom symptoms means".split())
THAT_IS = frozenset("that's it's you've that'll".split())
YES_OR_NO = frozenset("can could do does did is are was were will would should".split())


def find(script: Script, seen: Sequence[Seen], lists: Lists) -> Iterator[Risk]:
    """All that is spoken, then what is in title, question and promises, then what is on screen."""
    for row in seen:
        hits = [hit for hit in row.of(ERRORS, WARNINGS) if _is_said(row, hit, lists)]
        hits += [hit for hit in row.of(DIAGNOSES) if _is_diagnosed(row.said, hit) and _is_said(row, hit, lists)]
        reported = bool(row.sentence.links) and script.worded[row.segment.id][row.number].report
        yield from (row.risk(_kind(hit, reported=reported), hit) for hit in _first_of_each(hits))
    for text, place in _promised(script):
        if lists.watched.may_be_in(plain(text)):
            yield from _of_text(text, place, lists)


def _of_text(text: str, place: Place, lists: Lists) -> Iterator[Risk]:
    """What a title or a card promises."""
    said = spots(text)
    hits = [
        hit for hit in found_in(said, lists) if hit.entry.list in (ERRORS, WARNINGS) and not _denied(said, hit, lists)
    ]
    for hit in _first_of_each(hits) if not _asks(text, said) else ():
        where = place_of(text, place, said[hit.first].start)
        yield Risk(_kind(hit), "", where, written(text, said, hit), text, hit.entry.hint)


def _kind(hit: Hit, *, reported: bool = False) -> str:
    """A promise to cure is one, unless a sentence only reports what a linked study found in its people."""
    return "cure" if hit.entry.list == ERRORS and not reported else "clinical"


def _first_of_each(hits: Sequence[Hit]) -> list[Hit]:
    """Of hits that overlap the first one; a word of the stronger list goes before one of the weaker."""
    kept: list[Hit] = []
    for hit in sorted(hits, key=lambda one: (one.entry.list != ERRORS, one.first)):
        if all(hit.last < one.first or one.last < hit.first for one in kept):
            kept.append(hit)
    return sorted(kept, key=lambda one: one.first)


def _is_said(row: Seen, hit: Hit, lists: Lists) -> bool:
    """Whether the presenter says it: not asked, not denied, not told as what others believe, not a clinician's work."""
    if row.judgement.kind == "question" or _denied(row.said, hit, lists):
        return False
    if hit.entry.list == WARNINGS and row.sentence.links:
        return False
    if row.segment.kind == "sponsor":
        return True
    return not _is_others(row, hit, lists)


def _is_diagnosed(said: Sequence[Spot], hit: Hit) -> bool:
    """Whether a viewer is told to have it: "you've got tendinitis", "that's a classic stress fracture"."""
    clause = [spot.word for spot in said[: hit.first] if spot.clause == said[hit.first].clause]
    words = [word for word in clause if word not in PADDING]
    if not CONDITIONS.isdisjoint(words) or not DENYING.isdisjoint(words) or any(one.endswith("n't") for one in words):
        return False
    if not words:
        return False
    sign = words[-1] in SIGN_OF and not YOU.isdisjoint(words)
    return sign or words[-1] in THAT_IS or " ".join(words[-2:]) in HAS


def _denied(said: Sequence[Spot], hit: Hit, lists: Lists) -> bool:
    inside = denied_inside(said, hit) or denied_after(said, hit)
    return inside or denied(said, hit, lists["denials"]) or bool(lists["debunks"].find(said))


def _is_others(row: Seen, hit: Hit, lists: Lists) -> bool:
    """Whether it is reported as a belief, or told of a clinician."""
    said = row.said
    if lists.hears("reported", row.plain):
        return True
    if any(one.last < hit.first and not _is_mine(said, one.first) for one in lists["others-say"].find(said)):
        return True
    clause = said[hit.first].clause
    for one in lists["clinicians"].find(said):
        between = [spot.word for spot in said[one.last + 1 : hit.first]]
        if one.last < hit.first and said[one.first].clause == clause and not any(w.endswith("n't") for w in between):
            return True
    return bool(lists.holds("referrals", said))


def _is_mine(said: Sequence[Spot], first: int) -> bool:
    """Whether it is the presenter who says so: "I promised to fix your back"."""
    return first > 0 and said[first - 1].word in ("i", "we", "i've", "we've", "i'll", "we'll")


def _asks(text: str, said: Sequence[Spot]) -> bool:
    """Whether a title asks whether it is so ("Can you fix your knees?"), and does not take it for granted."""
    return text.rstrip().endswith("?") and bool(said) and said[0].word in YES_OR_NO


def _promised(script: Script) -> Iterator[tuple[str, Place]]:
    """What is not spoken and yet promised, each with a place for words that do not know their own."""
    episode = script.episode
    yield episode.title, episode.at.of("title")
    yield episode.question, episode.at.of("question")
    for text in episode.promises.values():
        yield text, episode.at.of("promises")
    for card in script.cards:
        yield card.text, card.place
