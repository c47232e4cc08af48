"""What was said in a recording, word by word, as a caption file or a recogniser tells it."""

from typing import NamedTuple

from scriptkit.places import Place


class TimedWord(NamedTuple):
    """A word as it was heard, with its signs ("hang,"), and when, in seconds of the recording.

    `exact` is false where only the time of the caption was known, and its words share it by their letters.
    """

    text: str
    start: float
    end: float
    exact: bool


class RecordedFile(NamedTuple):
    """One file of a recording: `start` is how many seconds its own times were moved; its words are `first` to `last`.

    `form` is "WebVTT", "SRT", "JSON" or "WAV"; `end` is when it ends in the recording; `last` is one behind.
    """

    name: str
    form: str
    start: float
    end: float
    first: int
    last: int


class Trouble(NamedTuple):
    """What could not be read as it is written, where, and what was done with it, in sentences."""

    place: Place
    message: str


class Utterance(NamedTuple):
    """A stretch of sound with speech in it, between two pauses; seconds of the recording."""

    start: float
    end: float


class Recording(NamedTuple):
    """A whole recording; `length` is when its last caption or word ends.

    Where a file cannot be read at all, `refused` says which and why, without a full stop, and there are no words.
    `speech` is None where the words are those that were heard. In sound the script's own words are looked for: they
    tell when a line was said and nothing of how it was worded, and `speech` are the stretches in which somebody speaks.
    """

    words: tuple[TimedWord, ...] = ()
    length: float = 0.0
    files: tuple[RecordedFile, ...] = ()
    troubles: tuple[Trouble, ...] = ()
    refused: str = ""
    speech: tuple[Utterance, ...] | None = None
