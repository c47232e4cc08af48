"""The ledger goes through LibreOffice, which opens it, saves it in its own way, and loses nothing of it."""

from __future__ import annotations

import shutil
import subprocess
from pathlib import Path

import pytest

from tests.running import run
from tests.test_returning import CLAIM, RULED, Writer, fill_csv, fill_xlsx, out, ruled, work

__all__ = ["work"]
pytestmark = pytest.mark.office


def saved(path: Path, fmt: str, folder: Path) -> Path:
    """The file as LibreOffice saves it."""
    office = shutil.which("soffice")
    if not office:
        pytest.skip("there is no LibreOffice on this machine")
    home = f"-env:UserInstallation={(folder / 'office').as_uri()}"
    call = [office, "--headless", home, "--convert-to", fmt, "--outdir", str(folder / fmt), str(path)]
    done = subprocess.run(call, capture_output=True, text=True, check=False, timeout=120)
    made = folder / fmt / f"{path.stem}.{fmt}"
    assert made.is_file(), done.stdout + done.stderr
    return made


@pytest.mark.parametrize("ways", [("ods", "xlsx"), ("csv",), ("xlsx", "csv")], ids="-".join)
def test_a_workbook_comes_back_through_libreoffice(work: Path, tmp_path: Path, ways: tuple[str, ...]) -> None:
    path = out(work, "xlsx")
    fill_xlsx(path, ("In one trial", {**RULED, "page": "7-9"}), ("=1+1", {"verdict": "no claim", "note": "-a joke"}))
    for way in ways:
        path = saved(path, way, tmp_path)
    done = run("claims", work, "--verdicts", path)
    assert (done.status, done.err) == (0, "")
    assert ruled(work) == {**RULED, "page": "7-9", "state": "verified"}
    assert ruled(work, "=1+1")["note"] == "-a joke"


def test_a_table_comes_back_through_libreoffice(work: Path, tmp_path: Path) -> None:
    path = out(work, "csv")
    fill_csv(path, ("In one trial", RULED), ("=1+1", {"verdict": "no claim", "note": "a joke"}))
    for way in ("xlsx", "csv"):
        path = saved(path, way, tmp_path)
        done = run("claims", work, "--verdicts", path)
        assert (done.status, done.err) == (0, "")
    assert ruled(work) == {**RULED, "state": "verified"}
    assert ruled(work, "=1+1")["state"] == "no-claim"


def test_a_verdict_that_came_through_libreoffice_is_void_after_an_edit(work: Path, tmp_path: Path) -> None:
    path = out(work, "xlsx")
    fill_xlsx(path, ("In one trial", RULED))
    run("claims", work, "--verdicts", saved(path, "csv", tmp_path))
    (work / "segments" / "bar-hang.md").write_text(f"{CLAIM.replace('50', '51')} [from mora-2022]\n")
    assert ruled(work)["state"] == "void"


def test_a_sheet_with_nothing_filled_in_says_nothing(episode: Writer, tmp_path: Path) -> None:
    folder = episode({"outline.yaml": "title: One\nexercises: {hang: {name: Bar hang}}\n"})
    done = run("claims", folder, "--verdicts", saved(out(folder, "xlsx"), "csv", tmp_path))
    assert done.out == "There is no new verdict in ledger.csv.\n"
