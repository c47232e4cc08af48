"""What is on screen, as a table, a workbook and a page that agree."""

from __future__ import annotations

import csv
import io

import openpyxl

from scriptkit import build
from scriptkit.model import Facts
from scriptkit.rendering import graphic_rows, sheets
from scriptkit.shipped import shipped
from tests.scripts import Write, worked_out


def built() -> Facts:
    return build.as_built(build.work_out(build.read(shipped("sample_episode"))))


def test_table_and_workbook_have_the_same_cards() -> None:
    facts = built()
    table = list(csv.DictReader(io.StringIO(sheets.graphics_csv(facts).decode("utf-8-sig"))))
    sheet = openpyxl.load_workbook(io.BytesIO(graphic_rows.xlsx(facts)))["on screen"]
    head = [cell.value for cell in sheet[1]]
    texts = [sheet.cell(line, head.index("words on screen") + 1).value for line in range(2, sheet.max_row + 1)]
    assert [row["text"] for row in table] == texts
    assert len(texts) == len(facts.graphics) > 40


def test_every_card_says_how_long_it_stands_and_whether_that_is_enough() -> None:
    rows = graphic_rows.graphics(built())
    assert all(row["enough"] == (row["shown_s"] + 0.25 >= row["reads_s"] - 0.001) for row in rows)
    assert {row["contrast"] for row in rows} == {16.61}


def test_a_text_that_starts_like_a_formula_stays_a_text(episode: Write) -> None:
    outline = "title: One\nexercises: {hang: {name: Bar hang}}\norder: [hang]\n"
    facts = worked_out(episode({"outline.yaml": outline, "segments/hang.md": "[screen: =1+1] I like it. [opinion]"}))
    facts = build.as_built(facts)
    assert ",'=1+1," in sheets.graphics_csv(facts).decode("utf-8-sig")
    sheet = openpyxl.load_workbook(io.BytesIO(graphic_rows.xlsx(facts)))["on screen"]
    assert ("=1+1", "s") in {(cell.value, cell.data_type) for cell in sheet[2]}
