"""Tells whether a spoken number is one that the register holds: to the digit, rounded, as a share or a range."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from scriptkit.computing.numbers.holdings import Held, Holding
from scriptkit.computing.numbers.quantities import Quantity, Reading, stem
from scriptkit.computing.numbers.units import IMPERIAL, UNITS_FAMILIES

PARTS_OF = frozenset(("share", "percent", "ratio", "change", "rest"))  # families that are told in each other's words
MEASURED = UNITS_FAMILIES | {"people", "year", "share"}
ALIKE = (UNITS_FAMILIES | {"people", "year"}) - PARTS_OF  # families that are told in no other's words
SOURCES_OWN = frozenset(("people", "weeks", "year"))
SMALL = 12  # up to this, a bare whole number mostly counts legs, groups and trials
NEAR = 0.1  # how far a rounded number may be from the true one before it misleads
LOOSE = {"share": 0.17, "long": 0.13}  # "about a third", "two months" for eight weeks
REST = frozenset("not no without never none other others rest remaining didn't don't doesn't couldn't left".split())
MOST_NUMBERS = 60  # of a sentence that are looked at; nobody follows more
GOES_ON = {"long": "", "points": "percent"}  # what a bare number may count too behind one that counts this
BOUNDS = {"over": (1.0, 1.5), "past": (1.0, 1.12), "under": (0.6, 1.0), "almost": (0.88, 1.0)}  # of what is said
RATING = "out"
LESS = frozenset("less fewer lower smaller lighter thinner weaker".split())
MORE = frozenset("more higher bigger larger greater heavier thicker stronger".split())
CHANGES = frozenset(
    "more less fewer increase increased rise rose gain gained growth grew jump jumped drop dropped fall fell decrease "
    "decreased improvement improved loss lost reduction reduced change up down better worse climbed".split()
)


class Claimed(NamedTuple):
    """A spoken number, and how it fits: exact, rough, converted, skip or "" for not at all.

    `family` and `scale` are those it is taken to have: of its own, or passed on from the number before it.
    """

    number: Quantity
    fit: str
    family: str
    scale: float
    elliptic: bool
    change: bool | None  # whether a percent or share tells a change ("by a fifth"), a part ("a fifth of"), or either
    rest: bool = False  # whether the sentence speaks of those who did not, too
    way: str = ""  # whether a percent or share is said to be more or less than something


def claimed(reading: Reading, held: Sequence[Holding], *, opinion: bool) -> list[Claimed]:
    """Each number of a sentence with how it fits."""
    found: list[Claimed] = []
    rest = not REST.isdisjoint(reading.words)
    for k, number in enumerate(reading.quantities[:MOST_NUMBERS]):
        family, scale, elliptic = number.family, number.scale, False
        before = next((each for each in reversed(found[-2:]) if each.fit != "skip"), None)
        way = _way(reading, number)
        if not family and before and before.family in UNITS_FAMILIES and _is_elliptic(reading, number):
            family, scale, elliptic = before.family, before.scale, True
        change = before.change is True if elliptic and before else _is_change(reading, number)
        one = Claimed(_plainly(reading, number), "", family, scale, elliptic, change, rest, way)
        fit = "skip" if _no_data(reading, one, opinion=opinion) else _fit(one, held)
        if fit == "skip" and before and before.fit == "exact" and _is_elliptic(reading, number) and not opinion:
            same = one._replace(family=before.family, scale=before.scale, elliptic=True)  # "4.1 cases, the others 6"
            fit, one = ("exact", same) if not family and before.family and _fit(same, held) == "exact" else (fit, one)
        for other in dict.fromkeys(_goes_on(family, found) if elliptic and not fit else ()):
            another = one._replace(family=other, scale=1.0)
            if _fit(another, held) == "exact":
                fit, one = "exact", another
                break
        if not fit and _in_range(reading, k, one, held):
            fit = "exact"
        found.append(one._replace(fit=fit))
    return _shared(reading, found, held)


def _goes_on(family: str, before: Sequence[Claimed]) -> Iterator[str]:
    """What else a bare number may count than the one before it: "in 10 weeks, 38 gained ..." goes on with people."""
    if family in GOES_ON:
        yield GOES_ON[family]
    yield from (one.family for one in before[-4:-1] if one.family not in UNITS_FAMILIES)
    if len(before) > 1:
        yield ""


def _plainly(reading: Reading, number: Quantity) -> Quantity:
    """Read "over 8 weeks" as during 8 weeks."""
    during = number.word and reading.words[number.word - 1] == "over" and number.family in ("long", "short")
    return number._replace(about="") if during else number


def _is_change(reading: Reading, number: Quantity) -> bool | None:
    """Whether a percent or share says how much something changed or differs, or what part it is."""
    before, after = reading.words[max(0, number.word - 4) : number.word], reading.words[number.after : number.after + 4]
    following = after[0] if after else ""
    if following in ("of", "as"):
        return "again" in after  # "half as much again" is a change
    if "by" in before or following in CHANGES or not CHANGES.isdisjoint(before[-1:]):
        return True
    return True if following.endswith("er") and following not in ("other", "over", "after", "under") else None


def _way(reading: Reading, number: Quantity) -> str:
    """Whether a share is so much more or so much less: "a third fewer falls"."""
    following = reading.words[number.word + 1 : number.after + 1]
    return "less" if not LESS.isdisjoint(following) else "more" if not MORE.isdisjoint(following) else ""


def _is_elliptic(reading: Reading, number: Quantity) -> bool:
    """Whether a bare number goes on with the unit of the one before: "... and the floor side 1.0"."""
    after = reading.words[number.after] if number.after < len(reading.words) else ""
    if after == "of":
        return False
    return not number.in_words or number.after in reading.stops or not after


def _no_data(reading: Reading, one: Claimed, *, opinion: bool) -> bool:
    """Whether a number counts nothing that a record holds: legs, groups, sets, ratings, ages."""
    number, words = one.number, reading.words
    before = words[number.word - 1] if number.word else ""
    earlier = words[number.word - 2] if number.word > 1 else ""
    if number.family == "times a" or (opinion and number.value <= SMALL):
        return True
    if before in ("over", "under", "above", "past") and not number.family and earlier.endswith(("s", "en", "le")):
        return True  # "people over forty"
    if one.family or number.value > SMALL or number.value % 1:
        return False
    return not number.in_words or number.value == 1 or number.after not in reading.stops


def _fit(one: Claimed, held: Sequence[Holding]) -> str:
    """The best that a number fits any number of the register."""
    best = ""
    for tier in ("core", "texts", "derived"):
        for other in (each for holding in held for each in getattr(holding, tier)):
            if one.family != other.family and one.family in ALIKE and other.family in ALIKE:
                continue  # most pairs are of different sorts
            fit = fits(one, other)
            if fit == "exact":
                return fit
            best = best or fit
    return best


def fits(one: Claimed, other: Held) -> str:
    """How a spoken number fits one of the register: exact, rough (rounded too far), converted, or not at all."""
    compared = _compared(one, other)
    if compared is None or (one.number.rate and other.rate and one.number.rate != other.rate):
        return ""
    said, true, step = compared
    about, off = one.number.about, abs(said - true)
    near = LOOSE.get(one.family, NEAR) * abs(true)
    if about in BOUNDS:
        low, high = BOUNDS[about]
        return "exact" if low * said - step <= true <= high * said + step else ""
    if about == "about" and off <= near:
        return "exact"
    if off > step * (1 + 1e-9):
        return "converted" if _converted(one, other) and off <= 0.03 * abs(true) else ""
    if off > near:
        return "rough"
    return "converted" if _converted(one, other) else "exact"


def _converted(one: Claimed, other: Held) -> bool:
    """Whether pounds are said for kilos, or inches for centimetres: the source's number is another one."""
    imperial = stem(one.number.unit) in IMPERIAL
    return one.family in ("mass", "length") and imperial != any(
        stem(word) in IMPERIAL for word in other.written.split()
    )


