"""Reads the numbers of a text with what they count: value, unit, how exactly they are meant, and per what."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import lru_cache
from itertools import pairwise
from typing import NamedTuple

from scriptkit.computing.hearing.clauses import split_words
from scriptkit.computing.hearing.figures import DECADES, MULTIPLES, PARTS, figures
from scriptkit.computing.numbers.units import SHARED, UNITS, UNITS_FAMILIES

DEGREES_MORE = frozenset("more less extra fewer additional further full whole straight of another solid".split())
PASSED_OVER = frozenset(
    "trained untrained healthy young older old new hill club recreational female male college elite office "
    "experienced adult".split()
)
NO_NOUN = frozenset(
    "of and to on in off for at with a an the against versus than per each every by from as or but is was were are "
    "that this plus across over under up down out his her its their less did do does had has have could would can "
    "may might will were theirs".split()
)
PER_GROUP = frozenset((("in", "each"), ("per", "group"), ("a", "group"), ("to", "each"), ("per", "arm")))
COUNTED_AS = {"leg": "limb", "arm": "limb", "rep": "repetition"}
JOINTS = frozenset("to and or against versus vs".split())
PERIODS = frozenset("second minute hour day week month year session set side leg arm workout night rep".split())
YEARS = range(1900, 2100)
BASES = frozenset((100.0, 1e3, 1e4, 1e5, 1e6))
TIMES_WHAT = frozenset("as more less the their his her its your my our that what body bodyweight a an of".split())
BASE_WITHIN = 6  # words between a number and what it is per
STUDY = frozenset("trial study paper review preprint survey experiment cohort".split())


class Quantity(NamedTuple):
    """A number as it is said. `family` is what its unit measures, "people", "share", a plural noun, or "" for none.

    `step` is half of the last place that is said, `about` "", "about", "over" or "under", `rate` what it is per;
    `start` and `end` are offsets of number and unit in the text, `word` and `after` the words around it.
    """

    value: float
    family: str
    scale: float
    unit: str
    step: float
    about: str
    rate: str
    start: int
    end: int
    word: int
    after: int
    in_words: bool


class Reading:
    """A text's words, where they stand, the words before which it pauses, and its quantities in order."""

    __slots__ = ("quantities", "stops", "text", "words")

    def __init__(self, text: str, words: Sequence[str], stops: set[int], quantities: Sequence[Quantity]) -> None:
        self.text = text
        self.words = tuple(words)
        self.stops = stops
        self.quantities = tuple(quantities)


class Vocabulary:
    """Words for people, and by their last word the phrases that say a number is rough, with what they mean."""

    __slots__ = ("people", "rough")

    def __init__(self, people: frozenset[str], rough: Mapping[str, Sequence[tuple[tuple[str, ...], str]]]) -> None:
        self.people = people
        self.rough = rough


def vocabulary(words: Mapping[str, Sequence[str]]) -> Vocabulary:
    """The word lists made ready, once a run; longer phrases first."""
    pairs = [entry.partition(":") for entry in words.get("approximations", ())]
    rough: dict[str, list[tuple[tuple[str, ...], str]]] = {}
    for meaning, _, phrase in sorted(pairs, key=lambda pair: -len(pair[2].split())):
        if parts := tuple(phrase.split()):
            rough.setdefault(parts[-1], []).append((parts, meaning.strip()))
    return Vocabulary(frozenset(words.get("people", ())), rough)


def stem(word: str) -> str:
    """A noun without its plural ending: "weeks" "week", "inches" "inche" (as the table of units has it)."""
    return word[:-1] if len(word) > 2 and word.endswith("s") and not word.endswith("ss") else word


@lru_cache(maxsize=256)
def read(text: str, known: Vocabulary, people: frozenset[str] = frozenset()) -> Reading:
    """The quantities of a text; `people` are more words for people, those of the source's own description."""
    words, places, glued, stops = split_words(text)
    found = []
    for figure in _joined([(one.value, one.start, one.end) for one in figures(words, glued)], words):
        value, i, j = figure
        if not _is_said(text, words, glued, places, i, j):
            continue
        family, scale, unit, after = _unit(words, stops, j, known, people)
        start, end = places[i][0], places[max(j, after) - 1][1]
        if words[j - 1] in PARTS or (words[i] == "half" and j == i + 1):
            family, unit = (family, unit) if family in UNITS_FAMILIES else ("share", words[j - 1])
        elif words[i] in MULTIPLES and words[i] != "dozen":
            family, unit = "ratio", words[i]
        if words[i].endswith("%"):
            family, scale, unit = "percent", 1.0, "percent"
        step = _step(words, i, j, value)
        about = _about(words, i, j, known)
        in_words = not words[i][0].isdigit()
        rate = _rate(words, after)
        found.append(Quantity(value, family, scale, unit, step, about, rate, start, end, i, after, in_words))
    found = _with_years(_with_bases(found, words, stops), words, places)
    return Reading(text, words, stops, _passed_on(found, words, stops))


