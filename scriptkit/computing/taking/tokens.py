"""Words of script and recording brought to one form, so that they can be compared: numbers by value, units by kind."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from functools import lru_cache
from typing import NamedTuple

from scriptkit.computing.numbers.units import UNITS

# a plus or minus right behind a single letter is part of a grade
_PIECE = re.compile(r"\d+(?:[.,]\d+)*|[^\W\d_]+(?:['’][^\W\d_]+)*|[%°$£€]|(?<=\b[A-Za-z])[+−–-](?!\w)")
_THOUSANDS = re.compile(r"\d{1,3}(?:,\d{3})+")
_SIGNS = {"%": "percent", "°": "degrees", "$": "dollars", "£": "pounds", "€": "euros"} | {"+": "plus", "-": "minus"}
_SIGNS |= dict.fromkeys("−–", "minus")
_SMALL = {
    word: value
    for value, word in enumerate(
        "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen "
        "seventeen eighteen nineteen".split()
    )
}
_TENS = {
    word: 10 * value for value, word in enumerate("twenty thirty forty fifty sixty seventy eighty ninety".split(), 2)
}
_SCALES = {"hundred": 100, "thousand": 1000, "million": 1_000_000}
NUMBER_WORDS = frozenset((*_SMALL, *_TENS, *_SCALES))
NONE: Mapping[str, int] = {}
LETTERS = {"eh": "a", "ay": "a", "bee": "b", "see": "c", "sea": "c", "dee": "d", "ess": "s", "ef": "f", "eff": "f"}
_CENTURIES = (18.0, 19.0, 20.0, 21.0)
HESITATIONS = frozenset("um uh er erm ah hmm uhm".split())
ADDRESS = frozenset("https http www dot slash".split())  # of what is typed one way and said another
SPELLED = 3  # single letters in a row from which on a word is spelled out
FILLERS = HESITATIONS | ADDRESS | frozenset("like well so okay ok right".split())


class Token(NamedTuple):
    """A word as it is compared (`key`), and from which word of its text to which it was made."""

    key: str
    first: int
    last: int


class Piece(NamedTuple):
    """A word of a text and where it stands in it."""

    text: str
    start: int
    end: int


def pieces(text: str, apart: Mapping[str, int] = NONE) -> list[Piece]:
    """The words of a text; figures, units and letters that are written together are apart.

    `apart` has the words that are two, and how many letters of them are the first.
    """
    found = [Piece(one[0], one.start(), one.end()) for one in _PIECE.finditer(text)]
    return [part for piece in found for part in _parts(piece, apart.get(piece.text.lower(), 0))] if apart else found


def _parts(piece: Piece, letters: int) -> list[Piece]:
    if not letters:
        return [piece]
    middle = piece.start + letters
    return [Piece(piece.text[:letters], piece.start, middle), Piece(piece.text[letters:], middle, piece.end)]


def keys_of(text: str, apart: Mapping[str, int] = NONE) -> tuple[str, ...]:
    """A text as what its words are compared as."""
    return tuple(token.key for token in tokens([piece.text for piece in pieces(text, apart)]))


def tokens(words: Sequence[str]) -> list[Token]:
    """Words in the form in which they are compared. Several words that say one number are one token."""
    plain = [_plain(word) for word in words]
    made: list[Token] = []
    at = 0
    while at < len(plain):
        word, end = _joined(plain, at)
        if word:
            made.append(Token(word, at, end - 1))
            at = end
            continue
        apart = _contracted(words[at])
        if apart:
            made += [Token(key, at, at) for key in apart]
            at += 1
            continue
        value, end = _number(plain, at)
        if value is None:
            made.append(Token(_unit(plain[at]), at, at))
            at += 1
        else:
            made.append(Token(f"#{value:g}", at, end - 1))
            at = end
    return made


def _plain(word: str) -> str:
    lowered = word.lower().replace("’", "'").strip("'")
    return _SIGNS.get(lowered, lowered.replace("'", ""))


_SHORT = {"n't": "not", "'re": "are", "'ll": "will", "'ve": "have", "'m": "am"}
_IRREGULAR = {"can't": "can", "won't": "will", "shan't": "shall", "ain't": "is"}
_BARE = frozenset("dont cant doesnt didnt isnt arent wasnt werent wouldnt couldnt shouldnt hasnt havent hadnt".split())
_IS = frozenset("it that there here what he she who where how".split())  # before 's, which is "is" behind them


def _contracted(word: str) -> tuple[str, ...]:
    """The two words of a contraction: "don't" is "do not" however it is said; nothing for others."""
    lowered = word.lower().replace("’", "'")
    if lowered == "cannot":
        return ("can", "not")
    if lowered in _BARE:
        lowered = f"{lowered[:-1]}'t"  # as recognisers write it
    for ending, long in _SHORT.items():
        if lowered.endswith(ending) and len(lowered) > len(ending):
            return (_IRREGULAR.get(lowered, lowered.removesuffix(ending)).replace("'", ""), long)
    return (lowered[:-2], "is") if lowered.endswith("'s") and lowered[:-2] in _IS else ()


def _joined(words: Sequence[str], at: int) -> tuple[str, int]:
    """Words in another spelling: "per cent", a code letter by letter, the letter of a grade; "" for others."""
    if words[at : at + 2] == ["per", "cent"]:
        return _unit("percent"), at + 2
    if words[at] in LETTERS and words[at + 1 : at + 2] in (["plus"], ["minus"]):
        return LETTERS[words[at]], at + 1  # a grade, as a recogniser that does not know it writes it
    end = at
    while end < len(words) and len(words[end]) == 1 and words[end].isalpha():
        end += 1
    return ("".join(words[at:end]), end) if end - at >= SPELLED else ("", at)


@lru_cache(maxsize=4096)
def _unit(word: str) -> str:
    """A unit by what it measures, so that "kilos" and "kilograms" are one; any other word as it is."""
    known = UNITS.get(word) or UNITS.get(word.removesuffix("s"))
    return word if known is None or len(word) < 2 else f"={known[0]} {known[1]:g}"


def _number(words: Sequence[str], at: int) -> tuple[float | None, int]:
    """The number that begins at a word, and where it ends; None where none does."""
    first = words[at]
    if first[:1].isdigit():
        bare = first.replace(",", "") if _THOUSANDS.fullmatch(first) else first
        return (float(bare), at + 1) if bare.replace(".", "", 1).isdigit() else (None, at)
    value, end = _whole(words, at)
    if value is None:
        return None, at
    if end + 1 < len(words) and words[end] == "point" and words[end + 1] in _SMALL:
        digits, end = "", end + 1
        while end < len(words) and words[end] in _SMALL and _SMALL[words[end]] < 10:
            digits, end = digits + str(_SMALL[words[end]]), end + 1
        return float(f"{value:.0f}.{digits or '0'}"), end
    return value, end


def _whole(words: Sequence[str], at: int) -> tuple[float | None, int]:
    """A whole number in words: "thirty eight", "two hundred and twelve", and a year in two halves."""
    total, group, end, some = 0.0, -1.0, at, False
    while end < len(words):
        word = words[end]
        if word in _TENS and (group < 0 or group % 100 == 0):
            group = max(group, 0.0) + _TENS[word]
        elif word in _SMALL and (
            group < 0 or group % 100 == 0 or (group % 10 == 0 and _SMALL[word] < 10 and group % 100 >= 20)
        ):
            group = max(group, 0.0) + _SMALL[word]
        elif word in _SCALES and group > 0:
            scale = _SCALES[word]
            if scale == 100:
                group *= 100
            else:
                total, group = total + group * scale, -1.0
        elif word == "and" and some and words[end - 1] in _SCALES and end + 1 < len(words) and _begins(words[end + 1]):
            end += 1
            continue
        elif some and group in _CENTURIES and _begins(word) and not total and words[end - 1] not in _SCALES:
            half, after = _whole(words, end)  # "twenty twenty one" is a year, and so is "nineteen ninety nine"
            if half is not None and 10 <= half < 100:
                return group * 100 + half, after
            break
        else:
            break
        some, end = True, end + 1
    return (total + max(group, 0.0), end) if some else (None, at)


def _begins(word: str) -> bool:
    return word in _SMALL or word in _TENS
