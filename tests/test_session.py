"""Where an answer goes: a terminal, a pipe, a full disk, a file; never over what the author wrote."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.running import SMALLEST, run

Writer = Callable[[dict[str, str | bytes]], Path]


@pytest.fixture
def smallest(episode: Writer) -> Path:
    """The smallest outline: no error, no warning."""
    return episode({"outline.yaml": SMALLEST})


@pytest.fixture
def faulty(episode: Writer) -> Path:
    """An outline with an error: a source that nobody knows."""
    return episode({"outline.yaml": SMALLEST.replace("source: mora-2022", "source: nobody-2020")})


@pytest.mark.parametrize("command", ["check", "claims", "runtime", "shots", "build", "draft"])
def test_no_folder_and_a_file_are_told_in_a_sentence(tmp_path: Path, command: str) -> None:
    (tmp_path / "outline.yaml").write_text("title: One\n")
    missing, file = run(command, tmp_path / "none"), run(command, tmp_path / "outline.yaml")
    assert (missing.status, missing.out, file.status, file.out) == (2, "", 2, "")
    assert missing.err.startswith("There is no folder")
    assert file.err.startswith(f"{tmp_path / 'outline.yaml'} is a file. Give the folder")
    assert [path.name for path in tmp_path.iterdir()] == ["outline.yaml"]


@pytest.mark.parametrize("command", ["check", "claims", "runtime", "shots", "build", "draft"])
def test_a_path_that_nothing_can_be_under_is_no_fault_of_the_program(tmp_path: Path, command: str) -> None:
    (tmp_path / "circle").symlink_to("circle")
    for name in ("x" * 300, "circle", "circle/x", "circle/../" + "x" * 300):
        done = run(command, tmp_path / name)
        assert done.status == 2
        assert done.err.startswith("There is no folder")


@pytest.mark.skipif(sys.platform == "win32", reason="a folder that somebody is in cannot be removed there")
def test_a_folder_that_is_gone_is_told(tmp_path: Path) -> None:
    shell = f'mkdir gone && cd gone && rmdir ../gone && "{sys.executable}" -m scriptkit check'
    environment = {**os.environ, "PYTHONPATH": str(Path(__file__).parents[1])}
    done = subprocess.run(shell, shell=True, check=False, cwd=tmp_path, env=environment, capture_output=True)  # noqa: S602
    assert done.returncode == 2
    assert done.stderr.startswith(b"The folder you are in is not there any more.")


def test_no_folder_gives_a_program_its_findings_all_the_same(tmp_path: Path) -> None:
    done = run("check", tmp_path / "none", "--format", "json")
    assert done.status == 2
    assert [found["name"] for found in done.json["findings"]] == ["missing-file"]


def test_output_goes_into_the_file_that_is_named(smallest: Path, tmp_path: Path) -> None:
    for fmt in ("json", "csv", "text"):
        printed = run("shots", smallest, "--format", fmt)
        done = run("shots", smallest, "--format", fmt, "--output", tmp_path / "answer")
        assert (done.status, done.out, done.err) == (0, "", "")
        assert (tmp_path / "answer").read_bytes().decode() == printed.out


@pytest.mark.parametrize(
    "name", ["outline.yaml", "segments/bar-hang.md", "segments/new.md", "segments", "evidence.yaml"]
)
def test_output_never_replaces_what_the_author_wrote(smallest: Path, name: str) -> None:
    (smallest / "segments").mkdir()
    (smallest / "segments" / "bar-hang.md").write_text("I like it. [opinion]\n")
    done = run("check", smallest, "--output", smallest / name)
    assert done.status == 2
    assert "nothing was written" in done.err
    assert (smallest / "outline.yaml").read_text().startswith("title:")
    assert (smallest / "segments" / "bar-hang.md").read_text() == "I like it. [opinion]\n"
    assert not (smallest / "evidence.yaml").exists()


def test_a_person_s_file_is_left_where_the_outline_cannot_be_read(episode: Writer, tmp_path: Path) -> None:
    (tmp_path / "shots.csv").write_text("from yesterday")
    done = run("shots", episode({"outline.yaml": "["}), "--format", "csv", "--output", tmp_path / "shots.csv")
    assert (done.status, done.out) == (2, "")
    assert "cannot be read" in done.err
    assert (tmp_path / "shots.csv").read_text() == "from yesterday"


def whole(*arguments: str | Path, **more: object) -> subprocess.CompletedProcess[bytes]:
    """A command as a process of its own."""
    environment = {**os.environ, "PYTHONPATH": str(Path(__file__).resolve().parents[1])}
    environment.update(more.pop("env", {}))  # type: ignore[call-overload]
    call = [sys.executable, "-m", "scriptkit", *map(str, arguments)]
    return subprocess.run(call, check=False, env=environment, **more)  # type: ignore[call-overload, no-any-return]


def test_a_reader_that_has_read_enough_is_no_fault(faulty: Path) -> None:
    reads, writes = os.pipe()
    os.close(reads)
    done = whole("check", faulty, stdout=writes, stderr=subprocess.PIPE)
    os.close(writes)
    assert (done.returncode, done.stderr) == (1, b"")


def test_a_closed_output_is_no_fault(faulty: Path) -> None:
    shell = f'"{sys.executable}" -m scriptkit check "{faulty}" >&-'
    done = subprocess.run(shell, shell=True, check=False, stderr=subprocess.PIPE)  # noqa: S602
    assert (done.returncode, done.stderr) == (1, b"")


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="only some systems have a device that is always full")
def test_a_full_disk_is_told(smallest: Path) -> None:
    with Path("/dev/full").open("wb") as full:
        done = whole("runtime", smallest, stdout=full, stderr=subprocess.PIPE)
    assert (done.returncode, done.stderr) == (2, b"The answer cannot be written: No space left on device.\n")


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="only some systems have a device that is always full")
@pytest.mark.parametrize("arguments", [["--help"], ["schema"], ["check", "no-such-folder"], ["check", "--no-such"]])
def test_the_status_is_2_where_nothing_can_be_told(arguments: list[str]) -> None:
    with Path("/dev/full").open("wb") as full:
        assert whole(*arguments, stdout=full, stderr=full).returncode == 2


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="only some systems have a device that is always full")
def test_help_onto_a_full_disk_is_no_fault_of_the_program() -> None:
    with Path("/dev/full").open("wb") as full:
        done = whole("--help", stdout=full, stderr=subprocess.PIPE)
    assert (done.returncode, done.stderr) == (2, b"The answer cannot be written: No space left on device.\n")


@pytest.mark.skipif(sys.platform == "win32", reason="names of folders cannot hold such signs there")
def test_the_name_of_a_folder_cannot_act_on_the_terminal(tmp_path: Path) -> None:
    folder = tmp_path / "grip\x1b[2J\u202e"
    told = run("new", folder).out + run("build", folder).out
    assert told.count("outline.yaml") == 1
    assert "index.html" in told
    assert not set("\x1b\u202e") & set(told)


def test_an_output_without_accents_gets_plain_signs(episode: Writer) -> None:
    folder = episode({"outline.yaml": SMALLEST.replace("Bar hang", "Bär hang 握").replace("mora-2022", "x", 1)})
    text = run("claims", folder, encoding="ascii").out
    assert "b?r hang ??" in text
    assert run("claims", folder, "--format", "csv").out.count("bär hang 握")


def colours(folder: Path, **environment: str) -> bool:
    """Whether `check` writes colour on a terminal."""
    import pty

    main, second = pty.openpty()
    whole("check", folder, stdout=second, stderr=second, env={"TERM": "xterm", "NO_COLOR": "", **environment})
    os.close(second)
    text = os.read(main, 100_000)
    os.close(main)
    assert b"unknown-source" in text
    return b"\x1b[" in text


def test_colour_is_for_terminals_that_want_it(faulty: Path) -> None:
    assert colours(faulty)
    assert not colours(faulty, NO_COLOR="1")
    assert not colours(faulty, TERM="dumb")
    assert "\x1b" not in run("check", faulty).out
