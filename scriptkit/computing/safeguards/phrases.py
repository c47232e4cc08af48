"""Finds the phrases of word lists in spoken text, and says where each stands and whether it is denied."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from functools import cache, lru_cache
from itertools import pairwise
from typing import NamedTuple

from scriptkit.computing.writing.likeness import plain
from scriptkit.model import Segment

REACH = 4  # words that may stand in a gap, or between a phrase and the word it needs behind it
BEFORE = 8  # words before a phrase in which a "not" denies it
JOINING = frozenset("and but because so since".split())  # a "not" before them is of another statement
NOT_ONLY = frozenset("only just merely simply".split())
TELLING = frozenset("tell tells told want wants".split())  # "nobody tells you that it mends a back" denies nothing
KEPT = frozenset("it's that's this's he's she's there's what's here's let's who's".split())
DENIED_AFTER = frozenset("isn't aren't wasn't doesn't won't".split())


class Spot(NamedTuple):
    """A word in lower case, where it starts and ends in the text, and the number of its clause."""

    word: str
    start: int
    end: int
    clause: int


class Entry(NamedTuple):
    """One line of a word list. A token is the words that may stand there; an empty one is a gap of a few words.

    `needs` are lists of which a word has to follow soon, `unless` are words that may not follow right behind it.
    """

    list: str
    tokens: tuple[tuple[str, ...], ...]
    needs: tuple[str, ...]
    hint: str
    unless: tuple[str, ...] = ()


class Hit(NamedTuple):
    """An entry found: its first and its last word, as numbers of spots."""

    entry: Entry
    first: int
    last: int


@lru_cache(maxsize=1)
def _pieces() -> re.Pattern[str]:
    return re.compile(r"([^\W_]+(?:['’.,](?=\w)[^\W_]+)*)|[,;:.!?()—–…]| - ")


def spots(text: str) -> tuple[Spot, ...]:
    """The words of a text; commas, dashes and full stops part its clauses."""
    found: list[Spot] = []
    clause = 0
    for one in _pieces().finditer(text):
        if one[1] is None:
            clause += 1
        else:
            word = one[1].lower().replace("’", "'")
            found.append(Spot(_bare(word), one.start(), one.end(), clause))
    return tuple(found)


def plain_sentences(segments: Iterable[Segment]) -> dict[str, tuple[str, ...]]:
    """By segment, each sentence as plain words."""
    return {segment.id: tuple(plain(sentence.text) for sentence in segment.sentences) for segment in segments}


@cache
def _entry(name: str, line: str) -> Entry:
    """An entry as it is written: `fix/fixes ... up ! with/by + body-parts/ailments = what to say instead`."""
    written, _, hint = line.partition(" = ")
    written, _, needs = written.partition(" + ")
    written, _, unless = written.partition(" ! ")
    parts = written.replace("-", " ").replace("’", "'").split()
    tokens = tuple(() if part == "..." else tuple(map(_bare, part.split("/"))) for part in parts)
    barred = tuple(unless.strip().split("/")) if unless else ()
    return Entry(name, tokens, tuple(needs.strip().split("/")) if needs else (), hint.strip(), barred)


def _goes_on_at_once(line: str) -> bool:
    """Whether an entry has a second word that must follow the first: a look at the line, before it is taken apart."""
    return "..." not in line and " " in line.partition(" = ")[0].partition(" + ")[0].partition(" ! ")[0]


def _bare(word: str) -> str:
    """A word without the ending of what it owns: "runner's" as "runner"."""
    return word[:-2] if word.endswith("'s") and word not in KEPT else word


class Phrases:
    """The entries of some word lists, made ready to be found; all lists are at hand for what an entry needs."""

    def __init__(self, words: Mapping[str, Sequence[str]], *names: str) -> None:
        self.words = words
        self.by_first: dict[str, list[tuple[str, str]]] = {}
        for name in names:
            for line in words.get(name, ()):
                # an entry is taken apart once its first word is met: most of them never are
                for word in line.partition(" ")[0].partition("-")[0].split("/"):
                    self.by_first.setdefault(_bare(word) if "'" in word else word, []).append((name, line))
        self._needed: dict[str, Phrases] = {}

    def may_be_in(self, plain_words: str) -> bool:
        """Whether all words of an entry are among these plain words: a quick look before a close one."""
        words = set(plain_words.split())
        if "'s" in plain_words:
            words |= {_bare(word) for word in words}
        return any(
            all(not token or not words.isdisjoint(token) for token in _entry(*one).tokens)
            for word in self.by_first.keys() & words
            for one in self.by_first[word]
        )

    def find(self, said: Sequence[Spot]) -> list[Hit]:
        """The entries in a sentence, in order; of those of one list that begin at a word, the longest."""
        found: dict[tuple[int, str], Hit] = {}
        for first, spot in enumerate(said):
            known_here = self.by_first.get(spot.word, ())
            after = said[first + 1].word if known_here and first + 1 < len(said) else "\n"
            for one in known_here:
                if after not in one[1] and _goes_on_at_once(one[1]):
                    continue
                entry = _entry(*one)
                last = _reaches(entry, said, first)
                if last is None or (entry.needs and not self._has_what_it_needs(entry, said, last)):
                    continue
                known = found.get((first, entry.list))
                if known is None or last > known.last:
                    found[first, entry.list] = Hit(entry, first, last)
        return [found[key] for key in sorted(found)]

    def _has_what_it_needs(self, entry: Entry, said: Sequence[Spot], last: int) -> bool:
        """Whether a word of the lists that the entry names follows in the same clause."""
        following = [spot for spot in said[last + 1 : last + 2 + REACH + 3] if spot.clause == said[last].clause]
        for name in entry.needs:
            if name not in self._needed:
                self._needed[name] = Phrases(self.words, name)
            if any(hit.first <= REACH for hit in self._needed[name].find(following)):
                return True
        return False


def _reaches(entry: Entry, said: Sequence[Spot], first: int) -> int | None:
    """The number of the entry's last word, where it begins at `first`; None where it does not go on like that."""
    at, room = first, 0
    for token in entry.tokens[1:]:
        if not token:
            room = REACH
            continue
        window = said[at + 1 : at + 2 + room]
        step = next((k for k, spot in enumerate(window) if spot.word in token), None)
        if step is None or (room and window[step].clause != said[first].clause):
            return None
        at, room = at + 1 + step, 0
    following = said[at + 1].word if entry.unless and at + 1 < len(said) else ""
    return None if following and following in entry.unless else at


