"""Cautions: which lines an episode calls for, and whether each is really spoken where it counts."""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from scriptkit.computing.writing import sentences
from scriptkit.computing.writing.likeness import plain
from scriptkit.model import Caution, CautionSpoken, Episode, Segment

_SMALL = frozenset(
    "a an the of to in on at by for and or if it its you your i we is are be this that with before after from as up do "
    "does than then so".split()
)
_NEGATED = re.compile(r" (don't|do not|never|not|needn't|shouldn't|won't|without|no)(?= (\S+))")
NEAR = 0.5  # share of a line's content words in a sentence that makes it a wording of the line
WAVE = 10  # words; a longer sentence has more to say than "never mind"
ANNOUNCEMENT = 12  # words; likewise of the sentence before
_POINTING = frozenset(
    (
        "that that's this it it's but or just never ignore forget you and honestly unless skip you'll man suck "
        "toughen nobody or well though besides yeah as like who if don't i've"
    ).split()
)
_ORDER = ("", "reworded", "softened", "said")


def resolve(episode: Episode, stock: Mapping[str, str]) -> dict[str, Caution]:
    """Every caution that exercises call for or the outline defines; the outline's own line wins over the stock one."""
    found = {str(name): caution for name, caution in episode.cautions.items()}
    for exercise in episode.exercises.values():
        for tag in exercise.cautions:
            if tag not in found and tag in stock:
                found[str(tag)] = Caution(str(tag), stock[tag], True)  # noqa: FBT003 - what the outline did not write
    return found


class _Line(NamedTuple):
    """A caution's line as plain words; `first` is its first sentence, `sentences` how many it has."""

    words: str
    first: str
    sentences: int
    content: frozenset[str]


class _Lines:
    """All lines, and which of them a sentence may be giving."""

    def __init__(self, cautions: Mapping[str, Caution]) -> None:
        self.lines = {tag: _line(caution.line) for tag, caution in cautions.items()}
        self.by_word: dict[str, list[str]] = defaultdict(list)
        self.by_first: dict[str, list[str]] = defaultdict(list)
        for tag, line in self.lines.items():
            for word in line.content:
                self.by_word[word].append(tag)
            self.by_first[line.first].append(tag)

    def near(self, heard: str, marked: Sequence[str]) -> Iterator[str]:
        """The tags a sentence is marked with, those it shares half the words with, and those it begins."""
        shared = Counter(tag for word in set(heard.split()) for tag in self.by_word.get(word, ()))
        found = [*marked, *self.by_first.get(heard, ())]
        found += [tag for tag, count in shared.items() if count >= NEAR * len(self.lines[tag].content)]
        return iter(sorted({tag for tag in found if tag in self.lines}))


def _line(text: str) -> _Line:
    words = plain(text)
    spans = sentences.split(text)
    first = plain(text[spans[0][0] : spans[0][1]]) if spans else ""
    return _Line(words, first, max(1, len(spans)), frozenset(words.split()) - _SMALL)


