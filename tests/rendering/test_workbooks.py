"""A workbook holds texts as texts, is ready to read and to print, and has the same bytes each time."""

from __future__ import annotations

import io
import zipfile
from typing import Any

import openpyxl
import pytest

from scriptkit.rendering.workbooks import Column, Look, workbook

COLUMNS = [
    Column("text", "sentence", 40),
    Column("count", "count", 8),
    Column("verdict", "verdict", 12, "@", ("verified", "no claim")),
    Column("date", "date", 11, "yyyy-mm-dd"),
]


def sheet(*rows: dict[str, Any], title: str = "One & two") -> Any:
    return openpyxl.load_workbook(io.BytesIO(workbook("claims", title, COLUMNS, rows))).active


@pytest.mark.parametrize(
    "text", ["=1+1", "+1", "-1", "@x", "'=1", "=HYPERLINK(1)", "1e5", "0012", "https://x.example", "{=1}", "_x0041_"]
)
def test_a_text_stays_a_text_whatever_it_looks_like(text: str) -> None:
    cell = sheet({"text": text})["A2"]
    assert cell.data_type == "s"
    assert cell.value.replace("_x005F", "") == text  # the standard's way to write such a text
    assert cell.hyperlink is None


def test_numbers_lists_and_dates_are_what_they_are() -> None:
    made = sheet({"text": ["a", "b"], "count": 3, "date": "2026-03-02"}, {"text": None, "date": "2026"})
    assert [cell.value for cell in made[2]][:3] == ["a\nb", 3, None]
    assert (made["D2"].value.isoformat(), made["D2"].number_format) == ("2026-03-02T00:00:00", "yyyy-mm-dd")
    assert [cell.value for cell in made[3]] == [None, None, None, "2026"]


def test_the_head_stays_in_sight_and_comes_again_on_each_sheet_of_paper() -> None:
    made = sheet({"text": "a"}, {"text": "b"})
    assert [cell.value for cell in made[1]] == ["sentence", "count", "verdict", "date"]
    assert (made.freeze_panes, made.auto_filter.ref, made.print_title_rows) == ("A2", "A1:D3", "$1:$1")
    assert (made.page_setup.orientation, made.page_setup.fitToHeight) == ("landscape", 0)
    assert made.sheet_properties.pageSetUpPr.fitToPage
    assert made["A2"].alignment.wrap_text
    assert made.oddHeader.left.text == "One && two"


def test_a_verdict_is_chosen_from_a_list_and_a_page_stays_a_text() -> None:
    made = sheet({"text": "a"}, {"text": "b"})
    rules = {str(one.sqref): (one.type, one.formula1) for one in made.data_validations.dataValidation}
    assert rules["C2:C3"] == ("list", '"verified,no claim"')
    assert rules["D2:D3"][0] == "date"
    assert made["C2"].number_format == "@"


def test_the_same_rows_give_the_same_bytes_with_no_date_of_today() -> None:
    one, other = (workbook("claims", "One", COLUMNS, [{"text": "a"}]) for _ in range(2))
    assert one == other
    with zipfile.ZipFile(io.BytesIO(one)) as archive:
        assert {part.date_time for part in archive.infolist()} == {(1980, 1, 1, 0, 0, 0)}
        assert archive.read("docProps/core.xml").count(b"2000-01-01T00:00:00Z") == 2


def test_what_no_cell_can_hold_is_no_fault() -> None:
    made = sheet({"text": "a\x01b\ud800" + "x" * 40_000}, title="t" * 400)
    assert made["A2"].value.startswith("ab?x")
    assert len(made["A2"].value) == 32_000


def test_no_row_at_all_is_a_sheet_with_a_head() -> None:
    assert sheet().max_row == 1


def test_a_row_is_as_tall_as_its_longest_text_and_grows_with_a_note() -> None:
    data = workbook("claims", "One", COLUMNS, [{"text": "short"}, {"text": ["word " * 16, "b"]}, {"text": "x " * 9000}])
    made = openpyxl.load_workbook(io.BytesIO(data)).active
    assert [round(made.row_dimensions[line].height or 15) for line in (2, 3, 4)] == [15, 45, 400]
    with zipfile.ZipFile(io.BytesIO(data)) as archive:
        assert b"customHeight" not in archive.read("xl/worksheets/sheet1.xml")


def test_the_first_columns_stay_in_sight_and_the_last_are_not_printed() -> None:
    data = workbook("claims", "One", COLUMNS, [{"text": "a"}], Look(in_sight=1, printed=3))
    made = openpyxl.load_workbook(io.BytesIO(data)).active
    assert (made.freeze_panes, made.print_area) == ("B2", "'claims'!$A$1:$C$2")
