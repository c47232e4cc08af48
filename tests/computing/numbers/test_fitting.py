"""A number fits to the digit that is said, or as roughly as its words say."""

from __future__ import annotations

import pytest

from scriptkit.computing.numbers.fitting import claimed
from scriptkit.computing.numbers.holdings import Holdings
from scriptkit.computing.numbers.quantities import read, vocabulary
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


def test_less_is_told_of_the_larger_and_more_of_the_smaller() -> None:
    source = Source(id="s", findings={"f": StudyFinding(id="f", values={"with": "76 falls", "without": "100 falls"})})

    def how(text: str) -> str:
        return claimed(read(text, KNOWN), [Holdings(source, "f", KNOWN)], opinion=False)[0].fit

    assert how("About a quarter fewer falls were counted.") == "exact"
    assert how("A third fewer falls were counted.") == ""
    assert how("About a third more falls were counted.") == "exact"


def test_the_other_group_goes_on_with_what_was_counted() -> None:
    source = Source(id="s", findings={"f": StudyFinding(id="f", values={"a": "4.1 per 1000", "b": "6.0 per 1000"})})
    text = "They had 4.1 cases per thousand, the others 6."
    made = claimed(read(text, KNOWN), [Holdings(source, "f", KNOWN)], opinion=False)
    assert [one.fit for one in made] == ["exact", "exact"]
