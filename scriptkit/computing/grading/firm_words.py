"""Finds words that say how firmly an exercise comes first: in sentences, in the title and promises, on cards."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Mapping, Sequence
from functools import lru_cache
from typing import NamedTuple

from scriptkit.computing.safeguards.phrases import Hit, Phrases, Spot, denied, denied_after, spots, written
from scriptkit.model import Card, Episode, Segment, Sentence
from scriptkit.places import Place, place_of

LIST = "firmness-said"
CLAIMS = ("clear", "best", "ahead")
PAIR = "pair"
LESS = ("to", "at", "when", "if", "with", "without", "i've", "we've")  # behind "the best one" they make it less
# every entry of the list holds one of these: a quick look that spares most sentences a close one
SIGNS = (
    *("win", "won", "best", "ahead", "first", "depend", "tie", "close", "weigh", "crown", "top", "beats", "hangs on"),
    *("level", "either way", "dead heat", "whisker", "nose", "hair", "edge", "favo", "toss up", "toss-up", "neck"),
    *("nothing", "leads", "led the", "better than", "number one", "king of", "queen of", "leagues", "class of"),
    *("league of", "head and", "miles", "streets", "count", "rate ", "change ", "shift ", "move "),
)


class Passage(NamedTuple):
    """A text that viewers hear or read: where it stands, whose segment it is in, and whether it is owned as opinion.

    `what` is "" for spoken text, else what it is called: the title, a promise, a card.
    """

    text: str
    place: Place
    segment: str = ""
    exercise: str = ""
    sentence: Sentence | None = None  # None for what is not spoken
    opinion: bool = False
    what: str = ""

    def at(self, offset: int) -> Place:
        """Where the character at `offset` was written."""
        if self.sentence is not None:
            return self.sentence.place_of(offset)
        return place_of(self.text, self.place, offset)


class FirmWords(NamedTuple):
    """Words of one kind. `exercise` is whom they are about, "" where nobody is named; `other` whom it is to beat.

    `group` is the group among which it is said to be first, "" for the whole list; `owned` where the words say that it
    is so for the presenter, or by the checklist.
    """

    kind: str
    words: str
    place: Place
    passage: Passage
    exercise: str = ""
    other: str = ""
    group: str = ""
    owned: bool = False


class Names(NamedTuple):
    """The names of exercises and groups, in lower case, longest first, with their ids."""

    exercises: tuple[tuple[str, str], ...]
    groups: tuple[tuple[str, str], ...]
    group_of: Mapping[str, str]


@lru_cache(maxsize=1)
def _owning() -> re.Pattern[str]:
    return re.compile(
        r"\b(?:(?:on|by|under|with|to|for|in|of) (?:my|these|those|our|me|us)\b|i(?:'d| would)? (?:think|reckon|say|"
        r"call|give|put|rank|rate)|my (?:winner|pick|choice|favourite|favorite|number one|top|first)|(?:on|by) "
        r"(?:the|this) (?:checklist|scores?|sums?|figures|weights)|i'm|if you ask me)",
        re.IGNORECASE,
    )


@lru_cache(maxsize=1)
def _beating() -> re.Pattern[str]:
    return re.compile(r"\b(?:beats?|edges? out|ahead of|ranks? above|above|outranks?|outscores?)\b", re.IGNORECASE)


@lru_cache(maxsize=1)
def _denying() -> re.Pattern[str]:
    return re.compile(r"\b(?:not|never|no|neither|nor|hardly)\b|n['’]t\b", re.IGNORECASE)


def names_of(episode: Episode) -> Names:
    """What the exercises and groups of an episode are called."""
    named = {" ".join(one.name.lower().split()): str(name) for name, one in episode.exercises.items() if one.name}
    groups = {" ".join(one.group.lower().split()): str(one.group) for one in episode.exercises.values() if one.group}
    return Names(
        tuple(sorted(named.items(), key=lambda one: -len(one[0]))),
        tuple(sorted(groups.items(), key=lambda one: -len(one[0]))),
        {str(name): str(one.group) for name, one in episode.exercises.items()},
    )


def passages(episode: Episode, segments: Sequence[Segment], cards: Sequence[Card]) -> Iterator[Passage]:
    """Everything that could say how firm a place is."""
    if episode.title:
        yield Passage(episode.title, place_of(episode.title, episode.at.of("title")), what="the title")
    for name, promise in episode.promises.items():
        if promise:
            yield Passage(promise, place_of(promise, episode.at.of("promises")), what=f"the promise {name}")
    homes = {segment.id: segment.exercise for segment in segments}
    for segment in segments:
        for one in segment.sentences if segment.kind != "checklist" else ():  # there, words explain what a rating means
            if not (one.sponsor_says or one.cautions):
                yield Passage(one.text, one.place, segment.id, segment.exercise, one, one.opinion)
    for card in cards:
        yield Passage(card.text, card.place, card.segment, homes.get(card.segment, ""), what="a card")


def find(
    heard: Sequence[Passage], episode: Episode, segments: Sequence[Segment], words: Mapping[str, Sequence[str]]
) -> tuple[FirmWords, ...]:
    """All such words, in the order of the passages. What is asked or denied says nothing."""
    phrases, denials = Phrases(words, LIST), Phrases(words, "denials")
    names: Names | None = None
    places = {segment.id: segment for segment in segments}
    whom = {spot.word for spot in spots(f"{episode.audience} {episode.question}") if len(spot.word) > 3}
    found: list[FirmWords] = []
    for one in heard:
        lowered = one.text.lower()
        if one.text.rstrip("\"'”’) ").endswith("?"):
            continue
        pairs = _beating().search(lowered)
        if not pairs and not any(sign in lowered for sign in SIGNS):
            continue
        names = names or names_of(episode)
        said = spots(one.text)
        taken = -1
        for hit in phrases.find(said):
            kind = hit.entry.hint
            if hit.first <= taken and kind in CLAIMS:
                continue
            if kind in CLAIMS and (denied(said, hit, denials) or denied_after(said, hit) or _of_less(said, hit, whom)):
                continue
            taken = max(taken, hit.last)
            found.append(_firm(kind, one, said, hit, names, places))
        if pairs and not (one.sentence and one.sentence.links):
            found += _paired(one, pairs, names)
    return tuple(found)


def _firm(
    kind: str, one: Passage, said: Sequence[Spot], hit: Hit, names: Names, places: Mapping[str, Segment]
) -> FirmWords:
    start = said[hit.first].start
    exercise = next((name for _, _, name in sorted(_named(one.text.lower(), names))), one.exercise)
    group = _group(one, exercise, names, places)
    owned = one.opinion or bool(_owning().search(one.text))
    return FirmWords(kind, written(one.text, said, hit), one.at(start), one, exercise, "", group, owned)


def named(text: str, episode: Episode) -> list[str]:
    """The exercises named in a text, in order."""
    return [name for _, _, name in sorted(_named(text.lower(), names_of(episode)))]


def _named(lowered: str, names: Names) -> list[tuple[int, int, str]]:
    """Where exercises are named, the longest names first; a name inside a longer one is not."""
    found: list[tuple[int, int, str]] = []
    for name, exercise in names.exercises:
        at = lowered.find(name)
        while at >= 0:
            end = at + len(name)
            whole = not lowered[max(0, at - 1) : at].isalnum() and not lowered[end : end + 1].isalpha()
            if (whole or lowered[end : end + 1] == "s") and not any(
                at < other and end > start for start, other, _ in found
            ):
                found.append((at, end, exercise))
            at = lowered.find(name, end)
    return found


def _group(one: Passage, exercise: str, names: Names, places: Mapping[str, Segment]) -> str:
    """The group of which a sentence speaks: one it names, or its own where it says "of this group"."""
    lowered = one.text.lower().replace("-", " ")
    for name, group in names.groups:
        if name.replace("-", " ") in lowered:
            return group
    own = names.group_of.get(exercise, "")
    if not own and one.segment in places and places[one.segment].kind == "group":
        own = next((group for name, group in names.groups if name in places[one.segment].title.lower()), "")
    return own if re.search(r"\b(?:this|that|the|its|our) (?:\w+ )?group\b", lowered) else ""


def _of_less(said: Sequence[Spot], hit: Hit, whom: Collection[str]) -> bool:
    """Whether it is first among less than the list: "the best one for small rooms", "the best one to travel with".

    "For hill runners" is all of the list where the episode is made for them.
    """
    after = [spot.word for spot in said[hit.last + 1 : hit.last + 6] if spot.clause == said[hit.last].clause]
    if hit.entry.hint != "best" or not after:
        return False
    return after[0] in LESS or (after[0] == "for" and not any(word in whom for word in after[1:]))


def _paired(one: Passage, match: re.Match[str], names: Names) -> list[FirmWords]:
    """One exercise that is said to beat another: the name before the words, and the one behind them."""
    spoken = sorted(_named(one.text.lower(), names))
    before = [name for _, end, name in spoken if end <= match.start()]
    after = [name for start, _, name in spoken if start >= match.end()]
    if not after or not (before or one.exercise):
        return []
    subject = before[-1] if before else one.exercise
    if subject == after[0] or _denying().search(one.text):
        return []
    owned = one.opinion or bool(_owning().search(one.text))
    return [FirmWords(PAIR, match[0], one.at(match.start()), one, subject, after[0], "", owned)]
