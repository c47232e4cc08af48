"""Where Jinja tags and brackets end, whatever stands inside them."""

from __future__ import annotations

import time

import pytest

from scriptkit.reading.pieces import Pieces


@pytest.mark.parametrize(
    ("text", "tags", "brackets"),
    [
        ("a {{ b }} c", ["{{ b }}"], []),
        ("{{ '}}' }}", ["{{ '}}' }}"], []),
        ('{% if "%}" %}x', ['{% if "%}" %}'], []),
        ("{# it's }} #}", ["{# it's }} #}"], []),
        ("{{ open", [], []),
        ("[a [b] c]", [], ["[a [b] c]", "[b]"]),
        ("[a", [], []),
        ("[a [b]", [], ["[b]"]),
        ("a] [b]", [], ["[b]"]),
        (r"[a \] b]", [], [r"[a \] b]"]),
        (r"\[a] [b]", [], ["[b]"]),
        ("[{{ '] [' }}]", ["{{ '] [' }}"], ["[{{ '] [' }}]"]),
        ("{{ open [a]", [], ["[a]"]),
    ],
)
def test_pieces(text: str, tags: list[str], brackets: list[str]) -> None:
    pieces = Pieces(text)
    assert [text[start:end] for start, end in sorted(pieces.tags.items())] == tags
    assert [text[start:end] for start, end in sorted(pieces.brackets.items())] == brackets


@pytest.mark.parametrize("unit", ["[", "]", "{{", "{%", "{#", "{{'", '{{"', "[{{", "{{}}", "\\", "{"])
def test_a_million_signs_take_no_time(unit: str) -> None:
    text = unit * (1_000_000 // len(unit))
    start = time.process_time()
    Pieces(text)
    assert time.process_time() - start < 10
