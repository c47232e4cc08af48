"""A workbook that comes back gives the values of its cells; what is no sound ledger is refused before it does harm."""

from __future__ import annotations

import datetime as dt
import io
import zipfile
from collections.abc import Callable
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from scriptkit.model.returned import Returned
from scriptkit.reading import returned

HEAD = ["key", "sentence", "verdict", "note", "page", "initials", "date"]
ROW = ["s-1", "So.", "verified", "", 7, "QN", dt.datetime(2026, 3, 2)]  # noqa: DTZ001 - as a spreadsheet has it


def made(*rows: list[Any], change: Callable[[Any], object] = lambda _book: None) -> bytes:
    book = openpyxl.Workbook()
    for row in (HEAD, *rows):
        book.active.append(row)
    change(book)
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def read(tmp_path: Path, data: bytes) -> Returned:
    (tmp_path / "ledger.xlsx").write_bytes(data)
    return returned.read(tmp_path / "ledger.xlsx")


def test_cells_are_read_as_they_are_seen(tmp_path: Path) -> None:
    found = read(tmp_path, made(ROW, ["s-2", "No.", "changed", "=", 7.5, True, "2026-03-02"]))
    assert [row[:8] for row in found.rows] == [
        (2, "s-1", "So.", "verified", "", "7", "QN", "2026-03-02"),
        (3, "s-2", "No.", "changed", "=", "7.5", "True", "2026-03-02"),
    ]


def test_the_table_may_stand_on_another_sheet_and_lower_down(tmp_path: Path) -> None:
    def move(book: Any) -> None:
        first = book.active
        first.insert_rows(1, 3)
        book.create_sheet("notes", 0).append(["nothing here"])

    assert [row.number for row in read(tmp_path, made(ROW, change=move)).rows] == [5]


def test_a_page_that_became_a_date_is_asked_about(tmp_path: Path) -> None:
    (row,) = read(tmp_path, made([*ROW[:4], dt.date(2026, 7, 9), *ROW[5:]])).rows
    assert row.troubles == ('The cell "page" holds a date, 2026-07-09: write it so that it stays a text.',)


def test_a_formula_is_not_worked_out(tmp_path: Path) -> None:
    (row,) = read(tmp_path, made(["s-1", "So.", '="veri"&"fied"', "", "", "QN", "=TODAY()"])).rows
    assert (row.verdict, row.date) == ("", "")
    assert row.troubles[0] == 'The cell "verdict" holds a formula, and its result was not saved: type it in.'


def test_the_saved_value_of_a_formula_is_what_is_read(tmp_path: Path) -> None:
    data = made(["s-1", "So.", '="veri"&"fied"', "", "", "QN", ""])
    out = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as archive, zipfile.ZipFile(out, "w") as changed:
        for name in archive.namelist():
            text = archive.read(name)
            if name == "xl/worksheets/sheet1.xml":
                assert b"</f><v></v>" in text or b"</f><v />" in text
                text = text.replace(b'"C2"', b'"C2" t="str"').replace(b"</f><v></v>", b"</f><v>verified</v>")
                text = text.replace(b"</f><v />", b"</f><v>verified</v>")
            changed.writestr(name, text)
    (row,) = read(tmp_path, out.getvalue()).rows
    assert (row.verdict, row.troubles) == ("verified", ())


def test_cells_merged_over_rows_are_refused_and_a_merged_title_is_not(tmp_path: Path) -> None:
    def title(book: Any) -> None:
        book.active.insert_rows(1)
        book.active.merge_cells("A1:G1")

    assert len(read(tmp_path, made(ROW, change=title)).rows) == 1
    found = read(tmp_path, made(ROW, ROW, change=lambda book: book.active.merge_cells("C2:C3")))
    assert found.trouble.startswith("its cells C2:C3 are merged")


@pytest.mark.parametrize(
    ("name", "content", "why"),
    [
        ("xl/vbaProject.bin", b"x", "it is a workbook with macros"),
        ("xl/macrosheets/sheet1.xml", b"<x/>", "it is a workbook with macros"),
        ("xl/externalLinks/externalLink1.xml", b"<x/>", "it is a workbook with links to other files"),
        ("xl/bomb.xml", b" " * 70_000_000, "it unpacks to more than 60 MB"),
        ("xl/worksheets/sheet9.xml", b'<!DOCTYPE a [<!ENTITY b "c">]><a>&b;</a>', "it is a workbook with parts"),
    ],
)
def test_what_no_ledger_holds_is_refused(tmp_path: Path, name: str, content: bytes, why: str) -> None:
    data = io.BytesIO(made(ROW))
    with zipfile.ZipFile(data, "a", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr(name, content)
    assert read(tmp_path, data.getvalue()).trouble.startswith(why)


def test_a_file_cut_anywhere_is_damaged_and_never_a_fault(tmp_path: Path) -> None:
    data = made(ROW)
    for size in range(2, len(data) - 1, 97):
        assert read(tmp_path, data[:size]).trouble.startswith("it is ")


def test_parts_that_lie_are_damage(tmp_path: Path) -> None:
    for name in ("xl/workbook.xml", "xl/worksheets/sheet1.xml", "xl/styles.xml", "[Content_Types].xml"):
        out = io.BytesIO()
        with zipfile.ZipFile(io.BytesIO(made(ROW))) as archive, zipfile.ZipFile(out, "w") as changed:
            for one in archive.namelist():
                changed.writestr(one, b"<broken" if one == name else archive.read(one))
        assert read(tmp_path, out.getvalue()).trouble


def test_other_archives_are_told_apart(tmp_path: Path) -> None:
    for name, what in (("content.xml", "an OpenDocument file"), ("a.txt", "an archive, and no workbook")):
        out = io.BytesIO()
        with zipfile.ZipFile(out, "w") as archive:
            archive.writestr(name, b"<x/>")
        assert read(tmp_path, out.getvalue()).trouble == f"it is {what}. Save the ledger as .xlsx or .csv"


def test_a_cell_far_away_costs_nothing(tmp_path: Path) -> None:
    def far(book: Any) -> None:
        book.active.cell(1_048_576, 16_384, "x")

    assert len(read(tmp_path, made(ROW, change=far)).rows) == 1
