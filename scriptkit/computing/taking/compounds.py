"""Words that script and recording write as one and as two: "pull-up" and "pullup", "no-hang" and "nohang"."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise

from scriptkit.computing.taking.tokens import NUMBER_WORDS, pieces

Apart = Mapping[str, int]  # a word in small letters, and how many of them are the first of its two
# what a word may hold by chance: "often" is no "of ten", "notable" no "not able"
_NO_PART = NUMBER_WORDS | {"not", "nor", "a", "i"}


def apart(script: Sequence[str], said: Sequence[str]) -> Apart:
    """The words of either text that stand in the other one in two parts; both are compared in parts then."""
    texts = [[piece.text.lower() for text in one for piece in pieces(text)] for one in (script, said)]
    words = [set(one) for one in texts]
    found: dict[str, int] = {}
    for pairs, other in ((texts[0], words[1]), (texts[1], words[0])):
        for one, two in _pairs(pairs):
            if one + two in other:
                found.setdefault(one + two, len(one))
    return found


def _pairs(words: Sequence[str]) -> Iterator[tuple[str, str]]:
    for one, two in pairwise(words):
        if one.isalpha() and two.isalpha() and one not in _NO_PART and two not in _NO_PART:
            yield one, two
