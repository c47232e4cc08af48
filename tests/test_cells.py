"""A text in a cell of a CSV table never starts like a formula, and comes back as it was written."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scriptkit.cells import guarded, unguarded

STARTS = ["=", "+", "-", "@", " =", "\t=", "\r=", "\n=", "\u00a0=", "＝", "－", "\t", "\r"]


@pytest.mark.parametrize("start", STARTS)
def test_what_starts_like_a_formula_is_guarded(start: str) -> None:
    assert guarded(f"{start}HYPERLINK(1)") == f"'{start}HYPERLINK(1)"


@pytest.mark.parametrize("text", ["-10", "+3.5", "12", "0:30", "plain", "a=b", "A-", " plain", "", "'quoted'", "'"])
def test_what_is_no_formula_is_left_alone(text: str) -> None:
    assert guarded(text) == unguarded(text) == text


@given(st.text(alphabet="'=+-@＝ \t\n1.9ab", max_size=8))
def test_every_text_comes_back(text: str) -> None:
    assert unguarded(guarded(text)) == text
