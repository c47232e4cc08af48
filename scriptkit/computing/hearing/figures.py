"""Finds the values spoken in a sentence: "a fifth" is 0.2, "twice" 2, "thirty-eight" 38."""

from collections.abc import Sequence
from typing import NamedTuple

UNITS = dict(
    zip(
        "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen "
        "seventeen eighteen nineteen".split(),
        range(20),
        strict=True,
    )
)
TENS = dict(zip("twenty thirty forty fifty sixty seventy eighty ninety".split(), range(20, 100, 10), strict=True))
SCALES = {"hundred": 100, "thousand": 1000, "million": 1_000_000, "billion": 1_000_000_000}
PARTS = {
    "half": 2, "halves": 2, "third": 3, "thirds": 3, "quarter": 4, "quarters": 4, "fifth": 5, "fifths": 5, "sixth": 6,
    "sixths": 6, "seventh": 7, "eighth": 8, "eighths": 8, "ninth": 9, "tenth": 10, "tenths": 10, "twentieth": 20,
    "hundredth": 100, "hundredths": 100, "thousandth": 1000,
}  # fmt: skip
MULTIPLES = {
    "twice": 2.0, "double": 2.0, "doubled": 2.0, "doubles": 2.0, "doubling": 2.0, "triple": 3.0, "tripled": 3.0,
    "triples": 3.0, "thrice": 3.0, "quadruple": 4.0, "quadrupled": 4.0, "halved": 0.5, "halves": 0.5, "halving": 0.5,
    "dozen": 12.0, "both": 0.0, "twofold": 2.0, "threefold": 3.0, "fourfold": 4.0, "fivefold": 5.0, "tenfold": 10.0,
}  # fmt: skip
DECADES = {name[:-1] + "ies": value for name, value in TENS.items()}
POINTERS = frozenset(
    "the those these number numbers zone zones phase grade type day week level step part option".split()
)
COUNTED_ONE = frozenset(
    (
        "percent degree second minute hour day week month year decade gram kilo pound ounce inch mile metre meter "
        "rep repetition ton litre point milligram hundred thousand third quarter half fifth"
    ).split()
)
ORDINAL_OF = frozenset(  # "a third session" is the one after the second
    (
        "session sessions weekly daily set time rep group trial study day week month year way thing exercise point "
        "reason option person one leg round workout test paper review lift movement party umpire coach opinion try"
    ).split()
)
HALF_OF = frozenset("a an of the as its it your their his her my our what that those these again one".split())
BEFORE_HALF = frozenset(
    (
        "a by in about nearly roughly over under almost than and to only at around exactly another every within "
        "least last most cut cuts up is was"
    ).split()
)
NOT_HALVED = frozenset(
    (
        "life lives true squat squats rep reps kneeling marathon marathons moon court dead decent asleep baked "
        "hearted heartedly measure measures truth truths lotus turn stance"
    ).split()
)
BEFORE_YEAR = frozenset("in since from of by the until before after a an mid early late around".split())
BEFORE_ONE = frozenset("than under over about least most exactly roughly nearly almost by within past".split())


STARTS = {"a", "an", "half"} | UNITS.keys() | TENS.keys() | SCALES.keys() | DECADES.keys() | MULTIPLES.keys()
LONGEST = 15  # digits; nobody says a longer number
LARGEST = 1e15


class Figure(NamedTuple):
    """A value and the tokens that speak it (`start` up to, not including, `end`)."""

    value: float
    start: int
    end: int


def _digits(word: str) -> float | None:
    """The value of a token of digits ("38", "1,200", "0.41", "40%"), None for a word."""
    bare = word.rstrip("%")
    if not bare or not bare[0].isdigit() or len(bare) > LONGEST:
        return None
    try:
        return float(bare.replace(",", ""))
    except ValueError:
        return None


def _small(words: Sequence[str], i: int) -> tuple[float, int] | None:
    """A number under a hundred at i, as (value, next token)."""
    word = words[i]
    if word in TENS:
        following = UNITS.get(words[i + 1], 0) if i + 1 < len(words) else 0
        if 0 < following < 10:
            return TENS[word] + following, i + 2
        return TENS[word], i + 1
    if word in UNITS or word in DECADES:
        return UNITS.get(word) or DECADES.get(word, 0), i + 1
    value = _digits(word)
    return None if value is None else (value, i + 1)


def _whole(words: Sequence[str], i: int) -> tuple[float, int] | None:
    """A whole number at i, scales included ("nine thousand", "a hundred and twenty"), as (value, next token)."""
    n = len(words)
    if words[i] == "a" and i + 1 < n and words[i + 1] in SCALES:
        part, j = 1.0, i + 1
    elif words[i] in ("a", "an") and i + 1 < n and i and words[i - 1] in BEFORE_ONE and words[i + 1] in COUNTED_ONE:
        return 1.0, i + 1
    elif words[i] in SCALES and i and words[i - 1] in ("per", "in", "every"):
        part, j = 1.0, i
    else:
        small = _small(words, i)
        if small is None:
            return None
        part, j = small
    total = 0.0
    while j < n and part < LARGEST:
        if words[j] in SCALES:
            scale = SCALES[words[j]]
            if scale == 100:
                part *= 100
            else:
                total, part = total + part * scale, 0.0
            j += 1
            continue
        k = j + 1 if words[j] == "and" and words[j - 1] in SCALES and j + 1 < n else j
        after = _small(words, k) if words[j - 1] in SCALES else None
        if after is None:
            break
        part, j = part + after[0], after[1]
    return total + part, j


