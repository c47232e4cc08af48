"""Several files are one recording, and what is no recording is refused in a sentence."""

from __future__ import annotations

import os
import zipfile
from pathlib import Path

import pytest

from scriptkit.reading import recordings
from scriptkit.reading.recordings import opening
from tests.reading.recordings.files import read, said, times

HANG = "WEBVTT\n\n00:01.000 --> 00:03.000\nHang on.\n"
REST = "1\n00:00:00,500 --> 00:00:02,500\nNow rest.\n"


def test_each_file_is_laid_behind_the_one_before(tmp_path: Path) -> None:
    found = read(tmp_path, HANG, REST, [{"word": "Done", "start": 0.25, "end": 1.0}])
    assert said(found) == "Hang on. Now rest. Done"
    assert [(one.form, one.start, one.end, one.first, one.last) for one in found.files] == [
        ("WebVTT", 0.0, 3.0, 0, 2),
        ("SRT", 3.0, 5.5, 2, 4),
        ("JSON", 5.5, 6.5, 4, 5),
    ]
    assert found.words[2].start == 3.5
    assert found.words[4][1:] == (5.75, 6.5, True)
    assert found.length == 6.5
    assert found.troubles == ()


@pytest.mark.parametrize("since", ["00:00:02,900", "00:00:03,000", "00:01:00,000"])
def test_a_file_whose_times_go_on_stays_where_it_is(tmp_path: Path, since: str) -> None:
    found = read(tmp_path, HANG, f"1\n{since} --> 00:02:00,000\nRest\n")
    assert found.files[1].start == 0.0
    assert found.length == 120.0


def test_a_file_behind_a_very_short_one_is_laid_behind_it(tmp_path: Path) -> None:
    short = "1\n00:00:00,000 --> 00:00:00,800\nGo\n"
    assert read(tmp_path, short, REST.replace("00,500", "00,100")).files[1].start == 0.8


def test_a_file_that_is_named_twice_is_read_once(tmp_path: Path) -> None:
    found = read(tmp_path, HANG, HANG)
    assert said(found) == "Hang on."
    (trouble,) = found.troubles
    assert trouble.place == (str(tmp_path / "1.rec"), 1, 1)
    assert trouble.message == f"This file says the same as {tmp_path / '0.rec'}; it is read once."


def test_one_file_that_cannot_be_read_refuses_all(tmp_path: Path) -> None:
    found = read(tmp_path, HANG, "Hang on.")
    assert found.words == ()
    assert found.refused.startswith(
        f"{tmp_path / '1.rec'} cannot be read as a recording: it has no line with two times"
    )


@pytest.mark.parametrize(
    ("data", "why"),
    [
        (b"", "it is empty"),
        (b"\xef\xbb\xbf \r\n\n", "it is empty"),
        (b"\x00\x00\x00\x20ftypisom\x00\x00", "it is a video or sound file"),
        (b"\x1aE\xdf\xa3\x00", "it is a video"),
        (b"RIFF\x00\x00\x00\x00WAVE", "it is a video, sound or image file"),
        (b"\x89PNG\r\n\x1a\n\x00", "it is an image"),
        (b"\xff\xd8\xff\xe0\x00", "it is an image"),
        (b"PK\x03\x04\x14\x00", "it is a workbook, a document or a zip archive"),
        (b"%PDF-1.7", "it is a PDF"),
        (b"\x47\x40\x00\x10\x00\x00", "it is no text"),
        ("1\n00:00:01,000 --> 00:00:02,000\nJa".encode("utf-16-le"), "it looks like UTF-16 without its mark"),
        (b"\xff\xfea\x00b", "it begins as UTF-16 and does not go on so"),
        (b"1\r\n00:00:01,000 --> 00:00:02,000\r\nCaf\xe9\r\n", "it is not UTF-8: line 3 holds a character stored as"),
        (b"start,end,word\n0.1,0.4,hang\n", "it has no line with two times"),
        (b"WEBVTT\n\n", "there are no words with times in it"),
        (b"WEBVTT\n\n00:01.000 --> 00:02.000\n[music]\n", "there are no words with times in it"),
        (b'[{"word": "Hang", "start": 0, "end": 0}]', "every time in it is 0"),
        (b'{"text": "Hang on."}', "there are no words with times in it"),
        (b'{"words": [{"word": "Hang", "start": 0.1', "it is JSON that ends in the middle"),
        (b'{"words": [{"word": "Hang', "it is JSON that ends in the middle"),
        (b'{"words":\n [;]}', "it looks like JSON, and cannot be read from line 2, column 3 on"),
        (b"[" * 100_000, "its brackets are nested deeper than any recogniser's"),
        (b'{"a":' * 100_000, "its brackets are nested deeper than any recogniser's"),
    ],
)
def test_what_is_no_recording_is_refused_with_the_reason(tmp_path: Path, data: bytes, why: str) -> None:
    found = read(tmp_path, data)
    assert (found.words, found.files, found.troubles) == ((), (), ())
    assert found.refused.startswith(f"{tmp_path / '0.rec'} cannot be read as a recording: {why}")
    assert "\n" not in found.refused
    assert not found.refused.endswith(".")


