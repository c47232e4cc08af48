"""Comments are taken out of spoken text, and every character that is left knows where it stood."""

from __future__ import annotations

import re

from hypothesis import given
from hypothesis import strategies as st

from scriptkit.reading.comments import Left

PIECES = st.lists(st.sampled_from(["<!-- a -->", "<!--", "-->", "b", " ", "\n", "\n\n", "    "]), max_size=20).map(
    "".join
)


@given(PIECES)
def test_what_is_left_is_the_text_without_comments_and_knows_its_place(text: str) -> None:
    left = Left(text)
    assert [text[left.origin(at)] for at in range(len(left.text))] == list(left.text)
    plain = re.sub(r"<!--.*?-->", "", text, flags=re.DOTALL) if "-->" in text else text
    assert left.text.split() == plain.split()


@given(PIECES)
def test_every_comment_is_kept_with_its_place(text: str) -> None:
    assert [(one.words, one.start) for one in Left(text).comments] == [
        (found[1], found.start()) for found in re.finditer(r"<!--(.*?)-->", text, re.DOTALL)
    ]


def test_a_comment_alone_on_its_line_takes_the_line_along() -> None:
    assert Left("a\n<!-- x -->\nb").text == "a\nb"
    assert Left("a\n  <!-- x\ny -->  \nb").text == "a\nb"
    assert Left("a <!-- x -->\nb").text == "a \nb"
    assert Left("<!-- x -->    b").text == "b"
