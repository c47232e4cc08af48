"""Tells what is wrong with a spoken number that the register does not hold, and what it has instead."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from scriptkit.computing.numbers.fitting import MEASURED, PARTS_OF, SMALL, SOURCES_OWN, Claimed, fits
from scriptkit.computing.numbers.holdings import Held, Holding, label_stems
from scriptkit.computing.numbers.quantities import STUDY, Reading, stem
from scriptkit.computing.numbers.units import UNITS_FAMILIES


def verdict(one: Claimed, reading: Reading, everyone: Sequence[Claimed], held: Sequence[Holding]) -> tuple[str, str]:
    """What is wrong with a number that does not fit, and what the register has instead; "" where nothing is."""
    if one.fit in ("rough", "converted"):
        every = (h for holding in held for h in (*holding.direct, *holding.derived))
        near = next((h for h in every if fits(one, h) == one.fit), None)
        if near is None:
            return "unknown", ""
        return ("rounding" if one.fit == "rough" else "converted"), near.written or f"{near.amount:g}"
    direct = [other for holding in held for other in holding.direct]
    if one.family == "percent" and any(_is_points(one, h) for holding in held for h in holding.derived):
        return "points", "percentage points"
    if other := next(
        (h for holding in held for h in holding.elsewhere if one.family and fits(one, h) == "exact"), None
    ):
        return (
            ("finding", f"{other.written} in the finding {other.finding}")
            if not _names(reading, other, direct)
            else ("", "")
        )
    if wrong := next((h for h in direct if _wrong_unit(one, h)), None):
        return "unit", wrong.written
    same = [other for other in direct if _of_a_kind(one, other)]
    if not _is_held(one, reading, everyone, same, held):
        counted = one.family not in MEASURED or bool(one.number.rate)  # "two rows", "two days a week"
        return ("", "") if counted and one.number.value <= SMALL else ("unheld", "")
    return "unknown", _listed(same or [other for other in direct if other.finding])


def _is_points(one: Claimed, other: Held) -> bool:
    """Whether a percent is the difference of two percents, which are percentage points."""
    return other.family == "points" and abs(one.number.value - other.value) <= one.number.step


def _names(reading: Reading, other: Held, direct: Sequence[Held]) -> bool:
    """Whether the sentence names the finding that a number belongs to, by its id or a label of its own."""
    said = {stem(word) for word in reading.words}
    shared = frozenset().union(*(label_stems(one.label) for one in direct))
    return bool(said & ((label_stems(other.label) - shared) | label_stems(other.finding.replace("-", " ").split())))


def _wrong_unit(one: Claimed, other: Held) -> bool:
    """Whether the number is the source's and its unit or rate is not."""
    number = one.number
    if other.origin not in ("value", "result", "baseline", "absolute", "weeks") or abs(
        number.value - other.value
    ) > min(number.step, 0.02 * other.value):
        return False
    if one.family == other.family and one.family:
        return one.scale != other.scale or number.rate != other.rate
    measures = one.family in UNITS_FAMILIES and other.family in UNITS_FAMILIES
    return measures and other.origin != "weeks" and (number.value >= 10 or bool(number.value % 1))


def _of_a_kind(one: Claimed, other: Held) -> bool:
    """Whether two numbers measure the same sort of thing."""
    if one.family in PARTS_OF:
        return other.family in PARTS_OF
    return bool(one.family) and ("percent" if one.family == "points" else one.family) == other.family


def _is_held(
    one: Claimed, reading: Reading, everyone: Sequence[Claimed], same: Sequence[Held], held: Sequence[Holding]
) -> bool:
    """Whether the register says enough of the matter that a number it does not have is wrong."""
    number, words = one.number, reading.words
    after = words[number.after] if number.after < len(words) else ""
    if not one.family:
        exact = number.value > SMALL or bool(number.value % 1) or one.elliptic
        return exact and any(h.finding or h.origin == "people" for holding in held for h in holding.direct)
    if one.family in PARTS_OF and not same:
        derivable = any(h.family == "ratio" for holding in held for h in holding.derived)
        counted = any(h.family == "people" and h.finding for holding in held for h in holding.direct)
        return derivable and (counted or (after not in ("of", "the") and number.unit != "half"))
    if number.rate and not any(other.rate for other in same):
        return False
    if one.family not in MEASURED and number.value <= SMALL:
        same = [other for other in same if other.origin != "text"]
    if (
        one.family == "people"
        and number.value <= SMALL
        and STUDY.isdisjoint(words[max(0, number.word - 3) : number.word])
    ):
        same = [other for other in same if 0.5 <= other.value / max(number.value, 0.1) <= 2]
    told = any(other is not one and other.family == one.family and other.fit == "exact" for other in everyone)
    if told and all(other.origin in SOURCES_OWN for other in same):
        return False
    return bool(same)


def _listed(held: Iterable[Held]) -> str:
    """What the register has, values with their labels, each once."""
    return ", ".join(list(dict.fromkeys(_written(held)))[:4])


def _written(held: Iterable[Held]) -> Iterator[str]:
    ordered = sorted(held, key=lambda other: other.origin != "value")
    values = {other.written for other in ordered if other.origin == "value"}
    for other in ordered:
        if other.origin == "value":
            yield f"{other.written} for {' '.join(other.label)}"
        elif other.written not in values:
            yield other.written
