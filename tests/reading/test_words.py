"""Word lists are plain files that an author can edit: one entry a line."""

from __future__ import annotations

from pathlib import Path

import pytest

from scriptkit.reading.words import entries, load


def test_entries_are_lower_case_and_in_order_without_comments_blanks_and_repeats() -> None:
    text = "# Words of doubt\n\nMay\nAs far as we know   # a phrase is one entry\r\nmay\n   perhaps\n"
    assert entries(text) == ("may", "as far as we know", "perhaps")


def test_each_file_is_a_list_under_its_own_name(tmp_path: Path) -> None:
    (tmp_path / "hedges.txt").write_text("may\nmight\n", encoding="utf-8")
    (tmp_path / "notes.md").write_text("not a word list", encoding="utf-8")
    assert dict(load(tmp_path)) == {"hedges": ("may", "might")}


def test_a_list_in_another_encoding_gives_what_can_be_read(tmp_path: Path) -> None:
    (tmp_path / "hedges.txt").write_bytes(b"\xef\xbb\xbfmay\n\xff\xfe\n")
    assert load(tmp_path)["hedges"][0] == "may"


def test_a_folder_in_the_place_of_a_list_is_passed_over(tmp_path: Path) -> None:
    (tmp_path / "hedges.txt").mkdir()
    assert dict(load(tmp_path)) == {}


def test_a_missing_folder_gives_no_lists(tmp_path: Path) -> None:
    assert dict(load(tmp_path / "nowhere")) == {}


def test_the_lists_cannot_be_changed() -> None:
    with pytest.raises(TypeError):
        load()["hedges"] = ()  # type: ignore[index]


def test_every_shipped_list_says_first_what_it_holds_and_has_entries() -> None:
    folder = Path(__file__).resolve().parents[2] / "scriptkit" / "words"
    for file in sorted(folder.glob("*.txt")):
        assert file.read_text(encoding="utf-8").startswith("# "), file.name
        assert load()[file.stem], file.name