def _with_bases(found: list[Quantity], words: list[str], stops: set[int]) -> list[Quantity]:
    """The quantities in which "1.4 injuries per thousand hours" is one: the thousand is what it is per."""
    made: list[Quantity] = []
    for one in found:
        if made and one.value in BASES and words[one.word - 1] == "per" and _is_near(made[-1], one, stops):
            made[-1] = made[-1]._replace(rate=f"{one.value:g}")
        else:
            made.append(one)
    return made


def _is_near(before: Quantity, one: Quantity, stops: set[int]) -> bool:
    """Whether few words and no stop part two numbers."""
    return 0 < one.word - before.after <= BASE_WITHIN and stops.isdisjoint(range(before.after, one.word))


def _with_years(found: list[Quantity], words: list[str], places: list[tuple[int, int]]) -> list[Quantity]:
    """The quantities with the year of "a 2021 trial", which is no figure elsewhere."""
    known = {one.word: one for one in found}
    for i, word in enumerate(words[:-1]):
        if len(word) == 4 and word.isdigit() and int(word) in YEARS and stem(words[i + 1]) in STUDY:
            start, end = places[i]
            known[i] = Quantity(float(word), "year", 1.0, "", 0.0, "", "", start, end, i, i + 1, in_words=False)
    return sorted(known.values(), key=lambda one: one.word)


def _joined(found: list[tuple[float, int, int]], words: list[str]) -> list[tuple[float, int, int]]:
    """Figures in which "two dozen" and "half a dozen" are one."""
    made: list[tuple[float, int, int]] = []
    for value, i, j in found:
        before = made[-1] if made else None
        gap = words[before[2] : i] if before else []
        if words[i] == "dozen" and before and gap in ([], ["a"]):
            made[-1] = (before[0] * 12, before[1], j)
        else:
            made.append((value, i, j))
    return made


def _is_said(text: str, words: list[str], glued: list[bool], places: list[tuple[int, int]], i: int, j: int) -> bool:
    """Whether the figure at words i to j counts something: no age, no price, no code, no half-kneeling."""
    start = places[i][0]
    before = words[i - 1] if i else ""
    if start and (text[start - 1] in "$£€#" or text[start - 1].isalnum()):
        return False
    if (
        words[i] in DECADES
        or before in ("aged", "age", "number", "page", "table", "question")
        or value_is_old(words, j)
    ):
        return False
    if before == "and" and words[j - 1] in PARTS and words[i] in ("a", "one"):
        return False  # "a month and a half" has no number before it
    if words[i] == "half" and _frequency(words, j):
        return True  # "half an hour"
    if words[i] in MULTIPLES or words[i] == "half":
        return not (glued[i] or _frequency(words, j) or before in ("first", "second", "top", "bottom", "other"))
    return not (words[i] == "one" and j == i + 1 and before in ("no", "this", "that", "each", "which", "any", "every"))


def value_is_old(words: Sequence[str], j: int) -> bool:
    """Whether the words from j tell an age: "30 years old", "50-year-olds"."""
    return any(word in ("old", "olds") for word in words[j : j + 2])


def _frequency(words: Sequence[str], j: int) -> bool:
    """Whether "a week" or "per session" follows: how often, and no measure."""
    return j + 1 < len(words) and words[j] in ("a", "an", "per", "each", "every") and stem(words[j + 1]) in PERIODS


