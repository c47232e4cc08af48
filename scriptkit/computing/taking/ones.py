"""A lone "one" that only the script or only the recording has: a number where it counts something, else a pronoun."""

from __future__ import annotations

from collections.abc import Sequence

ONE = "#1"
_ARTICLES = frozenset({"a", "an"})  # in its place they count as much
# behind these it is a pronoun: "the one week", "each one in ten"
_POINTING = frozenset("the this that these those each every any no which another first second last next".split())
_COUNTED = frozenset("rep reps repetition repetitions set sets".split())
_IDIOMS = ("=ratio", "=points")  # "the one time", "at one point"


def counts(keys: Sequence[str], span: tuple[int, int], figures: Sequence[str], instead: Sequence[str]) -> bool:
    """Whether a "one" in a stretch of words is a number that is missing in the other text.

    `figures` are the words as they are written, for each of `keys`, where that says something: a figure is no pronoun.
    `instead` is what the other text has in the place of the stretch.
    """
    if not _ARTICLES.isdisjoint(instead):
        return False
    places = [at for at in range(*span) if keys[at] == ONE]
    return any((figures and figures[at][0].isdigit()) or _is_number(keys, at) for at in places)


def _is_number(keys: Sequence[str], at: int) -> bool:
    """Whether a "one" stands in front of a unit or of what it is a share of: "one week", "one in ten"."""
    if at and keys[at - 1] in _POINTING:
        return False
    behind = [*keys[at + 1 : at + 4], "", ""]
    if behind[0].startswith("=") and not behind[0].startswith(_IDIOMS):
        return True
    share = behind[1] if behind[0] in ("in", "of") else behind[2] if behind[:2] == ["out", "of"] else ""
    return behind[0] in _COUNTED or share.startswith("#")
