"""A ledger goes out, is filled in and comes back: its verdicts are kept beside the episode; nothing else changes."""

from __future__ import annotations

import csv
import io
from collections.abc import Callable
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from tests.running import Done, run

Writer = Callable[[dict[str, str | bytes]], Path]
OUTLINE = """
    title: One way to train your grip
    exercises: {bar-hang: {name: Bar hang}}
    sources:
      mora-2022:
        title: Six weeks of timed hangs
        year: 2022
        doi: 10.5555/grip.22
        design: randomised trial
        n: 38
        duration_weeks: 6
        findings: {hang: {outcome: hang time, result: 9 seconds more, values: {before: 41 s, after: 50 s}}}
        invented: true
    """
CLAIM = "In one trial of 38 climbers, hang time rose from 41 to 50 seconds."
TEXT = f"{CLAIM} [from mora-2022] =1+1 is a sum. [aside] I like it. [opinion]\n"
RULED = {"verdict": "verified", "note": "page 7 says so", "page": "7", "initials": "QN", "date": "2026-03-02"}


@pytest.fixture
def work(episode: Writer) -> Path:
    return episode({"outline.yaml": OUTLINE, "segments/bar-hang.md": TEXT})


def out(work: Path, fmt: str) -> Path:
    """The ledger as it goes to the fact-checker."""
    path = work.parent / f"ledger.{fmt}"
    assert run("claims", work, "--format", fmt, "--output", path).status == 0
    return path


def fill_csv(path: Path, *fills: tuple[str, dict[str, str]]) -> None:
    rows = list(csv.DictReader(io.StringIO(path.read_text("utf-8-sig"), newline="")))
    for start, cells in fills:
        next(row for row in rows if row["text"].lstrip("'").startswith(start)).update(cells)
    made = io.StringIO(newline="")
    table = csv.DictWriter(made, rows[0].keys())
    table.writeheader()
    table.writerows(rows)
    path.write_bytes(made.getvalue().encode("utf-8-sig"))


def fill_xlsx(path: Path, *fills: tuple[str, dict[str, Any]]) -> None:
    book = openpyxl.load_workbook(path)
    heads = {cell.value: cell.column for cell in book.active[1]}
    for start, cells in fills:
        row = next(
            row for row in book.active.iter_rows(min_row=2) if row[heads["sentence"] - 1].value.startswith(start)
        )
        for name, value in cells.items():
            book.active.cell(row[0].row, heads[name], value)
    book.save(path)


FILL = {"csv": fill_csv, "xlsx": fill_xlsx}
EITHER = pytest.mark.parametrize("fmt", ["csv", "xlsx"])


def ruled(work: Path, start: str = "In one trial") -> dict[str, Any]:
    """How a sentence stands in the ledger, its state beside it."""
    rows = run("claims", work, "--format", "json").json["sentences"]
    row = next(row for row in rows if row["text"].startswith(start))
    return {**row["ruling"], "state": row["state"]}


@EITHER
def test_verdicts_come_back_and_stand_in_the_ledger(work: Path, fmt: str) -> None:
    path = out(work, fmt)
    FILL[fmt](path, ("In one trial", RULED), ("=1+1", {"verdict": "no claim", "note": "a joke"}))
    done = run("claims", work, "--verdicts", path)
    assert (done.status, done.err) == (0, "")
    assert done.out == (
        f"Took 2 verdicts from ledger.{fmt} into verdicts.yaml: 1 no claim, 1 verified.\n"
        "1 of the new ones say not who gave them, or when: fill in initials and date.\n"
    )
    assert ruled(work) == {**RULED, "state": "verified"}
    assert ruled(work, "=1+1")["state"] == "no-claim"


@EITHER
def test_the_same_sheet_again_changes_no_byte(work: Path, fmt: str) -> None:
    path = out(work, fmt)
    FILL[fmt](path, ("In one trial", RULED))
    assert run("claims", work, "--verdicts", path).status == 0
    before = (work / "verdicts.yaml").read_bytes()
    assert run("claims", work, "--verdicts", path).out == (
        f"There is no new verdict in ledger.{fmt}.\n1 was there before.\n"
    )
    assert run("claims", work, "--verdicts", out(work, fmt)).out.startswith("There is no new verdict")
    assert (work / "verdicts.yaml").read_bytes() == before


@EITHER
def test_a_verdict_goes_with_its_sentence_and_is_void_once_that_changes(work: Path, fmt: str) -> None:
    path = out(work, fmt)
    FILL[fmt](path, ("In one trial", RULED))
    run("claims", work, "--verdicts", path)
    text = work / "segments" / "bar-hang.md"
    text.write_text(f"I like it. [opinion]\n\n{CLAIM} [from mora-2022]\n")
    assert ruled(work)["state"] == "verified"
    text.write_text(f"{CLAIM.replace('50', '51')} [from mora-2022]\n")
    assert ruled(work)["state"] == "void"
    done = run("claims", work, "--verdicts", path)
    assert done.status in (0, 1)
    assert "was there before" in done.out


def test_a_row_from_before_a_change_is_refused_by_its_number_and_the_others_are_taken(work: Path) -> None:
    path = out(work, "csv")
    fill_csv(path, ("In one trial", RULED), ("I like", {"verdict": "no claim", "note": "taste"}))
    text = work / "segments" / "bar-hang.md"
    text.write_text(TEXT.replace("50", "51"))
    done = run("claims", work, "--verdicts", path)
    assert done.status == 1
    number = next(n for n, line in enumerate(path.read_text("utf-8-sig").splitlines(), 1) if CLAIM in line)
    assert f"row {number}  " in done.out
    assert "was changed or cut since the sheet was made" in " ".join(done.out.split())
    assert "Took 1 verdict from ledger.csv" in done.out
    assert ruled(work, "I like")["verdict"] == "no claim"


