"""A number that does not fit is told by what is wrong with it, and with what the register has instead."""

from __future__ import annotations

import pytest

from scriptkit.computing.numbers.fitting import claimed
from scriptkit.computing.numbers.holdings import Holdings
from scriptkit.computing.numbers.misfits import verdict
from scriptkit.computing.numbers.quantities import read, vocabulary
from scriptkit.model import Source, StudyFinding
from scriptkit.reading.words import load

KNOWN = vocabulary(load())
SOURCE = Source(
    id="s",
    population="climbers",
    n=38,
    findings={
        "f": StudyFinding(id="f", values={"bar": "1.6 mm", "towel": "1.0 mm"}),
        "g": StudyFinding(id="g", values={"bar": "12 kg", "towel": "7 kg"}),
    },
)


def told(text: str) -> tuple[str, str]:
    held = [Holdings(SOURCE, "f", KNOWN)]
    reading = read(text, KNOWN)
    numbers = claimed(reading, held, opinion=False)
    return next(verdict(one, reading, numbers, held) for one in numbers if one.fit != "exact")


@pytest.mark.parametrize(
    ("text", "kind", "has"),
    [
        ("They gained 1.7 millimetres.", "unknown", "1.6 mm for bar, 1.0 mm for towel"),
        ("They gained 1.6 centimetres.", "unit", "1.6 mm"),
        ("They gained 2 millimetres.", "rounding", "1.6 mm"),
        ("They gained 12 kilos.", "finding", "12 kg in the finding g"),
        ("They hung for 14 seconds.", "unheld", ""),
        ("There were 83 climbers.", "unknown", "38 people"),
        ("They did 12 hangs.", "", ""),
    ],
)
def test_what_is_wrong(text: str, kind: str, has: str) -> None:
    assert told(text) == (kind, has)


def test_one_who_dropped_out_is_no_wrong_number_of_people() -> None:
    assert told("Of the 38 climbers, 36 climbers finished.")[0] == "unheld"
