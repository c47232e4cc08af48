"""Text as it is spoken: everything written out, and what of it counts as sound, as pause and as word."""

import re
from collections.abc import Mapping
from functools import lru_cache

from scriptkit.computing.aloud import numerals
from scriptkit.computing.aloud.forms import spelled_out
from scriptkit.computing.aloud.naming import a, mid
from scriptkit.computing.aloud.symbols import unsayable
from scriptkit.wording import grade_parts

_UNUSED = range(0xA000, 0xA48D)  # letters of a script no script here is written in, to hold the place of a term

__all__ = ["a", "as_spoken", "commas", "grade_spoken", "letters", "mid", "number_spoken", "unsayable", "words"]


@lru_cache(maxsize=1)
def _pauses() -> re.Pattern[str]:
    """Commas, semicolons, colons and dashes; touching ones are one pause, and those between digits are none."""
    return re.compile(r"(?:[,;:](?![0-9])|—|–(?!\d)|(?<!\d)–|(?<=\s)--?(?=\s)|(?<=\w)--(?=\w))+")


@lru_cache(maxsize=1)
def _word() -> re.Pattern[str]:
    """From a letter or digit to the next white space, long dash or ellipsis."""
    return re.compile(r"[^\W_](?:[^\s—–….\-]++|[.\-](?![.\-])|(?<=\d)[–—](?=[$£€]?\d))*")


@lru_cache(maxsize=1)
def _any_word() -> re.Pattern[str]:
    return re.compile(r"\w+")


@lru_cache(maxsize=4)
def _by_first_word(says: tuple[tuple[str, str], ...]) -> dict[str, dict[int, dict[str, str]]]:
    """Say-as terms by the first word in them and by their length, longest first."""
    found: dict[str, dict[int, dict[str, str]]] = {}
    for term, said in sorted(says, key=lambda pair: (-len(pair[0]), pair[0])):
        plain = " ".join(term.lower().split())
        if first := _any_word().match(plain):
            found.setdefault(first[0], {}).setdefault(len(plain), {}).setdefault(plain, said)
    return found


def as_spoken(text: str, says: Mapping[str, str] | None = None) -> str:
    """The text with everything written out as it is spoken: numbers, units, signs, grades, codes, links.

    `says` gives for a term in lower case how it is said; such terms are found as whole words in any case,
    the longest first, and what is said for them is not written out again.
    """
    if not says:
        return spelled_out(text)
    stand_in = next((letter for code in _UNUSED if (letter := chr(code)) not in text), "\ue000")
    pieces, taken = _taken_out(text, _by_first_word(tuple(says.items())))
    spoken = spelled_out(stand_in.join(pieces)).split(stand_in)
    return "".join(piece for pair in zip(spoken, [*taken, ""], strict=False) for piece in pair)


def _taken_out(text: str, terms: dict[str, dict[int, dict[str, str]]]) -> tuple[list[str], list[str]]:
    """What stands between the terms, and what is said for each of them."""
    plain = text.lower()
    if len(plain) != len(text):  # a few letters grow in lower case; places must stay what they are
        plain = "".join(low if len(low := letter.lower()) == 1 else letter for letter in text)
    plain = plain.translate({9: " ", 10: " ", 13: " "})
    between: list[str] = []
    taken: list[str] = []
    done = 0
    for word in _any_word().finditer(plain):
        for length, known in terms.get(word[0], {}).items() if word.start() >= done else ():
            end = word.start() + length
            said = known.get(plain[word.start() : end])
            if said is not None and word.start() >= done and not _goes_on(plain, end):
                between.append(text[done : word.start()])
                taken.append(said)
                done = end
    return [*between, text[done:]], taken


def _goes_on(plain: str, end: int) -> bool:
    return plain[end : end + 1].isalnum() and plain[end - 1].isalnum()


def letters(spoken: str) -> int:
    """The letters of text that is written out already; a digit left over counts as one."""
    return sum(map(str.isalnum, spoken))


def commas(spoken: str) -> int:
    """The pauses inside sentences: commas, semicolons, colons and dashes; a hyphen inside a word is none."""
    return sum(1 for _ in _pauses().finditer(spoken))


def words(text: str) -> int:
    """The words as written; a number is one whatever is glued to it ("8-12", "22%"), a mark by itself is none."""
    return sum(1 for _ in _word().finditer(text))


def grade_spoken(grade: str) -> str:
    """A grade as it is said: "A-" "A minus", "7" "seven", "must-do" as it is."""
    stem, sign = grade_parts(grade)
    said: list[str] = []
    while sign:
        said.append("plus" if sign == "+" else "minus")
        stem, sign = grade_parts(stem)
    return " ".join([number_spoken(stem), *reversed(said)])


def number_spoken(value: float | str) -> str:
    """A number in words; text that is no plain number is written out as it is spoken."""
    if isinstance(value, str):
        return spelled_out(value.strip())
    written = _digits(value)
    said = numerals.number(written.lstrip("-")) if written else "not a number"
    return f"minus {said}" if written.startswith("-") else said


def _digits(value: float) -> str:
    """The digits of a number without an exponent or a ".0"; "" for what has none or more than can be written."""
    try:
        whole = int(value)
        written = str(whole) if value == whole else repr(value)
    except (OverflowError, ValueError):  # not finite, or of thousands of digits
        return ""
    return f"{value:.15f}".rstrip("0") if "e" in written else written
