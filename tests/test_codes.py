"""The codes that carry places through Jinja."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from scriptkit import codes
from scriptkit.places import NO_TEXT

ALL = (codes.PARAGRAPH, codes.END, codes.AT, codes.MARK, codes.CLOSE, codes.VALUE, codes.TAG)


def test_no_text_that_is_read_can_hold_a_code() -> None:
    assert len(set(ALL)) == len(ALL)
    assert all(NO_TEXT.fullmatch(one) and codes.without(one) == "" for one in ALL)


def test_a_code_carries_its_number() -> None:
    assert codes.code(codes.AT, 12) == f"{codes.AT}12{codes.END}"


@given(st.text())
def test_a_text_without_codes_keeps_everything_else(text: str) -> None:
    left = codes.without(text)
    assert not any(one in left for one in ALL)
    assert left == "".join(sign for sign in text if sign in "\t\n" or not (ord(sign) < 32 or ord(sign) == 127))
