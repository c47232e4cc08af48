"""Tables to XLSX workbooks, byte for byte the same each time. The only module of its room that writes workbooks."""

from __future__ import annotations

import datetime as dt
import io
import zipfile
from collections.abc import Mapping, Sequence
from typing import Any, NamedTuple

import xlsxwriter

from scriptkit.codes import without

MOST_SIGNS = 32_000  # in a cell; a spreadsheet holds 32,767
LINE = 15  # points of one line of text
TALLEST = 400  # points; a spreadsheet allows 409
MADE = dt.datetime(2000, 1, 1)  # noqa: DTZ001 - a workbook tells when it was made; ours is always the same


class Column(NamedTuple):
    """A column: the key of its cells, its head, its width in characters, the words that may be chosen in it.

    `form` is how a spreadsheet shows what is typed in; where it is given the column is left to fill in.
    """

    key: str
    head: str
    width: int
    form: str = ""
    choices: tuple[str, ...] = ()


class Look(NamedTuple):
    """How many of the first columns stay in sight when the sheet is moved, and how many are printed (0: all)."""

    in_sight: int = 0
    printed: int = 0


WHOLE = Look()


def workbook(
    name: str, title: str, columns: Sequence[Column], rows: Sequence[Mapping[str, Any]], look: Look = WHOLE
) -> bytes:
    """A workbook with one sheet: a head that stays in sight, a filter, wrapped texts, ready to print."""
    out = io.BytesIO()
    book = xlsxwriter.Workbook(out, {"in_memory": True, "strings_to_formulas": False, "strings_to_urls": False})
    book.set_properties({"title": _text(title)[:250], "created": MADE})
    sheet = book.add_worksheet(name)
    _page(sheet, title, len(columns))
    sheet.print_area(0, 0, len(rows), (look.printed or len(columns)) - 1)
    for line, row in enumerate(rows, 1):
        sheet.set_row(line, _height(row, columns))
    heads = [
        book.add_format({"bold": True, "text_wrap": True, "valign": "top", "bottom": 2, "bg_color": shade})
        for shade in ("#E8EAE8", "#F6E7B4")
    ]
    for number, column in enumerate(columns):
        shown = _form(book, column)
        sheet.set_column(number, number, column.width, shown)
        sheet.write_string(0, number, column.head, heads[bool(column.form)])
        for line, row in enumerate(rows, 1):
            _write(sheet, (line, number), row.get(column.key), shown, column)
        _offer(sheet, column, number, len(rows))
    sheet.freeze_panes(1, look.in_sight)
    sheet.autofilter(0, 0, max(1, len(rows)), len(columns) - 1)
    book.close()
    return _as_it_is(out.getvalue())


def _as_it_is(data: bytes) -> bytes:
    """The archive with nothing packed: what packs it would not give the same bytes on every machine."""
    out = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as packed, zipfile.ZipFile(out, "w", zipfile.ZIP_STORED) as plain:
        for part in packed.infolist():
            made = zipfile.ZipInfo(part.filename, (1980, 1, 1, 0, 0, 0))
            made.create_system = 3  # else it tells on which system it was made
            text = packed.read(part)
            if part.filename.startswith("xl/worksheets/"):
                text = text.replace(b' customHeight="1"', b"")  # so that a row grows with what is written into it
            plain.writestr(made, text)
    return out.getvalue()


def _height(row: Mapping[str, Any], columns: Sequence[Column]) -> int:
    """How tall a row has to be for all its texts to be seen, in points, or as tall as it can be."""
    most = max((_lines(_shown(row.get(column.key)), column.width) for column in columns), default=1)
    return min(TALLEST, LINE * most)


def _lines(text: str, width: int) -> int:
    """How many lines a text takes in a column; most letters are narrower than the figure that widths are counted in."""
    return sum(max(1, -(-len(line) // width)) for line in text.split("\n"))


def _shown(value: Any) -> str:
    return "\n".join(map(str, value)) if isinstance(value, list | tuple) else str(value or "")


def _page(sheet: Any, title: str, columns: int) -> None:
    sheet.set_landscape()
    sheet.set_paper(9)  # A4
    sheet.fit_to_pages(1, 0)
    sheet.repeat_rows(0)
    sheet.set_margins(left=0.4, right=0.4, top=0.7, bottom=0.6)
    sheet.set_header("&L" + _text(title)[:120].replace("&", "&&"))
    sheet.set_footer("&LNo legal or medical advice: local rules and licensed practice come first.&R&P of &N")
    sheet.ignore_errors({"number_stored_as_text": f"A1:{chr(64 + min(26, columns))}1048576"})


def _form(book: Any, column: Column) -> Any:
    look: dict[str, Any] = {"text_wrap": True, "valign": "top", "bottom": 7, "left": 7}
    if column.form:
        look |= {"num_format": column.form, "left": 1, "right": 1}
    return book.add_format(look)


def _write(sheet: Any, at: tuple[int, int], value: Any, form: Any, column: Column) -> None:
    """A number is a number, and every text stays a text, whatever it starts with."""
    if isinstance(value, int | float):
        sheet.write_number(*at, value, form)
        return
    day = _day(value) if column.form.startswith("yyyy") else None
    text = _text(_shown(value))
    if day:
        sheet.write_datetime(*at, day, form)
    elif text:
        sheet.write_string(*at, text, form)
    else:
        sheet.write_blank(*at, None, form)


def _day(value: Any) -> dt.datetime | None:
    try:
        return dt.datetime.strptime(str(value), "%Y-%m-%d")  # noqa: DTZ007 - a day, and no time of it
    except ValueError:
        return None


def _text(text: str) -> str:
    """A text that a cell can hold."""
    plain = without(text).encode(errors="replace").decode()
    return plain if len(plain) <= MOST_SIGNS else plain[: MOST_SIGNS - 1] + "…"


def _offer(sheet: Any, column: Column, number: int, rows: int) -> None:
    """What may be put into a column that is left to fill in."""
    if column.choices:
        rule: dict[str, Any] = {
            "validate": "list",
            "source": list(column.choices),
            "error_title": "No verdict",
            "error_message": "Choose one: " + ", ".join(column.choices),
        }
    elif column.form.startswith("yyyy"):
        rule = {
            "validate": "date",
            "criteria": ">=",
            "value": MADE,
            "error_title": "No date",
            "error_message": "Write the date as 2026-03-02",
        }
    else:
        return
    sheet.data_validation(1, number, max(1, rows), number, rule)
