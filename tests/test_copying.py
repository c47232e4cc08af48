"""A copy of an episode is made whole or not at all, and never over anything."""

from __future__ import annotations

import shutil
import signal
import subprocess
import sys
from collections.abc import Callable, Mapping
from pathlib import Path

import pytest

from scriptkit.copying import copy
from scriptkit.reading.files import Folders
from scriptkit.writing import MARK, Refused
from tests.running import held

Writer = Callable[[Mapping[str, str | bytes]], Path]
ROOT = Path(__file__).parents[1]
# Copies an episode and is killed before the file system is touched for the STEP-th time.
KILLED = """
import os, signal, sys
from pathlib import Path
from scriptkit.copying import copy
from scriptkit.reading.files import Folders
step, folder = int(sys.argv[1]), Path(sys.argv[2])
touched = 0

def before(event, arguments):
    global touched
    if event in ("open", "os.mkdir", "os.rename", "os.chmod") and str(folder.parent) in str(arguments[0]):
        touched += 1
        if touched == step:
            os.kill(os.getpid(), signal.SIGKILL)

sys.addaudithook(before)
copy(Folders(folder), folder.with_name("short"), {"segments/opening.md": b"Hi."})
"""
FILES: dict[str, str | bytes] = {
    "outline.yaml": b"title: One\r\n",
    "segments/opening.md": "Hello.\n",
    "notes/deep/card.bin": b"\x00\xff",
    f"build/{MARK}": "{}",
    "build/index.html": "old",
    ".git/config": "mine",
}


def test_all_is_copied_but_builds_and_history_and_what_is_other(episode: Writer) -> None:
    folder = episode(FILES)
    before = held(folder)
    copy(Folders(folder), folder.with_name("short"), {"segments/opening.md": b"Hi.\n"})
    assert held(folder) == before
    assert held(folder.with_name("short")) == {
        "notes": None, "notes/deep": None, "notes/deep/card.bin": b"\x00\xff", "outline.yaml": b"title: One\r\n",
        "segments": None, "segments/opening.md": b"Hi.\n",
    }  # fmt: skip


def test_an_empty_folder_will_do_and_so_will_a_way_to_it(episode: Writer) -> None:
    folder = episode(FILES)
    empty = folder.with_name("empty")
    empty.mkdir()
    copy(Folders(folder), empty, {})
    copy(Folders(folder), folder.with_name("a") / "b", {})
    assert (empty / "outline.yaml").read_bytes() == (folder.with_name("a") / "b" / "outline.yaml").read_bytes()


@pytest.mark.parametrize(
    "name", ["file", "full", "link", "nowhere", "episode", "episode/inside", "episode/..", "file/below"]
)
def test_a_place_that_is_taken_or_is_the_episode_is_refused(tmp_path: Path, name: str) -> None:
    (tmp_path / "episode").mkdir()
    (tmp_path / "episode" / "outline.yaml").write_text("title: One\n")
    (tmp_path / "full").mkdir()
    (tmp_path / "full" / ".hidden").write_text("mine")
    (tmp_path / "file").write_text("mine")
    (tmp_path / "link").symlink_to(tmp_path / "full")
    (tmp_path / "nowhere").symlink_to(tmp_path / "not-there")
    before = held(tmp_path)
    with pytest.raises((Refused, OSError)):
        copy(Folders(tmp_path / "episode"), tmp_path / name, {})
    assert held(tmp_path) == before


def test_a_place_inside_the_episode_is_told_as_such(episode: Writer) -> None:
    folder = episode(FILES)
    with pytest.raises(Refused, match="lies in the episode itself"):
        copy(Folders(folder), folder / "new" / "one", {})


def test_permissions_are_copied(episode: Writer) -> None:
    folder = episode(FILES)
    (folder / "segments" / "opening.md").chmod(0o640)
    copy(Folders(folder), folder.with_name("short"), {})
    assert (folder.with_name("short") / "segments" / "opening.md").stat().st_mode & 0o777 == 0o640


def channel(tmp_path: Path) -> Path:
    folder = tmp_path / "channel" / "one"
    folder.mkdir(parents=True)
    (folder / "outline.yaml").write_text("title: One\nevidence: [../library.yaml]\n")
    (tmp_path / "channel" / "channel.yaml").write_text("pace: 150\n")
    (tmp_path / "channel" / "library.yaml").write_text("sources: {}\n")
    return folder


def test_a_copy_keeps_its_channel_and_what_lies_there(tmp_path: Path) -> None:
    folder = channel(tmp_path)
    folders = Folders(folder)
    folders.text(folder / ".." / "library.yaml", "a register")
    copy(folders, folder.with_name("short"), {})
    before = held(tmp_path)
    for target, told in (
        (tmp_path / "elsewhere", "one-short"),
        (folder.with_name("deep") / "down", "library.yaml"),
        (tmp_path / "channel" / "segments" / "x", "reads from"),
    ):
        with pytest.raises(Refused, match=told):
            copy(folders, target, {})
        assert held(tmp_path) == before


def test_a_channel_that_is_not_the_episodes_is_refused(tmp_path: Path, episode: Writer) -> None:
    theirs = channel(tmp_path / "other")
    with pytest.raises(Refused, match="would be read with"):
        copy(Folders(episode(FILES)), theirs.with_name("mine"), {})
    assert not theirs.with_name("mine").exists()


def test_a_copy_that_fails_leaves_nothing(episode: Writer) -> None:
    folder = episode(FILES)
    import os

    os.mkfifo(folder / "segments" / "pipe.md")
    with pytest.raises(Refused, match="no ordinary file"):
        copy(Folders(folder), folder.with_name("a") / "b", {})
    assert not folder.with_name("a").exists()


def test_killed_at_any_step_it_leaves_the_whole_copy_or_none_and_the_next_one_is_made(episode: Writer) -> None:
    folder = episode(FILES)
    short = folder.with_name("short")
    copy(Folders(folder), short, {"segments/opening.md": b"Hi."})
    whole = held(short)
    for step in range(1, 100):
        shutil.rmtree(short, ignore_errors=True)
        ended = subprocess.run([sys.executable, "-c", KILLED, str(step), str(folder)], cwd=ROOT, check=False)
        assert not short.exists() or held(short) == whole, f"step {step}"
        if ended.returncode == 0:
            assert step > len(whole), "it was killed at hardly any step"
            return
        assert ended.returncode == -signal.SIGKILL
        if not short.exists():
            copy(Folders(folder), short, {"segments/opening.md": b"Hi."})
        assert held(short) == whole
    pytest.fail("it never came to its end")


def test_links_are_copied_as_what_they_lead_to(episode: Writer) -> None:
    folder = episode(FILES)
    (folder / "card.md").symlink_to("segments/opening.md")
    (folder / "texts").symlink_to("segments")
    copy(Folders(folder), folder.with_name("short"), {})
    short = folder.with_name("short")
    assert (short / "card.md").read_text() == "Hello.\n"
    assert not (short / "card.md").is_symlink()
    assert (short / "texts").readlink() == Path("segments")
