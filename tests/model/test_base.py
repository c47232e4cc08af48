"""A spot knows where a part of the outline stands, and each of its keys."""

from __future__ import annotations

from scriptkit.model import Spot
from scriptkit.places import Place


def test_a_key_that_is_there_has_a_place_of_its_own() -> None:
    spot = Spot(Place("outline.yaml", 3, 3), {"grade": Place("outline.yaml", 5, 12)})
    assert spot.of("grade") == Place("outline.yaml", 5, 12)


def test_a_key_that_is_missing_is_looked_for_at_the_part_itself() -> None:
    assert Spot(Place("outline.yaml", 3, 3)).of("grade") == Place("outline.yaml", 3, 3)
