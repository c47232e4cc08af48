"""Which shots are heavy: by the words and numbers of their load, or by what the exercise's cautions say."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from functools import lru_cache

from scriptkit.model import Exercise, PlannedShot

LIGHT_KG = 20.0  # an empty bar; what is more has to be rested from
LIGHT_SHARE = 60.0  # percent of the most somebody can lift
POUND = 0.45359237
MAXIMAL = "maximal-load"
Words = Mapping[str, tuple[str, ...]]


def judged(shots: Sequence[PlannedShot], exercises: Mapping[str, Exercise], words: Words) -> tuple[PlannedShot, ...]:
    """The shots with those marked that are heavy."""
    maximal = {name for name, one in exercises.items() if MAXIMAL in one.cautions}
    if not maximal and not any(one.shot.load for one in shots):
        return tuple(shots)
    return tuple(
        one._replace(heavy=True)
        if (heavy(one.shot.load, words) if one.shot.load else one.segment in maximal and _works(one))
        else one
        for one in shots
    )


def _works(one: PlannedShot) -> bool:
    """Whether somebody lifts in it, as the exercise is meant."""
    return not one.talking and one.shot.form != "fault" and bool(one.shot.reps)


def heavy(load: str, words: Words) -> bool:
    """Whether a load as written is heavy.

    A word for it counts more than one for light, and any word more than a number.
    """
    said = " ".join(load.lower().split())
    if not said:
        return False
    if _said(said, words["loads-heavy"]):
        return True
    if _said(said, words["loads-light"]):
        return False
    kilograms, share = _numbers(said)
    return kilograms > LIGHT_KG or share >= LIGHT_SHARE


def _said(said: str, entries: Sequence[str]) -> bool:
    plain = f" {re.sub(r'[^a-z0-9%]+', ' ', said)} "
    return any(f" {entry} " in plain and f" not {entry} " not in plain for entry in entries)


def _numbers(said: str) -> tuple[float, float]:
    """The most kilograms and the most percent that a load speaks of: `2 x 24 kg` are 48, `60-80 kg` 80."""
    weights, shares = _patterns()
    kilograms = [
        float(times or 1) * _number(number) * (POUND if unit[0] in "lp" else 1.0)
        for times, number, unit in weights.findall(said)
    ]
    return max(kilograms, default=0.0), max(map(_number, shares.findall(said)), default=0.0)


def _number(written: str) -> float:
    """`1,000` is a thousand, `22,5` and `22.5` are the same."""
    thousands = re.fullmatch(r"\d{1,3}(?:,\d{3})+", written)
    return float(written.replace(",", "") if thousands else written.replace(",", "."))


@lru_cache(maxsize=1)
def _patterns() -> tuple[re.Pattern[str], re.Pattern[str]]:
    number = r"\d{1,3}(?:,\d{3})+|\d{1,4}(?:[.,]\d{1,2})?"
    return (
        re.compile(rf"(?:\b(\d{{1,2}}) ?[x×] ?|\b)({number})[ -]?(kgs?|kilos?|kilograms?|lbs?|pounds?)\b"),
        re.compile(rf"\b({number}) ?(?:%|percent)"),
    )