def _unit(
    words: list[str], stops: set[int], j: int, known: Vocabulary, people: frozenset[str]
) -> tuple[str, float, str, int]:
    """What the number before word j counts: family, scale, the word itself, and the word after it."""
    none = ("", 1.0, "", j)
    if j >= len(words) or j in stops or (words[j - 1] != "half" and _frequency(words, j)):
        return none
    if tuple(words[j : j + 2]) in PER_GROUP:
        return "people", 1.0, "people", j
    k = j
    while k < len(words) and k - j < 3 and (k == j or k not in stops) and words[k] in DEGREES_MORE | {"a", "an"}:
        k += 1
    if k >= len(words) or (k != j and k in stops):
        return none
    word, following = words[k], words[k + 1] if k + 1 < len(words) else ""
    if word == "per" and following == "cent":
        return "percent", 1.0, "percent", k + 2
    if word == "percentage" or (word == "percent" and following in ("point", "points")):
        return ("points", 1.0, "percentage points", k + 2) if following.startswith("point") else none
    if word in ("square", "cubic") and (found := UNITS.get(stem(following))):
        power = 2 if word == "square" else 3
        return word, found[1] ** power, f"{word} {following}", k + 2
    if word == "point" and following == "scale":
        return "scale", 1.0, "scale", k + 1
    if found := UNITS.get(word) or UNITS.get(stem(word)):
        return _frequent_times(words, k) or (*found, word, k + 1)
    return _counted(words, stops, k, known, people) or none


def _frequent_times(words: list[str], k: int) -> tuple[str, float, str, int] | None:
    """Read "three times a week" as how often, and "stood up 14 times" as a count: neither is a multiple."""
    if words[k] == "times" and _frequency(words, k + 1):
        return "times a", 1.0, "times", k + 1
    after = words[k + 1] if k + 1 < len(words) else ""
    if words[k] == "times" and after not in TIMES_WHAT and not after.endswith("er"):
        return "", 1.0, "times", k + 1
    return None


def _counted(
    words: list[str], stops: set[int], k: int, known: Vocabulary, people: frozenset[str]
) -> tuple[str, float, str, int] | None:
    """People or other things that are counted from word k on, within four words."""
    for m in range(k, min(k + 4, len(words))):
        word = words[m]
        if (m > k and m in stops) or word[0].isdigit():
            break
        if word in known.people or word in people or word in ("volunteers", "subjects", "patients", "folks"):
            return "people", 1.0, word, m + 1
        if word in NO_NOUN:
            break
        plural = word.endswith("s") and not word.endswith(("ss", "us", "is"))
        if plural and PASSED_OVER.issuperset(words[k:m]):
            return COUNTED_AS.get(stem(word), stem(word)), 1.0, word, m + 1
    return None


def _step(words: list[str], i: int, j: int, value: float) -> float:
    """Half of the last place that is said: 0.05 for "1.6" and "one point six", half for "38", 50 for "2,300"."""
    first = words[i].rstrip("%")
    if "." in first:
        return float(0.5 * 10.0 ** -len(first.partition(".")[2]))
    if "point" in words[i:j]:
        return float(0.5 * 10.0 ** -(j - 1 - words.index("point", i)))
    if words[j - 1] in PARTS or (words[i] in MULTIPLES and words[i] != "dozen") or words[j - 1] == "half":
        return abs(value) * 0.1
    whole = str(int(value)) if value < 1e15 else ""
    zeros = len(whole) - len(whole.rstrip("0"))
    if value < 1000 and zeros < 2:  # "120" is meant to the digit, "1,480" and "200" need not be
        return 0.5
    return max(0.5, min(float(0.5 * 10.0**zeros), 0.025 * value)) if zeros else 0.5


def _about(words: list[str], i: int, j: int, known: Vocabulary) -> str:
    """What the words beside the number say of it: "about", "over", "under" or nothing."""
    for phrase, meaning in known.rough.get(words[i - 1], ()) if i else ():
        if tuple(words[max(0, i - len(phrase)) : i]) == phrase:
            return meaning
    return "about" if words[j + 1 : j + 3] == ["or", "so"] else ""


def _rate(words: list[str], after: int) -> str:
    """What the quantity is per: "a week", "per session"."""
    return stem(words[after + 1]) if _frequency(words, after) else ""


def _passed_on(found: list[Quantity], words: list[str], stops: set[int]) -> list[Quantity]:
    """The unit of the second number for both where two stand together: "5 to 9 kilos", "between 5 and 9 kilos"."""
    for k, (one, other) in enumerate(pairwise(found)):
        near = other.word - one.after == 1 and words[one.after] in JOINTS and one.after not in stops
        glued = other.word == one.after and one.after not in stops
        if (near or glued) and not one.family and other.family in SHARED:
            found[k] = one._replace(family=other.family, scale=other.scale, unit=other.unit)
    return found
