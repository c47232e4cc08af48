"""Whether a sponsor's passage tells at its start that it is paid for, by voice and on screen, in clear words."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import TYPE_CHECKING, NamedTuple

from scriptkit.computing import reading_time
from scriptkit.computing.writing.likeness import plain
from scriptkit.model import Card, Passage, Segment, Sentence, TimedSegment, TimedSentence

if TYPE_CHECKING:
    from scriptkit.computing.safeguards.guarding import Script

WITHIN = 3.0  # seconds from the start of a passage
BLINK = 0.05  # seconds; less is not missed
SENTENCES = 4  # a disclosure is no longer
_NOT = re.compile(r"\b(?:not|no|nobody|never|isn't|wasn't|aren't|haven't|hasn't|didn't|one) (?:\w+ ){0,2}$")
_ISLES = ("uk", "gb", "united kingdom", "great britain", "britain", "england", "scotland", "wales")
_STATES = ("us", "usa", "u.s", "united states", "america")
_UNION = frozenset(
    "eu europe at be bg hr cy cz dk ee fi fr de gr el hu ie it lv lt lu mt nl pl pt ro sk si es se austria belgium "
    "bulgaria croatia cyprus czechia denmark estonia finland france germany greece hungary ireland italy latvia "
    "lithuania luxembourg malta netherlands poland portugal romania slovakia slovenia spain sweden".split()
)


def market(written: str) -> str:
    """The market that an outline names: UK, US, EU, or as it is written."""
    name = " ".join(written.lower().replace("the ", "").split()).strip(".")
    return "UK" if name in _ISLES else "US" if name in _STATES else "EU" if name in _UNION else written.strip()


def uncovered(markets: Sequence[str]) -> tuple[str, ...]:
    """The markets of an episode for which there is no list of clear and unclear words, each once."""
    return tuple(dict.fromkeys(name for name in map(market, markets) if name not in ("", "UK", "US")))


class _Words(NamedTuple):
    """The disclosure as the outline has it, words that tell it, and for each market words that do not suffice."""

    line: str
    clear: tuple[str, ...]
    vague: dict[str, tuple[str, ...]]

    def told(self, heard: str) -> list[str]:
        """The words in a text, with a space at both ends, that tell it is paid for; a "not" before them counts."""
        return [
            one for one in self.clear if f" {one} " in heard and not _NOT.search(heard[: heard.index(f" {one} ") + 1])
        ]

    def unclear(self, heard: str, told: Sequence[str]) -> tuple[tuple[str, str], ...]:
        """The markets whose guidance calls unclear what is told, each with the words."""
        found = []
        for name, weak in self.vague.items():
            there = [one for one in weak if f" {one} " in heard]
            # a word inside a longer unclear one ("ad" in no case, "sponsored" in "sponsored by") tells no more
            strong = [one for one in told if one not in weak]
            if there and not strong:
                found.append((name, max(there, key=len)))
        return tuple(found)


def passages(script: Script, paid: Sequence[Segment]) -> tuple[Passage, ...]:
    """Each of the sponsor's passages, and how it tells that it is paid for."""
    episode, words = script.episode, script.words
    timed = {one.id: one for one in script.timeline.segments}
    known = {"": "disclosures-not-enough", "UK": "disclosures-uk-not-enough", "US": "disclosures-us-not-enough"}
    markets = [""] + [name for name in ("UK", "US") if name in map(market, episode.markets)]
    lists = _Words(
        plain(episode.sponsor.disclosure) if episode.sponsor else "",
        tuple(plain(one) for one in words.get("disclosures", ())),
        {name: tuple(plain(one) for one in words.get(known[name], ())) for name in markets},
    )
    return tuple(_passage(script, segment, timed[segment.id], lists) for segment in paid)


def _passage(script: Script, segment: Segment, timed: TimedSegment, lists: _Words) -> Passage:
    heard = _heard(segment, timed, lists)
    first = segment.sentences[0]
    number, text = heard or (0, "")
    shown = _shown(script.cards, segment, timed, lists)
    before = zip(segment.sentences[:number], script.judgements[segment.id], strict=False)
    claims = (one.place for one, judged in before if one.sponsor_says or judged.kind == "claim")
    return Passage(
        segment.id,
        first.place,
        first.text,
        segment.sentences[number].place if heard else None,
        lists.unclear(text, lists.told(text)) if heard else (),
        next(claims, None),
        shown.end - shown.start if shown else None,
        reading_time.seconds(shown.text, reading_time.LEAST_PAID) if shown else 0.0,
        shown.place if shown else first.place,
    )


def _heard(segment: Segment, timed: TimedSegment, lists: _Words) -> tuple[int, str] | None:
    """The sentence that begins to tell it within three seconds, and the plain words that do."""
    for number, (sentence, clock) in enumerate(zip(segment.sentences, timed.sentences, strict=True)):
        if clock.start - timed.start >= WITHIN:
            break
        following = plain(" ".join(one.text for one in segment.sentences[number : number + SENTENCES]))
        early = _heard_in_time(sentence, clock, timed.start + WITHIN)
        if lists.line and early.strip() and f"{following} ".startswith(f"{lists.line} "):
            return number, f" {lists.line} "
        if lists.told(early):
            return number, early
    return None


def _heard_in_time(sentence: Sentence, clock: TimedSentence, until: float) -> str:
    """The plain words of a sentence that are begun by then, with a space at both ends."""
    length = clock.spoken / max(1, len(sentence.text))
    silent = [
        (offset, mark.seconds or 0.0)
        for offset, mark in sentence.cues
        if mark.seconds and mark.name in ("pause", "hold")
    ]
    end = 0
    for word in re.finditer(r"\S+", sentence.text):
        before = sum(seconds for offset, seconds in silent if offset <= word.start())
        if clock.start + before + word.start() * length >= until:
            break
        end = word.end()
    return f" {plain(sentence.text[:end])} "


def _shown(cards: Sequence[Card], segment: Segment, timed: TimedSegment, lists: _Words) -> Card | None:
    """The card that tells it at the start of the passage, in words that no market of the episode finds unclear."""
    for card in cards:
        if card.segment == segment.id and card.start < timed.start + WITHIN:
            text = f" {plain(card.text)} "
            told = lists.told(text)
            whole = bool(lists.line) and f" {lists.line} " in text
            if (told or whole) and not lists.unclear(text, told):
                return card
    return None
