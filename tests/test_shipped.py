"""The shipped folders are found in a checkout, and in a wheel before anything that happens to lie beside it."""

from __future__ import annotations

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from scriptkit.shipped import shipped

ROOT = Path(__file__).resolve().parents[1]


@pytest.mark.parametrize("name", ["templates", "segments", "sample_episode"])
def test_in_a_checkout_they_stand_beside_the_package(name: str) -> None:
    assert shipped(name) == ROOT / name


def test_word_lists_stand_inside_the_package() -> None:
    assert shipped("words") == ROOT / "scriptkit" / "words"


def test_in_a_wheel_the_folder_inside_the_package_comes_first(tmp_path: Path) -> None:
    package = tmp_path / "scriptkit"
    (package / "templates").mkdir(parents=True)
    (tmp_path / "templates").mkdir()
    for name in ("__init__.py", "shipped.py"):
        shutil.copy(ROOT / "scriptkit" / name, package)
    ask = "from scriptkit.shipped import shipped; print(shipped('templates'))"
    done = subprocess.run([sys.executable, "-c", ask], cwd=tmp_path, capture_output=True, text=True, check=True)
    assert done.stdout.strip() == str((package / "templates").resolve())


def test_a_broken_installation_is_named_as_such() -> None:
    with pytest.raises(FileNotFoundError, match="no folder called 'cellar'"):
        shipped("cellar")
