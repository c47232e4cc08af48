"""Recordings as caption files or recognisers tell them, WebVTT, SRT or JSON, to words with their times."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import NamedTuple

from scriptkit.model.recording import RecordedFile, Recording, TimedWord, Trouble
from scriptkit.places import Place, SourceFile
from scriptkit.reading.recordings import captions, json_text, json_words, opening, rolling
from scriptkit.reading.recordings.noting import Notes

OVERLAP = 1.0  # seconds by which a file that goes on may start before the one before it ends


class _Part(NamedTuple):
    """What one file holds, by its own times."""

    name: str
    form: str
    words: list[TimedWord]
    length: float
    troubles: list[Trouble]


def read(paths: Sequence[Path]) -> Recording:
    """The recording that these files are, one behind the other; `refused` where one of them cannot be read."""
    parts: list[_Part] = []
    troubles: list[Trouble] = []
    texts: dict[str, str] = {}
    for path in paths:
        try:
            file = opening.text(path)
            if file.text in texts:
                told = f"This file says the same as {texts[file.text]}; it is read once."
                troubles.append(Trouble(Place(file.name, 1, 1), told))
                continue
            texts[file.text] = file.name
            parts.append(_part(file))
        except opening.Unreadable as error:
            return Recording(refused=f"{opening.shown(path)} cannot be read as a recording: {error}")
    return _joined(parts, troubles)


def _part(file: SourceFile) -> _Part:
    notes = Notes(file)
    length = 0.0
    if captions.is_captions(file):
        form = "WebVTT" if captions.is_webvtt(file) else "SRT"
        cues = captions.read(file, notes)
        words = rolling.words(cues, notes)
        length = max((cue.end for cue in cues), default=0.0)
    elif json_text.is_json(file):
        form, words = "JSON", json_words.read(file, notes)
    else:
        raise opening.Unreadable(
            "it has no line with two times, such as 00:00:01.500 --> 00:00:04.000, and is no JSON. WebVTT, SRT and "
            "JSON with timed words are read; save the captions as one of them"
        )
    if not words:
        raise opening.Unreadable("there are no words with times in it")
    length = max(length, *(word.end for word in words))
    if not length:
        raise opening.Unreadable("every time in it is 0")
    return _Part(file.name, form, words, length, notes.troubles())


def _joined(parts: Iterable[_Part], troubles: list[Trouble]) -> Recording:
    """One recording: each part is laid behind the one before, unless its own times go on from there."""
    words: list[TimedWord] = []
    files: list[RecordedFile] = []
    length = 0.0
    for part in parts:
        least = max(length - min(OVERLAP, length / 2), words[-1].start if words else 0.0)
        goes_on = part.words[0].start >= least
        start = 0.0 if goes_on else length
        first = len(words)
        words += [
            word._replace(start=round(word.start + start, 3), end=round(word.end + start, 3)) if start else word
            for word in part.words
        ]
        length = max(length, round(part.length + start, 3))
        files.append(RecordedFile(part.name, part.form, start, length, first, len(words)))
        troubles += part.troubles
    return Recording(tuple(words), length, tuple(files), tuple(troubles))
