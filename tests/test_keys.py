"""The key of a sentence or a passage stays while its words stay, and is another one with other words."""

from __future__ import annotations

import re

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


def test_the_key_of_a_passage_is_twelve_hex_digits_however_its_sentences_are_parted() -> None:
    assert re.fullmatch("[0-9a-f]{12}", keys.of_passage(["Ad. They paid."]))
    assert keys.of_passage(["Ad.", "They paid."]) == keys.of_passage(["Ad. They  paid. "])


def test_a_passage_with_a_word_a_price_or_a_full_stop_changed_has_another_key() -> None:
    kept = keys.of_passage(["They paid 9 pounds."])
    assert kept == keys.of_passage(["THEY paid 9 pounds."])
    for other in ("They pay 9 pounds.", "They paid 9 pounds!", "They paid 11 pounds."):
        assert keys.of_passage([other]) != kept


def test_a_passage_in_which_nothing_is_said_has_no_key() -> None:
    assert keys.of_passage([]) == keys.of_passage(["  "]) == ""


def test_half_a_character_is_no_trouble() -> None:
    assert keys.of("a\ud800").startswith("s-")
