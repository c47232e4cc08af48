"""Words for a description: one line, no angle brackets, what they say kept; and what was changed is known."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scriptkit.computing.publishing.pasting import Paste, address, cut
from scriptkit.places import Place, SourceFile, Text

HERE = Place("outline.yaml", 1, 1)


@pytest.mark.parametrize(
    ("written", "told"),
    [
        ("<12 weeks", "under 12 weeks"),
        ("in < 12 weeks", "in under 12 weeks"),
        ("p<0.05", "p under 0.05"),
        ("loss < -5 kg", "loss under -5 kg"),
        ("costs <£30", "costs under £30"),
        ("n >= 30", "n at least 30"),
        ("n<=30", "n at most 30"),
        ("> 3 sets", "over 3 sets"),
        ("hang -> row", "hang → row"),
        ("row <- hang", "row ← hang"),
        ("bar > towel", "bar › towel"),
        ("<b>bold</b>", "‹b›bold‹/b›"),
        ("a\n  b", "a b"),
        ("a & b", "a & b"),
    ],
)
def test_a_bracket_is_told_in_words_or_in_a_sign_like_it(written: str, told: str) -> None:
    paste = Paste()
    assert paste.words(written, HERE) == told
    changed = [(written, told)] if set(written) & set("<>") else []
    assert [(one.words, one.instead) for one in paste.replaced.values()] == changed


def test_the_place_is_that_of_the_bracket() -> None:
    paste = Paste()
    file = SourceFile("outline.yaml", "title: One\nanswer: in <12 weeks\n")
    paste.words(Text("in <12 weeks", file, 19, 31), HERE)
    assert list(paste.replaced) == [Place("outline.yaml", 2, 12)]


@given(st.text(alphabet=st.sampled_from("<>=- 1a\n£."), max_size=30))
def test_no_bracket_and_no_line_break_is_left(text: str) -> None:
    told = Paste().words(text, HERE)
    assert not set(told) & set("<>\n")


def test_an_address_keeps_its_meaning() -> None:
    assert address("10.1002/(SICI)1097<1::AID>3.0.CO;2-#") == "10.1002/(SICI)1097%3C1::AID%3E3.0.CO;2-#"
    assert address(" https://example.org/a b ") == "https://example.org/ab"


@given(st.text(alphabet="ab ,", min_size=1, max_size=80), st.integers(2, 60))
def test_a_cut_text_is_short_enough_and_says_so(text: str, most: int) -> None:
    text = " ".join(text.split())
    told = cut(text, most)
    assert len(told) <= most
    assert told == text if len(text) <= most else told.endswith("…")


def test_a_text_of_one_word_is_cut_inside() -> None:
    assert cut("a" * 60, 10) == "a" * 9 + "…"
