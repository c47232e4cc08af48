"""Letter grades as they are said and as recognisers write them: "a B plus", "grade B-", "an eh, minus"."""

from __future__ import annotations

import re
from typing import NamedTuple

from scriptkit.computing.taking.tokens import HESITATIONS, LETTERS

_SIGN = r"(?:\s*,(?=\s*[mp]))?[\s-]*(?:plus|minus)\b|\s*\+(?!\w)|[−–-](?!\w)"
_LETTER = r"(?:[B-FS]|(?-i:A)|(?<=\ban\s)a)\b"  # an "a" in lower case is the article, unless "an" makes it the letter
_GRADE = re.compile(
    rf"\b(?:(?:an?|the|grade[sd]?|of|with|to)\b:?\s+(?:[^\W\d_]+\s+)?(?P<given>{_LETTER})(?P<sign>{_SIGN})?(?![-'’]\w)"
    rf"|(?<![\w'’.-])(?P<bare>[B-FS])(?P<signed>{_SIGN}))",
    re.IGNORECASE,
)
_HESITATION = re.compile(rf"\b(?:{'|'.join(sorted(HESITATIONS))})\b[,.]?", re.IGNORECASE)
_AS_A_WORD = re.compile(rf"(\ban?\s+)({'|'.join(LETTERS)})(?![\w'’]|-(?!plus|minus))", re.IGNORECASE)
_PLUS = {"+": "plus", "-": "minus", "−": "minus", "–": "minus"}


class LetterGrade(NamedTuple):
    """A grade with its sign in words, "b plus", and where its letter stands in the text."""

    grade: str
    start: int


def written(text: str) -> list[LetterGrade]:
    """The letter grades of a sentence of the script, in order: its letters are capitals."""
    return [one for one in _find(text) if text[one.start].isupper()]


def heard(text: str) -> list[LetterGrade]:
    """Those of what was said, in order, whatever the case of their letters, and where they are written as words."""
    return _find(_AS_A_WORD.sub(_letter, _HESITATION.sub(lambda found: " " * len(found[0]), text)))


def _find(text: str) -> list[LetterGrade]:
    made = []
    for one in _GRADE.finditer(text):
        name = "given" if one["given"] else "bare"
        sign = (one["sign"] or one["signed"] or "").strip(" ,\t\n").lower()
        sign = sign if sign in _PLUS else sign.strip("-").strip()
        made.append(LetterGrade(f"{one[name].lower()} {_PLUS.get(sign, sign)}".strip(), one.start(name)))
    return made


def _letter(found: re.Match[str]) -> str:
    """The letter that a recogniser wrote as a word, "an eh", in as many signs."""
    return found[1] + LETTERS[found[2].lower()].upper().ljust(len(found[2]))
