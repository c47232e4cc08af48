"""Finds words that say how firmly an exercise comes first: in sentences, in the title and promises, on cards."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Mapping, Sequence
from functools import lru_cache
from typing import NamedTuple

from scriptkit.computing.grading import pairs
from scriptkit.computing.grading.naming import ITS_GROUP, Named, Names, names_of, subject
from scriptkit.computing.safeguards.phrases import Hit, Phrases, Spot, denied, denied_after, spots
from scriptkit.model import Card, Episode, Segment, Sentence
from scriptkit.places import Place, place_of

LIST = "firmness-said"
CLAIMS = ("clear", "best", "ahead")
PAIR = "pair"
_POINTS_ON = re.compile(
    r"\b(?:is|to|winner|contest|spot|one)\Z", re.IGNORECASE
)  # at the end of words that a name follows
LESS = ("to", "at", "when", "if", "with", "without", "i've", "we've")  # behind "the best one" they make it less
WINS = ("win", "wins", "won")
BEGINS = frozenset("until till when as before because and but so then that while once if where".split())
NO_NOUNS = frozenset("it this that which who these those they what both neither mine one just still also even".split())
# every entry of the list holds one of these: a quick look that spares most sentences a close one
SIGNS = (
    *("win", "won", "best", "ahead", "first", "depend", "tie", "close", "weigh", "crown", "top", "beats", "hangs on"),
    *("level", "either way", "dead heat", "whisker", "nose", "hair", "edge", "favo", "toss up", "toss-up", "neck"),
    *("nothing", "leads", "led the", "better", "number one", "king of", "queen of", "leagues", "class of"),
    *(
        "league of",
        "head and",
        "miles",
        "streets",
        "count",
        "rate ",
        "change ",
        "shift ",
        "move ",
        "contest",
        "champion",
    ),
    *(
        "medal",
        "even close",
        "the water",
        "runs away",
        "your",
        "outranks",
        "outscores",
        "outperforms",
        "above",
        "loses to",
    ),
    *("beaten by", "behind", "below", "second to", "last ", "used to"),
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


@lru_cache(maxsize=1)
def _owning() -> re.Pattern[str]:
    return re.compile(
        r"\b(?:(?:on|by|under|with|to|for|in|of) (?:my|these|those|our|me|us)\b|i(?:'d| would)? (?:think|reckon|say|"
        r"call|give|put|rank|rate)|my (?:winner|pick|choice|favourite|favorite|number one|top|first)|(?:on|by) "
        r"(?:the|this) (?:checklist|scores?|sums?|figures|weights)|i'm|if you ask me)",
        re.IGNORECASE,
    )


@lru_cache(maxsize=1)
def _on_condition() -> re.Pattern[str]:
    """Words that make a first place one of several: on a condition, among some people, with other weights."""
    return re.compile(
        r"\b(?:if (?!i\b|we\b|you ask)|unless\b|when you\b|among (?:those|people)|"
        r"for (?:those|people|anyone|anybody|someone) who\b|with yours\b|on yours\b|"
        r"(?:with|under|by|on) (?:your|other|different) \w+|used to\b|last (?:year|time|week))",
        re.IGNORECASE,
    )


@lru_cache(maxsize=1)
def _card() -> re.Pattern[str]:
    return re.compile(r"\b(?:winner|number one|first place|1st|champion)\b", re.IGNORECASE)


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
    """All such words, in the order of the passages. What is asked, denied or said on a condition says nothing."""
    phrases, denials = Phrases(words, LIST), Phrases(words, "denials")
    names: Names | None = None
    places = {segment.id: segment for segment in segments}
    whom = {spot.word for spot in spots(f"{episode.audience} {episode.question}") if len(spot.word) > 3}
    found: list[FirmWords] = []
    for one in heard:
        lowered = one.text.lower()
        if one.text.rstrip("\"'”’) ").endswith("?") or not any(sign in lowered for sign in SIGNS):
            continue
        names = names or names_of(episode)
        named, taken = names.find(one.text), -1
        masked = _without_names(one.text, named)
        said = spots(masked)
        before = len(found)
        bound = bool(_on_condition().search(one.text))
        for hit in phrases.find(said):
            kind = hit.entry.hint
            if kind in CLAIMS and (hit.first <= taken or denied(said, hit, denials)):
                continue
            if kind in CLAIMS and (denied_after(said, hit) or _of_less(said, hit, whom)):
                continue
            if kind in CLAIMS and _of_something_else(said, hit, names):
                continue
            taken = max(taken, hit.last)
            kind = "depends" if bound and kind in CLAIMS else kind
            start, end = said[hit.first].start, said[hit.last].end
            whose = subject(named, start, end, one.text, points_on=bool(_POINTS_ON.search(one.text[start:end])))
            found.append(_firm(kind, one, one.text[start:end], start, whose or one.exercise, names, places))
        if one.what == "a card" and len(found) == before and named and (shown := _card().search(one.text)):
            found.append(_firm("ahead", one, shown[0], shown.start(), named[0].exercise, names, places))
        if not (one.sentence and one.sentence.links) and (pair := pairs.find(masked, named, one.exercise)):
            first, second, match = pair
            made = _firm(PAIR, one, match[0], match.start(), first, names, places)
            found.append(made._replace(other=second))
    return tuple(found)


def _without_names(text: str, named: Sequence[Named]) -> str:
    """A text in which no word of a name says anything: the "no" of a no-hang denies nothing."""
    for one in named:
        text = text[: one.start] + "x" * (one.end - one.start) + text[one.end :]
    return str(text)


def _firm(
    kind: str, one: Passage, words: str, start: int, exercise: str, names: Names, places: Mapping[str, Segment]
) -> FirmWords:
    owned = one.opinion or bool(_owning().search(one.text))
    return FirmWords(kind, words, one.at(start), one, exercise, "", _group(one, exercise, names, places), owned)


def _group(one: Passage, exercise: str, names: Names, places: Mapping[str, Segment]) -> str:
    """The group of which a sentence speaks: one it names, or its own where it says "of this group"."""
    if group := names.group(one.text):
        return group
    own = names.group_of.get(exercise, "")
    if not own and one.segment in places and places[one.segment].kind == "group":
        own = names.group(places[one.segment].title)
    return own if ITS_GROUP.search(one.text.replace("-", " ")) else ""


def _of_something_else(said: Sequence[Spot], hit: Hit, names: Names) -> bool:
    """Whether one bare noun that is part of no exercise's name is what wins: "until gravity wins"."""
    if said[hit.first].word not in WINS:
        return False
    clause = said[hit.first].clause
    before = [spot.word for spot in said[: hit.first] if spot.clause == clause]
    start = max((at + 1 for at, word in enumerate(before) if word in BEGINS), default=0)
    subject = [word for word in before[start:] if not word.endswith("ly")]
    if len(subject) != 1 or subject[0] in NO_NOUNS or set(subject[0]) == {"x"}:  # a name is masked
        return False
    words = {word for name, _ in names.exercises for word in name.replace("-", " ").split()}
    return words.isdisjoint((subject[0], subject[0].removesuffix("s"), f"{subject[0]}s"))


def _of_less(said: Sequence[Spot], hit: Hit, whom: Collection[str]) -> bool:
    """Whether it is first among less than the list: "the best one for small rooms", "the best one to travel with".

    "For hill runners" is all of the list where the episode is made for them.
    """
    after = [spot.word for spot in said[hit.last + 1 : hit.last + 6] if spot.clause == said[hit.last].clause]
    if hit.entry.hint != "best" or not after:
        return False
    return after[0] in LESS or (after[0] == "for" and not any(word in whom for word in after[1:]))
