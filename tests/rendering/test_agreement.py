"""All files of one build agree: the same seconds, the same grades, the same number of shots and set-ups."""

from __future__ import annotations

import csv
import io
import json
import re
import xml.etree.ElementTree as ET
from fractions import Fraction
from html import unescape
from itertools import pairwise
from pathlib import Path

import openpyxl
import opentimelineio as otio
import pytest
import srt
import webvtt

from scriptkit.shipped import shipped
from scriptkit.times import clock
from tests.running import run


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("agreed") / "build"
    run("build", shipped("sample_episode"), "--out", folder)
    return folder


@pytest.fixture(scope="module")
def report(built: Path) -> dict:
    read: dict = json.loads((built / "report.json").read_text(encoding="utf-8"))
    return read


def words(path: Path) -> str:
    """What a page says, without its marks."""
    text = path.read_text(encoding="utf-8")
    return unescape(
        " ".join(re.sub(r"<style.*?</style>|<script.*?</script>|<[^>]+>", " ", text, flags=re.DOTALL).split())
    )


def rows(path: Path) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(path.read_text(encoding="utf-8-sig"))))


def sheet(path: Path) -> list[dict[str, object]]:
    read = openpyxl.load_workbook(path).active
    assert read is not None
    head, *body = read.iter_rows(values_only=True)
    return [dict(zip(map(str, head), one, strict=True)) for one in body]


def events(built: Path) -> list[str]:
    """The events of the edit decision list."""
    lines = (built / "timeline.edl").read_text(encoding="utf-8").splitlines()
    return [line for line in lines if re.match(r"\d{3}  ", line)]


def fcpxml(built: Path) -> ET.Element:
    return ET.parse(built / "timeline.fcpxml").getroot()  # noqa: S314 - our own file


def test_all_files_end_at_the_same_second(built: Path, report: dict) -> None:
    total = report["runtime"]["total_s"]
    frames = round(Fraction(total) * 25)
    cut = otio.adapters.read_from_file(str(built / "timeline.otio"))
    assert cut.duration().to_frames() == frames
    hours, minutes, seconds, rest = map(int, events(built)[-1].split()[-1].split(":"))
    assert ((hours - 1) * 3600 + minutes * 60 + seconds) * 25 + rest == frames
    sequence = fcpxml(built).find(".//sequence")
    assert sequence is not None
    assert Fraction(sequence.attrib["duration"].rstrip("s")) == Fraction(frames, 25)
    for page in ("index.html", "script.md", "prompter.html", "runtime.svg"):
        assert clock(total) in words(built / page)
    segments = report["runtime"]["segments"]
    assert total == pytest.approx(sum(one["total_s"] for one in segments), abs=0.02)
    assert all(
        one["start_s"] + one["total_s"] == pytest.approx(then["start_s"], abs=0.002) for one, then in pairwise(segments)
    )
    placed = [one for one in report["shots"] if one["start_s"] is not None]
    assert placed[-1]["start_s"] + placed[-1]["duration_s"] == pytest.approx(total, abs=0.002)
    cards = max(float(one["end_s"]) for one in rows(built / "graphics.csv"))
    seconds_of = webvtt.read(str(built / "captions.vtt"))[-1].end.split(":")
    *_, last = srt.parse((built / "captions.srt").read_text(encoding="utf-8"))
    assert total - 40 < cards <= total
    assert total - 2 < last.end.total_seconds() <= total + 0.001
    assert float(seconds_of[-1]) + 60 * int(seconds_of[-2]) == last.end.total_seconds()


def test_segments_begin_at_the_same_second_in_every_file(built: Path, report: dict) -> None:
    starts = {one["id"]: one["start_s"] for one in report["runtime"]["segments"]}
    for row in rows(built / "claims.csv"):
        assert row["start"] >= "0:00"
    first: dict[str, float] = {}
    for shot in rows(built / "shots.csv"):
        if shot["start_s"]:
            first.setdefault(shot["segment"], float(shot["start_s"]))
    assert first == pytest.approx(starts, abs=0.001)
    script = words(built / "script.html")
    chapters = (built / "chapters.txt").read_text(encoding="utf-8").splitlines()
    assert all(line in (built / "description.txt").read_text(encoding="utf-8") for line in chapters)
    heads = {int(value) for value in starts.values()}
    for line in chapters:
        minutes, seconds = line.split()[0].split(":")
        assert int(minutes) * 60 + int(seconds) in heads
    assert all(clock(value) in script for value in starts.values())


def test_grades_are_the_same_wherever_they_stand(built: Path, report: dict) -> None:
    grades = {one["name"]: one["grade"] for one in report["grades"]}
    assert len(grades) == 10
    cards = [row["text"] for row in rows(built / "graphics.csv") if row["kind"] == "grade"]
    for name, grade in grades.items():
        assert f"{name} {grade} " in words(built / "index.html")
        assert f" {grade} {name} " in words(built / "grades.html")
        assert f"{name}: {grade}" in cards
        assert f"{name}: {grade}" in words(built / "script.html")
        assert name in words(built / "grades.svg")


def test_shots_and_set_ups_are_as_many_in_every_file(built: Path, report: dict) -> None:
    shots = report["shots"]
    setups = {one["setup"] for one in shots}
    for name in ("shots.csv", "shoot.csv"):
        table = rows(built / name)
        assert sorted(row["shot"] for row in table) == sorted(str(one["shot"]) for one in shots)
        assert {row["setup"] for row in table} == setups
    for name in ("shots.xlsx", "shoot.xlsx"):
        assert sorted(row["shot"] for row in sheet(built / name)) == sorted(one["shot"] for one in shots)  # type: ignore[type-var]
    assert f"{len(shots)} shots in script order, {len(setups)} set-ups." in words(built / "shots.html")
    assert f"{len(shots)} shots" in words(built / "index.html")
    placed = [one for one in shots if one["start_s"] is not None]
    cut = otio.adapters.read_from_file(str(built / "timeline.otio"))
    assert len(list(cut.find_clips())) == len(placed)
    assert len(events(built)) == len(placed)


def test_cards_claims_and_sources_are_as_many_in_every_file(built: Path, report: dict) -> None:
    assert len(sheet(built / "graphics.xlsx")) == len(rows(built / "graphics.csv"))
    assert len(sheet(built / "claims.xlsx")) == len(rows(built / "claims.csv")) == len(report["sentences"])
    numbered = re.findall(r"^(\d+)\. ", (built / "references.txt").read_text(encoding="utf-8"), re.MULTILINE)
    listed = json.loads((built / "references.json").read_text(encoding="utf-8"))
    assert [int(one) for one in numbered] == [one["number"] for one in report["references"]]
    assert [one["id"] for one in listed] == [one["id"] for one in report["references"]]
