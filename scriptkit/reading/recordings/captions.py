"""WebVTT and SRT to cues: when a caption is shown and its lines; what is written otherwise is noted and passed over."""

from __future__ import annotations

import re
from typing import NamedTuple

from scriptkit.places import SourceFile
from scriptkit.reading.recordings.clock import TIME, seconds
from scriptkit.reading.recordings.noting import Notes
from scriptkit.reading.recordings.opening import Unreadable
from scriptkit.wording import quoted

MOST_CUES = 300_000  # three hours of captions, one for each word, have a tenth of it
MOST_LINES = 200  # of one caption
_TIMING = re.compile(rf"\s*({TIME})\s*(?:-{{1,3}}>|→)\s*({TIME})(?=\s|$)")
_LIKE_TIMING = re.compile(r"\s*\S*\d\S*[^\S\n]*-{1,2}>[^\S\n]*\S*\d")
_ASIDE = re.compile(r"(?:NOTE|STYLE|REGION)(?=\s|$)")


class Cue(NamedTuple):
    """A caption: its seconds, its lines, and the offset in the file at which its times stand.

    `end` is not after `start` where the file does not tell how long it is shown.
    """

    start: float
    end: float
    lines: list[str]
    offset: int


def is_webvtt(file: SourceFile) -> bool:
    """Whether a file says that it is WebVTT."""
    return re.match(r"\s*WEBVTT(?=\s|$)", file.text) is not None


def is_captions(file: SourceFile) -> bool:
    """Whether a file is WebVTT or has a line with the two times of a caption."""
    return is_webvtt(file) or any(
        _TIMING.match(file.text, found.start()) for found in re.finditer(r"(?m)^.{0,40}(?:->|→)", file.text)
    )


def read(file: SourceFile, notes: Notes) -> list[Cue]:
    """The cues of a file, in the order written."""
    return _Reader(file, notes, webvtt=is_webvtt(file)).read()


class _Reader:
    """Goes through the lines of one file. `lines` are those of the caption that is open, if one is."""

    def __init__(self, file: SourceFile, notes: Notes, *, webvtt: bool) -> None:
        self.file, self.notes, self.webvtt = file, notes, webvtt
        self.cues: list[Cue] = []
        self.lines: list[str] | None = None
        self.blank = True  # whether the line before is empty
        self.aside = webvtt  # whether this block is none of captions: a header, a note, a style
        self.stray: tuple[int, str] | None = None  # a line without a time, which a time may follow

    def read(self) -> list[Cue]:
        """All of the file."""
        offset = 0
        for line in self.file.text.split("\n"):
            if not line or (line.isspace() and not self.webvtt):  # in WebVTT a line of spaces is one of the caption
                self._gap()
            elif ("->" in line or "→" in line) and (found := _TIMING.match(line)):
                self._open(found, offset)
            elif "->" in line and _LIKE_TIMING.match(line):
                self._unreadable(line, offset)
            else:
                self._text(line, offset)
            offset += len(line) + 1
        self._tell_stray()
        return self.cues

    def _open(self, found: re.Match[str], offset: int) -> None:
        """Start a caption; a number right above its times is not of the caption before."""
        if self.stray is None and not self.blank and self.lines and self.lines[-1].strip().isdecimal():
            self.lines.pop()
        self.stray, self.blank, self.aside, self.lines = None, False, False, []
        start, end = seconds(found[1]), seconds(found[2])
        if start is None or end is None:
            self.notes.note("time", offset, f"The time {quoted(found[0])} is none; its caption is left out.")
            return
        if start < 0:
            self.notes.note("negative", offset, f"This caption starts before 0, at {found[1]}; it is read from 0 on.")
            start, end = 0.0, max(end, 0.0)
        if end < start:
            told = f"This caption ends before it starts ({quoted(found[0])}); only its start is used."
            self.notes.note("reversed", offset, told)
        if len(self.cues) >= MOST_CUES:
            raise Unreadable(f"it has more than {MOST_CUES:,} captions, and no recording has")
        self.cues.append(Cue(start, end, self.lines, offset))

    def _unreadable(self, line: str, offset: int) -> None:
        self.stray, self.blank, self.aside, self.lines = None, False, False, []
        self.notes.note("time", offset, f"The times {quoted(line)} cannot be read; their caption is left out.")

    def _text(self, line: str, offset: int) -> None:
        starts_block, self.blank = self.blank, False
        if self.aside:
            return
        if starts_block and self.webvtt and _ASIDE.match(line):
            self.aside = True
        elif starts_block and (self.webvtt or not self.cues or line.strip().isdecimal()):
            self.stray = (offset, line)  # the id or number of the next caption, or words that no time stands above
        elif self.lines is not None and len(self.lines) < MOST_LINES:
            if self.stray is not None:
                self.lines.append(self.stray[1])
                self.stray = None
            self.lines.append(line)

    def _gap(self) -> None:
        """An empty line: in WebVTT it ends a caption that has words, in SRT one may stand inside of it."""
        self.blank, self.aside = True, False
        self._tell_stray()
        if self.webvtt and self.lines:
            self.lines = None

    def _tell_stray(self) -> None:
        """Note words under no time; behind times that had none they are theirs."""
        if self.stray is not None and self.webvtt and self.lines is not None:
            self.lines.append(self.stray[1])
        elif self.stray is not None and (self.webvtt or not self.stray[1].strip().isdecimal()):
            offset, line = self.stray
            self.notes.note("stray", offset, f"The line {quoted(line)} stands under no time and is left out.")
        self.stray = None
