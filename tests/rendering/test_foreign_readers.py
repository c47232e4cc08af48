"""Every file of a build is opened by something other than our own code.

Pages are opened in a browser by test_pages_in_a_browser.py, captions by ffprobe in test_captions_in_ffprobe.py, and
references.json by a citation processor in test_publishing.py.
"""

from __future__ import annotations

import csv
import io
import json
import shutil
import subprocess
import xml.etree.ElementTree as ET
from pathlib import Path

import openpyxl
import opentimelineio as otio
import pytest
import srt
import webvtt
from markdown_it import MarkdownIt

from scriptkit.shipped import shipped
from tests.running import run

DESIGN = """
    index.html script.html script.md prompter.html prompter.txt shots.csv shots.xlsx shots.html shoot.html shoot.csv
    graphics.csv claims.html claims.csv claims.xlsx grades.html grades.svg runtime.svg sponsor.html captions.vtt
    captions.srt timeline.otio timeline.edl timeline.fcpxml chapters.txt description.txt references.txt references.json
    report.json
    """.split()
BOOKS = ("shots.xlsx", "shoot.xlsx", "graphics.xlsx", "claims.xlsx")
TABLES = ("shots.csv", "shoot.csv", "graphics.csv", "claims.csv")


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("read") / "build"
    run("build", shipped("sample_episode"), "--out", folder)
    return folder


def text(path: Path) -> str:
    return path.read_text(encoding="utf-8")


def test_every_file_of_the_design_is_there_and_holds_something(built: Path) -> None:
    assert {name for name in DESIGN if not (built / name).is_file() or not (built / name).stat().st_size} == set()


def test_pictures_and_the_cut_are_well_formed(built: Path) -> None:
    for name in ("grades.svg", "runtime.svg", "timeline.fcpxml"):
        assert len(list(ET.parse(built / name).getroot().iter())) > 50  # noqa: S314 - our own file


def test_captions_are_read_by_two_libraries(built: Path) -> None:
    cues = webvtt.read(str(built / "captions.vtt"))
    lines = list(srt.parse(text(built / "captions.srt")))
    assert [one.text for one in cues.captions] == [one.content for one in lines]


def test_the_cut_is_read_by_opentimelineio_and_its_adapter(built: Path) -> None:
    timeline = otio.adapters.read_from_file(str(built / "timeline.otio"))
    edl = otio.adapters.read_from_file(str(built / "timeline.edl"), rate=25)
    assert [one.duration() for one in timeline.find_clips()] == [one.duration() for one in edl.find_clips()]


def test_the_script_as_markdown_has_a_head_for_each_segment(built: Path) -> None:
    report = json.loads(text(built / "report.json"))
    tokens = MarkdownIt().parse(text(built / "script.md"))
    heads = [tokens[at + 1].content for at, one in enumerate(tokens) if one.type == "heading_open" and one.tag == "h2"]
    assert len(heads) >= len(report["runtime"]["segments"])


def test_workbooks_and_tables_are_read_by_openpyxl_and_csv(built: Path) -> None:
    for name in BOOKS:
        sheet = openpyxl.load_workbook(built / name).active
        assert sheet is not None
        assert sheet.max_row > 40
        assert sheet.freeze_panes
        assert sheet.auto_filter.ref
    for name in TABLES:
        rows = list(csv.reader(io.StringIO((built / name).read_text(encoding="utf-8-sig"))))
        assert len({len(row) for row in rows}) == 1


def test_texts_to_paste_are_plain_lines(built: Path) -> None:
    for name in ("chapters.txt", "description.txt", "references.txt", "prompter.txt"):
        lines = text(built / name).splitlines()
        assert any(lines)
        assert all(line == line.rstrip() and line.isprintable() for line in lines)


@pytest.mark.office
def test_libreoffice_opens_every_workbook_and_table_without_a_repair(built: Path, tmp_path: Path) -> None:
    office = shutil.which("soffice")
    if not office:
        pytest.skip("there is no LibreOffice on this machine")
    home = f"-env:UserInstallation={(tmp_path / 'office').as_uri()}"
    call = [office, "--headless", home, "--convert-to", "ods", "--outdir", str(tmp_path)]
    done = subprocess.run(
        [*call, *(str(built / name) for name in BOOKS)], capture_output=True, text=True, check=False, timeout=180
    )
    for name in BOOKS:
        assert (tmp_path / name.replace(".xlsx", ".ods")).is_file(), done.stdout + done.stderr
    back = [office, "--headless", home, "--convert-to", "csv", "--outdir", str(tmp_path / "csv")]
    subprocess.run([*back, str(tmp_path / "shots.ods")], capture_output=True, check=False, timeout=180)
    rows = list(csv.reader(io.StringIO((tmp_path / "csv" / "shots.csv").read_text(encoding="utf-8"))))
    sheet = openpyxl.load_workbook(built / "shots.xlsx").active
    assert sheet is not None
    first = [str(cell.value or "") for cell in sheet[2]]
    assert [one for one in rows[1] if one] == [one for one in first if one]
