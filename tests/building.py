"""An episode with room for builds beside it, two builds of it, and what a built folder holds."""

from __future__ import annotations

from pathlib import Path

import pytest

from scriptkit.writing import MARK, Kept, replace_folder
from tests.running import held

OLD = {"index.html": b"old page " * 50, "script.md": b"old script", "gone.txt": b"only the old one has it"}
NEW = {"index.html": b"new page " * 70, "script.md": b"new script", "shots.csv": b"only the new one has it"}


def builds(place: Path, files: dict[str, bytes]) -> None:
    replace_folder(place / "build", files, place / "episode", Kept())


def made(folder: Path) -> dict[str, bytes | str | None]:
    """What a folder holds, without the mark."""
    return {name: data for name, data in held(folder).items() if name != MARK}


def names(folder: Path) -> list[str]:
    """The names in a folder, hidden ones too."""
    return sorted(path.name for path in folder.iterdir())


@pytest.fixture
def place(tmp_path: Path) -> Path:
    (tmp_path / "episode").mkdir()
    (tmp_path / "episode" / "outline.yaml").write_text("title: One\n")
    return tmp_path
