"""Tables for spreadsheets stay tables: texts are texts, numbers are numbers; JSON holds to the standard."""

from __future__ import annotations

import csv
import io
import json

import pytest

from scriptkit.rendering.sheets import to_csv, to_json


def cells(*values: object) -> list[str]:
    """How values come back from a table of one row, as a spreadsheet reads it."""
    columns = [str(number) for number in range(len(values))]
    data = to_csv(columns, [dict(zip(columns, values, strict=True))])
    return list(csv.reader(io.StringIO(data.decode("utf-8-sig"), newline="")))[1]


@pytest.mark.parametrize("start", ["=", "+", "-", "@", " =", "\t=", "\r=", "\n=", "\u00a0=", "＝", "－", "\t", "\r"])
def test_a_text_that_starts_like_a_formula_stays_a_text(start: str) -> None:
    text = f"{start}HYPERLINK(1)"
    assert cells(text) == [f"'{text}"]
    assert cells([text, "b"]) == [f"'{text}; b"]


@pytest.mark.parametrize("text", ["-10", "+3.5", "12", "0:30", "plain", "a=b", "A-", " plain", "", "'quoted'"])
def test_what_is_no_formula_is_left_alone(text: str) -> None:
    assert cells(text) == [text]


@pytest.mark.parametrize("text", ["-10+cmd", "-1-1", "+1e5", "-٣", "--1", "-.", "-1\n"])
def test_what_only_looks_like_a_number_is_a_text(text: str) -> None:
    assert cells(text) == [f"'{text}"]


def test_numbers_are_numbers_and_nothing_is_nothing() -> None:
    assert cells(12.5, -0.25, 3, None, ["a", "b"], []) == ["12.500", "-0.250", "3", "", "a; b", ""]


def test_a_table_opens_in_a_spreadsheet() -> None:
    data = to_csv(("a", "b"), [{"a": "naïve, 握力", "b": 'two\nlines "quoted"'}])
    assert data.startswith(b"\xef\xbb\xbfa,b\r\n")
    assert list(csv.reader(io.StringIO(data.decode("utf-8-sig"), newline="")))[1] == [
        "naïve, 握力",
        'two\nlines "quoted"',
    ]


def test_half_a_character_does_not_stop_an_answer() -> None:
    assert cells("a\ud800b") == ["a?b"]
    assert json.loads(to_json({"text": "a\ud800b"})) == {"text": "a?b"}


def test_json_is_utf8_and_strict() -> None:
    assert to_json({"b": "握", "a": 1.5}) == '{\n  "b": "握",\n  "a": 1.5\n}\n'.encode()
    with pytest.raises(ValueError, match="JSON"):
        to_json({"a": float("nan")})


@pytest.mark.parametrize("sign", ["\u202e", "\u2066", "\u200f", "\u2028", "\x7f", "\x85", "\x9b"])
def test_json_holds_no_sign_that_a_terminal_acts_on_and_loses_none(sign: str) -> None:
    made = to_json({"name": f"a{sign}bé"}).decode()
    assert sign not in made
    assert "bé" in made
    assert json.loads(made) == {"name": f"a{sign}bé"}
