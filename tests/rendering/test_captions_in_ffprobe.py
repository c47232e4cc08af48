"""Debian's ffprobe reads the caption files of a build: every caption, with its times and its text."""

from __future__ import annotations

import json
import shutil
import subprocess
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from scriptkit import build
from scriptkit.model import Caption
from scriptkit.rendering import captions
from scriptkit.shipped import shipped
from tests.read_back import from_srt, in_milliseconds
from tests.running import run
from tests.scripts import worked_out

pytestmark = pytest.mark.ffmpeg


def program(name: str) -> str:
    found = shutil.which(name)
    if not found:
        pytest.skip(f"there is no {name} on this machine")
    return found


def probed(path: Path) -> Any:
    call = [program("ffprobe"), "-v", "warning", "-of", "json", "-show_packets", "-show_streams", str(path)]
    done = subprocess.run(call, capture_output=True, text=True, check=False, timeout=60)
    assert (done.returncode, done.stderr) == (0, "")
    return json.loads(done.stdout)


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The sample, built."""
    folder = tmp_path_factory.mktemp("captions") / "made"
    assert run("build", shipped("sample_episode"), "--out", folder).status == 0
    return folder


def expected() -> list[tuple[int, int, list[str]]]:
    made = build.as_built(worked_out(shipped("sample_episode"))).captions
    assert len(made) > 100
    return in_milliseconds(made)


@pytest.mark.parametrize(("name", "codec"), [("captions.vtt", "webvtt"), ("captions.srt", "subrip")])
def test_ffprobe_reads_every_caption_with_its_times(made: Path, name: str, codec: str) -> None:
    told = probed(made / name)
    assert [stream["codec_name"] for stream in told["streams"]] == [codec]
    times = [(float(one["pts_time"]), float(one["duration_time"])) for one in told["packets"]]
    assert [(round(start * 1000), round((start + length) * 1000)) for start, length in times] == [
        (start, end) for start, end, _ in expected()
    ]


@pytest.mark.parametrize("name", ["captions.vtt", "captions.srt"])
def test_ffmpeg_turns_either_into_the_other_and_loses_no_word(made: Path, name: str) -> None:
    call = [program("ffmpeg"), "-v", "warning", "-i", str(made / name), "-f", "srt", "-"]
    done = subprocess.run(call, capture_output=True, check=False, timeout=60)
    assert (done.returncode, done.stderr) == (0, b"")
    assert from_srt(done.stdout) == expected()


@pytest.mark.parametrize("text", ["<b>bold</b>, and on.", "{\\an8}up we go", "1 < 2 & 3 > 2"])
def test_no_text_becomes_a_tag_in_ffmpeg(tmp_path: Path, text: str) -> None:
    (tmp_path / "one.srt").write_bytes(captions.srt([Caption(Fraction(0), Fraction(2), (text,))]))
    call = [program("ffmpeg"), "-v", "warning", "-i", str(tmp_path / "one.srt"), "-f", "ass", "-"]
    done = subprocess.run(call, capture_output=True, check=False, timeout=60)
    told = done.stdout.decode().rstrip("\r\n").splitlines()[-1].split(",", 9)[-1]
    assert told.replace(captions.APART, "") == text
    assert "{\\" not in told  # an order of that format, made from a tag or passed on
