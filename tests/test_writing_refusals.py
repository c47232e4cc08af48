"""What no build made is refused and stays as it is, wherever a build is told to go."""

from __future__ import annotations

import hashlib
import json
import os
from collections.abc import Callable
from pathlib import Path

import pytest

from scriptkit import writing
from scriptkit.writing import MARK, Kept, Refused, replace_folder
from tests.building import NEW, OLD, builds, made, names, place
from tests.running import held

__all__ = ["place"]  # a fixture, known by its name


def earlier(place: Path) -> None:
    builds(place, OLD)


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
def test_a_leftover_that_no_build_left_is_refused(place: Path, left: str, something: Callable[[Path], str]) -> None:
    something(place)
    (place / "build").rename(place / left)
    earlier_target = place / "build"
    assert not earlier_target.exists()
    refused(place, "is in the way")


def test_a_leftover_in_which_the_author_changed_a_file_is_refused(place: Path) -> None:
    a_build_with_a_changed_file(place)
    (place / "build").rename(place / ".build.scriptkit-old")
    refused(place, "changed since it was built")


def test_an_unfinished_folder_that_a_kill_cannot_have_left_is_refused(place: Path) -> None:
    """A kill cuts short the last file written; here an earlier one is missing, and the author wrote into the last."""
    earlier(place)
    left = place / ".build.scriptkit-new"
    (place / "build").rename(left)
    (left / "script.md").unlink()
    (left / "gone.txt").write_text("my words")
    refused(place, "'gone.txt' in it was changed")


def test_a_file_that_only_has_the_name_of_a_mark_is_refused(place: Path) -> None:
    left = place / ".build.scriptkit-new"
    left.mkdir()
    (left / MARK).write_text("my words")
    refused(place, "no build of scriptkit made")


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
    assert names(place) == ["build", "episode"]


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