def denied(said: Sequence[Spot], hit: Hit, denials: Phrases) -> bool:
    """Whether the words before a phrase deny it, as "won't fix" does and "won't just fix" does not."""
    clause = said[hit.first].clause
    window = said[max(0, hit.first - BEFORE - 4) : hit.first]
    if any(one.clause != two.clause and _is_cut_off(one.word) for one, two in pairwise(window)):
        return True
    before = [spot for spot in window[-BEFORE:] if spot.clause == clause]
    joined = max((k + 1 for k, spot in enumerate(before) if spot.word in JOINING), default=0)
    before = before[joined:]
    for k, spot in enumerate(before):
        found = [one.last for one in denials.find(before[k:]) if one.first == 0]
        if spot.word.endswith("n't") or found:
            after = k + max(found, default=0) + 1
            own = k > 0 and before[k - 1].word in ("i", "we")
            if after >= len(before) or before[after].word not in (NOT_ONLY if own else NOT_ONLY | TELLING):
                return True
    return False


def _is_cut_off(word: str) -> bool:
    """Whether a word before a comma denies what comes behind the remark: "it will never, trust me, mend a back"."""
    return word in ("never", "not") or word.endswith("n't")


def denied_after(said: Sequence[Spot], hit: Hit) -> bool:
    """Whether a "isn't" or "is not" follows soon: "a cure it is not"."""
    clause = said[hit.last].clause
    words = [spot.word for spot in said[hit.last + 1 : hit.last + 5] if spot.clause == clause]
    return not DENIED_AFTER.isdisjoint(words) or any(
        one in ("is", "are") and other == "not" for one, other in pairwise(words)
    )


def denied_inside(said: Sequence[Spot], hit: Hit) -> bool:
    """Whether a "not" stands in a gap of a phrase: "kids shouldn't max out"."""
    words = {spot.word for spot in said[hit.first : hit.last + 1]}
    return any(
        (word.endswith("n't") or word in ("not", "never", "no"))
        and not any(word in token for token in hit.entry.tokens)
        for word in words
    )


def written(text: str, said: Sequence[Spot], hit: Hit) -> str:
    """A phrase as the author wrote it."""
    return text[said[hit.first].start : said[hit.last].end]
