"""WAV files to 16-bit samples of one channel, a stretch at a time: hours of sound are never held at once."""

from __future__ import annotations

from array import array
from collections.abc import Iterator
from pathlib import Path
from struct import error as too_short
from struct import unpack, unpack_from
from sys import byteorder
from typing import BinaryIO, NamedTuple

from scriptkit.reading.recordings import opening
from scriptkit.reading.recordings.opening import Unreadable

LEAST_RATE = 16_000  # samples a second; with fewer, speech is muffled
# What tells speech from pauses knows 16,000, 32,000 and 48,000, and comes close with what is near them. Between the
# first two it cuts words off: at 22,050, 128 of 146 lines were found, and 137 with each sample doubled.
BETWEEN = range(20_000, 30_000)
HIGH_RATE = 52_000
STRETCH = 10  # seconds that are read at once
MOST_SECONDS = 6 * 3600
MOST_RATE, MOST_CHANNELS = 768_000, 32
_PCM, _FLOAT, _EXTENSIBLE = 1, 3, 0xFFFE
_SAVE = "Save it as WAV with PCM, 16 bit"
_UNTOLD = (0, 0xFFFFFFFF)  # how a recorder that was cut off, or whose file is large, gives the length


class Wave(NamedTuple):
    """A WAV file that can be read: how its samples are stored, where they begin, how many frames there are.

    `promised` is how many frames its header tells; more than there are where it was cut off.
    """

    path: Path
    channels: int
    width: int  # bytes of a sample
    floats: bool
    rate: int
    start: int
    frames: int
    promised: int

    @property
    def seconds(self) -> float:
        """How long it is."""
        return self.frames / self.rate

    @property
    def every(self) -> int:
        """How many samples become one."""
        return -(-self.rate // HIGH_RATE)

    @property
    def given(self) -> int:
        """Samples a second that are given."""
        return self.rate * 2 if self.rate in BETWEEN else self.rate // self.every


def is_wave(path: Path) -> bool:
    """Whether a file begins as a WAV file does."""
    try:
        if not path.is_file():
            return False
        with path.open("rb") as file:
            head = file.read(12)
    except (OSError, ValueError):
        return False
    return head[:4] in (b"RIFF", b"RF64") and head[8:12] == b"WAVE"


def opened(path: Path) -> Wave:
    """A WAV file, whose header is read and held against what is there; raises Unreadable."""
    try:
        with path.open("rb") as file:
            size = path.stat().st_size
            return _checked(path, file, size)
    except OSError as error:
        raise Unreadable(error.strerror or "it cannot be opened") from None
    except too_short:
        raise Unreadable(f"its header is cut off. {_SAVE}") from None


def _checked(path: Path, file: BinaryIO, size: int) -> Wave:
    """The header: a format, then the samples, with any chunks of other kinds around them."""
    form, at = b"", 12
    while at + 8 <= size:
        file.seek(at)
        name, length = unpack("<4sI", file.read(8))
        if name == b"fmt ":
            form = file.read(min(length, 64))
        elif name == b"data":
            there = size - at - 8
            return _wave(path, form, at + 8, there, there if length in _UNTOLD else length)
        at += 8 + length + length % 2
    raise Unreadable("there is no sound in it, only the header of a WAV file" if form else "its header is cut off")


def _wave(path: Path, form: bytes, start: int, there: int, told: int) -> Wave:
    if not form:
        raise Unreadable("its header does not tell how its samples are stored")
    kind, channels, rate, _, block, bits = unpack("<HHIIHH", form[:16])
    if kind == _EXTENSIBLE:
        (kind,) = unpack_from("<H", form, 24)
    width = bits // 8
    stored = (kind == _PCM and bits in (8, 16, 24, 32)) or (kind == _FLOAT and bits == 32)
    if kind not in (_PCM, _FLOAT):
        raise Unreadable(f"its sound is compressed (form {kind}). {_SAVE}")
    if not stored:
        raise Unreadable(f"its samples have {bits} bits. {_SAVE}")
    if not 0 < channels <= MOST_CHANNELS:
        raise Unreadable(f"its header tells of {channels} channels. {_SAVE}")
    if block != channels * width:
        raise Unreadable(f"its header contradicts itself. {_SAVE}")
    if not LEAST_RATE <= rate <= MOST_RATE:
        raise Unreadable(f"it has {rate:,} samples a second; from {LEAST_RATE:,} to {MOST_RATE:,} are read")
    made = Wave(path, channels, width, kind == _FLOAT, rate, start, min(there, told) // block, told // block)
    if not made.frames:
        raise Unreadable("there is no sound in it, only the header of a WAV file")
    if made.seconds > MOST_SECONDS:
        raise Unreadable(f"it is longer than {MOST_SECONDS // 3600} hours, and no recording of an episode is")
    return made


def samples(wave: Wave, start: float = 0.0, end: float | None = None) -> Iterator[bytes]:
    """Its sound from one second to another, 16 bits a sample as this machine stores them, up to ten seconds at once."""
    block = wave.channels * wave.width
    last = wave.frames if end is None else min(wave.frames, int(end * wave.rate))
    at = int(start * wave.rate)
    try:
        with wave.path.open("rb") as file:
            file.seek(wave.start + at * block)
            while at < last:
                data = file.read(min(STRETCH * wave.rate, last - at) * block)
                data = data[: len(data) - len(data) % block]
                if not data:
                    return
                at += len(data) // block
                yield _at_rate(_mono(_sixteen(data, wave), wave.channels), wave).tobytes()
    except OSError as error:
        raise Unreadable(error.strerror or f"{opening.shown(wave.path)} went away while it was read") from None


def _sixteen(data: bytes, wave: Wave) -> array[int]:
    """Samples of 16 bits: of longer ones the upper two bytes, of floats what they are of one."""
    if wave.floats:
        floats = array("f", data)
        if byteorder == "big":
            floats.byteswap()
        return array("h", [int(max(-1.0, min(1.0, one)) * 32767) if one == one else 0 for one in floats])  # noqa: PLR0124 - no number is unlike itself
    if wave.width == 2:
        upper = bytearray(data)
    else:
        upper = bytearray(len(data) // wave.width * 2)
        if wave.width == 1:  # the only ones without a sign
            upper[1::2] = data.translate(bytes((value - 128) % 256 for value in range(256)))
        else:
            upper[::2], upper[1::2] = data[wave.width - 2 :: wave.width], data[wave.width - 1 :: wave.width]
    made = array("h", bytes(upper))
    if byteorder == "big":
        made.byteswap()
    return made


def _mono(samples: array[int], channels: int) -> array[int]:
    """The mean of the channels."""
    if channels == 1:
        return samples
    parts = [samples[number::channels] for number in range(channels)]
    return array("h", [sum(frame) // channels for frame in zip(*parts, strict=True)])


def _at_rate(samples: array[int], wave: Wave) -> array[int]:
    """Samples as many a second as are given: each one twice, as they are, or the means of some."""
    if wave.rate in BETWEEN:
        twice = samples + samples
        twice[::2] = twice[1::2] = samples
        return twice
    return _mono(samples[: len(samples) - len(samples) % wave.every], wave.every)
