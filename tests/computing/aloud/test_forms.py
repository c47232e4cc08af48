"""Codes and capitals, read as words or letter by letter."""

import pytest

from scriptkit.computing.aloud.forms import is_usual, is_word, spelled_code


@pytest.mark.parametrize(
    ("code", "said"),
    [
        ("HILL10", "HILL ten"),
        ("QX7", "Q X seven"),
        ("AB12CD", "A B twelve C D"),
        ("SAVE2026", "SAVE twenty twenty-six"),
        ("GRIP05", "GRIP zero five"),
        ("T12345", "T one two three four five"),
        ("mp3", "mp three"),
        ("XKCD1", "X K C D one"),
    ],
)
def test_a_code_is_read_or_spelled(code: str, said: str) -> None:
    assert spelled_code(code) == said


def test_capitals_make_a_word_when_they_can_be_read() -> None:
    words = ["HILL", "HIIT", "AMRAP", "SLDL", "RDL", "STRNG", "PQRST"]
    assert [word for word in words if is_word(word)] == ["HILL", "HIIT", "AMRAP"]


def test_curly_quotes_dashes_and_accents_are_usual_and_signs_are_not() -> None:
    assert is_usual("“So” – it’s a café… slow—well")
    assert not is_usual("5 ± 2")
