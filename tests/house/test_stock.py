"""What was made of the stock segments is what would be made of them now."""

from __future__ import annotations

import pytest

from scriptkit.computing.writing.expanding import RELEASE
from tests.house import stock

MADE = {path.name: path.read_text(encoding="utf-8") for path in stock.MADE.glob("[a-z]*.py")}


def test_each_stock_segment_has_its_module_and_no_other_is_there() -> None:
    assert MADE.keys() == stock.modules().keys()


@pytest.mark.parametrize("name", sorted(MADE))
def test_a_module_is_what_its_segment_gives(name: str) -> None:
    """Where it is not: python -m tests.house.stock --write. Another release of Jinja may write it otherwise."""
    if f"JINJA = {RELEASE!r}\n" not in MADE[name]:
        pytest.skip("made by another release of Jinja; that it speaks the same words is tested with the computing room")
    assert MADE[name] == stock.modules()[name]
