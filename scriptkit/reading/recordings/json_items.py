"""The timed texts in a recogniser's JSON, whatever its shape: those that are finest and tell the whole recording."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any, NamedTuple

from scriptkit.reading.recordings.json_text import Record
from scriptkit.reading.recordings.json_times import When, plain_name, when
from scriptkit.reading.recordings.opening import MOST_WORDS, Unreadable

MOST_DEPTH = 40
_TEXTS = (
    "punctuatedword", "displaytext", "word", "text", "value", "content", "transcript", "transcription", "display",
    "utf8", "caption", "sentence", "phrase", "utterance", "token", "body", "lexical", "label", "lines", "w", "t",
)  # fmt: skip
_ALTERNATIVES = frozenset(("alternatives", "alternates", "alternative", "nbest", "hypotheses", "candidates", "options"))
_NO_SPEECH = re.compile(r"\s*(?:\[[^\]]{0,80}\]|<[^>]{0,80}>)\s*")  # a recogniser's own signs
_MOST = 0.6  # a list counts that tells this share, or more, of the letters of the fullest one


class Item(NamedTuple):
    """A text and its time, if it has one of its own. `record` is the number of its mapping, -1 if it is in none.

    `opens`: it is the first of its list, so that it cannot be the rest of a word.
    """

    text: str
    at: When | None
    record: int
    opens: bool


Groups = dict[tuple[str, ...], list[Item]]


def find(values: list[Any]) -> list[Item]:
    """The timed texts of the values of a file, in the order written."""
    groups: Groups = {}
    finder = _Finder()
    for value in values:
        finder.look(value, (), groups, 0)
    return best(groups)


def best(groups: Groups) -> list[Item]:
    """The items of the list that goes word by word, of those that tell about all; the fullest where none does."""
    timed = [group for group in groups.values() if any(item.at for item in group)]
    sizes = [sum(len(item.text) for item in group) for group in timed]
    fullest = max(sizes, default=0)
    found: list[Item] = []
    rank = (False, 0.0)
    for group, size in zip(timed, sizes, strict=True):
        single = sum(" " not in item.text.strip() for item in group) >= 0.8 * len(group)
        share = round(size / (fullest or 1), 1)  # lists that differ by a comma are the same; then the first counts
        if share >= _MOST and (single, share) > rank:
            found, rank = group, (single, share)
    return found


def texts(record: Mapping[str, Any]) -> str:
    """The text of a mapping, by the names that recognisers give it; of alternatives the first."""
    plain = {plain_name(key): value for key, value in record.items()}
    for name in _TEXTS:
        value = plain.get(name)
        if isinstance(value, str) and value.strip():
            return value
        if isinstance(value, list) and value and all(isinstance(one, str) for one in value):
            return "\n".join(value)
    for name, value in plain.items():
        if name in _ALTERNATIVES and isinstance(value, list) and value and isinstance(value[0], str | Mapping):
            first = value[0]
            return first if isinstance(first, str) else "" if when(first) else texts_of_own(first)
    return ""


def texts_of_own(record: Mapping[str, Any]) -> str:
    """The text of a mapping under a name of its own."""
    plain = {plain_name(key): value for key, value in record.items()}
    return next((str(plain[name]) for name in _TEXTS if isinstance(plain.get(name), str) and plain[name].strip()), "")


class _Finder:
    """Goes through the values of a file and counts the items."""

    def __init__(self) -> None:
        self.count = 0

    def look(self, value: Any, path: tuple[str, ...], groups: Groups, depth: int) -> None:
        """Add the items in a value to the group of their path."""
        if depth > MOST_DEPTH:
            return
        if isinstance(value, Record):
            self.record(value, path, groups, depth, opens=True)
        elif isinstance(value, list):
            for number, one in enumerate(value):
                if isinstance(one, Record):
                    self.record(one, path, groups, depth, opens=not number)
                elif isinstance(one, list) and len(one) == 3 and isinstance(one[0], str):
                    at = when({"start": one[1], "end": one[2]})
                    self.keep(Item(one[0], at, -1, not number), path, groups)
                elif isinstance(one, list):
                    self.look(one, path, groups, depth + 1)

    def record(self, record: Record, path: tuple[str, ...], groups: Groups, depth: int, *, opens: bool) -> None:
        """Add what a mapping tells, or what those in it tell if that is finer."""
        at, text = when(record), texts(record)
        below: Groups = {}
        if not (at and text and len(text.split()) == 1):
            for key, value in record.items():
                if isinstance(value, list | Record):
                    name = plain_name(key)
                    chosen = value[:1] if name in _ALTERNATIVES and isinstance(value, list) else value
                    self.look(chosen, (*path, name), below, depth + 1)
        finer = best(below) if below else []
        if at and text and (not finer or 2 * sum(len(item.text) for item in finer) < len(text)):
            self.keep(Item(text, at, record.number, opens), path, groups)
        elif at and finer:
            groups.setdefault(path, []).extend(_moved(finer, at))
        elif at:
            joined = " ".join(item.text.strip() for group in list(below.values())[:1] for item in group)
            self.keep(Item(joined, at, record.number, opens), path, groups)
        elif text and not finer:
            self.keep(Item(text, None, record.number, opens), path, groups)
        else:
            for inner, group in below.items():
                groups.setdefault(inner, []).extend(group)

    def keep(self, item: Item, path: tuple[str, ...], groups: Groups) -> None:
        """Keep an item that holds something."""
        if item.text.strip() and not _NO_SPEECH.fullmatch(item.text):
            self.count += 1
            if self.count > MOST_WORDS:
                raise Unreadable(f"it has more than {MOST_WORDS:,} words, and no recording has")
            groups.setdefault(path, []).append(item)


def _moved(items: list[Item], at: When) -> list[Item]:
    """Items below one with a time: if they count from its start, as they stand in the recording."""
    told = [one.at for one in items if one.at and one.at.start is not None]
    starts = [one.start or 0.0 for one in told]
    factor = at.unit / told[0].unit if at.unit and told and told[0].unit else 1.0
    start, end = (at.start or 0.0) * factor, (at.end or 0.0) * factor
    if not starts or min(starts) >= start / 2 or max(starts) > end - start:
        return items
    moved = [one._replace(at=_later(one.at, start)) for one in items]
    first = moved[0].at or When(start, None, told[0].unit)
    return [moved[0]._replace(at=first), *moved[1:]]


def _later(at: When | None, by: float) -> When | None:
    if at is None or at.start is None:
        return at
    return When(at.start + by, None if at.end is None else at.end + by, at.unit)
