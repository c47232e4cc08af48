"""A length of the outline is a time, or a share of the whole."""

from __future__ import annotations

from scriptkit.model import Extent


def test_a_time_is_that_time_however_long_the_whole_is() -> None:
    assert Extent(seconds=20).of(600) == 20


def test_a_share_is_of_the_whole() -> None:
    assert Extent(share=0.05).of(600) == 30


def test_a_length_of_nothing_is_none() -> None:
    assert Extent().of(600) == 0
