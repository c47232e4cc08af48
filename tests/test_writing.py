"""Builds and answers land on disk whole or not at all, and nothing that an author made is replaced."""

from __future__ import annotations

import errno
import hashlib
import json
import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from scriptkit import writing
from scriptkit.writing import MARK, Kept, Refused, replace_folder, write_file, write_new
from tests.running import held

ROOT = Path(__file__).resolve().parents[1]
OLD = {"index.html": b"old page " * 50, "script.md": b"old script", "gone.txt": b"only the old one has it"}
NEW = {"index.html": b"new page " * 70, "script.md": b"new script", "shots.csv": b"only the new one has it"}

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


def builds(place: Path, files: dict[str, bytes]) -> None:
    replace_folder(place / "build", files, place / "episode", Kept())


def made(folder: Path) -> dict[str, bytes | str | None]:
    """What a folder holds, without the mark."""
    return {name: data for name, data in held(folder).items() if name != MARK}


@pytest.fixture
def place(tmp_path: Path) -> Path:
    (tmp_path / "episode").mkdir()
    (tmp_path / "episode" / "outline.yaml").write_text("title: One\n")
    return tmp_path


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
    files = {name: data.decode() for name, data in NEW.items()}
    for step in range(1, 200):
        before(place)
        known = [made(place / "build"), NEW]
        call = [sys.executable, "-c", KILLED, how, str(step), str(place), repr(files)]
        ended = subprocess.run(call, cwd=ROOT, capture_output=True, text=True, check=False)
        assert ended.stderr == ""
        if (place / "build").exists():
            assert made(place / "build") in known, f"step {step}"
        elif before is earlier:
            assert made(place / ".build.scriptkit-old") == OLD, f"step {step}"
        builds(place, NEW)
        assert made(place / "build") == NEW
        assert sorted(os.listdir(place)) == ["build", "episode"], f"step {step}"
        if ended.returncode == 0:
            break
        builds(place, {})
        for name in (MARK, ""):
            (place / "build" / name).rmdir() if not name else (place / "build" / name).unlink()
    assert ended.returncode == 0
    assert step > (len(NEW) if how == "within" else 2 * len(NEW)), "it was killed at hardly any step"


