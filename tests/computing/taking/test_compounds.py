"""Words that one text writes as one and the other as two, and those that only happen to be made of two."""

from __future__ import annotations

import pytest

from scriptkit.computing.taking.compounds import apart


@pytest.mark.parametrize(
    ("script", "said", "found"),
    [
        ("a no-hang day", "a nohang day", {"nohang": 2}),
        ("Pullups next.", "pull ups next", {"pullups": 4}),
        ("a pull-up", "a pull up", {}),
        ("a two-leg raise", "a twoleg raise", {"twoleg": 3}),
        ("first up, side and down", "upside down", {}),
        ("nine out of ten", "it often hurts", {}),
        ("it is not able to", "a notable one", {}),
        ("sit a while, go a way", "awhile away", {}),
    ],
)
def test_a_word_is_two_where_the_other_text_has_both(script: str, said: str, found: dict[str, int]) -> None:
    assert apart([script], said.split()) == found
