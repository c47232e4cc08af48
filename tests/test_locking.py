"""Locks of folders: commands wait for each other, a killed one is not waited for, and nobody waits without end."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from scriptkit import locking
from scriptkit.locking import locked

ROOT = Path(__file__).parents[1]
HOLDS = """
import sys
from pathlib import Path
from scriptkit.locking import locked
with locked(Path(sys.argv[1])):
    print("held", flush=True)
    sys.stdin.read()
"""
ADDS = """
import sys
from pathlib import Path
from scriptkit.locking import locked
path = Path(sys.argv[1]) / "count"
for _ in range(50):
    with locked(path.parent):
        path.write_text(str(int(path.read_text()) + 1))
"""


@pytest.fixture
def holder(tmp_path: Path) -> Iterator[subprocess.Popen[str]]:
    """A process that holds the lock of the folder."""
    call = [sys.executable, "-c", HOLDS, str(tmp_path)]
    with subprocess.Popen(call, cwd=ROOT, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True) as running:
        assert running.stdout is not None
        assert running.stdout.readline() == "held\n"
        yield running
        running.kill()


def test_nobody_waits_without_end(
    tmp_path: Path, holder: subprocess.Popen[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(locking, "LONGEST", 0.1)
    with pytest.raises(TimeoutError, match="another command"), locked(tmp_path):
        pass


def test_a_killed_process_holds_nothing(tmp_path: Path, holder: subprocess.Popen[str]) -> None:
    holder.kill()
    holder.wait()
    with locked(tmp_path):
        pass
    assert list(tmp_path.iterdir()) == []


def test_one_after_the_other_is_in_it(tmp_path: Path) -> None:
    (tmp_path / "count").write_text("0", encoding="utf-8")
    running = [subprocess.Popen([sys.executable, "-c", ADDS, str(tmp_path)], cwd=ROOT) for _ in range(4)]
    assert [one.wait() for one in running] == [0] * 4
    assert (tmp_path / "count").read_text(encoding="utf-8") == "200"
