"""The names and units of times."""

from __future__ import annotations

import pytest

from scriptkit.reading.recordings.json_times import plain_name, role_of, unit_by_size, when


@pytest.mark.parametrize(
    ("key", "role", "unit"),
    [
        ("start", "start", 0.0),
        ("Start-Time", "start", 0.0),
        ("tStartMs", "start", 1e-3),
        ("offsetInTicks", "start", 1e-7),
        ("start_seconds", "start", 1.0),
        ("begin_us", "start", 1e-6),
        ("endMillis", "end", 1e-3),
        ("to", "end", 0.0),
        ("dDurationMs", "length", 1e-3),
        ("status", "", 0.0),
        ("tokens", "", 0.0),
        ("ms", "", 0.0),
        ("x" * 10_000, "", 0.0),
    ],
)
def test_a_key_tells_a_role_and_perhaps_a_unit(key: str, role: str, unit: float) -> None:
    assert role_of(key) == (role, unit)


def test_of_two_tellings_the_one_with_a_unit_counts() -> None:
    assert when({"offset": 5.0, "offset_ms": 700.0, "end_ms": 900.0}) == (700.0, 900.0, 1e-3)
    assert when({"start": 5.0, "end_ms": 900.0}) == (5.0, 900.0, 1e-3)
    assert when({"start_s": 0.5, "end_ms": 900.0}) == (0.5, 0.9, 1.0)
    assert when({"start": 1.0, "duration": 2.0}) == (1.0, 3.0, 0.0)
    assert when({"start": "0:01", "duration_ms": 2000.0}) == (1.0, 3.0, 1.0)
    assert when({"end": 1.0}) is None


def test_an_offset_in_the_text_is_no_time() -> None:
    assert when({"startOffset": 12.0, "endOffset": 16.0}) is None
    assert when({"startOffset": 12.0, "start": 1.5, "end": 2.0, "endOffset": 16.0}) == (1.5, 2.0, 0.0)
    assert when({"startOffset": "1.5s", "endOffset": "2s"}) == (1.5, 2.0, 1.0)


def test_the_unit_is_the_one_in_which_people_speak() -> None:
    for letters in (0.03, 0.08, 0.15):
        rates = [(letters * 6, 6), (letters * 3, 3), (9.0, 1)]
        assert unit_by_size(rates) == 1.0
        assert unit_by_size([(length * 1e3, count) for length, count in rates]) == pytest.approx(1e-3)
        assert unit_by_size([(length * 1e6, count) for length, count in rates]) == pytest.approx(1e-6)
        assert unit_by_size([(length * 1e7, count) for length, count in rates]) == pytest.approx(1e-7)
    assert unit_by_size([]) == 1.0


def test_names_are_compared_without_case_and_signs() -> None:
    assert plain_name("Start-Time_") == plain_name("startTime") == "starttime"