def test_what_a_killed_build_put_aside_comes_back_even_if_the_next_build_fails(
    place: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    earlier(place)
    (place / "build").rename(place / ".build.scriptkit-old")
    monkeypatch.setattr(writing, "write_new", fails)
    with pytest.raises(OSError, match="No space left"):
        builds(place, NEW)
    assert made(place / "build") == OLD
    assert sorted(os.listdir(place)) == ["build", "episode"]


def fails(path: Path, data: bytes) -> bool:
    raise OSError(errno.ENOSPC, "No space left on device")


def test_two_builds_at_once_leave_one_of_the_two_whole(place: Path) -> None:
    versions = [{name: f"{number} {name} " * 2000 for name in ("a.txt", "b.txt", "c.txt")} for number in range(6)]
    calls = [[sys.executable, "-c", KILLED, "between", "0", str(place), repr(files)] for files in versions]
    running = [subprocess.Popen(call, cwd=ROOT, stderr=subprocess.PIPE) for call in calls]
    assert [(one.communicate()[1], one.returncode) for one in running] == [(b"", 0)] * len(calls)
    got = made(place / "build")
    assert got in [{name: text.encode() for name, text in files.items()} for files in versions]
    assert sorted(os.listdir(place)) == ["build", "episode"]


def test_a_disk_that_fills_up_leaves_the_old_folder(place: Path) -> None:
    earlier(place)
    limit = "import resource; resource.setrlimit(resource.RLIMIT_FSIZE, (1000, 1000))\n"
    files = {"a.txt": "small", "b.txt": "large " * 1000}
    call = [sys.executable, "-c", limit + KILLED, "between", "0", str(place), repr(files)]
    ended = subprocess.run(call, cwd=ROOT, capture_output=True, text=True, check=False)
    assert "File too large" in ended.stderr
    assert made(place / "build") == OLD
    assert sorted(os.listdir(place)) == ["build", "episode"]


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


# Each makes something at `place / "build"` that no build made, and names what the message must speak of.
def a_file(place: Path) -> str:
    (place / "build").write_text("my notes")
    return "no folder"


def a_folder_of_the_authors(place: Path) -> str:
    (place / "build").mkdir()
    (place / "build" / "thesis.md").write_text("years of work")
    return "thesis.md"


def a_link_to_a_build(place: Path) -> str:
    replace_folder(place / "elsewhere", OLD, place / "episode", Kept())
    (place / "build").symlink_to(place / "elsewhere")
    return "a link"


def a_dangling_link(place: Path) -> str:
    (place / "build").symlink_to(place / "nowhere")
    return "a link"


def a_pipe(place: Path) -> str:
    os.mkfifo(place / "build")
    return "no folder"


def a_build_with_a_changed_file(place: Path) -> str:
    earlier(place)
    (place / "build" / "script.md").write_text("with my corrections")
    return "'script.md' in it was changed since it was built"


def a_build_with_one_more_file(place: Path) -> str:
    earlier(place)
    (place / "build" / "notes.txt").write_text("mine")
    return "'notes.txt' in it was not made by a build"


def a_build_with_one_more_folder(place: Path) -> str:
    earlier(place)
    (place / "build" / "pictures").mkdir()
    return "'pictures' in it was not made by a build"


def a_build_with_a_file_turned_into_a_link(place: Path) -> str:
    earlier(place)
    (place / "copy.md").write_bytes(OLD["script.md"])
    (place / "build" / "script.md").unlink()
    (place / "build" / "script.md").symlink_to(place / "copy.md")
    return "script.md"


def a_mark_beside_other_files(place: Path) -> str:
    earlier(place)
    mark = (place / "build" / MARK).read_bytes()
    (place / "build").rename(place / "away")
    a_folder_of_the_authors(place)
    (place / "build" / MARK).write_bytes(mark)
    return "thesis.md"


def a_mark_that_is_a_link(place: Path) -> str:
    earlier(place)
    (place / "build" / MARK).rename(place / "mark")
    (place / "build" / MARK).symlink_to(place / "mark")
    return "no build of scriptkit made"


@pytest.mark.parametrize("mark", [b"", b"[]", b"{", b'{"files": []}', b'{"files": {"thesis.md": 1}}', b"[" * 100_000])
def test_a_mark_that_is_none_protects_nothing(place: Path, mark: bytes) -> None:
    a_folder_of_the_authors(place)
    (place / "build" / MARK).write_bytes(mark)
    refused(place, "no build of scriptkit made")


def refused(place: Path, said: str) -> None:
    before = held(place)
    with pytest.raises(Refused) as told:
        builds(place, NEW)
    assert said in str(told.value)
    assert held(place) == before


@pytest.mark.parametrize(
    "something",
    [
        a_file,
        a_folder_of_the_authors,
        a_link_to_a_build,
        a_dangling_link,
        a_pipe,
        a_build_with_a_changed_file,
        a_build_with_one_more_file,
        a_build_with_one_more_folder,
        a_build_with_a_file_turned_into_a_link,
        a_mark_beside_other_files,
        a_mark_that_is_a_link,
    ],
)
def test_what_no_build_made_is_refused_and_untouched(place: Path, something: Callable[[Path], str]) -> None:
    refused(place, something(place))


def test_a_forged_mark_reaches_nothing_outside_its_folder(place: Path) -> None:
    (place / "notes.md").write_text("mine")
    digest = hashlib.sha256(b"mine").hexdigest()
    (place / "build").mkdir()
    (place / "build" / MARK).write_text(json.dumps({"files": {"../notes.md": digest, "/etc/hostname": digest}}))
    builds(place, NEW)
    assert made(place / "build") == NEW
    assert (place / "notes.md").read_text() == "mine"


@pytest.mark.parametrize("left", [".build.scriptkit-new", ".build.scriptkit-old"])
@pytest.mark.parametrize("something", [a_file, a_folder_of_the_authors, a_link_to_a_build, a_build_with_one_more_file])
def test_a_leftover_that_no_build_left_is_refused(
    place: Path, left: str, something: Callable[[Path], str]
) -> None:
    something(place)
    (place / "build").rename(place / left)
    earlier_target = place / "build"
    assert not earlier_target.exists()
    refused(place, "is in the way")


def test_a_leftover_in_which_the_author_changed_a_file_is_refused(place: Path) -> None:
    a_build_with_a_changed_file(place)
    (place / "build").rename(place / ".build.scriptkit-old")
    refused(place, "changed since it was built")


def test_a_file_saved_into_the_folder_at_the_last_moment_is_kept(place: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    earlier(place)

    def meanwhile(folder: Path, files: dict[str, bytes]) -> None:
        fill(folder, files)
        (place / "build" / "notes.txt").write_text("saved while the build ran")

    fill = writing._fill
    monkeypatch.setattr(writing, "_fill", meanwhile)
    with pytest.raises(Refused, match=r"notes\.txt"):
        builds(place, NEW)
    assert made(place / "build") == {**OLD, "notes.txt": b"saved while the build ran"}
    assert sorted(os.listdir(place)) == ["build", "episode"]


@pytest.mark.parametrize("target", ["/", "episode", ".", "episode/.", "episode/../episode", "linked", "link/.."])
def test_the_episode_and_what_is_around_it_is_refused(place: Path, target: str) -> None:
    (place / "linked").symlink_to(place / "episode")
    (place / "link").symlink_to(place / "episode")
    before = held(place)
    with pytest.raises(Refused):
        replace_folder(place / target, NEW, place / "episode", Kept())
    assert held(place) == before


@pytest.mark.parametrize("target", ["segments", "segments/inner", "evidence.yaml"])
def test_a_place_that_is_read_from_is_refused_even_before_it_is_there(place: Path, target: str) -> None:
    kept = Kept([place / "episode" / "evidence.yaml"], [place / "episode" / "segments"])
    before = held(place)
    with pytest.raises(Refused, match="reads from"):
        replace_folder(place / "episode" / target, NEW, place / "episode", kept)
    assert held(place) == before


@pytest.mark.parametrize("target", ["/dev/null", "/dev/null/x", "/proc/scriptkit", "x" * 250, "a\0b"])
def test_a_place_where_nothing_can_be_written_is_an_error_of_the_place(place: Path, target: str) -> None:
    before = held(place)
    with pytest.raises((OSError, Refused)):
        replace_folder(place / target, NEW, place / "episode", Kept())
    assert held(place) == before


def test_a_name_may_hold_a_line_break(place: Path) -> None:
    replace_folder(place / "two\nlines", NEW, place / "episode", Kept())
    assert made(place / "two\nlines") == NEW


def kept_in(place: Path) -> Kept:
    (place / "episode" / "segments").mkdir(exist_ok=True)
    return Kept([place / "episode" / "outline.yaml", place / "episode" / "later.yaml"], [place / "episode" / "segments"])


def test_an_answer_is_written_and_written_over(place: Path) -> None:
    for data in (b"first", b"second"):
        write_file(place / "answer.json", data, kept_in(place))
        assert (place / "answer.json").read_bytes() == data
    assert sorted(os.listdir(place)) == ["answer.json", "episode"]


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
    monkeypatch.setattr(os, "fsync", lambda handle: fails(place, b""))
    with pytest.raises(OSError, match="No space left"):
        write_new(place / "new", b"half")
    assert not (place / "new").exists()
