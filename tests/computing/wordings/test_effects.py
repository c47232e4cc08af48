"""Effects and comparisons are found where a clause names them, and not where a number counts."""

from __future__ import annotations

import pytest

from scriptkit.computing.hearing.clauses import compile_cues, take_apart
from scriptkit.computing.wordings.effects import Effects
from scriptkit.reading.words import load

CUES = compile_cues(load())


@pytest.mark.parametrize(
    ("text", "named"),
    [
        ("The ledge builds the calf.", True),
        ("The ledge is as good as the press.", True),
        ("The ledge beats the press.", True),
        ("The ledge stands by the rack.", False),
    ],
)
def test_an_effect_or_a_comparison_is_named(text: str, named: bool) -> None:
    speech = take_apart(text, CUES)
    clause = speech.clauses[0]
    assert Effects(speech, CUES, ()).are_in(clause.start, clause) is named
