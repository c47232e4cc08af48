"""A number fits to the digit that is said, or as roughly as its words say."""

from __future__ import annotations

import pytest

from scriptkit.computing.fitting import claimed
from scriptkit.computing.holdings import Holdings
from scriptkit.computing.quantities import read, vocabulary
from scriptkit.model import Source, StudyFinding
from scriptkit.reading.words import load

KNOWN = vocabulary(load())
SOURCE = Source(
    id="s",
    population="climbers",
    n=38,
    duration_weeks=8,
    findings={"f": StudyFinding(id="f", values={"bar": "41.4 s", "towel": "30 kg"})},
)


def fit(text: str) -> str:
    return claimed(read(text, KNOWN), [Holdings(SOURCE, "f", KNOWN)], opinion=False)[0].fit


@pytest.mark.parametrize(
    ("text", "how"),
    [
        ("41 seconds", "exact"),
        ("41.4 seconds", "exact"),
        ("41.3 seconds", ""),
        ("42 seconds", ""),
        ("about 40 seconds", "exact"),
        ("about 50 seconds", ""),
        ("nearly 45 seconds", "exact"),
        ("nearly 40 seconds", ""),
        ("more than 40 seconds", "exact"),
        ("more than 45 seconds", ""),
        ("under 60 seconds", "exact"),
        ("two months", "exact"),
        ("three months", ""),
        ("over 8 weeks", "exact"),
        ("over 7 weeks", ""),
        ("66 pounds", "converted"),
        ("30 pounds", ""),
        ("40 to 45 seconds", "exact"),
        ("two of them", "skip"),
        ("38 people", "exact"),
        ("41 people", ""),
    ],
)
def test_how_a_number_fits(text: str, how: str) -> None:
    assert fit(text) == how


def test_an_opinion_may_hold_small_numbers() -> None:
    reading = read("I give it 4.", KNOWN)
    assert claimed(reading, [Holdings(SOURCE, "f", KNOWN)], opinion=True)[0].fit == "skip"
