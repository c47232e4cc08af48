"""Cuts a spoken sentence into words, cue phrases and clauses, so that each clause can be judged by itself."""

import re
from bisect import bisect_left
from collections.abc import Iterable, Mapping, Sequence
from functools import lru_cache
from typing import NamedTuple

from scriptkit.computing.hearing.figures import Figure, figures

TOKEN = re.compile(r"\d+(?:[.,]\d+)*%?|[^\W\d_]+(?:['’][^\W\d_]+)*|['’]em\b|[,;:()—–.!?…]| - |-")
STOPS = frozenset(",;:()—–.!?…")
JOINERS = frozenset("because but which whereas although though except otherwise plus yet".split())
LOOSE_JOINERS = frozenset("and or so since".split())
CONDITIONS = frozenset("if when unless until till before after whether once while whenever wherever where as".split())
OPENERS = JOINERS | LOOSE_JOINERS | CONDITIONS
NO_JOIN_AFTER = frozenset("all nothing anything".split())  # "all but gone" is one clause
ASKED = (  # asked of single words where it matters
    "acting-verbs", "belief-verbs", "body", "effect-verbs", "experience", "follow-commands", "gains",
    "opinion-choices", "opinion-feelings", "opinion-nouns", "opinion-verbs", "past-forms", "postures",
    "verb-or-noun", "verbs",
)  # fmt: skip
SOUGHT = (  # looked for in every sentence
    "absolutes", "advice", "causes", "comparatives", "connectives", "deferrals", "disclaimers", "evaluations",
    "health", "hedges", "not-absolutes", "not-health", "not-hedges", "not-sponsor", "opinion-markers", "payers",
    "people", "questions", "reported", "scene-words", "show-words", "sponsor-terms", "study-words", "tender-parts",
    "tender-words", "topic-words", "transitions", "units",
)  # fmt: skip


class Cues(NamedTuple):
    """The word lists made ready for looking up: single words, phrases by their first two, and verbs by base form."""

    single: Mapping[str, Sequence[str]]
    phrases: Mapping[tuple[str, str], Sequence[tuple[tuple[str, ...], str]]]
    lists: Mapping[str, frozenset[str]]
    endings: tuple[str, ...]

    def __hash__(self) -> int:
        """One set of cues is itself and no other: what was taken apart with it is remembered by it."""
        return id(self)


class Clause(NamedTuple):
    """A stretch of words that can state something by itself: from `start` up to, not including, `end`."""

    start: int
    end: int
    joiner: str


class Speech(NamedTuple):
    """A sentence taken apart.

    `places` are the words in the text, `stops` the words before which a comma or full stop stands, `numbers` the words
    at which a figure begins, `counted` those before which one ends; `found` maps the name of a word list to the
    stretches of words that it knows, in order, and so "figures", "measures" and "than".
    """

    text: str
    words: tuple[str, ...]
    places: tuple[tuple[int, int], ...]
    stops: frozenset[int]
    figures: tuple[Figure, ...]
    numbers: frozenset[int]
    counted: frozenset[int]
    found: Mapping[str, tuple[tuple[int, int], ...]]
    clauses: tuple[Clause, ...]

    def within(self, name: str, clause: Clause) -> list[tuple[int, int]]:
        """The stretches of one word list that begin inside a clause."""
        spans = self.found.get(name)
        if not spans:
            return []
        return list(spans[bisect_left(spans, (clause.start, 0)) : bisect_left(spans, (clause.end, 0))])

    def follows(self, name: str, start: int) -> bool:
        """Whether a stretch of one word list begins at a word or anywhere after it."""
        spans = self.found.get(name)
        return bool(spans and spans[-1][0] >= start)

    def written(self, spans: Iterable[tuple[int, int]]) -> tuple[str, ...]:
        """Stretches of words exactly as the author wrote them, in order, each once, none inside another."""
        kept: list[tuple[int, int]] = []
        for a, b in sorted(spans, key=lambda span: (span[0], -span[1])):
            if not kept or b > kept[-1][1]:
                kept.append((a, b))
        return tuple(self.text[self.places[a][0] : self.places[b - 1][1]] for a, b in kept)


def split_words(text: str) -> tuple[list[str], list[tuple[int, int]], list[bool], set[int]]:
    """Lower-case words, their places in the text, whether a hyphen joins each to the next, and where stops stand.

    A stop at i stands before word i.
    """
    words: list[str] = []
    places: list[tuple[int, int]] = []
    glued: list[bool] = []
    stops: set[int] = set()
    for match in TOKEN.finditer(text):
        piece = match.group()
        if piece == "-":
            if glued:
                glued[-1] = True
        elif piece in STOPS or piece == " - ":
            stops.add(len(words))
        else:
            words.append(piece.lower().replace("’", "'"))
            places.append(match.span())
            glued.append(False)
    return words, places, glued, stops


