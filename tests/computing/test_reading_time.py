"""Words on screen stand long enough to be read."""

from __future__ import annotations

import pytest

from scriptkit.computing import reading_time


@pytest.mark.parametrize(
    ("text", "seconds"), [("Bar hang: A", 2.0), ("A", 1.5), ("", 1.5), ("one two three four five six", 3.0)]
)
def test_a_third_of_a_second_a_word_and_one_to_find_it(text: str, seconds: float) -> None:
    assert reading_time.seconds(text) == pytest.approx(seconds)


def test_words_that_tell_who_pays_stand_three_seconds_at_least() -> None:
    assert reading_time.seconds("Ad.", reading_time.LEAST_PAID) == 3.0
