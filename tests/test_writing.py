"""Builds and answers land on disk whole or not at all, and nothing that an author made is replaced."""

from __future__ import annotations

import errno
import os
import shutil
import signal
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from scriptkit import writing
from scriptkit.writing import Kept, Refused, add_to, replace_folder, write_file, write_new
from tests.building import NEW, OLD, builds, made, names, place
from tests.running import held

__all__ = ["place"]  # a fixture, known by its name

ROOT = Path(__file__).resolve().parents[1]

# Builds NEW and is killed: before the file system is touched for the STEP-th time, or while file STEP is being written.
KILLED = """
import os, signal, sys
from pathlib import Path
from scriptkit import writing
how, step, place = sys.argv[1], int(sys.argv[2]), Path(sys.argv[3])
touched = 0

def die_at_step():
    global touched
    touched += 1
    if touched == step:
        os.kill(os.getpid(), signal.SIGKILL)

def before(event, arguments):
    if event in ("open", "os.mkdir", "os.rename", "os.remove", "os.rmdir") and str(place) in str(arguments[0]):
        die_at_step()

def cut_short(handle):
    if touched + 1 == step:
        os.ftruncate(handle, os.fstat(handle).st_size // 2)
    die_at_step()

if how == "between":
    sys.addaudithook(before)
else:
    os.fsync = cut_short
files = {name: text.encode() for name, text in eval(sys.argv[4]).items()}
writing.replace_folder(place / "build", files, place / "episode", writing.Kept())
"""


def nothing(place: Path) -> None:
    """No folder is there."""


def empty(place: Path) -> None:
    (place / "build").mkdir()


def earlier(place: Path) -> None:
    builds(place, OLD)


@pytest.mark.parametrize("how", ["between", "within"])
@pytest.mark.parametrize("before", [nothing, empty, earlier])
def test_killed_at_any_step_it_leaves_the_old_or_the_new_folder_and_the_next_run_goes_on(
    place: Path, how: str, before: Callable[[Path], None]
) -> None:
    for step in range(1, 200):
        before(place)
        old = made(place / "build")
        was_killed = killed(place, how, step)
        if (place / "build").exists():
            assert made(place / "build") in (old, NEW), f"step {step}"
        elif before is earlier:
            assert made(place / ".build.scriptkit-old") == OLD, f"step {step}"
        builds(place, NEW)
        assert made(place / "build") == NEW
        assert names(place) == ["build", "episode"], f"step {step}"
        if not was_killed:
            assert step > (len(NEW) if how == "within" else 2 * len(NEW)), "it was killed at hardly any step"
            return
        shutil.rmtree(place / "build")
    pytest.fail("it never came to its end")


def test_killed_while_it_clears_up_after_a_kill_the_next_run_goes_on(place: Path) -> None:
    for step in range(1, 200):
        assert killed(place, "within", 3)
        was_killed = killed(place, "between", step)
        builds(place, NEW)
        assert made(place / "build") == NEW
        assert names(place) == ["build", "episode"], f"step {step}"
        if not was_killed:
            assert step > 2 * len(NEW), "it was killed at hardly any step"
            return
        shutil.rmtree(place / "build")
    pytest.fail("it never came to its end")


def killed(place: Path, how: str, step: int) -> bool:
    """Build NEW in a process that kills itself at a step; whether it did, or came to its end before."""
    files = {name: data.decode() for name, data in NEW.items()}
    call = [sys.executable, "-c", KILLED, how, str(step), str(place), repr(files)]
    ended = subprocess.run(call, cwd=ROOT, capture_output=True, text=True, check=False)
    assert ended.stderr == ""
    assert ended.returncode in {0, -signal.SIGKILL}
    return ended.returncode != 0


