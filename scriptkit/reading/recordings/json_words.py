"""JSON of timed words, by any recogniser, to the words of a recording."""

from __future__ import annotations

import re
from itertools import zip_longest
from typing import NamedTuple

from scriptkit.model.recording import TimedWord
from scriptkit.places import SourceFile
from scriptkit.reading.recordings import heard, json_items, json_text
from scriptkit.reading.recordings.clock import MOST_SECONDS
from scriptkit.reading.recordings.json_items import Item
from scriptkit.reading.recordings.json_times import unit_by_size
from scriptkit.reading.recordings.noting import Notes
from scriptkit.reading.recordings.sharing import SECONDS_A_LETTER, shared
from scriptkit.wording import quoted

_POINTS = re.compile(r"[.,!?;:…]{1,3}")
_OPENS_WORD = (" ", "\n", "▁", "Ġ")


class _Timed(NamedTuple):
    """A text with its seconds. `told` is whether the file tells its start; an end of -1 is not told."""

    text: str
    start: float
    end: float
    told: bool


def read(file: SourceFile, notes: Notes) -> list[TimedWord]:
    """The words of a file, in the order they are spoken."""
    timed = _in_seconds(_whole(json_items.find(json_text.values(file))), notes)
    if not any(one.told for one in timed):
        return []
    timed = _between(timed)
    timed.sort(key=lambda one: one.start)
    timed = [one for number, one in enumerate(timed) if not number or one[:3] != timed[number - 1][:3]]
    timed = _with_ends(timed)
    quiet = heard.without_sounds("\n".join(" ".join(one.text.split("\n")) for one in timed)).split("\n")
    words: list[TimedWord] = []
    for number, (one, text) in enumerate(zip(timed, quiet, strict=True)):
        spoken = [piece.text for piece in heard.pieces([text])]
        end = one.end
        if len(spoken) > 1 and number + 1 < len(timed):
            end = max(one.start, min(end, timed[number + 1].start))
        words += shared(spoken, one.start, end, exact=one.told and len(spoken) == 1)
    return words


def _whole(items: list[Item]) -> list[Item]:
    """Items with the rest of their words and the points behind them, where the file gives these on their own."""
    in_parts = sum(item.text.startswith(_OPENS_WORD) for item in items) * 2 > len(items)
    whole: list[Item] = []
    for item in items:
        text = item.text.strip(" \n▁Ġ")
        is_rest = in_parts and not item.opens and not item.text.startswith(_OPENS_WORD)
        if whole and (is_rest or _POINTS.fullmatch(text)):
            before = whole[-1]
            at = before.at
            if at and item.at and item.at.end is not None and is_rest:
                at = at._replace(end=item.at.end)
            whole[-1] = before._replace(text=before.text + text, at=at)
        elif heard.is_word(text):
            whole.append(item._replace(text=text))
    return whole


def _in_seconds(items: list[Item], notes: Notes) -> list[_Timed]:
    """Items with their times in seconds; a start of -1 is not told."""
    size = unit_by_size(_lengths(items))
    found: list[_Timed] = []
    wrong: list[tuple[int, int, str, str]] = []
    for number, item in enumerate(items):
        start = end = -1.0
        if item.at and item.at.start is not None:
            unit = item.at.unit or size
            start = item.at.start * unit
            end = -1.0 if item.at.end is None else item.at.end * unit
            if not -MOST_SECONDS <= start <= MOST_SECONDS or end > MOST_SECONDS:
                told = f"The time of {quoted(item.text, 40)} is longer than any recording's; it is left out."
                wrong.append((number, item.record, "time", told))
                continue
            if start < 0:
                told = f"{quoted(item.text, 40)} starts before 0; it is read from 0 on."
                wrong.append((number, item.record, "negative", told))
                start, end = 0.0, max(end, 0.0)
            if -1.0 < end < start or end < -1.0:
                told = f"{quoted(item.text, 40)} ends before it starts; only its start is used."
                wrong.append((number, item.record, "reversed", told))
                end = -1.0
        found.append(_Timed(item.text, start, end, start >= 0))
    places = json_text.offsets(notes.file, [record for _, record, _, _ in wrong if record >= 0])
    for _, record, kind, told in wrong:
        notes.note(kind, places.get(record, 0), told)
    return found


def _lengths(items: list[Item]) -> list[tuple[float, int]]:
    """How long texts take as written, and their letters, where the unit is not told."""
    found = []
    for item, following in zip_longest(items, items[1:]):
        if not item.at or item.at.unit or item.at.start is None:
            continue
        end = item.at.end
        if end is None and following and following.at:
            end = following.at.start
        if end is not None:
            found.append((end - item.at.start, heard.letters(item.text)))
    return found


def _between(items: list[_Timed]) -> list[_Timed]:
    """Items that all have a start: those without one share the time between their neighbours."""
    found: list[_Timed] = []
    number = 0
    while number < len(items):
        if items[number].start >= 0:
            found.append(items[number])
            number += 1
            continue
        behind = next((at for at in range(number, len(items)) if items[at].start >= 0), len(items))
        texts = [one.text for one in items[number:behind]]
        before = found[-1] if found else _Timed("", 0.0, 0.0, told=False)
        since = before.end if before.end >= before.start else before.start + SECONDS_A_LETTER * len(before.text)
        until = items[behind].start if behind < len(items) else since + SECONDS_A_LETTER * len("".join(texts))
        shares = shared(texts, min(since, until) if behind < len(items) else since, until)
        found += [_Timed(one.text, one.start, one.end, told=False) for one in shares]
        number = behind
    return found


def _with_ends(timed: list[_Timed]) -> list[_Timed]:
    """Items that all have an end: where none is told, the next one's start, if the text is not over long before."""
    found = []
    for number, one in enumerate(timed):
        end = one.end
        if end < one.start:
            likely = one.start + 2 * SECONDS_A_LETTER * heard.letters(one.text)
            end = min(likely, timed[number + 1].start) if number + 1 < len(timed) else likely
        found.append(one._replace(end=end))
    return found
