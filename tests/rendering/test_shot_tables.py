"""The shot list as a workbook, read back with another library."""

from __future__ import annotations

import io

import openpyxl

from scriptkit import build
from scriptkit.rendering import shot_tables
from tests.scripts import Write, worked_out

OUTLINE = """
    title: One
    exercises:
      hang:
        name: Bar hang
        shots:
          - {size: FS, plane: side, form: correct, of: "=1+1", reps: 9, place: "@rack", kit: [bar], people: [Ana]}
    order: [hang]
    """


def sheet(episode: Write) -> openpyxl.worksheet.worksheet.Worksheet:
    facts = worked_out(episode({"outline.yaml": OUTLINE, "segments/hang.md": "I like it. [opinion]"}))
    return openpyxl.load_workbook(io.BytesIO(shot_tables.xlsx(facts)))["shot list"]


def test_the_head_and_the_first_columns_stay_in_sight_and_every_column_can_be_filtered(episode: Write) -> None:
    made = sheet(episode)
    assert made.freeze_panes == "C2"
    assert made.auto_filter.ref == f"A1:{openpyxl.utils.get_column_letter(len(shot_tables.COLUMNS))}2"
    assert made.print_title_rows == "$1:$1"
    assert made["F2"].alignment.wrap_text


def test_a_text_that_starts_like_a_formula_stays_a_text(episode: Write) -> None:
    made = sheet(episode)
    row = {cell.value: made.cell(2, cell.column) for cell in made[1]}
    assert (row["what is seen"].value, row["what is seen"].data_type) == ("=1+1", "s")
    assert (row["place"].value, row["place"].data_type) == ("@rack", "s")


def test_a_row_says_what_is_filmed_and_how_much_of_it_fits(episode: Write) -> None:
    made = sheet(episode)
    row = {cell.value: made.cell(2, cell.column).value for cell in made[1]}
    assert (row["slate"], row["picture"], row["people"]) == ("1A", "FS side\ncorrect form", "Ana")
    assert row["reps"] == "9 (none fit)"
    assert row["done"] is None


def test_the_day_s_workbook_has_the_same_shots_with_the_clock_of_the_day(episode: Write) -> None:
    facts = worked_out(episode({"outline.yaml": OUTLINE, "segments/hang.md": "I like it. [opinion]"}))
    made = openpyxl.load_workbook(io.BytesIO(shot_tables.day_xlsx(build.with_day(facts))))["shooting order"]
    row = {cell.value: made.cell(2, cell.column).value for cell in made[1]}
    assert (row["order"], row["slate"], row["what is seen"]) == (1, "1A", "=1+1")
    assert row["time of day"] == "+0:15"
    assert row["set-up min"] == 15
    assert made.max_row == 1 + len(facts.shots)