def _decimal(words: Sequence[str], j: int) -> tuple[float, int]:
    """The digits after a spoken "point" at j, as (fraction, next token)."""
    text, k = "", j + 1
    while k < len(words) and len(text) < LONGEST and UNITS.get(words[k], 10) < 10:
        text, k = text + str(UNITS[words[k]]), k + 1
    return (float("0." + text), k) if text else (0.0, j)


def _fraction(words: Sequence[str], i: int) -> tuple[float, int] | None:
    """A fraction at i ("a fifth", "two thirds", "half"), as (value, next token)."""
    n = len(words)
    if words[i] == "half":
        return _half(words, i)
    if i + 1 >= n or words[i + 1] not in PARTS:
        return None
    if words[i + 1] in ("half", "quarter") and i + 2 < n and words[i + 2] in NOT_HALVED:
        return None
    if words[i] in ("a", "an"):
        return None if words[i + 2 : i + 3] and words[i + 2] in ORDINAL_OF else (1 / PARTS[words[i + 1]], i + 2)
    count = UNITS.get(words[i])
    if count and (words[i + 1].endswith("s") or count == 1):
        return count / PARTS[words[i + 1]], i + 2
    return None


def _half(words: Sequence[str], i: int) -> tuple[float, int] | None:
    """A share of one half at i, as (value, next token); "half squats", "half true" and "the first half" are none."""
    before, after = words[i - 1] if i else "", words[i + 1] if i + 1 < len(words) else ""
    if before in ("first", "second") or after in NOT_HALVED:
        return None
    if after == "a" and words[i + 2 : i + 3] == ["dozen"]:
        return 6.0, i + 3
    return (0.5, i + 1) if not before or after in HALF_OF or before in BEFORE_HALF else None


def _year(words: Sequence[str], i: int) -> int:
    """Where a year spoken at i ends ("twenty nineteen", "nineteen eighty-four", "two thousand and six"), or 0."""
    if words[i] in ("nineteen", "twenty") and i + 1 < len(words):
        small = _small(words, i + 1)
        if small is not None and 10 <= small[0] < 100:
            return small[1]
    if list(words[i : i + 2]) == ["two", "thousand"] and i and words[i - 1] in ("in", "since", "from", "until", "by"):
        return _whole(words, i)[1]  # type: ignore[index]  # it opens with a number
    return 0


def _pair(words: Sequence[str], i: int, glued: Sequence[bool]) -> tuple[float, int] | None:
    """Two numbers run together as people say hundreds ("three-fifty" is 350), as (value, next token)."""
    hundreds = UNITS.get(words[i], 0)
    if not 0 < hundreds < 10 or i + 1 >= len(words) or not glued[i] or words[i + 1] not in TENS:
        return None
    small = _small(words, i + 1)
    return None if small is None else (hundreds * 100 + small[0], small[1])


def _mere_one(words: Sequence[str], i: int) -> bool:
    """Whether "one" at i is a pronoun or an article rather than a count."""
    after = words[i + 1].rstrip("s") if i + 1 < len(words) else ""
    before = words[i - 1] if i else ""
    if after in ("to", "or") and i + 2 < len(words) and words[i + 2] in UNITS:
        return False
    if after == "in" and i + 2 < len(words):
        return words[i + 2] not in UNITS and words[i + 2] not in TENS
    return after not in COUNTED_ONE and not (before in ("least", "under", "over") and after)


def figures(words: Sequence[str], glued: Sequence[bool]) -> list[Figure]:
    """The values in a list of lower-case words; `glued[i]` says that word i is joined to the next by a hyphen.

    Left out, since no record could hold them: "one" as a pronoun, "the two lifts", "zone two" and years.
    """
    found: list[Figure] = []
    i, n = 0, len(words)
    while i < n:
        if words[i] not in STARTS and not words[i][0].isdigit():
            i += 1
            continue
        if year := _year(words, i):
            i = year
            continue
        read = _pair(words, i, glued) or _fraction(words, i) or _whole(words, i)
        if read is None:
            if MULTIPLES.get(words[i]):
                found.append(Figure(MULTIPLES[words[i]], i, i + 1))
            i += 1
            continue
        value, j = read
        if j < n and words[j] == "point":
            part, j = _decimal(words, j)
            value += part
        elif j + 2 < n and words[j] == "and" and words[j + 1] in ("a", "one") and words[j + 2] in PARTS:
            value, j = value + 1 / PARTS[words[j + 2]], j + 3
        if not _referring(words, i, j, value):
            found.append(Figure(value, i, j))
        i = j
    return found


def _referring(words: Sequence[str], i: int, j: int, value: float) -> bool:
    """Whether the number from i to j only points at something, or is a year."""
    before = words[i - 1] if i else ""
    if j == i + 1 and words[i] == "one":
        return _mere_one(words, i)
    if words[i] in DECADES and before == "the":
        return True
    if words[i] == "zero":
        return True
    if words[i][0].isdigit() and 1900 <= value <= 2099 and not value % 1:
        return (before in BEFORE_YEAR and (before not in ("a", "an") or value % 100 != 0)) or i == 0
    after = words[j] if j < len(words) else ""
    return before in POINTERS and value < 5 and after not in ("trials", "studies", "papers")
