"""What changes from one station to another, and what that takes."""

from __future__ import annotations

from typing import Any

import pytest

from scriptkit.computing.shooting.stations import Price, changes, seconds, stations
from scriptkit.model import CallSheet
from tests.computing.shooting.days import planned

PRICE = Price.of(CallSheet())
HERE: dict[str, Any] = {"place": "rack", "plane": "side", "kit": ("bar",), "people": ("Ana",)}


@pytest.mark.parametrize(
    ("setup", "other", "wanted", "minutes"),
    [
        ("B", {}, (), 0),
        ("B", {"place": " RACK "}, (), 0),
        ("C", {}, ("framing",), 4),
        ("C", {"plane": "front"}, ("side",), 8),
        ("C", {"place": "wall", "plane": "front"}, ("place",), 15),
        ("C", {"place": "wall", "kit": ()}, ("place", "kit"), 20),
        ("B", {"people": ("Ben",)}, ("framing", "people"), 7),
        ("B", {"wear": "red shirt"}, ("framing", "people"), 7),
        ("B", {"kit": ("bar", "box"), "people": ("Ben",)}, ("framing", "kit", "people"), 12),
    ],
)
def test_what_changes(setup: str, other: dict[str, Any], wanted: tuple[str, ...], minutes: float) -> None:
    one, two = stations([planned(1, "B", **HERE), planned(2, setup, **{**HERE, **other})])
    assert changes(one, two) == changes(two, one) == wanted
    assert seconds(one, two, PRICE) == seconds(two, one, PRICE) == 60 * minutes


def test_a_larger_change_of_the_camera_never_takes_less_than_a_smaller_one() -> None:
    price = Price.of(CallSheet(setup=60, side=120, reframe=300))
    assert (price.place, price.side, price.framing) == (300, 300, 300)


@pytest.mark.parametrize(
    ("shot", "talks"),
    [
        ({"sound": "sync"}, True),
        ({"sound": "sync", "reps": 3}, False),
        ({"sound": "wild"}, False),
        ({"of": "presenter at the rack"}, False),  # of an exercise
    ],
)
def test_what_belongs_to_the_talk(shot: dict[str, Any], talks: bool) -> None:
    assert stations([planned(1, "B", **shot)])[0].talking is talks


def test_who_films_with_the_camera_of_the_talk_belongs_to_it() -> None:
    assert [one.talking for one in stations([planned(1, "A", talking=True), planned(2, "A"), planned(3, "B")])] == [
        True,
        True,
        False,
    ]