def find(words: list[str], cues: Cues) -> dict[str, tuple[tuple[int, int], ...]]:
    """Where the words of each list stand; of the phrases of one list that begin at a word, the longest counts."""
    found: dict[str, dict[int, int]] = {}
    single, phrases, effects = cues.single, cues.phrases, cues.lists["effect-verbs"]
    for i, (word, after) in enumerate(zip(words, [*words[1:], ""], strict=False)):
        for name in single.get(word) or (single.get(word[:-2], ()) if word.endswith("'s") else ()):
            found.setdefault(name, {}).setdefault(i, i + 1)
        if verb_form(word, effects)[0]:
            found.setdefault("effect-verbs", {})[i] = i + 1
        for rest, name in phrases.get((word, after), ()):
            end = i + 2 + len(rest)
            if tuple(words[i + 2 : end]) == rest and end > found.setdefault(name, {}).get(i, 0):
                found[name][i] = end
    return {name: tuple(sorted(spans.items())) for name, spans in found.items()}


def split_clauses(words: list[str], stops: set[int]) -> tuple[Clause, ...]:
    """Clauses cut at stops and at joining words; a comma splice gives two."""
    cuts = [0]
    for i in range(1, len(words)):
        word, before = words[i], words[i - 1]
        joins = (word in JOINERS and before not in NO_JOIN_AFTER) or (word in LOOSE_JOINERS and cuts[-1] != i - 1)
        if joins or i in stops:
            cuts.append(i)
    spans = zip(cuts, [*cuts[1:], len(words)], strict=True)
    return tuple(Clause(a, b, words[a] if words[a] in OPENERS else "") for a, b in spans if a < b)


def _measures(figures_found: list[Figure], units: dict[int, int]) -> tuple[tuple[int, int], ...]:
    """The figures that a record could hold: with a unit, broken, or larger than people count without one."""
    return tuple(
        (figure.start, figure.end)
        for figure in figures_found
        if figure.value > 12 or figure.value % 1 or figure.end in units or figure.end + 1 in units
    )


@lru_cache(maxsize=1024)  # a sentence is asked again for its opinion mark, as the one before the next, for its weight
def take_apart(text: str, cues: Cues) -> Speech:
    """One sentence as words, cue stretches and clauses; time grows with its length and no faster."""
    words, places, glued, stops = split_words(text)
    found = find(words, cues)
    spoken = figures(words, glued)
    found["figures"] = tuple((figure.start, figure.end) for figure in spoken)
    found["measures"] = _measures(spoken, dict(found.get("units", ())))
    numbers = frozenset(figure.start for figure in spoken)
    if "than" in words:
        found["than"] = tuple((i, i + 1) for i, word in enumerate(words) if word == "than" and i + 1 not in numbers)
    return Speech(
        text=text,
        words=tuple(words),
        places=tuple(places),
        stops=frozenset(stops),
        figures=tuple(spoken),
        numbers=numbers,
        counted=frozenset(figure.end for figure in spoken),
        found=found,
        clauses=split_clauses(words, stops),
    )


@lru_cache(maxsize=8192)
def verb_form(word: str, verbs: frozenset[str]) -> tuple[str, str]:
    """The base form of a verb and which form it is ("base", "s", "ed", "ing"); two empty strings if it is none."""
    if word in verbs:
        return word, "base"
    for ending, form in (("s", "s"), ("ed", "ed"), ("ing", "ing")):
        if word.endswith(ending):
            base = next((base for base in _bases(word[: -len(ending)], form) if base in verbs), "")
            return (base, form) if base else ("", "")
    return "", ""


def _bases(stem: str, form: str) -> tuple[str, ...]:
    """What a verb may be called without its ending: help(s), push(es), carr(ies), mov(ed), stopp(ed)."""
    if form == "s":
        return (stem, stem.removesuffix("e"), stem[:-2] + "y" if stem.endswith("ie") else stem)
    doubled = stem[:-1] if stem[-1:] == stem[-2:-1] else stem
    return (stem, stem + "e", doubled, stem[:-1] + "y" if stem.endswith("i") else stem)


def compile_cues(words: Mapping[str, tuple[str, ...]]) -> Cues:
    """The word lists made ready, once a run: entries of one word by that word, longer ones by two."""
    single: dict[str, list[str]] = {}
    phrases: dict[tuple[str, str], list[tuple[tuple[str, ...], str]]] = {}
    for name in SOUGHT:
        for entry in words.get(name, ()):
            if entry.isalpha():
                single.setdefault(entry, []).append(name)
                continue
            first, *rest = entry.replace("-", " ").replace("’", "'").split() or ("",)
            if rest:
                phrases.setdefault((first, rest[0]), []).append((tuple(rest[1:]), name))
            elif first:
                single.setdefault(first, []).append(name)
    lists = {name: frozenset(words.get(name, ())) for name in ASKED}
    lists["verbs"] |= lists["effect-verbs"]
    lists["acting-verbs"] |= lists["effect-verbs"]
    lists["opinion-choices"] |= lists["opinion-verbs"]
    return Cues(single, phrases, lists, tuple(entry[1:] for entry in words.get("health", ()) if entry.startswith("-")))
