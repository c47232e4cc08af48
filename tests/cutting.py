"""Episodes built at every rate, and the three timelines of a build as readers of other makers see them."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from collections.abc import Callable, Mapping
from fractions import Fraction
from functools import cache, cached_property
from math import floor
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import opentimelineio

from scriptkit.model import Facts
from scriptkit.session import Session
from tests.running import run

Write = Callable[[Mapping[str, str | bytes]], Path]
EXACT = {
    "23.976": Fraction(24000, 1001), "24": Fraction(24), "25": Fraction(25), "29.97": Fraction(30000, 1001),
    "29.97df": Fraction(30000, 1001), "30": Fraction(30), "50": Fraction(50), "59.94": Fraction(60000, 1001),
    "59.94df": Fraction(60000, 1001), "60": Fraction(60),
}  # fmt: skip
DROP = ("29.97df", "59.94df")
# it goes over two minutes of timecode, and each of its claims, cards and shots has an odd time
OUTLINE = """\
title: Ways to train your grip
exercises:
  hang: {name: Bar hang, grade: A}
  row: {name: Ring row, grade: B}
sources:
  mora-2022: {title: Timed hangs, year: 2022, invented: true}
order: [opening, hang, row, close]
"""
HANG = """\
[shot FS side: bar hang] [screen: Bar hang] Hang time rose by a fifth. [from mora-2022] [hold 41.37s: hangs]
[shot CU front fault: thumbs off the bar] [screen 3.3s: Thumbs] Look at my thumbs. [hold 33.01s: hangs]
"""
ROW = """\
[shot FS side: ring row] Rows are what I like best. [opinion] [hold 62.77s: rows]
[shot MS back correct: shoulder blades] [screen: Ring row: B] I give it a B. [opinion]
"""


class Built:
    """What a build in a folder wrote of the cut, and the facts that it was written from."""

    def __init__(self, folder: Path, rate: str = "25") -> None:
        run("build", folder)
        self.files = {path.suffix[1:]: path.read_bytes() for path in sorted(folder.glob("build/timeline.*"))}
        self.rate, self.exact = rate, EXACT[rate]
        work = Session(folder, "record")
        assert work.facts is not None
        self.facts: Facts = work.build.as_built(work.facts, work.material.recording)

    @cached_property
    def otio(self) -> Any:
        """timeline.otio, read by OpenTimelineIO."""
        return opentimelineio.adapters.read_from_string(self.files["otio"].decode(), "otio_json")

    @cached_property
    def edl(self) -> Any:
        """timeline.edl, read by its adapter for CMX 3600."""
        return opentimelineio.adapters.read_from_string(self.files["edl"].decode(), "cmx_3600", rate=float(self.exact))

    @cached_property
    def xml(self) -> ET.Element:
        """timeline.fcpxml, read by a plain reader of XML."""
        return ET.fromstring(self.files["fcpxml"])  # noqa: S314 - our own file

    def frame(self, seconds: float) -> int:
        """The frame nearest to a time."""
        return floor(Fraction(seconds) * self.exact + Fraction(1, 2))

    @property
    def length(self) -> int:
        """The frame at which the clock ends."""
        return self.frame(self.facts.timeline.total)

    @property
    def starts(self) -> list[int]:
        """The frames at which a picture begins, by the clock."""
        return sorted({self.frame(one.start) for one in self.facts.shots if one.start is not None} - {self.length})

    def in_otio(self) -> list[tuple[int, int]]:
        """First frame and end of each clip of timeline.otio, from the first of the cut."""
        return spans(self.otio)

    def in_edl(self) -> list[tuple[int, int]]:
        """The same of timeline.edl."""
        return spans(self.edl)

    def in_fcpxml(self) -> list[tuple[int, int]]:
        """The same of timeline.fcpxml; each time has to be that of a whole frame."""
        sequence = self.xml.find(".//sequence")
        assert sequence is not None
        first = seconds(sequence.attrib["tcStart"])
        found = []
        for clip in self.xml.iterfind(".//spine/*"):
            start = (seconds(clip.attrib["offset"]) - first) * self.exact
            end = start + seconds(clip.attrib["duration"]) * self.exact
            assert start.denominator == end.denominator == 1
            found.append((int(start), int(end)))
        return found


def spans(timeline: Any) -> list[tuple[int, int]]:
    """First frame and end of each clip of a timeline that has nothing beside them."""
    parts = [part for track in timeline.tracks for part in track]
    assert all(isinstance(part, opentimelineio.schema.Clip) for part in parts)
    ranges = [part.range_in_parent() for part in parts]
    return [(int(one.start_time.value), int(one.end_time_exclusive().value)) for one in ranges]


def seconds(written: str) -> Fraction:
    """The time of an FCPXML attribute."""
    assert written.endswith("s")
    return Fraction(written[:-1])


@cache
def at_rate(rate: str) -> Built:
    """The episode above, built at a rate."""
    with TemporaryDirectory() as name:
        folder = Path(name)
        (folder / "segments").mkdir()
        files = {"outline.yaml": f"{OUTLINE}rate: {rate}\n", "segments/hang.md": HANG, "segments/row.md": ROW}
        for path, text in files.items():
            (folder / path).write_text(text, encoding="utf-8")
        return Built(folder, rate)
