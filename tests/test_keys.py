"""The key of a sentence stays while its words stay, and is another one with other words."""

from __future__ import annotations

import pytest

from scriptkit import keys

SENTENCE = "Don't wait – it's 5-10 reps..."


@pytest.mark.parametrize(
    "same",
    [
        "don't wait - IT'S 5-10 reps...", "Don’t wait — it’s 5–10 reps…", "  Don't  wait –\nit's\u00a05-10 reps... ",
        "Don't wa\u00adit –\u200b it's 5-10 reps...\ufeff",
    ],
)  # fmt: skip
def test_case_space_quotes_and_dashes_do_not_matter(same: str) -> None:
    assert keys.of(same) == keys.of(SENTENCE)


@pytest.mark.parametrize(
    "other", ["Don't wait – it's 5-12 reps...", "Do wait – it's 5-10 reps...", "Dont wait – it's 5-10 reps...", ""]
)
def test_other_words_have_another_key(other: str) -> None:
    assert keys.of(other) != keys.of(SENTENCE)


def test_an_accent_typed_in_two_ways_is_one_and_a_raised_figure_is_not_a_plain_one() -> None:
    assert keys.of("cafe\u0301") == keys.of("café")
    assert keys.of("10²") != keys.of("102")


def test_a_key_is_short_and_no_spreadsheet_takes_it_for_a_number() -> None:
    assert keys.of("x")[:2] == "s-"
    assert len(keys.of("x" * 10_000)) == 18


def test_half_a_character_is_no_trouble() -> None:
    assert keys.of("a\ud800").startswith("s-")
