"""Words that script and recording write as one and as two: "pull-up" and "pullup", "no-hang" and "nohang"."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise

from scriptkit.computing.taking.tokens import NUMBER_WORDS, pieces

Apart = Mapping[str, int]  # a word in small letters, and how many of them are the first of its two
# what a word may hold by chance: "often" is no "of ten", "notable" no "not able"; a hyphen leaves no doubt
_NO_PART = NUMBER_WORDS | {"not", "nor", "a", "i"}
_HYPHENS = frozenset("-\u2010\u2011")


def apart(script: Sequence[str], said: Sequence[str]) -> Apart:
    """The words of either text that stand in the other one in two parts; both are compared in parts then."""
    texts = [" ".join(one) for one in (script, said)]
    found: dict[str, int] = {}
    split = [pieces(text) for text in texts]
    words = [{piece.text.lower() for piece in one} for one in split]
    for text, parts, other in ((texts[0], split[0], words[1]), (texts[1], split[1], words[0])):
        for one, two in pairwise(parts):
            both = (one.text.lower(), two.text.lower())
            if "".join(both) in other and _may_be_one(both, text[one.end : two.start]):
                found.setdefault("".join(both), len(both[0]))
    return found


def _may_be_one(both: tuple[str, str], between: str) -> bool:
    """Whether two words that stand side by side may be a compound."""
    return all(map(str.isalpha, both)) and (between in _HYPHENS or (between == " " and _NO_PART.isdisjoint(both)))
