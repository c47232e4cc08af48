"""The contrast of two colours is that of WCAG 2.2."""

from __future__ import annotations

import pytest

from scriptkit.computing import contrasting
from scriptkit.model import CardLook


@pytest.mark.parametrize(
    ("text", "ground", "ratio"),
    [
        ("#767676", "#FFFFFF", 4.54),
        ("#777777", "#FFFFFF", 4.48),
        ("#ffff00", "#000", 19.56),
        ("#fff", "#ff0000", 4.00),
        ("#123456", "#123456", 1.0),
    ],
)
def test_published_examples(text: str, ground: str, ratio: float) -> None:
    assert contrasting.contrast(text, ground) == pytest.approx(ratio, abs=0.005)
    assert contrasting.contrast(ground, text) == pytest.approx(ratio, abs=0.005)


def test_what_nobody_sets_can_be_read() -> None:
    assert contrasting.look(CardLook()).contrast > 7
