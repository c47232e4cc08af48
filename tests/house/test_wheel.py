"""A wheel, made from a source archive, holds every file of the package and of the shipped folders, and nothing else."""

from __future__ import annotations

import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

from tests.house.tree import ROOT, files

SHIPPED = ("templates", "segments", "sample_episode")


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> zipfile.ZipFile:
    out = tmp_path_factory.mktemp("dist")
    call = [sys.executable, "-m", "build", "--no-isolation", "--outdir", str(out), str(ROOT)]
    done = subprocess.run(call, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
    return zipfile.ZipFile(next(out.glob("*.whl")))


def name_in_wheel(path: Path) -> str:
    return path.as_posix() if path.parts[0] == "scriptkit" else f"scriptkit/{path.as_posix()}"


def test_the_wheel_holds_every_file_byte_for_byte(wheel: zipfile.ZipFile) -> None:
    wanted = {name_in_wheel(path): path for path in files() if path.parts[0] in {"scriptkit", *SHIPPED}}
    packed = {name for name in wheel.namelist() if ".dist-info/" not in name}
    assert packed == wanted.keys()
    assert [name for name, path in wanted.items() if wheel.read(name) != (ROOT / path).read_bytes()] == []


@pytest.mark.parametrize("folder", [*SHIPPED, "words"])
def test_no_shipped_folder_is_empty(wheel: zipfile.ZipFile, folder: str) -> None:
    assert any(name.startswith(f"scriptkit/{folder}/") for name in wheel.namelist())


def test_the_wheel_names_its_licence_and_carries_it(wheel: zipfile.ZipFile) -> None:
    info = next(name.split("/")[0] for name in wheel.namelist() if ".dist-info/" in name)
    assert "License-Expression: MIT" in wheel.read(f"{info}/METADATA").decode()
    assert wheel.read(f"{info}/licenses/scriptkit/LICENSE") == (ROOT / "scriptkit/LICENSE").read_bytes()
