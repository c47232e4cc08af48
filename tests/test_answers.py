"""Each command answers in each of its formats, with the keys that other programs read."""

from __future__ import annotations

import csv
import io
import json
import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.running import SMALLEST, run

ROOT = Path(__file__).parents[1]
Writer = Callable[[dict[str, str | bytes]], Path]
SENTENCE = {"segment", "file", "line", "text", "kind", "strength", "flags", "triggers", "sources", "certainty"}
SEGMENT = {"id", "kind", "start_s", "spoken_s", "silent_s", "total_s", "low_s", "high_s", "words"}
RUNTIME = {"episode", "pace", "target_s", "total_s", "low_s", "high_s", "segments", "cuts", "recorded_s"}
SHOT = {
    "shot", "setup", "segment", "start_s", "duration_s", "size", "plane", "of", "reps", "place", "kit", "screen",
    "sources",
}  # fmt: skip


@pytest.fixture
def smallest(episode: Writer) -> Path:
    """The smallest outline: no error, no warning."""
    return episode({"outline.yaml": SMALLEST})


@pytest.fixture
def faulty(episode: Writer) -> Path:
    """An outline with an error: a source that nobody knows."""
    return episode({"outline.yaml": SMALLEST.replace("source: mora-2022", "source: nobody-2020")})


def test_a_workbook_is_printed_as_bytes_or_goes_into_a_file(smallest: Path, tmp_path: Path) -> None:
    call = [sys.executable, "-m", "scriptkit", "claims", str(smallest), "--format", "xlsx"]
    printed = subprocess.run(call, capture_output=True, check=False, env={**os.environ, "PYTHONPATH": str(ROOT)}).stdout
    run("claims", smallest, "--format", "xlsx", "--output", tmp_path / "claims.xlsx")
    assert (tmp_path / "claims.xlsx").read_bytes() == printed
    run("build", smallest)
    assert (smallest / "build" / "claims.xlsx").read_bytes() == printed
    assert printed.startswith(b"PK")


def test_the_ledger_shows_what_is_open_at_each_sentence(episode: Writer) -> None:
    folder = episode({"outline.yaml": SMALLEST, "segments/bar-hang.md": "A long hang builds strength.\n"})
    rows = run("claims", folder, "--format", "json").json["sentences"]
    (row,) = [row for row in rows if row["findings"]]
    assert (row["text"], row["status"]) == ("A long hang builds strength.", "needs a source")
    assert "needs a source" in run("claims", folder).out


@pytest.mark.parametrize("option", [(), ("--format", "csv"), ("--format", "json")])
@pytest.mark.parametrize("command", ["claims", "shots"])
def test_a_list_comes_as_text_table_and_json(smallest: Path, command: str, option: tuple[str, ...]) -> None:
    done = run(command, smallest, *option)
    assert (done.status, done.err) == (0, "")
    if "json" in option:
        rows = done.json if command == "shots" else done.json["sentences"]
        assert rows
        assert all(row.keys() >= (SHOT if command == "shots" else SENTENCE) for row in rows)
    elif "csv" in option:
        assert done.out.startswith("\ufeff")
        rows = list(csv.DictReader(io.StringIO(done.out.removeprefix("\ufeff"), newline="")))
        assert [row["segment"] for row in rows if row["segment"] == "bar-hang"]
    else:
        assert "\nbar-hang" in done.out


def test_runtime_answers_a_person_and_a_program(smallest: Path) -> None:
    done = run("runtime", smallest, "--format", "json")
    assert done.json.keys() >= RUNTIME
    assert all(row.keys() >= SEGMENT for row in done.json["segments"])
    total = sum(row["total_s"] for row in done.json["segments"])
    assert done.json["total_s"] == pytest.approx(total, abs=0.01)
    assert "bar-hang" in run("runtime", smallest).out


def test_another_pace_takes_another_time(smallest: Path) -> None:
    slow, fast = (run("runtime", smallest, "--pace", pace, "--format", "json").json for pace in ("100", "200"))
    assert (slow["pace"], fast["pace"]) == (100, 200)
    assert slow["total_s"] > fast["total_s"]


def numbers(value: object) -> list[float]:
    if isinstance(value, float):
        return [value]
    inner = value.values() if isinstance(value, dict) else value if isinstance(value, list) else ()
    return [number for one in inner for number in numbers(one)]


@pytest.mark.parametrize("command", ["claims", "runtime", "shots"])
def test_seconds_have_three_decimals_at_most(smallest: Path, command: str) -> None:
    found = numbers(run(command, smallest, "--format", "json").json)
    assert found
    assert [number for number in found if round(number, 3) != number] == []


@pytest.mark.parametrize("command", ["claims", "runtime", "shots"])
def test_an_answer_tells_beside_it_that_errors_are_open(faulty: Path, command: str) -> None:
    done = run(command, faulty, "--format", "json")
    assert done.status == 1
    assert done.json
    assert done.err == "1 error is open; `scriptkit check` shows what and where.\n"


def test_build_writes_every_file_and_says_where(smallest: Path) -> None:
    done = run("build", smallest)
    assert (done.status, done.err) == (0, "")
    assert str(smallest / "build" / "index.html") in done.out
    assert {path.name for path in (smallest / "build").iterdir()} >= {"index.html", "script.html", "report.json"}


def test_build_writes_with_errors_open_and_ends_with_1(faulty: Path, tmp_path: Path) -> None:
    done = run("build", faulty, "--out", tmp_path / "out")
    assert done.status == 1
    assert "Open: 1 error" in done.out
    assert json.loads((tmp_path / "out" / "report.json").read_bytes())["summary"]["errors"] == 1


def test_build_refuses_in_a_sentence(smallest: Path) -> None:
    (smallest / "build").write_text("mine")
    done = run("build", smallest)
    assert done.status == 2
    assert "no folder, so nothing was written" in done.err
    assert (smallest / "build").read_text() == "mine"
