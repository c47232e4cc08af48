"""A load is heavy by its words, and by its numbers where it has none that say otherwise."""

from __future__ import annotations

import pytest

from scriptkit.computing.shooting import loads
from scriptkit.model import Exercise
from scriptkit.reading import words
from tests.computing.shooting.days import planned

HEAVY = ["60 kg", "working weight", "Heavy", "2x24kg", "50 lb", "80 %", "75% of 1RM", "60-80 kg", "heavy, not light"]
LIGHT = ["", "empty bar", "empty bar, 20 kg", "20 kg", "5 kg", "40 lb", "none", "light", "no load", "30 %", "band"]


@pytest.mark.parametrize("load", HEAVY)
def test_heavy(load: str) -> None:
    assert loads.heavy(load, words.load())


@pytest.mark.parametrize("load", LIGHT)
def test_not_heavy(load: str) -> None:
    assert not loads.heavy(load, words.load())


def test_shots_are_marked_by_their_load_or_by_the_exercises_caution() -> None:
    exercises = {"lift": Exercise(id="lift", cautions=("maximal-load",)), "hang": Exercise(id="hang")}
    shots = [
        planned(1, load="60 kg"),
        planned(2, load="empty"),
        planned(3, segment="lift", reps=2),
        planned(4, segment="lift", reps=2, form="fault"),
        planned(5, segment="lift", reps=2, load="empty"),
        planned(6, segment="lift", talking=True),
    ]
    assert [one.number for one in loads.judged(shots, exercises, words.load()) if one.heavy] == [1, 3]


@pytest.mark.parametrize("load", ["1,000 kg", "22,5 kg", "60-kg bar", "60-kilo bar", "60 kg (not light)", "60-80 kg"])
def test_a_number_is_read_however_it_is_written(load: str) -> None:
    assert loads.heavy(load, words.load())


@pytest.mark.parametrize("load", ["7,5 kg", "10-kg plate", "not heavy, 10 kg"])
def test_a_light_number_stays_light(load: str) -> None:
    assert not loads.heavy(load, words.load())
