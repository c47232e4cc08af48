"""A rendered text becomes paragraphs of words, each with its place."""

from __future__ import annotations

from scriptkit import codes
from scriptkit.computing.writing.filling import Expanded
from scriptkit.computing.writing.paragraphs import raw_paragraphs
from scriptkit.places import SourceFile, Text


def paragraph(number: int) -> str:
    return codes.code(codes.PARAGRAPH, number)


def at(offset: int) -> str:
    return codes.code(codes.AT, offset)


def mark(offset: int, raw: str) -> str:
    return codes.code(codes.MARK, offset) + raw + codes.CLOSE


def test_white_space_between_words_is_one_space_and_words_keep_their_offsets() -> None:
    text = paragraph(0) + at(10) + "One  two" + "\n" + at(30) + "three"
    (made,) = raw_paragraphs(Expanded(text, (), ()), is_stock=False)
    assert made.text == "One two three"
    assert made.pieces == [(0, None, 10), (4, None, 15), (8, None, 30)]


def test_marks_are_taken_out_and_a_stop_behind_one_joins_its_word() -> None:
    text = (
        paragraph(0)
        + at(0)
        + "It grows "
        + mark(9, "from one")
        + at(19)
        + ", and "
        + mark(25, "shot")
        + at(31)
        + "how."
    )
    (made,) = raw_paragraphs(Expanded(text, (), ()), is_stock=False)
    assert made.text == "It grows, and how."
    assert made.marks == [(8, "from one", 9), (13, "shot", 25)]


def test_an_empty_paragraph_vanishes_and_marks_alone_are_one() -> None:
    text = paragraph(0) + " \n " + paragraph(1) + mark(5, "aside") + paragraph(2) + at(9) + "Word."
    made = raw_paragraphs(Expanded(text, (), ()), is_stock=False)
    assert [(one.number, one.text) for one in made] == [(1, ""), (2, "Word.")]


def test_in_stock_text_only_words_of_the_outline_have_a_place() -> None:
    name = Text("Bar hang", SourceFile("outline.yaml", "name: Bar hang"), 6, 14)
    text = paragraph(0) + at(0) + "Next: " + codes.code(codes.VALUE, 0) + "Bar hang" + at(20) + "."
    (made,) = raw_paragraphs(Expanded(text, (name,), ()), is_stock=True)
    assert made.text == "Next: Bar hang."
    assert made.pieces == [(0, None, -1), (6, name, 0), (10, name, 4), (14, None, -1)]


def test_in_an_authors_text_a_value_stands_at_its_tag() -> None:
    text = paragraph(0) + at(7) + codes.code(codes.VALUE, -1) + "Bar hang" + at(30) + " it is."
    (made,) = raw_paragraphs(Expanded(text, (), ()), is_stock=False)
    assert [offset for _, _, offset in made.pieces] == [7, 7, 31, 34]
