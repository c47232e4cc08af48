"""The whole day: order, clock, what is dropped and what it would take, cards."""

from __future__ import annotations

import pytest

from scriptkit.computing.shooting import day
from scriptkit.model import CallSheet, Episode, Sponsor
from tests.computing.shooting.days import drawn, planned


def test_the_figures_of_an_order_and_of_script_order_are_of_the_same_shots() -> None:
    shots = [planned(n, f"{n}", place=f"place {n % 2}") for n in range(1, 9)]
    made = day.plan(shots, Episode())
    assert made.changes.every == 8
    assert (made.changes.places, made.changes.framings) == (2, 6)
    assert (made.script.places, made.script.framings) == (8, 0)
    assert made.script.seconds - made.changes.seconds == 6 * (900 - 240)


@pytest.mark.parametrize("seed", range(12))
def test_an_order_never_takes_longer_to_change_than_script_order(seed: int) -> None:
    made = day.plan(drawn(seed, 10), Episode())
    assert made.changes.seconds <= made.script.seconds


def test_gigabytes_are_megabits_times_minutes_times_a_factor_and_a_fifth_more() -> None:
    made = day.plan([planned(1, seconds=40, takes=1)], Episode(day=CallSheet(mbps=100, card_gb=0.5)))
    assert made.rolled == 60
    assert made.gigabytes == pytest.approx(0.75 * 1.2)
    assert made.cards == 2
    assert day.plan([planned(1)], Episode()).gigabytes is None


def test_what_is_dropped_is_told_with_what_it_would_take_and_the_rest_fits() -> None:
    shots = [planned(n, f"{n}", place=f"{n}", priority=one) for n, one in enumerate(("must", "nice", "should"), 1)]
    made = day.plan(shots, Episode(day=CallSheet(hours=1000)))
    assert [(one.shot.number, one.seconds) for one in made.dropped] == [(3, 945), (2, 945)]
    assert made.end <= 1000 == made.window
    assert [one.shot.number for one in made.clips] == [1]


def test_the_sponsors_part_is_early() -> None:
    shots = [planned(n, f"{n}", place=f"{n}", segment=name) for n, name in enumerate(("one", "two", "ad"), 1)]
    made = day.plan(shots, Episode(sponsor=Sponsor(name="Q", segment="ad")))
    assert made.clips[0].shot.segment == "ad"


def test_a_day_without_shots_is_empty() -> None:
    made = day.plan([], Episode(day=CallSheet(hours=3600, mbps=100)))
    assert (made.clips, made.end, made.gigabytes, made.cards) == ((), 0, 0, None)
