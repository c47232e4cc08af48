"""WAV files of every common kind give the same sound, and what is none is refused in a sentence."""

from __future__ import annotations

from array import array
from pathlib import Path
from struct import pack

import pytest

from scriptkit.reading.recordings import waves
from scriptkit.reading.recordings.opening import Unreadable

VALUES = [0, 1000, -1000, 32000, -32000, 256, -256, 12032] * 4000  # two seconds


def file(
    folder: Path, data: bytes, *, kind: int = 1, channels: int = 1, rate: int = 16_000, bits: int = 16,
    told: int | None = None, extra: bytes = b"", before: bytes = b"",
) -> Path:  # fmt: skip
    block = channels * bits // 8
    form = pack("<HHIIHH", kind, channels, rate, rate * block, block, bits) + extra
    length = len(data) if told is None else told
    chunks = before + b"fmt " + pack("<I", len(form)) + form + b"data" + pack("<I", length) + data
    path = folder / "talk.wav"
    path.write_bytes(b"RIFF" + pack("<I", min(4 + len(chunks), 0xFFFFFFFF)) + b"WAVE" + chunks)
    return path


def sixteen(values: list[int]) -> bytes:
    return b"".join(pack("<h", value) for value in values)


def read(path: Path, start: float = 0.0, end: float | None = None) -> list[int]:
    assert waves.is_wave(path)
    return list(array("h", b"".join(waves.samples(waves.opened(path), start, end))))


def refusal(path: Path) -> str:
    with pytest.raises(Unreadable) as raised:
        waves.opened(path)
    return str(raised.value)


def test_samples_of_every_width_are_the_same_sound(tmp_path: Path) -> None:
    assert read(file(tmp_path, sixteen(VALUES))) == VALUES
    longer = b"".join(pack("<i", value * 65536 + 77) for value in VALUES)
    assert read(file(tmp_path, longer, bits=32)) == VALUES
    middle = b"".join(pack("<i", value * 256 + 7)[:3] for value in VALUES)
    assert read(file(tmp_path, middle, bits=24)) == VALUES
    extensible = pack("<HHIH", 22, 24, 4, 1) + b"\0\0\0\0\x10\0\x80\0\0\xaa\0\x38\x9b\x71"
    assert read(file(tmp_path, middle, bits=24, kind=0xFFFE, extra=extensible)) == VALUES
    floats = b"".join(pack("<f", value / 32767) for value in VALUES)
    assert all(
        abs(one - two) <= 1 for one, two in zip(read(file(tmp_path, floats, kind=3, bits=32)), VALUES, strict=True)
    )
    eight = bytes(value // 256 + 128 for value in VALUES)
    assert read(file(tmp_path, eight, bits=8)) == [value // 256 * 256 for value in VALUES]


def test_floats_that_are_none_or_too_loud_do_no_harm(tmp_path: Path) -> None:
    loud = pack("<4f", float("nan"), 9.0, -9.0, float("inf"))
    assert read(file(tmp_path, loud, kind=3, bits=32)) == [0, 32767, -32767, 32767]


def test_channels_are_brought_together(tmp_path: Path) -> None:
    assert read(file(tmp_path, sixteen([100, 300, -50, 50]), channels=2)) == [200, 0]


@pytest.mark.parametrize(("rate", "given"), [(16_000, 16_000), (44_100, 44_100), (22_050, 44_100), (96_000, 48_000)])
def test_rates_that_speech_is_not_told_in_are_brought_to_others(tmp_path: Path, rate: int, given: int) -> None:
    path = file(tmp_path, sixteen([5] * 2 * rate), rate=rate)
    wave = waves.opened(path)
    assert (wave.seconds, wave.given) == (2.0, given)
    assert read(path) == [5] * 2 * given
    assert len(read(path, 0.5, 1.5)) == given


def test_a_length_that_is_not_told_or_too_long_means_to_the_end(tmp_path: Path) -> None:
    for told in (0, 0xFFFFFFFF):
        wave = waves.opened(file(tmp_path, sixteen(VALUES), told=told))
        assert (wave.frames, wave.promised) == (len(VALUES), len(VALUES))
    cut = waves.opened(file(tmp_path, sixteen(VALUES), told=4 * len(VALUES)))
    assert (cut.seconds, cut.promised) == (2.0, 2 * len(VALUES))


def test_other_chunks_are_passed_over(tmp_path: Path) -> None:
    assert read(file(tmp_path, sixteen(VALUES), before=b"LIST" + pack("<I", 5) + b"notes\0")) == VALUES


@pytest.mark.parametrize(
    ("told", "changes"),
    [
        ("compressed", {"kind": 2}),
        ("12 bits", {"bits": 12}),
        ("0 channels", {"channels": 0}),
        ("8,000 samples a second", {"rate": 8_000}),
        ("0 samples a second", {"rate": 0}),
        ("compressed", {"kind": 0xFFFE, "extra": pack("<HHIH", 22, 24, 4, 17)}),
    ],
)
def test_what_cannot_be_listened_to_is_refused(tmp_path: Path, told: str, changes: dict[str, int]) -> None:
    assert told in refusal(file(tmp_path, sixteen(VALUES), **changes))  # type: ignore[arg-type]


def test_files_without_sound_are_refused(tmp_path: Path) -> None:
    assert "no sound in it" in refusal(file(tmp_path, b""))
    whole = file(tmp_path, sixteen(VALUES)).read_bytes()
    path = tmp_path / "cut.wav"
    for length in range(12, 46):
        path.write_bytes(whole[:length])
        assert refusal(path)
    path.write_bytes(whole[:8])
    assert not waves.is_wave(path)
    assert not waves.is_wave(tmp_path)
    assert not waves.is_wave(tmp_path / "none.wav")


def test_days_of_sound_are_refused(tmp_path: Path) -> None:
    path = file(tmp_path, b"", told=0)
    with path.open("r+b") as grown:
        grown.truncate(2 * 16_000 * 7 * 3600)
    assert "longer than 6 hours" in refusal(path)
