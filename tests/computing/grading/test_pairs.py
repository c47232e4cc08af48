"""Words by which one exercise ranks before another, and look-alikes that say something else."""

from __future__ import annotations

import pytest

from scriptkit.computing.grading import pairs
from scriptkit.computing.grading.naming import names_of
from scriptkit.model import Episode, Exercise

NAMES = names_of(Episode(exercises={"press": Exercise("press", "Floor press"), "row": Exercise("row", "Bar row")}))


def found(text: str, own: str = "") -> tuple[str, str] | None:
    one = pairs.find(text, NAMES.find(text), own)
    return one and one[:2]


@pytest.mark.parametrize(
    "text",
    [
        "The bar row beats the floor press.",
        "The bar row comes out ahead of the floor press.",
        "The bar row ranks above the floor press.",
        "The bar row is a better pick than the floor press.",
        "The bar row clearly wins against the floor press.".replace("clearly ", ""),
        "The floor press loses to the bar row.",
        "The floor press comes second, behind the bar row.",
        "The floor press is second to the bar row.",
        "No doubt about it: the bar row beats the floor press.",
    ],
)
def test_who_is_before_whom(text: str) -> None:
    assert found(text) == ("row", "press")


def test_in_its_own_segment_an_exercise_need_not_be_named() -> None:
    assert found("For me it beats the floor press.", "row") == ("row", "press")
    assert found("For me it beats the floor press.") is None


@pytest.mark.parametrize(
    "text",
    [
        "The bar row doesn't beat the floor press.",
        "I'd do the bar row ahead of the floor press.",
        "If you like noise, the bar row beats the floor press.",
        "On set-up alone the bar row ranks above the floor press.",
        "I used to say that the bar row beats the floor press.",
        "For small rooms the bar row is better than the floor press.",
        "Neither beats the other.",
        "The bar row beats nothing.",
    ],
)
def test_what_is_denied_conditional_or_in_one_respect_ranks_nobody(text: str) -> None:
    assert found(text) is None
