"""XLSX workbooks that come back: the values of their cells and nothing else. The only module that reads workbooks."""

from __future__ import annotations

import datetime as dt
import io
import re
import warnings
import zipfile
from collections.abc import Iterable, Iterator, Sequence
from typing import Any

import openpyxl

from scriptkit.reading.returned import MOST_COLUMNS, MOST_ROWS, Cell, Cells, Unreadable

MOST_UNPACKED = 60_000_000  # bytes; a ledger of five thousand sentences unpacks to some six million
MOST_PARTS = 2_000
MOST_SHEETS = 20
MOST_TAGS, MOST_OTHER_TAGS = 3_000_000, 200_000  # of a part that holds cells or texts, and of any other one
MOST_TAGS_A_ROW = 50_000
_MERGED = re.compile(rb'<(?:\w+:)?mergeCell [^>]{0,200}?ref="\$?([A-Z]{1,3})\$?(\d+):\$?([A-Z]{1,3})\$?(\d+)"')
EMPTY = Cell()
_DAMAGED = "it is a workbook that is damaged or cut short"


def tables(data: bytes) -> Iterable[Iterable[Cells]]:
    """The sheets of a workbook, each row by row."""
    _look_inside(data)
    values = _opened(data, data_only=True)
    formulas = _opened(data, data_only=False) if _any_formula(data) else None
    for number, sheet in enumerate(values.worksheets[:MOST_SHEETS]):
        yield _sheet(sheet, formulas.worksheets[number] if formulas else None)


def _look_inside(data: bytes) -> None:
    """Refuse what no ledger holds, before anything of it is taken for a workbook."""
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            parts = archive.infolist()
            _demand_workbook(parts)
            for part in parts:
                if part.filename.lower().endswith((".xml", ".rels")):
                    _look_at(part.filename, archive.read(part))
    except Unreadable:
        raise
    except Exception:  # noqa: BLE001 - a broken archive fails in many ways
        raise Unreadable(_DAMAGED) from None


def _demand_workbook(parts: Sequence[zipfile.ZipInfo]) -> None:
    if len(parts) > MOST_PARTS or sum(part.file_size for part in parts) > MOST_UNPACKED:
        raise Unreadable(f"it unpacks to more than {MOST_UNPACKED / 1e6:g} MB, which no ledger does")
    names = {part.filename.lower() for part in parts}
    if "xl/workbook.xml" not in names:
        other = "an OpenDocument file" if "content.xml" in names else "an archive, and no workbook"
        raise Unreadable(f"it is {other}. Save the ledger as .xlsx or .csv")
    if any("vbaproject" in name or "macrosheets/" in name for name in names):
        raise Unreadable("it is a workbook with macros, which a ledger has not. Save it as .xlsx without them")
    if any("externallinks/" in name for name in names):
        raise Unreadable("it is a workbook with links to other files, which a ledger has not. Take them out")


def _look_at(name: str, text: bytes) -> None:
    if b"<!DOCTYPE" in text.replace(b"\0", b""):
        raise Unreadable("it is a workbook with parts that no spreadsheet program writes")
    is_sheet = name.startswith("xl/worksheets/")
    most = MOST_TAGS if is_sheet or name.lower() == "xl/sharedstrings.xml" else MOST_OTHER_TAGS
    widest = max(row.count(b"<") for row in text.split(b"row")) if is_sheet else 0
    if text.count(b"<") > most or widest > MOST_TAGS_A_ROW:
        raise Unreadable("it holds many times more than any ledger does")
    if is_sheet:
        for first, above, last, below in (found.groups() for found in _MERGED.finditer(text)):
            if above != below:
                cells = b"".join((first, above, b":", last, below)).decode()
                raise Unreadable(f"its cells {cells} are merged, so it is not known which row they are of. Part them")


def _any_formula(data: bytes) -> bool:
    with zipfile.ZipFile(io.BytesIO(data)) as archive:
        sheets = [name for name in archive.namelist() if name.startswith("xl/worksheets/") and name.endswith(".xml")]
        return any(re.search(rb"<(?:\w+:)?f[ >/]", archive.read(name)) for name in sheets)


def _opened(data: bytes, *, data_only: bool) -> Any:
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            book = openpyxl.load_workbook(io.BytesIO(data), read_only=True, data_only=data_only, keep_links=False)
    except Exception:  # noqa: BLE001 - the library fails in many ways on what is no sound workbook
        raise Unreadable(_DAMAGED) from None
    return book


def _sheet(values: Any, formulas: Any) -> Iterator[Cells]:
    if formulas is None:
        for row in _values(values):
            yield [EMPTY if value is None else _cell(value) for value in row]
        return
    for row, written in zip(_values(values), _values(formulas), strict=False):
        pairs = zip(row, written, strict=False)
        yield [EMPTY if formula is None else _cell(value) for value, formula in pairs]


def _values(sheet: Any) -> Iterator[tuple[Any, ...]]:
    try:
        sheet.reset_dimensions()
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            yield from sheet.iter_rows(max_row=MOST_ROWS + 2, max_col=MOST_COLUMNS, values_only=True)
    except Exception:  # noqa: BLE001 - as above
        raise Unreadable(_DAMAGED) from None


def _cell(value: Any) -> Cell:
    """A cell in which something stands; without a value it is a formula whose result was not saved."""
    if value is None:
        return Cell(trouble="holds a formula, and its result was not saved: type it in.")
    if isinstance(value, dt.date):
        return Cell(value.strftime("%Y-%m-%d") if value.year >= 1000 else str(value), dated=True)
    if isinstance(value, float) and value.is_integer() and abs(value) < 1e15:
        return Cell(str(int(value)))
    return Cell(str(value))
