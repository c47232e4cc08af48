"""What is written in a caption and not spoken is no word."""

from __future__ import annotations

import pytest

from scriptkit.reading.recordings import heard


def words(text: str, *speakers: str) -> str:
    return " ".join(piece.text for piece in heard.pieces(text.split("\n"), frozenset(speakers)))


@pytest.mark.parametrize(
    ("text", "spoken"),
    [
        ("[music] Hang [BREATHES\nOUT] on", "Hang on"),
        ("(laughs)\nHang", "Hang"),
        ("(deep\nbreath) Hang", "Hang"),
        ("Hang (sighs) on (both arms).", "Hang on (both arms)."),
        ("♪ soft music ♪ Hang", "Hang"),
        ("♪ Hang", "Hang"),
        ("*claps*", ""),
        ("Hang *on*", "Hang *on*"),
        ("【applause】Hang", "Hang"),
        (">> Hang on", "Hang on"),
        (">> Quill: Hang on", "Hang on"),
        ("- Hang on\n- QUILL: No, rest.", "Hang on No, rest."),
        ("&gt;&gt; Hang", "Hang"),
        ("Hang - or rest - for -5 minutes ... 5 % & up", "Hang or rest for -5 minutes 5 % & up"),
        ("Hang\u200b on\u00adto\u00a0it", "Hang onto it"),
        ("Hang &unknown; & co &#104;ere &#x1F600;", "Hang &unknown; & co here"),
        ("[unclosed Hang", "[unclosed Hang"),
        ("", ""),
    ],
)
def test_only_what_is_spoken_stays(text: str, spoken: str) -> None:
    assert words(text) == spoken


def test_a_speakers_name_goes_and_a_word_before_a_colon_stays() -> None:
    assert words("QUILL: Hang on", "QUILL") == "Hang on"
    assert words("RDL: hinge first", "QUILL") == "RDL: hinge first"
    assert words("Remember: breathe", "QUILL") == "Remember: breathe"


def test_a_name_is_in_capitals_and_the_rest_of_its_line_is_not() -> None:
    assert heard.label("QUILL: Hang on") == "QUILL"
    assert heard.label("DR. QUILL:") == "DR. QUILL"
    assert heard.label("REMEMBER: BREATHE") == ""
    assert heard.label("at 9:30 we start") == ""


def test_letters_are_counted_and_each_word_has_one_at_least() -> None:
    assert [heard.letters(word) for word in ("can't", "5", "%")] == [4, 1, 1]


@pytest.mark.parametrize(
    "text", ["(" * 50_000, "[" * 50_000, "♪" + "a" * 50_000, "<" * 50_000, "<a" * 30_000, "* " * 30_000]
)
def test_signs_without_their_end_take_no_time(text: str) -> None:
    heard.pieces([text])
