"""Whether two wordings say the same: a sentence and a claim of the outline."""

import re
from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

from scriptkit.model import Claim, Paragraph, Sentence

SAME = 0.85  # share of words in common: one in seven may differ
_PLAIN = re.compile(r"[^\W_]+(?:['’.,](?=\w)[^\W_]+)*")
# words that turn a statement round, in one wording and not in the other
_TURNS = frozenset(
    "no not never none neither nor without cannot hardly more less fewer higher lower bigger smaller longer shorter "
    "better worse up down rose fell increased decreased gained lost above below before after all some most few may "
    "might could".split()
)
_COMPARES = frozenset("than versus vs against while whereas beat beats over but".split())


def plain(text: str) -> str:
    """Words alone, lower case: what two wordings are compared by."""
    return " ".join(_PLAIN.findall(text.lower().replace("’", "'")))


class _Wording(NamedTuple):
    words: tuple[str, ...]
    kinds: frozenset[str]
    figures: tuple[str, ...]
    turns: frozenset[str]


_Turns = tuple[tuple[str, ...], frozenset[str]]  # figures, and words that turn a statement round


@lru_cache(maxsize=4096)
def _wording(text: str) -> _Wording:
    words = tuple(plain(text).split())
    kinds = frozenset(words)
    turns = frozenset(word for word in kinds if word in _TURNS or word.endswith("n't"))
    return _Wording(words, kinds, tuple(word for word in words if word[0].isdigit()), turns)


def _same(one: _Wording, other: _Wording) -> bool:
    if not one.kinds or one.figures != other.figures or one.turns != other.turns:
        return False
    common = one.kinds & other.kinds
    if len(common) < SAME * len(one.kinds | other.kinds):
        return False
    if len(one.figures) < 2 and not common & _COMPARES:
        return True
    # who gained more than whom is told by the order
    return [word for word in one.words if word in common] == [word for word in other.words if word in common]


def says_the_same(one: str, other: str) -> bool:
    """Whether two wordings are the same but for a word in seven.

    Case and punctuation aside, and order too where nothing is compared. A figure or a "not" more or less makes another
    statement.
    """
    return _same(_wording(one), _wording(other))


def take_over(
    paragraphs: tuple[Paragraph, ...], claims: Sequence[Claim]
) -> tuple[tuple[Paragraph, ...], tuple[Claim, ...]]:
    """Give each sentence that says the same as a claim the claim's sources; and the claims that no sentence says."""
    wanted = [(claim, _wording(claim.say)) for claim in claims]
    alike: dict[_Turns, list[int]] = {}
    for i, (_, one) in enumerate(wanted):
        alike.setdefault((one.figures, one.turns), []).append(i)
    said: set[int] = set()
    made = []
    for paragraph in paragraphs:
        sentences = []
        for sentence in paragraph.sentences:
            wording = _wording(sentence.text)
            near = alike.get((wording.figures, wording.turns), ())
            number = next((i for i in near if _same(wording, wanted[i][1])), None)
            if number is not None:
                said.add(number)
            sentences.append(sentence if number is None else _with(sentence, wanted[number][0]))
        made.append(paragraph._replace(sentences=tuple(sentences)))
    whole = " ".join(plain(sentence.text) for paragraph in paragraphs for sentence in paragraph.sentences)
    # a claim of several sentences is said where all of them are
    unsaid = [claim for i, (claim, one) in enumerate(wanted) if i not in said and " ".join(one.words) not in whole]
    return tuple(made), tuple(unsaid)


def _with(sentence: Sentence, claim: Claim) -> Sentence:
    known = {(link.id, link.finding) for link in sentence.links}
    more = tuple(link for link in claim.source if (link.id, link.finding) not in known)
    return sentence._replace(
        links=(*sentence.links, *more),
        opinion=sentence.opinion or claim.opinion,
        sponsor_says=sentence.sponsor_says or claim.sponsor_wording,
        claim=claim,
    )