def spoken(
    episode: Episode,
    segments: Sequence[Segment],
    cautions: Mapping[str, Caution],
    said: Mapping[str, Sequence[str]],
    words: Mapping[str, Sequence[str]],
) -> tuple[CautionSpoken, ...]:
    """Say for each exercise of the script and each of its cautions whether it is spoken in the segment or before.

    A sentence that takes a caution back comes besides, whether or not another one gives it. `said` are the sentences
    of each segment as plain words.
    """
    if not cautions:
        return ()
    lines = _Lines(cautions)
    soft = [plain(one) for one in words.get("softeners", ())]
    waves = [plain(one) for one in words.get("wave-offs", ())]
    best: dict[str, CautionSpoken] = {}
    back: dict[str, CautionSpoken] = {}
    made: list[CautionSpoken] = []
    for segment in segments:
        heard = _Heard(said[segment.id], soft, waves)
        for number, sentence in enumerate(segment.sentences):
            for tag in lines.near(heard.words[number], sentence.cautions):
                state = heard.state(number, lines.lines[tag], marked=tag in sentence.cautions)
                by = (
                    segment.sentences[heard.taken_back_by(number, lines.lines[tag])]
                    if state == "softened"
                    else sentence
                )
                one = CautionSpoken("", tag, state, by.place, by.text)
                if state == "softened":
                    back.setdefault(tag, one)
                if _ORDER.index(state) > _ORDER.index(best[tag].state if tag in best else ""):
                    best[tag] = one
        exercise = episode.exercises.get(segment.exercise) if segment.exercise else None
        for tag in dict.fromkeys(map(str, exercise.cautions)) if exercise else ():
            if exercise and tag in cautions:
                missing = CautionSpoken("", tag, "missing", exercise.at.of("cautions"), "")
                found = [best.get(tag, missing), *([back[tag]] if tag in back else [])]
                made.extend(one._replace(exercise=str(exercise.id)) for one in dict.fromkeys(found))
    return tuple(made)


class _Heard:
    """The plain words of a segment's sentences, and what in each takes something back."""

    def __init__(self, words: Sequence[str], softeners: Sequence[str], waves: Sequence[str]) -> None:
        self.words, self.softeners, self.waves = words, softeners, waves
        self._back: dict[int, tuple[list[str], list[str]]] = {}

    def back(self, number: int) -> tuple[list[str], list[str]]:
        """The softeners in a sentence, and its negations, each with the word behind it."""
        if number not in self._back:
            padded = f" {self.words[number]} "
            soft = [f" {one} " for one in self.softeners if f" {one} " in padded and not _kept_from(padded, one)]
            self._back[number] = soft, [f" {found[1]} {found[2]} " for found in _NEGATED.finditer(padded)]
        return self._back[number]

    def state(self, number: int, line: _Line, *, marked: bool) -> str:
        """What a sentence makes of a line: said, reworded, softened, or nothing."""
        words = self.words[number]
        # a line may be several sentences long, and a sentence may hold more than the line
        following = " ".join(self.words[number : number + line.sentences]) if line.sentences > 1 else words
        there = bool(line.words) and f" {line.words} " in f" {following} "
        share = len(line.content & set(words.split())) / len(line.content) if line.content else 0.0
        if not marked and not there and share < NEAR:
            return ""
        waved = (marked or there) and (self._waved_off(number + line.sentences) or self._announced(number - 1))
        if waved or self._taken_back(number, line):
            return "softened"
        return "said" if marked or there else "reworded"

    def taken_back_by(self, number: int, line: _Line) -> int:
        """The number of the sentence that takes a line back: the one that gives it, or one beside it."""
        if self._taken_back(number, line):
            return number
        return number + line.sentences if self._waved_off(number + line.sentences) else number - 1

    def _taken_back(self, number: int, line: _Line) -> bool:
        """Whether a wording negates or softens what the line says."""
        soft, negated = self.back(number)
        own = f" {line.words} " if soft or negated else ""
        return any(one not in own for one in soft) or any(
            one not in own and one.split()[-1] in line.content for one in negated
        )

    def _waved_off(self, number: int) -> bool:
        """Whether the next sentence is a short one that takes it all back, as "That's for the lawyers" does."""
        words = self.words[number].split() if number < len(self.words) else []
        return 0 < len(words) <= WAVE and words[0] in _POINTING and bool(self.back(number)[0])

    def _announced(self, number: int) -> bool:
        """Whether the sentence before is a short one that tells not to listen: "The lawyers make me say this"."""
        words = f" {self.words[number]} " if number >= 0 else ""
        return 0 < len(words.split()) <= ANNOUNCEMENT and any(f" {one} " in words for one in self.waves)


def _kept_from(padded: str, softener: str) -> bool:
    """Whether a "don't" stands right before it: "don't train through it" plays nothing down."""
    return padded[: padded.index(f" {softener} ")].endswith((" don't", " do not", " never", " nobody should", " not"))
