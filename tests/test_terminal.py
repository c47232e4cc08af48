"""Findings at a terminal: the caret stands under the word, and an author's text cannot act on the terminal."""

from __future__ import annotations

import re

import pytest

from scriptkit import terminal
from scriptkit.findings import Finding
from scriptkit.places import Place, SourceFile
from scriptkit.terminal import Ink, cut, pad, visible, width, wrap
from tests.conftest import Golden


def finding(column: int, severity: str = "error", **more: str) -> Finding:
    place = Place("outline.yaml", 1, column)
    made = Finding("claim-without-source", severity, "draft", place, "This says it.", "Do this.")
    return made._replace(**more)  # type: ignore[arg-type]


def shown(line: str, column: int, columns: int = 80) -> str:
    return terminal.findings(
        [finding(column)], {"outline.yaml": SourceFile("outline.yaml", line)}, Ink(columns=columns), "record"
    )


def pointed_at(text: str) -> str:
    """What stands above the caret, found by columns."""
    lines = text.split("\n")
    number = next(number for number, line in enumerate(lines) if line.strip() == "^")
    columns = lines[number].index("^")
    taken = 0
    for at, sign in enumerate(lines[number - 1]):
        if taken == columns and width(sign):
            return lines[number - 1][at:]
        taken += width(sign)
    return ""


@pytest.mark.parametrize(
    "before",
    ["", "say: ", "握力 😀 ", "\tsay:\t", "e\u0301te\u0301 ", "👩\u200d🦰 ❤\ufe0f ", "\x1b[31m", "x" * 500, "握" * 500],
)
@pytest.mark.parametrize("columns", [40, 80, 110])
def test_the_caret_stands_under_the_word(before: str, columns: int) -> None:
    text = shown(f"{before}word and what comes after it" + " y" * 300, len(before) + 1, columns)
    assert pointed_at(text).startswith("word")
    assert max(width(line) for line in text.split("\n")[1:]) <= columns, "only the place may be longer"


def test_a_caret_beyond_the_end_of_the_line_stands_there() -> None:
    assert "\n      one\n         ^\n" in shown("one", 4)


def test_an_empty_line_is_not_shown() -> None:
    assert "^" not in shown("   ", 1)


@pytest.mark.parametrize("sign", ["\x1b", "\x07", "\r", "\x9b", "\u202e", "\u200b", "\ud800", "\0"])
def test_an_authors_text_cannot_act_on_the_terminal(sign: str) -> None:
    odd = f"a{sign}[2Jb"
    one = finding(1, message=odd, help=odd)._replace(place=Place(odd, 1, 1))
    file = {odd: SourceFile(odd, odd)}
    for found in ([one], [one._replace(allowed=odd)]):
        assert sign not in terminal.findings(found, file, Ink(), "record")


def test_colour_is_used_only_where_it_is_wanted() -> None:
    files = {"outline.yaml": SourceFile("outline.yaml", "say: word")}
    plain, coloured = (terminal.findings([finding(6)], files, Ink(colour=colour), "draft") for colour in (False, True))
    assert "\x1b" not in plain
    assert re.sub(r"\x1b\[[\d;]*m", "", coloured) == plain != coloured


def test_what_only_a_later_stage_demands_says_so() -> None:
    assert "due by publish" in terminal.findings([finding(1, "note", stage="publish")], {}, Ink(), "record")
    assert "due by" not in terminal.findings([finding(1, "note", stage="publish")], {}, Ink(), "publish")


def test_counts_come_last() -> None:
    found = [finding(1), finding(2), finding(3, "warning"), finding(4, "note"), finding(5, allowed="because")]
    assert terminal.findings(found, {}, Ink(), "record").endswith("\n2 errors, 1 warning, 1 note; 1 allowed.\n")
    assert terminal.findings([], {}, Ink(), "publish") == "Nothing to mend at stage publish.\n"


def test_findings_look_as_they_should(golden: Golden) -> None:
    line = "      - {say: Hanging from a bar strengthens your fingers more than any gripper does it, whatever they say}"
    file = SourceFile("outline.yaml", f"{line}\n    grade: B\n")
    found = [
        finding(15, message='"Hanging from a bar" states a fact, and nothing stands behind it. ' * 2),
        finding(5, "warning")._replace(place=Place("outline.yaml", 2, 5)),
        finding(1, "note", stage="publish", help=""),
        finding(1, "error", allowed="the study comes out in May"),
    ]
    golden("terminal/findings.txt", terminal.findings(found, {"outline.yaml": file}, Ink(columns=80), "record"))


def test_width_cut_and_pad_count_columns() -> None:
    assert [width(text) for text in ("", "abc", "握力", "e\u0301", "😀")] == [0, 3, 4, 1, 2]
    assert cut("握力握力", 5) == "握力…"
    assert cut("abc", 3) == "abc"
    assert (pad("握", 4), pad("握", 4, right=True)) == ("握  ", "  握")


def test_wrapping_keeps_words_and_stands_at_its_indent() -> None:
    text = "one two three fourteen-letters-and-more five"
    assert wrap(text, 12, "  ") == ["  one two", "  three", "  fourteen-letters-and-more", "  five"]
    assert wrap(" \n ", 12) == []


def test_a_line_of_a_megabyte_is_no_trouble() -> None:
    line = "😀 word " * 100_000
    files = {"outline.yaml": SourceFile("outline.yaml", line)}
    text = terminal.findings([finding(column) for column in range(1, 700_000, 7000)], files, Ink(), "record")
    assert text.count("^") == 100


def test_a_visible_text_stays_as_it_is() -> None:
    assert visible("naïve – 握力 “quoted”") == "naïve – 握力 “quoted”"


def test_a_last_word_says_what_the_checks_of_sponsor_and_safety_are_not() -> None:
    plain, guarded = (terminal.findings([], {}, Ink(), "record", guarded=guarded) for guarded in (False, True))
    assert "no legal or medical advice" not in plain
    assert "no legal or medical advice; local rules and licensed practice come first." in guarded
    protecting = Finding("x", "error", "record", Place("outline.yaml", 1, 1), "m", "h", "", protects=True)
    assert "no legal or medical advice" in terminal.findings([protecting], {}, Ink(), "record")
