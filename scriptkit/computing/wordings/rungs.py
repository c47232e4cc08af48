"""The word lists of the ladder made ready, and where their words stand in a sentence."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from scriptkit.computing.hearing.clauses import Cues, Speech
from scriptkit.computing.hearing.wording import REPORTING

LISTS = (
    "banned-certainty", "banned-on-effects", "ladder-caveats", "ladder-claims", "ladder-disowned", "ladder-may",
    "ladder-narrators", "ladder-praise", "ladder-probably", "ladder-uncertain", "unmeasured-size", "unnamed-evidence",
)  # fmt: skip
BANNED = ("banned-certainty", "unnamed-evidence")
ALWAYS_ASKED = ("banned-certainty", "ladder-claims", "unmeasured-size", "unnamed-evidence")
STEPS = {"ladder-probably": 3, "ladder-may": 2, "ladder-uncertain": 1, "ladder-disowned": 0}
STUDIES = (REPORTING - {"we", "i"}) | frozenset(
    "evidence findings finding results result interval experiment experiments survey preprint cohort reviews data "
    "analysis meta sample laboratory laboratories labs".split()
)
Span = tuple[int, int]
Mark = tuple[int, int, int]  # the step that words bring a statement down to, the first of them, the word after


class Rungs:
    """The word lists of the ladder made ready, beside the cues of the detector.

    `own` are the ladder's words and phrases by first word, `strict` the first words of those asked for in every
    statement, `sizes` the phrases that tell how large an effect is, `people` the words for people.
    """

    __slots__ = ("cues", "own", "people", "sizes", "strict")

    def __init__(self, words: Mapping[str, Sequence[str]], cues: Cues) -> None:
        self.cues = cues
        self.own: dict[str, list[tuple[tuple[str, ...], str]]] = {}
        strict: set[str] = set()
        for name in LISTS:
            for entry in words.get(name, ()):
                parts = entry.replace("-", " ").replace("’", "'").split()
                if parts:
                    self.own.setdefault(parts[0], []).append((tuple(parts[1:]), name))
                    strict.update(parts[:1] if name in ALWAYS_ASKED else ())
        self.strict = frozenset(strict)
        sizes = [entry.partition(":") for entry in words.get("effect-sizes", ())]
        self.sizes = tuple((tuple(phrase.split()), size.strip()) for size, _, phrase in sizes)
        self.people = frozenset(words.get("people", ()))


def rungs(words: Mapping[str, Sequence[str]], cues: Cues) -> Rungs:
    """The ladder's word lists made ready, once a run."""
    return Rungs(words, cues)


def find(words: Sequence[str], ladder: Rungs) -> dict[str, tuple[Span, ...]]:
    """Where the words of each of the ladder's lists stand; of those that begin at a word the longest."""
    found: dict[str, list[Span]] = {}
    for i, word in enumerate(words):
        longest: dict[str, int] = {}
        for rest, name in ladder.own.get(word, ()):
            end = i + 1 + len(rest)
            if words[i + 1 : end] == rest:
                longest[name] = max(end, longest.get(name, 0))
        for name, end in longest.items():
            spans = found.setdefault(name, [])
            if not spans or spans[-1][1] <= i:
                spans.append((i, end))
    return {name: tuple(spans) for name, spans in found.items()}


def hedges(speech: Speech, found: Mapping[str, tuple[Span, ...]]) -> list[Mark]:
    """The words that bring a statement down: (step, first word, word after)."""
    covered = {i for a, b in speech.found.get("not-hedges", ()) for i in range(a, b)}
    marks = [(step, a, b) for name, step in STEPS.items() for a, b in found.get(name, ()) if a not in covered]
    own = {i for _, a, b in marks for i in range(a, b)}
    own |= {i for a, _ in found.get("ladder-praise", ()) for i in (a - 1, a)}
    marks += [(2, a, b) for a, b in speech.found.get("hedges", ()) if a not in covered and a not in own]
    marks += [(0, a, b) for a, b in speech.found.get("reported", ()) if not _told_by_study(speech, a)]
    return sorted(marks, key=lambda mark: mark[1])


def _told_by_study(speech: Speech, i: int) -> bool:
    """Whether a study, and not hearsay, says what follows: "the trial says that ..."."""
    return not STUDIES.isdisjoint(speech.words[max(0, i - 3) : i + 1])