def test_a_folder_a_pipe_and_what_is_not_there_are_refused(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe")
    assert recordings.read([tmp_path]).refused.endswith("it is a folder. Name the files in it")
    assert recordings.read([tmp_path / "pipe"]).refused.endswith("it is no ordinary file")
    assert recordings.read([tmp_path / "none.srt"]).refused.endswith("there is no such file")
    assert recordings.read([tmp_path / "pipe" / "x"]).refused.endswith("there is no such file")
    assert recordings.read([Path("a\0b")]).refused.startswith("a b cannot be read as a recording: ")
    assert recordings.read([tmp_path / ("x" * 300)]).refused.endswith("File name too long")


def test_a_workbook_is_refused(tmp_path: Path) -> None:
    with zipfile.ZipFile(tmp_path / "book.xlsx", "w") as book:
        book.writestr("xl/workbook.xml", "<workbook/>")
    assert "it is a workbook, a document or a zip archive" in recordings.read([tmp_path / "book.xlsx"]).refused


def test_a_file_of_more_than_50_mb_is_refused_and_not_read(tmp_path: Path) -> None:
    with (tmp_path / "long.vtt").open("wb") as file:
        file.truncate(3_000_000_000)
    assert "it has 3000.0 MB, and more than 50 MB are not read" in recordings.read([tmp_path / "long.vtt"]).refused


def test_more_words_or_captions_than_any_recording_has_are_refused(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    for name in ("captions.MOST_CUES", "rolling.MOST_WORDS", "json_items.MOST_WORDS", "json_text.MOST_RECORDS"):
        with monkeypatch.context() as patch:
            patch.setattr(f"scriptkit.reading.recordings.{name}", 1)
            json_text = [{"word": "Hang", "start": 0}, {"word": "on", "start": 1}]
            file = json_text if "json" in name else HANG + "\n00:04.000 --> 00:05.000\nRest.\n"
            assert "more than 1 " in read(tmp_path, file).refused, name


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-16-be"])
@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_any_line_ends_and_both_encodings_are_read(tmp_path: Path, encoding: str, end: str) -> None:
    for text in (HANG, REST, '{"words":\n[{"word": "Hang", "start": 1, "end": 2}]}'):
        mark = b"\xfe\xff" if encoding == "utf-16-be" else b""
        found = read(tmp_path, mark + text.replace("\n", end).encode(encoding))
        assert times(found) == times(read(tmp_path, text))


def test_a_name_that_is_no_text_can_be_told(tmp_path: Path) -> None:
    path = Path(os.fsdecode(os.fsencode(tmp_path) + b"/\xff\n.srt"))
    assert opening.shown(path) == f"{tmp_path}/\ufffd .srt"
    assert "\ufffd" in recordings.read([path]).refused
