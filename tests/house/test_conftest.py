"""Golden files mean it: a change fails and names the command, which then writes them and clears dead ones."""

from __future__ import annotations

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from tests.house.tree import ROOT

PAGE = """
def test_page(golden):
    golden("page.txt", "spoken {word}\\n")
"""


@pytest.fixture
def run(tmp_path: Path) -> list[str]:
    """The call that runs the tests of a small project with this project's conftest."""
    shutil.copy(ROOT / "tests" / "conftest.py", tmp_path)
    (tmp_path / "golden").mkdir()
    (tmp_path / "golden" / "dead.txt").write_text("looked at by no test")
    return [sys.executable, "-m", "pytest", "-q", "-p", "no:hypothesispytest", "-p", "no:cacheprovider"]


def ran(run: list[str], folder: Path, word: str, *more: str) -> tuple[int, str]:
    """Exit status and output of the small project's run, whose one page says `word`."""
    (folder / "test_page.py").write_text(PAGE.format(word=word))
    done = subprocess.run([*run, *more], cwd=folder, capture_output=True, text=True, check=False)
    return done.returncode, done.stdout


def test_one_command_writes_golden_files_and_clears_dead_ones(run: list[str], tmp_path: Path) -> None:
    status, said = ran(run, tmp_path, "now")
    assert status == 1
    assert "there is no golden file page.txt" in said

    assert ran(run, tmp_path, "now", "--update-golden")[0] == 0
    assert [path.name for path in (tmp_path / "golden").iterdir()] == ["page.txt"]
    assert ran(run, tmp_path, "now")[0] == 0

    status, said = ran(run, tmp_path, "later")
    assert status == 1
    assert "was b'spoken now'" in said
    assert "pytest --update-golden" in said


def test_a_dead_golden_file_fails_a_whole_run_and_not_a_part(run: list[str], tmp_path: Path) -> None:
    ran(run, tmp_path, "now", "--update-golden")
    (tmp_path / "golden" / "dead.txt").write_text("looked at by no test")
    status, said = ran(run, tmp_path, "now")
    assert status == 1
    assert "dead.txt: no test looks at this golden file" in said
    assert ran(run, tmp_path, "now", "test_page.py")[0] == 0
    assert (tmp_path / "golden" / "dead.txt").exists()