def test_what_a_killed_build_put_aside_comes_back_even_if_the_next_build_fails(
    place: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    earlier(place)
    (place / "build").rename(place / ".build.scriptkit-old")
    monkeypatch.setattr(writing, "write_new", fails)
    with pytest.raises(OSError, match="No space left"):
        builds(place, NEW)
    assert made(place / "build") == OLD
    assert names(place) == ["build", "episode"]


def fails(path: Path, data: bytes) -> bool:
    raise OSError(errno.ENOSPC, "No space left on device")


def test_two_builds_at_once_leave_one_of_the_two_whole(place: Path) -> None:
    versions = [{name: f"{number} {name} " * 2000 for name in ("a.txt", "b.txt", "c.txt")} for number in range(6)]
    calls = [[sys.executable, "-c", KILLED, "between", "0", str(place), repr(files)] for files in versions]
    running = [subprocess.Popen(call, cwd=ROOT, stderr=subprocess.PIPE) for call in calls]
    assert [(one.communicate()[1], one.returncode) for one in running] == [(b"", 0)] * len(calls)
    got = made(place / "build")
    assert got in [{name: text.encode() for name, text in files.items()} for files in versions]
    assert names(place) == ["build", "episode"]


def test_a_disk_that_fills_up_leaves_the_old_folder(place: Path) -> None:
    earlier(place)
    limit = "import resource; resource.setrlimit(resource.RLIMIT_FSIZE, (1000, 1000))\n"
    files = {"a.txt": "small", "b.txt": "large " * 1000}
    call = [sys.executable, "-c", limit + KILLED, "between", "0", str(place), repr(files)]
    ended = subprocess.run(call, cwd=ROOT, capture_output=True, text=True, check=False)
    assert "File too large" in ended.stderr
    assert made(place / "build") == OLD
    assert names(place) == ["build", "episode"]


def test_a_build_replaces_an_earlier_one_whole(place: Path) -> None:
    earlier(place)
    builds(place, NEW)
    assert made(place / "build") == NEW


def test_a_file_that_was_deleted_from_a_build_is_no_obstacle(place: Path) -> None:
    earlier(place)
    (place / "build" / "index.html").unlink()
    builds(place, NEW)
    assert made(place / "build") == NEW


def test_folders_on_the_way_are_made(place: Path) -> None:
    replace_folder(place / "out" / "of" / "here", NEW, place / "episode", Kept())
    assert made(place / "out" / "of" / "here") == NEW


def kept_in(place: Path) -> Kept:
    (place / "episode" / "segments").mkdir(exist_ok=True)
    return Kept(
        [place / "episode" / "outline.yaml", place / "episode" / "later.yaml"], [place / "episode" / "segments"]
    )


def test_an_answer_is_written_and_written_over(place: Path) -> None:
    for data in (b"first", b"second"):
        write_file(place / "answer.json", data, kept_in(place))
        assert (place / "answer.json").read_bytes() == data
    assert names(place) == ["answer.json", "episode"]


def test_an_answer_has_the_permissions_of_any_new_file_and_keeps_those_it_had(place: Path) -> None:
    write_file(place / "answer.json", b"", kept_in(place))
    write_new(place / "plain", b"")
    assert (place / "answer.json").stat().st_mode == (place / "plain").stat().st_mode
    (place / "answer.json").chmod(0o600)
    write_file(place / "answer.json", b"again", kept_in(place))
    assert (place / "answer.json").stat().st_mode & 0o777 == 0o600


def test_an_answer_never_takes_the_place_of_what_is_the_authors(place: Path) -> None:
    kept = kept_in(place)
    outline = place / "episode" / "outline.yaml"
    (place / "soft").symlink_to(outline)
    (place / "hard").hardlink_to(outline)
    (place / "way").symlink_to(place / "episode")
    replace_folder(place / "built", NEW, place / "episode", kept)
    before = held(place)
    targets = ["episode/outline.yaml", "episode/../episode/outline.yaml", "soft", "hard", "way/outline.yaml", "episode"]
    targets += ["way/segments/new.md", "episode/segments/x/y.md", "episode/later.yaml", "built/index.html", "/dev/null"]
    for target in targets:
        with pytest.raises(Refused):
            write_file(place / target, b"gone", kept)
        assert held(place) == before, target


def test_an_answer_that_cannot_be_written_leaves_nothing(place: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    write_file(place / "answer.json", b"first", kept_in(place))
    before = held(place)

    def full(handle: int, mode: str) -> None:
        os.close(handle)
        fails(place, b"")

    monkeypatch.setattr(os, "fdopen", full)
    with pytest.raises(OSError, match="No space left"):
        write_file(place / "answer.json", b"second", kept_in(place))
    assert held(place) == before


def test_a_new_file_is_written_only_where_nothing_is(place: Path) -> None:
    assert write_new(place / "new", b"mine")
    (place / "link").symlink_to(place / "nowhere")
    for name in ("new", "link", "episode"):
        assert not write_new(place / name, b"other")
    assert (place / "new").read_bytes() == b"mine"
    assert not (place / "nowhere").exists()


def test_a_new_file_that_cannot_be_finished_does_not_stay(place: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(os, "fsync", lambda _handle: fails(place, b""))
    with pytest.raises(OSError, match="No space left"):
        write_new(place / "new", b"half")
    assert not (place / "new").exists()


def test_more_is_written_behind_what_is_there_or_into_a_new_file(tmp_path: Path) -> None:
    path = tmp_path / "verdicts.yaml"
    add_to(path, b"one\n", None)
    path.chmod(0o640)
    add_to(path, b"two\n", b"one\n")
    assert path.read_bytes() == b"one\ntwo\n"
    assert path.stat().st_mode & 0o777 == 0o640
    assert [one.name for one in tmp_path.iterdir()] == ["verdicts.yaml"]


@pytest.mark.parametrize("known", [None, b"", b"one"])
def test_nothing_is_added_to_a_file_that_changed_since_it_was_read(tmp_path: Path, known: bytes | None) -> None:
    path = tmp_path / "verdicts.yaml"
    path.write_bytes(b"one\n")
    with pytest.raises(Refused, match="was changed meanwhile, so nothing was written"):
        add_to(path, b"two\n", known)
    assert path.read_bytes() == b"one\n"


def test_nothing_is_added_through_a_link(tmp_path: Path) -> None:
    (tmp_path / "else.yaml").write_bytes(b"")
    (tmp_path / "verdicts.yaml").symlink_to("else.yaml")
    with pytest.raises(Refused, match="no ordinary file"):
        add_to(tmp_path / "verdicts.yaml", b"two\n", b"")
