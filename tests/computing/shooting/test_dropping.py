"""What the hours do not hold goes by priority, and of these as few as possible."""

from __future__ import annotations

from itertools import combinations

import pytest

from scriptkit.computing.shooting import clock, dropping
from scriptkit.model import CallSheet, PlannedShot
from tests.computing.shooting.days import planned


def shots(*priorities: str, seconds: float = 60.0) -> list[PlannedShot]:
    return [planned(n, f"{n}", seconds * n, place=f"{n}", priority=one, takes=1) for n, one in enumerate(priorities, 1)]


def gone(given: list[PlannedShot], hours: float) -> list[str]:
    sheet = CallSheet(hours=hours)
    kept = dropping.fitting(given, sheet)
    assert clock.lay(kept, sheet).end <= hours
    return [dropping.priority(one) for one in given if one not in kept]


def test_where_no_hours_are_given_or_they_hold_all_nothing_goes() -> None:
    given = shots("nice", "must")
    assert list(dropping.fitting(given, CallSheet())) == given
    assert gone(given, 4 * 3600) == []


def test_nice_goes_before_should_and_should_before_must() -> None:
    given = shots("must", "should", "nice", "should", "", "nice")
    assert gone(given, 5400) == ["nice", "nice"]
    assert gone(given, 4300) == ["should", "nice", "nice"]
    assert gone(given, 2500) == ["should", "nice", "should", "nice"]
    assert sorted(gone(given, 1100)) == ["must", "nice", "nice", "should", "should"]


@pytest.mark.parametrize("hours", [6000, 5000, 4000, 3000, 2000])
def test_of_one_priority_as_few_as_possible_go(hours: float) -> None:
    given = shots(*["nice"] * 6)
    sheet = CallSheet(hours=hours)
    fewest = next(
        count
        for count in range(7)
        if any(
            clock.lay([one for one in given if one not in out], sheet).end <= hours
            for out in combinations(given, count)
        )
    )
    assert len(gone(given, hours)) == fewest


def test_with_many_shots_what_is_dropped_is_needed_least_and_the_day_is_well_filled() -> None:
    given = shots(*(["nice", "must", "should"] * 20), seconds=2)
    left = gone(given, 8 * 3600)
    assert left.count("must") == 0
    assert left.count("nice") == 20
    end = clock.lay(dropping.fitting(given, CallSheet(hours=8 * 3600)), CallSheet()).end
    assert end > 8 * 3600 - 1200


def test_hours_that_hold_nothing_leave_nothing() -> None:
    assert gone(shots("must"), 60) == ["must"]


def test_what_is_needed_less_comes_back_where_there_is_room_for_it_after_all() -> None:
    big = planned(1, "rack", 5400.0, place="rack", priority="should", takes=1)
    tiny = planned(2, "rack", 6.0, place="rack", priority="nice", takes=1)
    kept = dropping.fitting([big, tiny], CallSheet(hours=3600))
    assert kept == (tiny,)
