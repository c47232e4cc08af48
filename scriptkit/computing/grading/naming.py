"""Where a text names exercises and groups of the list."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from scriptkit.model import Episode

ENDINGS = ("", "s", "es")
ITS_GROUP = re.compile(r"\b(?:this|that|the|its|our) (?:\w+ )?group\b", re.IGNORECASE)


class Named(NamedTuple):
    """An exercise that is named, and where."""

    start: int
    end: int
    exercise: str


class Names(NamedTuple):
    """The names of exercises and groups, in lower case, longest first, with their ids."""

    exercises: tuple[tuple[str, str], ...]
    groups: tuple[tuple[str, str], ...]
    group_of: Mapping[str, str]

    def find(self, text: str) -> list[Named]:
        """Where exercises are named, in order; of a name inside a longer one only the longer counts."""
        lowered, found = text.lower(), list[Named]()
        for name, exercise in self.exercises:
            at = lowered.find(name)
            while at >= 0:
                end = _whole(lowered, at, at + len(name))
                if end and not any(at < one.end and end > one.start for one in found):
                    found.append(Named(at, end, exercise))
                at = lowered.find(name, at + len(name))
        return sorted(found)

    def group(self, text: str) -> str:
        """The group that a text names."""
        lowered = text.lower().replace("-", " ")
        return next((group for name, group in self.groups if name.replace("-", " ") in lowered), "")


def _whole(text: str, start: int, end: int) -> int:
    """Where a name ends with the ending it may have for several; 0 where it is a part of a longer word."""
    if text[max(0, start - 1) : start].isalnum():
        return 0
    return next(
        (
            end + len(ending)
            for ending in ENDINGS
            if text.startswith(ending, end) and not text[end + len(ending) : end + len(ending) + 1].isalpha()
        ),
        0,
    )


def names_of(episode: Episode) -> Names:
    """What the exercises and groups of an episode are called."""
    named = {" ".join(one.name.lower().split()): str(name) for name, one in episode.exercises.items()}
    groups = {" ".join(one.group.lower().split()): str(one.group) for one in episode.exercises.values()}
    for names in (named, groups):
        names.pop("", None)  # what is called nothing, or white space, is named nowhere
    return Names(
        _longest_first(named),
        _longest_first(groups),
        {str(name): str(one.group) for name, one in episode.exercises.items()},
    )


def _longest_first(named: Mapping[str, str]) -> tuple[tuple[str, str], ...]:
    return tuple(sorted(named.items(), key=lambda one: -len(one[0])))


def subject(found: Sequence[Named], start: int, end: int, text: str, *, points_on: bool) -> str:
    """Whom words from `start` to `end` are about, "" where nobody is named.

    Words that point on ("the winner is", "first place goes to") are about the name behind them; others about the
    nearest name before them that is not only set against it ("unlike the row, the hang comes out ahead").
    """
    behind = [one for one in found if one.start >= end]
    if (
        points_on
        and behind
        and not text[end : behind[0].start].strip(" .,:;–—-'\"“”").startswith(("of", "than", "over"))
    ):
        return behind[0].exercise
    before = [one for one in found if one.end <= start and not _SET_AGAINST.search(text[: one.start])]
    if before:
        return before[-1].exercise
    return behind[0].exercise if behind and not [one for one in found if one.end <= start] else ""


_SET_AGAINST = re.compile(
    r"\b(?:unlike|after|sorry|than|behind|not|beats?|over|against)[\s,]+(?:the\s+|a\s+)?\Z", re.IGNORECASE
)
