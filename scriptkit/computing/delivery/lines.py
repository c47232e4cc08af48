"""The script as one row of spoken words, so that what an ear keeps in mind can be looked for across sentences."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import lru_cache
from typing import NamedTuple

from scriptkit.model import Segment, Sentence

ALIKE = 4  # letters at the beginning that two forms of one word have in common
_WORD = re.compile(r"[^\W_]+(?:['’.,](?=\w)[^\W_]+)*")


class Line(NamedTuple):
    """A sentence of a segment with its words in lower case, and how many words the script has before it."""

    segment: Segment
    number: int
    sentence: Sentence
    words: tuple[str, ...]
    before: int


def words_of(text: str) -> list[str]:
    """The words of a text in lower case; a hyphen parts them."""
    return _WORD.findall(text.lower().replace("’", "'"))


def lines(segments: Iterable[Segment]) -> list[Line]:
    """All sentences in running order."""
    made: list[Line] = []
    before = 0
    for segment in segments:
        for number, sentence in enumerate(segment.sentences):
            words = tuple(words_of(sentence.text))
            made.append(Line(segment, number, sentence, words, before))
            before += len(words)
    return made


def offset(text: str, number: int) -> int:
    """Where in a text the word of that number stands."""
    for found in _WORD.finditer(text):
        if not number:
            return found.start()
        number -= 1
    return 0


class Phrases:
    """Phrases by their first word, and where a line has them; the longest counts, and a plural is taken too."""

    def __init__(self, phrases: Iterable[str]) -> None:
        self.by_first: dict[str, dict[int, dict[tuple[str, ...], str]]] = {}  # then by how many words, most first
        known = [(tuple(words_of(phrase)), phrase) for phrase in phrases]
        plurals = [((f"{words[0]}s",), phrase) for words, phrase in known if len(words) == 1]
        for words, phrase in (*known, *plurals):  # what is listed itself goes before the plural of something else
            if words:
                self.by_first.setdefault(words[0], {}).setdefault(len(words), {}).setdefault(words, phrase)
        for first, group in self.by_first.items():
            if len(group) > 1:
                self.by_first[first] = dict(sorted(group.items(), reverse=True))

    def at(self, words: Sequence[str], number: int) -> tuple[str, int]:
        """The phrase that begins at a word, and how many words it has; nothing and nought where none does."""
        for length, known in self.by_first.get(words[number], {}).items():
            phrase = known.get(tuple(words[number : number + length]))
            if phrase is not None:
                return phrase, length
        return "", 0

    def found(self, line: Line) -> Iterator[tuple[int, str, int]]:
        """Each phrase in a line: number of its first word, the phrase, how many words."""
        for number in () if self.by_first.keys().isdisjoint(line.words) else range(len(line.words)):
            phrase, length = self.at(line.words, number)
            if phrase:
                yield number, phrase, length


@lru_cache(maxsize=8)
def entries(listed: tuple[str, ...]) -> Mapping[str, str]:
    """A word list of `word: what belongs to it`."""
    pairs = (entry.partition(":") for entry in listed)
    return {word.strip(): rest.strip() for word, _, rest in pairs}


def holds(words: Iterable[str], meaning: str, little: frozenset[str]) -> bool:
    """Whether words hold most of the content of a meaning, in whatever form."""
    wanted = {word[:ALIKE] for word in words_of(meaning) if word not in little}
    heard = {word[:ALIKE] for word in words}
    return 2 * len(wanted & heard) > len(wanted)
