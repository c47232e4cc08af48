"""Texts, numbers and lists of them have words; what has none says why."""

from __future__ import annotations

import pytest

from scriptkit.computing.writing.printing import PlainError, as_words, printable


def test_texts_and_numbers_are_their_words() -> None:
    assert [as_words(value) for value in ("Bar hang", 3, 3.0, 2.5)] == ["Bar hang", "3", "3", "2.5"]


def test_a_list_of_texts_has_commas() -> None:
    assert printable(["one", "two", 3]) == "one, two, 3"


@pytest.mark.parametrize(
    ("value", "words"),
    [
        (None, "nothing behind"),
        (True, "yes or no"),
        ({"name": "a", "id": "b"}, "say which: name, id"),
        ([{}], "say which"),
    ],
)
def test_what_has_no_words_says_why(value: object, words: str) -> None:
    with pytest.raises(PlainError, match=words):
        printable(value)
