"""A filled-in ledger that comes back as CSV or XLSX: its rows, or in one sentence why it cannot be read."""

from __future__ import annotations

import csv
import io
import os
import stat
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path

from scriptkit.cells import unguarded
from scriptkit.model.returned import Returned, ReturnedRow
from scriptkit.places import NO_TEXT
from scriptkit.reading import dates
from scriptkit.wording import listed, quoted

MOST_BYTES = 20_000_000
MOST_ROWS = 50_000
MOST_COLUMNS = 200
HEAD_WITHIN = 30  # rows: people put a line or two above a table
NEEDED = ("key", "sentence", "verdict")
FILLED = ("note", "page", "initials", "date")
_NAMES = {name: name for name in (*NEEDED, *FILLED)} | {"text": "sentence"}
Cells = Sequence["Cell"]


class Cell(str):
    """What stands in a cell, as text. `trouble` says why it cannot be read; `dated`: the spreadsheet has a date."""

    __slots__ = ("dated", "trouble")
    dated: bool
    trouble: str

    def __new__(cls, value: str = "", trouble: str = "", *, dated: bool = False) -> Cell:  # noqa: PYI034 - a subclass is not meant
        """A cell's text without the white space around it and without what is no text."""
        made = super().__new__(cls, NO_TEXT.sub(" ", value).replace("\r\n", "\n").replace("\r", "\n").strip())
        made.dated, made.trouble = dated, trouble
        return made


class Unreadable(Exception):  # noqa: N818 - it leaves this room as a sentence
    """Why a file is no filled-in ledger, in a sentence."""


def read(path: Path) -> Returned:
    """The rows of a filled-in ledger."""
    try:
        data = _bytes(path)
        tables = _tables(data)
        return Returned(_first_with_head(tables))
    except Unreadable as error:
        return Returned((), str(error))


def _bytes(path: Path) -> bytes:
    try:
        about = os.stat(path)  # noqa: PTH116 - a Path's own fails on a NUL
        if stat.S_ISDIR(about.st_mode):
            raise Unreadable("it is a folder")
        if not stat.S_ISREG(about.st_mode):
            raise Unreadable("it is no ordinary file")
        with path.open("rb") as file:
            data = file.read(MOST_BYTES + 1)
    except FileNotFoundError:
        raise Unreadable("there is no such file") from None
    except (OSError, ValueError) as error:
        raise Unreadable(getattr(error, "strerror", None) or "it cannot be opened") from None
    if len(data) > MOST_BYTES:
        size = max(about.st_size, len(data)) / 1e6
        raise Unreadable(f"it has {size:.0f} MB, and no ledger has more than {MOST_BYTES / 1e6:g}")
    if not data.strip():
        raise Unreadable("it is empty")
    return data


def _tables(data: bytes) -> Iterable[Iterable[Cells]]:
    """The tables of a file, each row by row."""
    if data.startswith(b"PK"):
        from scriptkit.reading import workbooks

        return workbooks.tables(data)
    if data.startswith(b"\xd0\xcf\x11\xe0"):
        raise Unreadable("it is a workbook of an old form, or one with a password. Save it as .xlsx without one")
    return [_from_csv(_decoded(data))]


def _decoded(data: bytes) -> str:
    """The text of a CSV file, by whatever encoding spreadsheet programs save one in."""
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        return data.decode("utf-16", errors="replace")
    zeros = data[:4000].count(0)
    if zeros * 3 >= min(len(data), 4000):
        return data.decode("utf-16-be" if data[0] == 0 else "utf-16-le", errors="replace")
    if zeros:
        raise Unreadable("it is no spreadsheet and no text")
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        return data.decode("cp1252", errors="replace")


def _from_csv(text: str) -> Iterator[Cells]:
    """The rows of a CSV file; the sign between cells is the one that parts the head."""
    if text[:4].lower() == "sep=":
        text = "\n" + text.partition("\n")[2]
    sample = text[:100_000]
    heads = {sign: max((len(_head(row)) for row in _parted(sample, sign, HEAD_WITHIN)), default=0) for sign in ",;\t"}
    return _parted(text, max(heads, key=lambda sign: heads[sign]), MOST_ROWS + 2, strict=True)


def _parted(text: str, sign: str, most: int, *, strict: bool = False) -> Iterator[Cells]:
    """The rows of a table; `strict` where a quote that is opened and not closed is a fault."""
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=sign, strict=strict)
    try:
        for number, row in enumerate(reader):
            if number >= most:
                return
            yield [Cell(cell) for cell in row[:MOST_COLUMNS]]
    except csv.Error:
        if not strict:
            return
        raise Unreadable(f"line {reader.line_num} cannot be parted into cells; a quote may not be closed") from None


def _head(cells: Iterable[str]) -> dict[str, int]:
    """Which column holds what, where a row is the head of a ledger."""
    found: dict[str, int] = {}
    for number, cell in enumerate(cells):
        name = _NAMES.get(" ".join(cell.lower().split()))
        if name:
            found.setdefault(name, number)
    return found


def _first_with_head(tables: Iterable[Iterable[Cells]]) -> tuple[ReturnedRow, ...]:
    nearest: set[str] = set()
    for table in tables:
        rows = enumerate(table, 1)
        for number, cells in rows:
            columns = _head(cells)
            if set(NEEDED) <= columns.keys():
                return tuple(_rows(rows, columns))
            if len(columns) > len(nearest):
                nearest = set(columns)
            if number >= HEAD_WITHIN:
                break
    lacking = listed(quoted(one) for one in NEEDED if one not in nearest)
    what = f"it has no column {lacking}" if nearest else "it holds no table with a head such as the ledger has"
    raise Unreadable(f"{what}. Fill in the claims.csv or claims.xlsx that scriptkit made, and keep its head")


def _rows(rows: Iterable[tuple[int, Cells]], columns: dict[str, int]) -> Iterator[ReturnedRow]:
    for number, cells in rows:
        own = {name: cells[at] for name, at in columns.items() if at < len(cells)}
        if any(cell or cell.trouble for cell in own.values()):
            if number > MOST_ROWS:
                raise Unreadable(f"it has more than {MOST_ROWS:,} rows")
            yield _row(number, own)


def _row(number: int, own: dict[str, Cell]) -> ReturnedRow:
    troubles = [f"The cell {quoted(name)} {cell.trouble}" for name, cell in own.items() if cell.trouble]
    troubles += [
        f"The cell {quoted(name)} holds a date, {cell}: write it so that it stays a text."
        for name, cell in own.items()
        if cell.dated and name != "date"
    ]
    texts = {name: unguarded(cell).strip() for name, cell in own.items()}
    written = texts.pop("date", "")
    day = dates.day(written)
    if written and not day:
        troubles.append(
            f"The date {quoted(written, 40)} is none, or can be read in more than one way: write it as 2026-03-02."
        )
    texts["key"] = texts["key"].lower() if "key" in texts else ""
    ruled = bool(texts.get("verdict") or texts.get("note") or any(cell.trouble for cell in own.values()))
    blank = dict.fromkeys(("sentence", "verdict", "note", "page", "initials"), "")
    return ReturnedRow(number, **{**blank, **texts}, date=day, troubles=tuple(troubles) if ruled else ())