def _compared(one: Claimed, other: Held) -> tuple[float, float, float] | None:
    """Said and true value on one scale, and half of the last place said; None where they are no such pair."""
    number, family = one.number, one.family
    if family == other.family and family:
        return number.value * one.scale, other.amount, number.step * one.scale
    if not family:
        parts = other.origin == "derived" and other.family in PARTS_OF
        counted = other.origin == "text" and other.family not in UNITS_FAMILIES | {""}  # "two ways" in a title
        return None if parts or counted else (number.value, other.value, number.step)
    if not other.family:
        loose = family in ("people", "long", "year", "share", "percent") or other.origin == "effect"
        return None if loose and family in MEASURED else (number.value, other.value, number.step)
    if family in PARTS_OF and other.family in PARTS_OF:
        if not _is_same_part(one, other):
            return None
        mine, theirs = (100.0 if one in ("percent", "change", "rest") else 1.0 for one in (family, other.family))
        return number.value / mine, other.value / theirs, number.step / mine
    return None


def _is_same_part(one: Claimed, other: Held) -> bool:
    """Whether a share is told of the same: a change is no part of a whole, and twice is no change of 205 percent."""
    if other.family == "rest":
        return one.rest
    if other.family == "change" and one.way and other.label and one.way not in other.label:
        return False
    if other.family == "change":
        return one.family != "ratio" and one.change is not False and (one.change or not one.elliptic)
    return not (other.family == "ratio" and other.origin == "derived" and one.family != "ratio" and one.change)


