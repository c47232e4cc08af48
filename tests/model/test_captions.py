"""How fast a caption reads."""

from __future__ import annotations

from fractions import Fraction

from scriptkit.model import Caption


def test_speed_counts_spaces_and_no_line_break() -> None:
    assert Caption(Fraction(1), Fraction(3), ("Let go,", "and rest.")).speed == 8
