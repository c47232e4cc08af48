"""Recordings that espeak-ng speaks, line by line with known pauses, so that it is known when each line begins."""

from __future__ import annotations

import shutil
import subprocess
import wave
from array import array
from collections.abc import Iterable, Sequence
from pathlib import Path

import pytest

from scriptkit.model import Facts

RATE = 22_050  # samples a second of espeak-ng
QUIET = 200  # of 32,767: below it nobody speaks yet
Line = tuple[str, int]  # a sentence by its segment and its number


def program() -> str:
    """Where espeak-ng is; skips the test where it is not."""
    found = shutil.which("espeak-ng")
    if not found:
        pytest.skip("there is no espeak-ng on this machine")
    return found


def spoken(text: str, folder: Path, voice: str = "en-us", speed: int = 160) -> array[int]:
    """The samples of a text, from its first sound to its last."""
    path = folder / "line.wav"
    subprocess.run([program(), "-v", voice, "-s", str(speed), "-w", str(path), "--", text], check=True, timeout=60)
    with wave.open(str(path)) as file:
        assert file.getframerate() == RATE
        samples = array("h", file.readframes(file.getnframes()))
    loud = [at for at, one in enumerate(samples) if abs(one) >= QUIET]
    return samples[loud[0] : loud[-1] + 1]


def recorded(facts: Facts, segments: Sequence[str], to: Path) -> dict[Line, float]:
    """Write a recording in which these segments are said in this order; when each of their lines begins."""
    samples, starts = array("h", bytes(RATE)), {}
    by_id = {one.id: one for one in facts.segments}
    for number, name in enumerate(segments):
        for at, sentence in enumerate(by_id[name].sentences):
            starts[name, at] = len(samples) / RATE
            samples += spoken(str(sentence.text), to.parent)
            samples += array("h", bytes(2 * int(RATE * (0.4 + 0.1 * ((at + number) % 4)))))
    written(to, samples)
    return starts


def written(path: Path, samples: Iterable[int], rate: int = RATE) -> Path:
    """A WAV file of 16 bits and one channel."""
    with wave.open(str(path), "wb") as file:
        file.setnchannels(1)
        file.setsampwidth(2)
        file.setframerate(rate)
        file.writeframes(array("h", samples).tobytes())
    return path
