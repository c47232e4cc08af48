"""Sound held against the script twice: once roughly, for where its lines may be, and once closely, for their times."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import NamedTuple

from scriptkit import model
from scriptkit.model.recording import RecordedFile, Recording, TimedWord, Trouble, Utterance
from scriptkit.places import Place
from scriptkit.reading.recordings import opening, recogniser, waves
from scriptkit.reading.recordings.opening import Unreadable
from scriptkit.reading.recordings.recogniser import Recogniser

ROUGH = 5  # times as long as the second hearing
Tell = Callable[[int, int], object]


class _Part(NamedTuple):
    """One file, where it begins in the recording, and the stretches of it in which somebody speaks."""

    wave: waves.Wave
    start: float
    recogniser: Recogniser
    utterances: list[Utterance]


def is_sound(files: Sequence[Path]) -> bool:
    """Whether one of some files is sound that can be listened to."""
    return any(map(waves.is_wave, files))


def hear(files: Sequence[Path], facts: model.Facts, tell: Tell) -> Recording:
    """The recording that some WAV files are, one behind the other; `refused` where it cannot be listened to."""
    from scriptkit.computing import timing
    from scriptkit.computing.taking import hearing_out, placing

    script = hearing_out.spoken(facts.segments)
    lines = placing.lines(script, timing.says_of(facts.episode))
    sounds: list[waves.Wave] = []
    for path in files:
        try:
            sounds.append(_opened(path))
            recogniser.demand()
        except Unreadable as error:
            return Recording(refused=f"{opening.shown(path)} cannot be read as a recording: {error}")
    try:
        parts = _parts(sounds, lines)
        work = _Work(tell, sum(sound.seconds for sound in sounds))
        rough = [word for part in parts for word in _roughly(part, work)]
        utterances = [utterance for part in parts for utterance in part.utterances]
        words = _closely(parts, placing.near(script, rough, utterances), work)
    except Unreadable as error:
        return Recording(refused=f"{opening.shown(files[0])} cannot be listened to: {error}")
    if not words:
        told = "no line of the script was made out. Is it of this episode, and in English?"
        return Recording(refused=f"In {opening.shown(files[0])} {told[:-1]}")
    return _recording(parts, words)._replace(speech=placing.speech(rough))


def _opened(path: Path) -> waves.Wave:
    if not waves.is_wave(path):
        told = "the other one is sound. Name either the sound of a recording or its words, not both"
        raise Unreadable(told if path.is_file() else "there is no such file")
    return waves.opened(path)


def _parts(sounds: Sequence[waves.Wave], lines: Sequence[Sequence[str]]) -> list[_Part]:
    """Each file behind the one before; all of one rate are listened to by one recogniser."""
    by_rate = {rate: Recogniser(lines, rate) for rate in sorted({sound.given for sound in sounds})}
    made: list[_Part] = []
    start = 0.0
    for sound in sounds:
        made.append(_Part(sound, start, by_rate[sound.given], []))
        start += sound.seconds
    return made


class _Work:
    """How much of both hearings is done."""

    def __init__(self, tell: Tell, seconds: float) -> None:
        self.tell, self.whole, self.done = tell, max(1, int((ROUGH + 1) * seconds)), 0.0

    def add(self, seconds: float) -> None:
        self.done += seconds
        self.tell(min(int(self.done), self.whole), self.whole)


def _roughly(part: _Part, work: _Work) -> list[TimedWord]:
    """What is heard in a file with the whole script in mind; notes where its utterances are."""
    found: list[TimedWord] = []
    until = 0.0
    for at, sound in part.recogniser.utterances(waves.samples(part.wave)):
        moved = Utterance(at.start + part.start, at.end + part.start)
        part.utterances.append(moved)
        found += part.recogniser.words(moved, sound)
        work.add(ROUGH * (at.end - until))
        until = at.end
    return found


def _closely(parts: Sequence[_Part], near: Sequence[Sequence[int]], work: _Work) -> list[TimedWord]:
    """The words of the lines that are near each utterance, found in it."""
    found: list[TimedWord] = []
    wanted = iter(near)
    for part in parts:
        for at in part.utterances:
            sound = b"".join(waves.samples(part.wave, at.start - part.start, at.end - part.start))
            found += part.recogniser.placed(at, sound, next(wanted))
            work.add(at.end - at.start)
    return found


def _recording(parts: Sequence[_Part], words: Sequence[TimedWord]) -> Recording:
    files: list[RecordedFile] = []
    troubles: list[Trouble] = []
    first = 0
    for part in parts:
        name, there, promised = opening.shown(part.wave.path), part.wave.seconds, part.wave.promised / part.wave.rate
        last = first + sum(1 for word in words[first:] if word.start < part.start + there)
        files.append(RecordedFile(name, "WAV", part.start, round(part.start + there, 3), first, last))
        first = last
        if promised > there:
            told = f"Its header promises {promised:.1f} s of sound, and {there:.1f} s are there; these are read."
            troubles.append(Trouble(Place(name, 1, 1), told))
    return Recording(tuple(words), files[-1].end, tuple(files), tuple(troubles))
