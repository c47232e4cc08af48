"""Sound held against the script twice: once roughly, for where its lines may be, and once closely, for their times."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import NamedTuple

from scriptkit import model
from scriptkit.model.recording import RecordedFile, Recording, TimedWord, Trouble, Utterance
from scriptkit.places import Place
from scriptkit.reading.recordings import opening, waves
from scriptkit.reading.recordings.opening import Unreadable
from scriptkit.reading.recordings.recogniser import Recogniser

ROUGH = 5  # times as long as the second hearing
Tell = Callable[[int, int], object]


class _Part(NamedTuple):
    """One file, where it begins in the recording, and the stretches of it in which somebody speaks."""

    wave: waves.Wave
    start: float
    utterances: list[Utterance]


def is_sound(files: Sequence[Path]) -> bool:
    """Whether one of some files is sound that can be listened to."""
    return any(map(waves.is_wave, files))


def hear(files: Sequence[Path], facts: model.Facts, tell: Tell) -> Recording:
    """The recording that some WAV files are, one behind the other; `refused` where it cannot be listened to."""
    from scriptkit.computing import timing
    from scriptkit.computing.taking import hearing_out, placing

    script = hearing_out.spoken(facts.segments)
    troubles: list[Trouble] = []
    name = opening.shown(files[0])
    try:
        parts: list[_Part] = []
        for path in files:
            name = opening.shown(path)
            parts.append(_opened(path, parts, troubles))
        name = opening.shown(files[0])
        recogniser = Recogniser(placing.lines(script, timing.says_of(facts.episode)))
        work = _Work(tell, sum(part.wave.seconds for part in parts))
        rough = [word for part in parts for word in _roughly(part, recogniser, work)]
        utterances = [utterance for part in parts for utterance in part.utterances]
        near = placing.near(script, rough, utterances)
        words = _closely(parts, near, recogniser, work)
    except Unreadable as error:
        return Recording(refused=f"{name} cannot be read as a recording: {error}")
    if not words:
        return Recording(
            refused=f"In {name} no line of the script was made out. Is it of this episode, and in English?"
        )
    return _recording(parts, words, troubles)._replace(speech=placing.speech(rough))


class _Work:
    """How much of both hearings is done."""

    def __init__(self, tell: Tell, seconds: float) -> None:
        self.tell, self.whole, self.done = tell, max(1, int((ROUGH + 1) * seconds)), 0.0

    def add(self, seconds: float) -> None:
        self.done += seconds
        self.tell(min(int(self.done), self.whole), self.whole)


def _opened(path: Path, before: Sequence[_Part], troubles: list[Trouble]) -> _Part:
    if not waves.is_wave(path):
        raise Unreadable("the other files are sound. Name either the sound or the words of a recording, not both")
    wave = waves.opened(path)
    if wave.promised > wave.frames:
        told = (
            f"Its header promises {wave.promised / wave.rate:.1f} s and {wave.seconds:.1f} s are there; these are read."
        )
        troubles.append(Trouble(Place(opening.shown(path), 1, 1), told))
    start = before[-1].start + before[-1].wave.seconds if before else 0.0
    return _Part(wave, start, [])


def _roughly(part: _Part, recogniser: Recogniser, work: _Work) -> list[TimedWord]:
    """What is heard in a file with the whole script in mind; notes where its utterances are."""
    found: list[TimedWord] = []
    until = 0.0
    for at, sound in recogniser.utterances(waves.samples(part.wave)):
        moved = Utterance(at.start + part.start, at.end + part.start)
        part.utterances.append(moved)
        found += recogniser.words(moved, sound)
        work.add(ROUGH * (at.end - until))
        until = at.end
    return found


def _closely(
    parts: Sequence[_Part], near: Sequence[Sequence[int]], recogniser: Recogniser, work: _Work
) -> list[TimedWord]:
    """The words of the lines that are near each utterance, found in it."""
    found: list[TimedWord] = []
    wanted = iter(near)
    for part in parts:
        for at in part.utterances:
            sound = b"".join(waves.samples(part.wave, at.start - part.start, at.end - part.start))
            found += recogniser.placed(at, sound, next(wanted))
            work.add(at.end - at.start)
    return found


def _recording(parts: Sequence[_Part], words: Sequence[TimedWord], troubles: Sequence[Trouble]) -> Recording:
    files, first = [], 0
    for part in parts:
        end = part.start + part.wave.seconds
        last = first + sum(1 for word in words[first:] if word.start < end)
        files.append(RecordedFile(opening.shown(part.wave.path), "WAV", part.start, round(end, 3), first, last))
        first = last
    return Recording(tuple(words), files[-1].end, tuple(files), tuple(troubles))
