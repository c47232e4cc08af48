"""Quoting, listing and near names in messages."""

from __future__ import annotations

import time

import pytest

from scriptkit.wording import did_you_mean, listed, near, quoted, word_end


def test_quoted_words_stand_on_one_line_and_are_cut_where_they_are_long() -> None:
    assert quoted("two\n  lines") == '"two lines"'
    assert quoted("x" * 100, 10) == '"xxxxxxxxx…"'
    assert quoted(5) == '"5"'
    assert quoted("") == '""'


def test_listed_words_are_counted_where_they_are_many() -> None:
    assert listed(["a", 2]) == "a, 2"
    assert listed("abcdef", 4) == "a, b, c, d and 2 more"
    assert listed([]) == ""


@pytest.mark.parametrize(
    ("word", "found"),
    [
        ("titel", "title"),
        ("TITLE", "title"),
        ("must-say", "must_say"),
        ("Must_Say", "must_say"),
        ("zzz", ""),
        ("", ""),
        ("t" * 100, ""),
    ],
)
def test_near(word: str, found: str) -> None:
    assert near(word, {"title": 1, "must_say": 2}) == found
    assert did_you_mean(word, ["title", "must_say"]) == (f'Did you mean "{found}"?' if found else "")


def test_near_names_among_very_many_words_take_no_time() -> None:
    start = time.process_time()
    near("word-7", (f"word-{number}" for number in range(10_000_000)))
    assert time.process_time() - start < 2


@pytest.mark.parametrize(("offset", "end"), [(0, 0), (2, 5), (5, 5), (6, 6), (7, 9), (9, 9)])
def test_a_cut_inside_a_word_moves_behind_it(offset: int, end: int) -> None:
    assert word_end("Hang, now", offset) == end
