"""A "one" that only one of script and recording has: a number where it counts something, a pronoun elsewhere."""

from __future__ import annotations

import pytest

from scriptkit.computing.taking.ones import counts
from scriptkit.computing.taking.tokens import pieces, tokens


@pytest.mark.parametrize(
    ("text", "instead", "number"),
    [
        ("for one week", "", True),
        ("for one week", "a", False),
        ("one in ten of them", "", True),
        ("one out of ten", "", True),
        ("do one set", "", True),
        ("level 1 of it", "", True),
        ("in one study", "", False),
        ("this one weeks later", "", False),
        ("the one time", "", False),
        ("at one point", "", False),
        ("the long one", "", False),
    ],
)
def test_it_is_a_number_where_it_counts(text: str, instead: str, number: bool) -> None:
    words = [one.text for one in pieces(text)]
    keys = [one.key for one in tokens(words)]
    assert counts(keys, (0, len(keys)), words, instead.split()) is number
