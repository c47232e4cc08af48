"""Caption files say what was worked out, in WebVTT and SubRip, and other libraries read the same."""

from __future__ import annotations

import re
from fractions import Fraction

import pytest
import srt
import webvtt

from scriptkit import build
from scriptkit.model import Caption
from scriptkit.reading.outline import RATES
from scriptkit.rendering import captions
from scriptkit.shipped import shipped
from tests.read_back import from_srt, from_vtt, in_milliseconds
from tests.running import run
from tests.scripts import worked_out

TAGGED = ["1 < 2 & 3 > 2", "<b>bold</b> <c.x>", "a --> b", "{\\an8}up", "&lt; &amp;", "NOTE", "00:01.000 --> 00:02.000"]


def one(*lines: str, start: Fraction = Fraction(0), end: Fraction = Fraction(2)) -> Caption:
    return Caption(start, end, lines)


def test_both_files_as_they_are_written() -> None:
    made = [one("Hang on.", "Let go."), one("Bye.", start=Fraction(3_723_000 + 45, 1000), end=Fraction(3725))]
    assert captions.vtt(made).decode() == (
        "WEBVTT\n\n00:00:00.000 --> 00:00:02.000\nHang on.\nLet go.\n\n01:02:03.045 --> 01:02:05.000\nBye.\n"
    )
    assert captions.srt(made).decode() == (
        "1\n00:00:00,000 --> 00:00:02,000\nHang on.\nLet go.\n\n2\n01:02:03,045 --> 01:02:05,000\nBye.\n"
    )


def test_srt_lines_end_in_cr_lf_on_request() -> None:
    made = [one("Hang on.", "Let go."), one("Bye.", start=Fraction(3), end=Fraction(5))]
    plain, asked = captions.srt(made), captions.srt(made, crlf=True)
    assert asked == plain.replace(b"\n", b"\r\n") != plain
    assert from_srt(asked) == from_srt(plain)


@pytest.mark.parametrize("text", TAGGED)
def test_no_text_becomes_a_tag_or_a_time(text: str) -> None:
    made = [one(text, text), one("Bye.", start=Fraction(3), end=Fraction(5))]
    assert from_vtt(captions.vtt(made)) == from_srt(captions.srt(made)) == in_milliseconds(made)
    payload = captions.vtt(made).decode().split("\n")[3]
    assert not re.search(r"[<>]|&(?!(amp|lt|gt);)", payload)
    assert not re.search(r"<[a-z/]|\{\\|-->", captions.srt(made).decode().split("\n")[2])


def test_the_nearest_millisecond_is_written() -> None:
    third = Fraction(1001, 30000)
    data = captions.vtt([one("Hang on.", start=third, end=third * 31)]).decode()
    assert "00:00:00.033 --> 00:00:01.034" in data


def test_no_captions_are_still_a_file() -> None:
    assert (captions.vtt([]), captions.srt([])) == (b"WEBVTT\n", b"")


@pytest.mark.parametrize("rate", RATES)
def test_the_sample_reads_back_equal_at_every_rate(rate: str) -> None:
    facts = worked_out(shipped("sample_episode"))
    made = build.as_built(facts._replace(episode=facts.episode._replace(rate=rate))).captions
    assert len(made) > 100
    assert from_vtt(captions.vtt(made)) == from_srt(captions.srt(made, crlf=True)) == in_milliseconds(made)
    # each frame is told from its neighbours by its millisecond
    for caption, (start, end, _) in zip(made, in_milliseconds(made), strict=True):
        frames = caption.start / caption.end, Fraction(start, 1000) / Fraction(end, 1000)
        assert float(frames[0]) == pytest.approx(float(frames[1]), abs=0.001)


def test_a_build_writes_what_other_libraries_read(tmp_path: object) -> None:
    folder = f"{tmp_path}/made"
    assert run("build", shipped("sample_episode"), "--out", folder, "--crlf").status == 0
    written = webvtt.read(f"{folder}/captions.vtt")
    with open(f"{folder}/captions.srt", encoding="utf-8", newline="") as file:  # noqa: PTH123
        text = file.read()
    assert text.count("\n") == text.count("\r\n") > 400
    assert [cue.content.splitlines() for cue in srt.parse(text)] == [cue.lines for cue in written.captions]


def test_fast_and_short_captions_are_counted_and_told() -> None:
    calm, fast, faster, short = (
        one("a" * 30), one("a" * 36), one("a" * 41), one("Hang on.", end=Fraction(24, 25)),
    )  # fmt: skip
    figures = captions.figures([calm, fast, faster, short])
    assert [figures[key] for key in ("count", "fast", "too_fast", "short")] == [4, 2, 1, 1]
    assert [row["speed"] for row in figures["warnings"]] == [18.0, 20.5, 8.3]
    told = captions.remark([calm, fast, faster, short])
    assert told == "; 2 of 4 faster than 17 characters a second; 1 faster than the limit of 20; 1 shorter than a second"
    assert captions.remark([calm]) == captions.remark([]) == ""
