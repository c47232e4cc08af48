"""Stock texts come ready made, and a text that was changed since is read as any other."""

from __future__ import annotations

from pathlib import Path

from scriptkit.places import SourceFile
from scriptkit.reading import spoken
from scriptkit.reading.stock import Stock
from scriptkit.shipped import shipped


def test_there_is_a_stock_text_for_each_file_and_no_other() -> None:
    assert set(Stock()) == {path.stem for path in shipped("segments").iterdir()}
    assert "opening" in Stock()
    assert "prologue" not in Stock()
    assert Stock().get("prologue") is None


def test_a_stock_text_is_what_reading_it_gives() -> None:
    for kind, text in Stock().items():
        anew = spoken.read(kind, "stock", SourceFile(f"{kind}.md", text.file.text), [], [])
        assert text._replace(file=anew.file) == anew


def test_a_changed_stock_text_counts_at_once(tmp_path: Path) -> None:
    text = shipped("segments").joinpath("close.md").read_text(encoding="utf-8")
    (tmp_path / "close.md").write_text(f"One thing more. [aside]\n\n{text}", encoding="utf-8")
    changed = Stock(tmp_path)["close"]
    assert "One thing more. " in changed.template
    assert len(changed.paragraphs) == len(Stock()["close"].paragraphs) + 1


def test_a_stock_text_nobody_made_anything_of_is_read(tmp_path: Path) -> None:
    (tmp_path / "prologue.md").write_text("Once upon a time. [aside]\n", encoding="utf-8")
    assert "Once upon a time. " in Stock(tmp_path)["prologue"].template
