"""Places: lines as editors count them, and words followed through quotes, escapes and folds."""

from __future__ import annotations

import time

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from scriptkit.places import LONG_LINE, NO_TEXT, Place, SourceFile, Text, offsets
from scriptkit.reading import nodes


def test_only_a_line_feed_ends_a_line() -> None:
    file = SourceFile("x.md", "a\u2028b\u0085c\nd\n")
    assert (file.place(4), file.place(6), file.place(99)) == (
        Place("x.md", 1, 5),
        Place("x.md", 2, 1),
        Place("x.md", 3, 1),
    )
    assert [file.line(number) for number in (0, 1, 2, 3, 4)] == ["", "a\u2028b\u0085c", "d", "", ""]
    assert file.place(-5) == Place("x.md", 1, 1)


@given(st.text(alphabet="ab\n\t\u2028é", max_size=60), st.integers(0, 70))
def test_a_place_and_its_line_give_the_character_back(text: str, offset: int) -> None:
    file = SourceFile("x", text)
    place = file.place(offset)
    at = min(offset, len(text))
    assert (file.line(place.line) + "\n")[place.column - 1] == (text + "\n")[at]


def test_an_excerpt_is_the_line_or_of_a_very_long_one_what_stands_around_the_place() -> None:
    file = SourceFile("x.md", "  short \n" + "a " * 5000 + "here" + " b" * 5000 + "\n")
    assert file.excerpt(Place("x.md", 1, 3)) == "short"
    assert file.excerpt(Place("x.md", 9, 1)) == ""
    shown = file.excerpt(Place("x.md", 2, 10_001))
    assert "a here b" in shown
    assert (shown[:3], shown[-3:]) == ("… a", "b …")
    assert len(shown) <= LONG_LINE + 4
    assert file.excerpt(Place("x.md", 2, 1)).startswith("a a")


def value(text: str) -> Text:
    """The value of the one key of a YAML text."""
    file = SourceFile("outline.yaml", text)
    top = nodes.read(file).top
    assert top is not None
    return top.pairs()[0][1].text(file)


@pytest.mark.parametrize(
    "text",
    [
        "k: plain word here",
        "k: plain\n   word\n\n   here",
        "k: 'it''s word here'",
        'k: "a \\"word\\" here"',
        'k: "caf\\u00e9 word caf\\xe9 here"',
        'k: "a\\tword\\n \\  here"',
        'k: "a \\\n   word\n\n   here"',
        "k: |\n  a word\n    here\n",
        "k: | # a word here, not this\n  word\n  here\n",
        "k: >2-\n\n    a word\n   \n\n  here",
        "k: &a 'word here'",
        "k: !x &a\n  word here",
        "k:   \u2028word here",
    ],
)
@pytest.mark.parametrize("word", ["word", "here"])
def test_a_word_is_found_where_it_was_written(text: str, word: str) -> None:
    read = value(text)
    place = read.place(read.index(word))
    at = text.index(word, text.index("\n") if "not this" in text else 0)
    assert place == SourceFile("outline.yaml", text).place(at)._replace(file="outline.yaml")


@given(
    st.text(alphabet="ab c\n'\"\\é:#-é\t", max_size=60), st.sampled_from(["'", '"', "|", ">", None]), st.integers(8, 40)
)
def test_every_letter_is_found_in_whatever_yaml_writes(words: str, style: str | None, width: int) -> None:
    text = yaml.dump({"k": words}, default_style=style, width=width, allow_unicode=False)
    file = SourceFile("x", text)
    top = nodes.read(file).top
    assert top is not None
    read = top.pairs()[0][1].text(file)
    assert read == words
    for number, letter in enumerate(read):
        if letter in "ab-:#":
            place = read.place(number)
            assert file.line(place.line)[place.column - 1] == letter


def test_other_words_at_the_same_place_never_fail() -> None:
    read = value("k: Bar hang").like("the bar hang, which is longer than what was written")
    assert [read.place(number).line for number in (0, 5, 50, 500, -1)] == [1, 1, 1, 1, 1]
    assert value("k: ''").place() == Place("outline.yaml", 1, 5)
    assert Text("", SourceFile("x", ""), 0, 0).place(3) == Place("x", 1, 1)


def test_a_text_is_a_str_in_every_way() -> None:
    read = value("k: Bar hang")
    assert (read, hash(read), {str(read): 1}[read]) == ("Bar hang", hash("Bar hang"), 1)


def test_every_word_of_a_long_text_is_found_in_no_time() -> None:
    read = value('k: "' + 'it \\"works\\" \\\n  ' * 50_000 + '"')
    start = time.process_time()
    for number in range(0, len(read), 20):
        read.place(number)
    assert time.process_time() - start < 5


def test_offsets_of_a_text_that_has_nothing_to_do_with_its_source() -> None:
    assert offsets("abc", "", "") == [0, 0, 0]
    assert offsets("", "abc", "'") == []


TEXT, NO = ["\t", "\n", "\u0085", "é", "🙂"], ["\x00", "\x1b", "\ufeff", "\x7f", "\x9b"]


@pytest.mark.parametrize(("sign", "is_text"), [*((one, True) for one in TEXT), *((one, False) for one in NO)])
def test_what_is_text(sign: str, is_text: bool) -> None:
    assert (NO_TEXT.search(sign) is None) is is_text