def test_a_sentence_edited_in_the_sheet_is_refused(work: Path) -> None:
    path = out(work, "csv")
    fill_csv(path, ("In one trial", {**RULED, "text": "In one trial, hang time fell."}))
    done = run("claims", work, "--verdicts", path)
    assert done.status == 1
    assert "its sentence was changed in the sheet" in done.out
    assert not (work / "verdicts.yaml").exists()


def test_a_conflict_is_shown_and_the_kept_verdict_stays(work: Path) -> None:
    path = out(work, "csv")
    fill_csv(path, ("In one trial", RULED))
    run("claims", work, "--verdicts", path)
    before = (work / "verdicts.yaml").read_bytes()
    fill_csv(path, ("In one trial", {"verdict": "unsupported", "initials": "AB"}))
    done = run("claims", work, "--verdicts", path)
    assert (done.status, (work / "verdicts.yaml").read_bytes()) == (1, before)
    assert "Conflicts, of which none was taken" in done.out
    fill_csv(path, ("In one trial", {"date": "2026-03-09"}))
    done = run("claims", work, "--verdicts", path)
    assert "Later verdicts that count from now on" in done.out
    assert ruled(work)["state"] == "unsupported"
    assert (work / "verdicts.yaml").read_bytes().startswith(before)


def test_what_the_author_wrote_into_the_file_stays_there(work: Path) -> None:
    mine = b"# mine\r\nverdicts:\r\n- {sentence: Gone., verdict: verified} # why\r\n# the end"
    (work / "verdicts.yaml").write_bytes(mine)
    path = out(work, "csv")
    fill_csv(path, ("In one trial", RULED))
    assert run("claims", work, "--verdicts", path).status == 0
    after = (work / "verdicts.yaml").read_bytes()
    assert after.startswith(mine + b"\r\n- sentence: ")
    assert b"\n" not in after.replace(b"\r\n", b"")
    assert ruled(work)["state"] == "verified"


@pytest.mark.parametrize(
    "mine", [b"verdicts: []\n", b"verdicts: [\n", b"verdicts:\n- {sentence: A., verdict: verified}\nmore: 1\n", b"\xff"]
)
def test_a_file_that_cannot_be_added_to_is_left_as_it_is(work: Path, mine: bytes) -> None:
    path = out(work, "csv")
    fill_csv(path, ("In one trial", RULED))
    (work / "verdicts.yaml").write_bytes(mine)
    done = run("claims", work, "--verdicts", path)
    assert (done.status, done.out) == (2, "")
    assert "nothing was added to it and nothing was taken in" in done.err
    assert (work / "verdicts.yaml").read_bytes() == mine


def test_a_link_is_not_followed_out_of_the_episode(work: Path) -> None:
    path = out(work, "csv")
    fill_csv(path, ("In one trial", RULED))
    (work.parent / "elsewhere.yaml").write_text("")
    (work / "verdicts.yaml").symlink_to("../elsewhere.yaml")
    done = run("claims", work, "--verdicts", path)
    assert done.status == 2
    assert (work.parent / "elsewhere.yaml").read_text() == ""


HOSTILE: dict[str, bytes | None] = {
    "none.csv": None, "empty.csv": b"", "other.csv": b"a,b\n1,2\n", "cut.csv": b'key,text,verdict\ns-1,"So',
    "zip.xlsx": b"PK\x03\x04", "large.csv": b"key,text,verdict\n" * 1_500_000, "picture.xlsx": b"\x89PNG\0\0",
    "old.xls": b"\xd0\xcf\x11\xe0\0\0",
}  # fmt: skip


@pytest.mark.parametrize("name", HOSTILE)
def test_what_is_no_filled_in_ledger_ends_with_a_sentence_and_nothing_written(work: Path, name: str) -> None:
    path = work.parent / name
    content = HOSTILE[name]
    if content is not None:
        path.write_bytes(content)
    done = run("claims", work, "--verdicts", path)
    assert (done.status, done.out) == (2, "")
    assert done.err.startswith(f"{path} cannot be read as a filled-in ledger: ")
    assert done.err.endswith("Nothing was taken in.\n")
    assert done.err.count("\n") == 1
    assert not (work / "verdicts.yaml").exists()


def taken_in(work: Path, *options: str | Path) -> Done:
    path = out(work, "csv")
    fill_csv(path, ("In one trial", RULED))
    return run("claims", work, "--verdicts", path, *options)


def test_a_program_gets_the_ledger_as_it_is_then_with_what_came_of_it(work: Path) -> None:
    done = taken_in(work, "--format", "json")
    assert done.json["verdicts_taken"] == {
        "file": "ledger.csv", "taken": 1, "already": 0, "newer": [], "conflicts": [], "refused": [],
    }  # fmt: skip
    assert "verified" in [row["state"] for row in done.json["sentences"]]
    assert done.err.startswith("Took 1 verdict from ledger.csv")


def test_the_sheet_is_never_written_over(work: Path) -> None:
    path = work.parent / "ledger.csv"
    done = taken_in(work, "--format", "csv", "--output", path)
    assert done.status == 2
    assert "nothing was written" in done.err
    assert RULED["note"] in path.read_text("utf-8-sig")
