"""The text of a file that a command was given to read a recording from, or in one sentence why it is none."""

from __future__ import annotations

import os
import stat
from pathlib import Path

from scriptkit.places import NO_TEXT, SourceFile

MOST_BYTES = 50_000_000
MOST_WORDS = 500_000  # fifty hours of speech
# how files begin that people take for captions, and what they are; the number is where these bytes stand
_KINDS = (
    (0, b"PK\x03\x04", "a workbook, a document or a zip archive"),
    (0, b"\xd0\xcf\x11\xe0", "a workbook or document of an old form"),
    (0, b"%PDF", "a PDF"),
    (0, b"{\\rtf", "a document with formatting (RTF)"),
    (0, b"\x1f\x8b", "a compressed archive"),
    (4, b"ftyp", "a video or sound file"),
    (4, b"moov", "a video"),
    (0, b"\x1aE\xdf\xa3", "a video"),
    (0, b"OggS", "a video or sound file"),
    (0, b"RIFF", "a video, sound or image file"),
    (0, b"ID3", "a sound file"),
    (0, b"\xff\xfb", "a sound file"),
    (0, b"fLaC", "a sound file"),
    (0, b"\x89PNG", "an image"),
    (0, b"\xff\xd8\xff", "an image"),
    (0, b"GIF8", "an image"),
)
_SAVE = "Save it as UTF-8"


class Unreadable(Exception):  # noqa: N818 - it leaves this room as a sentence
    """Why a file is no recording that can be read, in a sentence without its full stop."""


def shown(path: Path) -> str:
    """The name of a file in messages, as it was typed, whatever bytes it is made of."""
    return " ".join(NO_TEXT.sub(" ", os.fsencode(path).decode("utf-8", errors="replace")).split())


def text(path: Path) -> SourceFile:
    """The text of a file, without byte-order mark, CR and characters that no text holds."""
    data = _bytes(path)
    what = next((kind for at, sign, kind in _KINDS if data.startswith(sign, at)), "")
    if what:
        more = ", or save its sound as WAV" if "sound" in what or "video" in what else ""
        raise Unreadable(f"it is {what}. Name the WebVTT, SRT or JSON file with its words{more}")
    decoded = _decoded(data).replace("\r\n", "\n").replace("\r", "\n")
    if not decoded.strip():
        raise Unreadable("it is empty")
    return SourceFile(shown(path), NO_TEXT.sub(" ", decoded))


def _bytes(path: Path) -> bytes:
    try:
        about = os.stat(path)  # noqa: PTH116 - a Path's own fails on a NUL
        if stat.S_ISDIR(about.st_mode):
            raise Unreadable("it is a folder. Name the files in it")
        if not stat.S_ISREG(about.st_mode):
            raise Unreadable("it is no ordinary file")
        with path.open("rb") as file:
            data = file.read(MOST_BYTES + 1)
    except (FileNotFoundError, NotADirectoryError):
        raise Unreadable("there is no such file") from None
    except (OSError, ValueError) as error:
        raise Unreadable(getattr(error, "strerror", None) or "it cannot be opened") from None
    if len(data) > MOST_BYTES:
        size = max(about.st_size, len(data)) / 1e6
        most = f"more than {MOST_BYTES / 1e6:g} MB are not read"
        raise Unreadable(f"it has {size:.1f} MB, and {most}. Is it the file with the words?")
    return data


def _decoded(data: bytes) -> str:
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        try:
            return data.decode("utf-16")
        except UnicodeDecodeError:
            raise Unreadable(f"it begins as UTF-16 and does not go on so. {_SAVE}") from None
    if b"\x00" in data[:4000]:
        even, odd = data[:4000:2].count(0), data[1:4000:2].count(0)
        almost = max(even, odd) > 4 * min(even, odd) and 4 * (even + odd) > min(len(data), 4000)
        raise Unreadable(f"it looks like UTF-16 without its mark. {_SAVE}" if almost else "it is no text")
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        before = data[: error.start].replace(b"\r\n", b"\n").replace(b"\r", b"\n")
        line = before.count(b"\n") + 1
        sign = f"{data[error.start]:02x}"
        raise Unreadable(f"it is not UTF-8: line {line} holds a character stored as the byte {sign}. {_SAVE}") from None
