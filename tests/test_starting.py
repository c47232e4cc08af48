"""`new` and `draft` write what is missing, and touch nothing that is there."""

from __future__ import annotations

import errno
import json
import os
import re
from collections.abc import Callable
from pathlib import Path

import pytest

from scriptkit import starting
from scriptkit.starting import SCHEMA, start, write_drafts
from scriptkit.writing import Refused
from tests.running import SMALLEST, held, run

Writer = Callable[[dict[str, str | bytes]], Path]


def test_new_makes_an_episode_without_fault(tmp_path: Path) -> None:
    folder = tmp_path / "my new episode"
    done = run("new", folder)
    assert (done.status, done.err) == (0, "")
    assert f"scriptkit check '{folder}'" in done.out
    assert sorted(held(folder)) == [SCHEMA, "outline.yaml"]
    assert run("check", folder).status == 0


def test_its_sponsor_and_its_other_shots_have_no_error_either_once_their_marks_are_taken_out(tmp_path: Path) -> None:
    start(tmp_path / "one", sample=False)
    outline = tmp_path / "one" / "outline.yaml"
    head, sponsor, rest = re.split(r"(?m)^# (?=sponsor:)|^(?=# The day you film)", outline.read_text(encoding="utf-8"))
    shots = re.sub(r"(?m)^( +)# (?=- )", r"\1", head)
    outline.write_text(f"{shots}{re.sub(r'(?m)^# ', '', sponsor)}{rest}", encoding="utf-8")
    shown = json.loads(run("shots", tmp_path / "one", "--format", "json").out)
    assert [one["label"] for one in shown if one["form"] == "fault"] == ["Fault: bent arms"]
    done = run("check", tmp_path / "one")
    assert (done.status, "sponsor" in run("runtime", tmp_path / "one").out) == (0, True)


def test_the_first_line_points_an_editor_at_the_schema_beside_it(tmp_path: Path) -> None:
    start(tmp_path / "one", sample=False)
    first = (tmp_path / "one" / "outline.yaml").read_text().splitlines()[0]
    assert first == f"# yaml-language-server: $schema={SCHEMA}"
    assert json.loads((tmp_path / "one" / SCHEMA).read_bytes())["type"] == "object"


def test_the_sample_is_copied_without_what_was_built_from_it(tmp_path: Path) -> None:
    assert run("new", tmp_path / "one", "--sample").status == 0
    names = held(tmp_path / "one").keys()
    assert {"outline.yaml", "evidence.yaml", SCHEMA} < names
    assert [name for name in names if name.startswith(("build", "."))] == []


def test_an_empty_folder_will_do_and_so_will_a_way_to_it(tmp_path: Path) -> None:
    start(tmp_path, sample=False)
    start(tmp_path / "a" / "b", sample=False)
    assert (tmp_path / "a" / "b" / "outline.yaml").is_file()


def test_a_place_that_is_taken_is_refused(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("mine")
    (tmp_path / "full").mkdir()
    (tmp_path / "full" / ".hidden").write_text("mine")
    (tmp_path / "link").symlink_to(tmp_path / "nowhere")
    before = held(tmp_path)
    for name in ("file", "full", "link", "file/below"):
        done = run("new", tmp_path / name)
        assert done.status == 2
        assert done.err.strip()
        assert held(tmp_path) == before


def full_at(name: str) -> Callable[[Path, bytes], bool]:
    def write(path: Path, data: bytes) -> bool:
        if path.name == name:
            raise OSError(errno.ENOSPC, "No space left on device")
        return bool(path.write_bytes(data))

    return write


@pytest.mark.parametrize("sample", [False, True])
def test_a_start_that_fails_leaves_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, sample: bool) -> None:
    monkeypatch.setattr(starting, "write_new", full_at(SCHEMA))
    with pytest.raises(OSError, match="No space left"):
        start(tmp_path / "a" / "b", sample=sample)
    assert held(tmp_path) == {}


def test_drafts_are_written_where_none_is_and_told(episode: Writer) -> None:
    folder = episode({"outline.yaml": SMALLEST, "segments/bar-hang.md": "My own words. [aside]\n"})
    done = run("draft", folder)
    assert done.status == 0
    assert "Wrote segments/opening.md\n" in done.out
    assert "bar-hang.md" not in done.out
    assert (folder / "segments" / "bar-hang.md").read_text() == "My own words. [aside]\n"
    before = held(folder)
    assert "Wrote" not in run("draft", folder).out
    assert held(folder) == before


def test_a_draft_touches_no_text_that_is_there_even_if_it_is_a_link_to_nothing(tmp_path: Path) -> None:
    (tmp_path / "segments").mkdir()
    (tmp_path / "segments" / "opening.md").symlink_to(tmp_path / "nowhere.md")
    (tmp_path / "segments" / "close.md").mkdir()
    drafts = {"opening": "Hello.", "close": "Bye.", "recap": "Again."}
    assert list(write_drafts(tmp_path, drafts)) == ["segments/recap.md"]
    assert not (tmp_path / "nowhere.md").exists()


def test_segments_that_are_no_folder_of_the_episode_are_refused(tmp_path: Path) -> None:
    for name in ("file", "linked", "dangling"):
        (tmp_path / name).mkdir()
    (tmp_path / "outside").mkdir()
    (tmp_path / "file" / "segments").write_text("mine")
    (tmp_path / "linked" / "segments").symlink_to(tmp_path / "outside")
    (tmp_path / "dangling" / "segments").symlink_to(tmp_path / "dangling" / "nowhere")
    before = held(tmp_path)
    for name in ("file", "linked", "dangling"):
        with pytest.raises(Refused):
            list(write_drafts(tmp_path / name, {"opening": "Hello."}))
        assert held(tmp_path) == before


def test_a_link_inside_the_episode_is_followed(tmp_path: Path) -> None:
    (tmp_path / "texts").mkdir()
    (tmp_path / "segments").symlink_to(tmp_path / "texts")
    assert list(write_drafts(tmp_path, {"opening": "Hello."})) == ["segments/opening.md"]
    assert (tmp_path / "texts" / "opening.md").read_text() == "Hello."


def test_drafts_written_before_the_disk_was_full_stay_whole(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(starting, "write_new", full_at("recap.md"))
    written: list[str] = []
    with pytest.raises(OSError, match="No space left"):
        written.extend(write_drafts(tmp_path, {"opening": "Hello.", "recap": "Again."}))
    assert os.listdir(tmp_path / "segments") == ["opening.md"]  # noqa: PTH208


def test_an_id_that_is_a_path_writes_nothing_outside(episode: Writer) -> None:
    folder = episode(
        {"outline.yaml": "title: One\nexercises:\n  '../../evil':\n    name: Evil\n  ok:\n    name: Fine\n"}
    )
    run("draft", folder)
    assert {path.parent for path in folder.parents[1].rglob("*.md")} == {folder / "segments"}
    assert (folder / "segments" / "ok.md").is_file()


def test_the_episode_says_the_same_before_and_after(episode: Writer) -> None:
    folder = episode({"outline.yaml": SMALLEST})

    def said() -> list[tuple[str, float]]:
        return [(one["text"], one["start_s"]) for one in run("claims", folder, "--format", "json").json["sentences"]]

    before = said()
    run("draft", folder)
    assert said() == before
