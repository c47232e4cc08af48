"""A ledger that comes back as CSV is read in whatever way a spreadsheet program saves it, or refused in a sentence."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from scriptkit.model.returned import ReturnedRow
from scriptkit.reading import returned

HEAD = "key,sentence,verdict,note,page,initials,date\n"
TABLE = HEAD + "s-1,It’s so.,verified,see p. 7,7,QN,2026-03-02\ns-2,No.,,,,,\n"


def rows(tmp_path: Path, data: str | bytes) -> tuple[ReturnedRow, ...]:
    path = tmp_path / "ledger.csv"
    path.write_bytes(data if isinstance(data, bytes) else data.encode())
    found = returned.read(path)
    assert found.trouble == ""
    return found.rows


def trouble(tmp_path: Path, data: str | bytes) -> str:
    path = tmp_path / "ledger.csv"
    path.write_bytes(data if isinstance(data, bytes) else data.encode())
    found = returned.read(path)
    assert found.rows == ()
    return found.trouble


FILLED = ("s-1", "It’s so.", "verified", "see p. 7", "7", "QN", "2026-03-02")


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "cp1252"])
@pytest.mark.parametrize("sign", [",", ";", "\t"])
@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_a_table_is_read_however_it_was_saved(tmp_path: Path, encoding: str, sign: str, end: str) -> None:
    data = TABLE.replace(",", sign).replace("\n", end).encode(encoding)
    first, second = rows(tmp_path, data)
    assert first == (2, *FILLED, ())
    assert second[:4] == (3, "s-2", "No.", "")


def test_the_head_is_found_by_its_words_wherever_its_columns_stand(tmp_path: Path) -> None:
    table = "My sheet,,\n\nDATE,More, Verdict ,Text,Key\n2 March 2026,x,changed,So.,S-1\n,,,,\n"
    (row,) = rows(tmp_path, table)
    assert row[:4] == (4, "s-1", "So.", "changed")
    assert row.date == "2026-03-02"


def test_a_line_that_names_the_sign_between_cells_is_passed_over(tmp_path: Path) -> None:
    assert rows(tmp_path, "sep=;\n" + TABLE.replace(",", ";"))[0][1:8] == FILLED


def test_a_guarded_text_comes_back_as_it_was(tmp_path: Path) -> None:
    table = HEAD + "s-1,'=1+1 is two.,verified,'-not so,'+1,,\n"
    (row,) = rows(tmp_path, table)
    assert (row.sentence, row.note, row.page) == ("=1+1 is two.", "-not so", "+1")


def test_a_note_may_have_lines_commas_and_quotes(tmp_path: Path) -> None:
    (row,) = rows(tmp_path, HEAD + 's-1,So.,changed,"a, ""b""\r\nc",,,\n')
    assert row.note == 'a, "b"\nc'


@pytest.mark.parametrize("written", ["02/03/2026", "soon", "46083"])
def test_an_unclear_date_is_asked_about(tmp_path: Path, written: str) -> None:
    (row,) = rows(tmp_path, HEAD + f"s-1,So.,verified,,,QN,{written}\n")
    assert row.date == ""
    assert row.troubles == (
        f'The date "{written}" is none, or can be read in more than one way: write it as 2026-03-02.',
    )


def test_a_date_alone_asks_for_nothing(tmp_path: Path) -> None:
    (row,) = rows(tmp_path, HEAD + "s-1,So.,,,,QN,soon\n")
    assert row.troubles == ()


@pytest.mark.parametrize(
    ("data", "why"),
    [
        ("", "it is empty"),
        ("  \n", "it is empty"),
        ("a,b\n1,2\n", "it holds no table with a head such as the ledger has"),
        ("sentence,verdict\nSo.,verified\n", 'it has no column "key"'),
        ("key,sentence\ns-1,So.\n", 'it has no column "verdict"'),
        (b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR" + b"\x01\x02" * 3000, "it is no spreadsheet and no text"),
        (b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + b"\0" * 600, "it is a workbook of an old form, or one with a password"),
        (b"%PDF-1.7\n1 0 obj", "it holds no table"),
        (HEAD + 's-1,"So.,verified,cut short', "line 2 cannot be parted into cells; a quote may not be closed"),
        (HEAD + "s-1,So.,verified," + "x" * 200_000 + ",,,\n", "line 2 cannot be parted into cells"),
        (HEAD + "s-1,So.,verified,,,,\n" * 50_001, "it has more than 50,000 rows"),
        (HEAD * 500_000, "it has 22 MB, and no ledger has more than 20"),
    ],
)
def test_what_is_no_filled_in_ledger_is_told_in_a_sentence(tmp_path: Path, data: str | bytes, why: str) -> None:
    assert trouble(tmp_path, data).startswith(why)


def test_what_is_no_file_is_told(tmp_path: Path) -> None:
    assert returned.read(tmp_path / "none.csv").trouble == "there is no such file"
    assert returned.read(tmp_path).trouble == "it is a folder"
    assert returned.read(tmp_path / ("x" * 300)).trouble == "File name too long"
    assert returned.read(Path("a\0b")).trouble
    os.mkfifo(tmp_path / "pipe")
    assert returned.read(tmp_path / "pipe").trouble == "it is no ordinary file"
