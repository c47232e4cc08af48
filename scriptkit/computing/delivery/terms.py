"""Trade words: where each is spoken first in the running order, and whether it is explained there."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from scriptkit.computing.delivery.lines import Line, Phrases, entries, holds, offset, words_of
from scriptkit.model import Episode, Stumble

NEAR = 25  # words before and behind a trade word in which it is explained
MOST_USES = 20  # of one stock word that are looked at for an explanation


def find(lines: Sequence[Line], episode: Episode, words: Mapping[str, tuple[str, ...]]) -> list[Stumble]:
    """The outline's terms that their first use does not explain, and stock trade words that nothing explains."""
    stock = entries(words.get("trade-words", ()))
    glosses = {str(term): str(one.gloss) for term, one in episode.terms.items() if one.gloss}
    own = Phrases(glosses)
    in_terms = {word for term in glosses for word in (term.lower(), " ".join(words_of(term)))}
    trade = Phrases(word for word in stock if word not in in_terms)
    if not own.by_first and not trade.by_first:
        return []
    ear = _Ear(lines, words)
    return [*_own(ear, own, glosses), *_stock(ear, trade, stock)]


class _Ear:
    """What is heard around a word."""

    def __init__(self, lines: Sequence[Line], words: Mapping[str, tuple[str, ...]]) -> None:
        self.lines = lines
        self.row = [word for line in lines for word in line.words]
        self.little = frozenset(words.get("little-words", ()))
        self.begins = Phrases(words.get("explaining", ()))

    def explains(self, at: int, length: int, gloss: str) -> bool:
        """Whether the words around the one at `at` hold most of a gloss."""
        around = self.row[max(0, at - NEAR) : at] + self.row[at + length : at + length + NEAR]
        return holds(around, gloss, self.little)

    def goes_on(self, line: Line, number: int, length: int) -> bool:
        """Whether an explanation of the author's own begins right behind a word, or the word is given as a name."""
        behind = number + length
        if behind < len(line.words) and self.begins.at(line.words, behind)[0]:
            return True
        if number and self.begins.at(line.words, number - 1)[0] in ("called", "known as"):
            return True
        text = line.sentence.text
        end = offset(text, behind) if behind < len(line.words) else 0
        start = offset(text, number)
        apart = {"a", "an", "the", "your"}
        # "the soleus, the flat muscle under the big one"
        return bool(end) and "," in text[start:end] and line.words[behind] in apart


def _own(ear: _Ear, terms: Phrases, glosses: Mapping[str, str]) -> Iterator[Stumble]:
    seen: set[str] = set()
    for line in ear.lines if glosses else ():
        for number, term, length in terms.found(line):
            if term in seen:
                continue
            seen.add(term)
            if not ear.explains(line.before + number, length, glosses[term]):
                yield _told("term", line, number, length, glosses[term])


def _stock(ear: _Ear, trade: Phrases, stock: Mapping[str, str]) -> Iterator[Stumble]:
    first: dict[str, tuple[Line, int, int]] = {}
    explained: set[str] = set()
    uses: dict[str, int] = {}
    for line in ear.lines:
        for number, word, length in trade.found(line):
            first.setdefault(word, (line, number, length))
            uses[word] = uses.get(word, 0) + 1
            if word in explained or uses[word] > MOST_USES:
                continue
            if ear.explains(line.before + number, length, stock[word]) or ear.goes_on(line, number, length):
                explained.add(word)
    for word, (line, number, length) in first.items():
        if word not in explained:
            yield _told("trade", line, number, length, stock[word])


def _told(kind: str, line: Line, number: int, length: int, gloss: str) -> Stumble:
    text = line.sentence.text
    start = offset(text, number)
    last = offset(text, number + length - 1)
    written = text[start : last + len(line.words[number + length - 1])]
    return Stumble(kind, line.segment.id, line.sentence.place_of(start), written, text, gloss)
