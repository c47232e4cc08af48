"""The script and a recording as they are compared, and where each sentence was said."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from typing import NamedTuple

from scriptkit.computing.taking import aligning
from scriptkit.computing.taking.aligning import Line, Match, Tell
from scriptkit.computing.taking.compounds import Apart, apart
from scriptkit.computing.taking.tokens import HESITATIONS, NONE, Piece, Token, pieces, tokens
from scriptkit.model import Segment, Sentence
from scriptkit.model.recording import TimedWord


class Spoken(NamedTuple):
    """A sentence of the script: its words, what they are compared as, and where it stands."""

    segment: Segment
    number: int  # of the segment
    sentence: Sentence
    at: int  # number of the sentence in its segment
    pieces: tuple[Piece, ...]
    tokens: tuple[Token, ...]

    def text(self, first: int, last: int) -> str:
        """The script's own words from one token to another."""
        start, end = self.pieces[self.tokens[first].first].start, self.pieces[self.tokens[last].last].end
        return str(self.sentence.text[start:end])

    def offset(self, token: int) -> int:
        """Where a token stands in the sentence."""
        return self.pieces[self.tokens[token].first].start


class Recorded:
    """A recording: its words, and what they are compared as; `apart` has those that are compared as two."""

    def __init__(self, words: Sequence[TimedWord], apart: Apart = NONE) -> None:
        self.words, self.apart = words, apart
        texts: list[str] = []
        self._owner: list[int] = []  # of each piece, the number of its word
        self.hesitations = 0  # left out of what is compared: an "um" inside a number may not part it
        for number, word in enumerate(words):
            for piece in pieces(word.text, apart):
                if piece.text.lower() in HESITATIONS:
                    self.hesitations += 1
                    continue
                texts.append(piece.text)
                self._owner.append(number)
        self.tokens = tokens(texts)
        self.keys = [token.key for token in self.tokens]

    def start(self, token: int) -> float:
        """When a token begins."""
        return self.words[self._owner[self.tokens[token].first]].start

    def end(self, token: int) -> float:
        """When a token ends."""
        return self.words[self._owner[self.tokens[token].last]].end

    def text(self, first: int, last: int) -> str:
        """The words from one token to another, as the recording has them."""
        if last < first:
            return ""
        low, high = self._owner[self.tokens[first].first], self._owner[self.tokens[last].last]
        return " ".join(word.text for word in self.words[low : high + 1])


def compared(segments: Sequence[Segment], words: Sequence[TimedWord]) -> tuple[list[Spoken], Recorded]:
    """Script and recording; a word that only one of them writes as two is two in both."""
    found = apart([one.text for segment in segments for one in segment.sentences], [word.text for word in words])
    return spoken(segments, found), Recorded(words, found)


def spoken(segments: Sequence[Segment], apart: Apart = NONE) -> list[Spoken]:
    """Every sentence of the script in order; those without a word are left out."""
    made = []
    for number, segment in enumerate(segments):
        for at, sentence in enumerate(segment.sentences):
            found = tuple(pieces(sentence.text, apart))
            if found:
                made.append(
                    Spoken(segment, number, sentence, at, found, tuple(tokens([piece.text for piece in found])))
                )
    return made


def match(script: Sequence[Spoken], recorded: Recorded, tell: Tell | None = None) -> list[Match | None]:
    """Where each sentence was said, and None where it was not."""
    lines = [Line(tuple(token.key for token in one.tokens), one.number) for one in script]
    return aligning.align(lines, recorded.keys, tell)


def gaps(matches: Sequence[Match | None], length: int) -> list[tuple[int, int]]:
    """The stretches of a recording in which no sentence was said: first token, and the one behind the last."""
    taken = sorted((one.first, one.last + 1) for one in matches if one)
    found, at = [], 0
    for first, end in taken:
        if first > at:
            found.append((at, first))
        at = max(at, end)
    return [*found, (at, length)] if at < length else found


def order(matches: Sequence[Match | None]) -> list[tuple[int, int]]:
    """The sentences in the order in which they were said: first token and number of each."""
    return sorted((one.first, number) for number, one in enumerate(matches) if one)


def before(said: Sequence[tuple[int, int]], token: int) -> int:
    """The number of the sentence that was said last before a token, by `order`; -1 where there is none."""
    at = bisect_right(said, token, key=lambda one: one[0])
    return said[at - 1][1] if at else -1