def _in_range(reading: Reading, k: int, one: Claimed, held: Sequence[Holding]) -> bool:
    """Whether a number is an end of a range in which the source's number lies: "20 to 25 percent"."""
    numbers = reading.quantities
    for low, high in ((k, k + 1), (k - 1, k)):
        if low >= 0 and high < len(numbers) and _is_range(reading, numbers[low], numbers[high]):
            ends = (one._replace(number=numbers[end], family=one.family or numbers[high].family) for end in (low, high))
            if any(_fit(end, held) == "exact" for end in ends):
                return False  # one end is the source's number, so the other has to be one too
            middle = (numbers[low].value + numbers[high].value) / 2
            half = abs(numbers[high].value - numbers[low].value) / 2
            wide = one.number._replace(value=middle, step=half, about="")
            if half <= 0.25 * middle and _fit(one._replace(number=wide), held):
                return True
    return False


def _is_range(reading: Reading, low: Quantity, high: Quantity) -> bool:
    """Whether two numbers stand together as a range, and no "from" makes them a before and an after."""
    words = reading.words
    before = words[low.word - 1] if low.word else ""
    joint = " ".join(words[low.after : high.word])
    joined = (joint in ("", "to") and before != "from") or (joint == "and" and before == "between")
    return joined and low.after not in reading.stops


def _shared(reading: Reading, found: list[Claimed], held: Sequence[Holding]) -> list[Claimed]:
    """Settle "one in four" and "three out of five": fine where the share is the source's."""
    for k in range(len(found) - 1):
        one, other = found[k], found[k + 1]
        if not _is_part(reading, one.number, other.number) or one.fit == other.fit == "exact":
            continue
        value = one.number.value / other.number.value
        share = one.number._replace(value=value, step=value * 0.1)
        if _fit(one._replace(number=share, family="share", scale=1.0), held):
            found[k], found[k + 1] = one._replace(fit="exact"), other._replace(fit="exact")
        elif RATING in reading.words[one.number.after : other.number.word] and other.number.value in (5, 10):
            found[k], found[k + 1] = one._replace(fit="skip"), other._replace(fit="skip")
        elif one.fit == "skip" or not one.fit:
            found[k] = one._replace(fit="", family="share")
            found[k + 1] = other._replace(fit="skip")
    return found


def _is_part(reading: Reading, one: Quantity, other: Quantity) -> bool:
    """Whether "in", "out of" or "of" joins two numbers."""
    joint = reading.words[one.after : other.word]
    counted = one.value < other.value and other.family not in UNITS_FAMILIES and not one.family
    return counted and joint in (("in",), ("out", "of"), ("in", "every"))
