"""That two things do the same, or that one does nothing, is found where the sources do not show it, and only there."""

from __future__ import annotations

import pytest

from tests.scripts import Write
from tests.weighed import kinds, study

OPEN = study("open", "design: RCT, n: 90", a="outcome: grip strength, effect: 0.1, ci: [-0.5, 0.7]")
EVEN = study("even", "design: RCT, n: 640", a="outcome: grip strength, effect: 0.02, ci: [-0.1, 0.13]")
CLEAR = study("clear", "design: RCT, n: 480", a="outcome: grip strength, effect: 0.8, ci: [0.6, 1.0]")
ALL = OPEN + EVEN + CLEAR


@pytest.mark.parametrize(
    "text",
    [
        "Hangs and rows build grip strength equally.",
        "For grip strength, hangs and rows do the same job.",
        "Hangs don't build any more grip strength than rows.",
        "You get identical strength from hangs and rows.",
        "Between hangs and rows there is nothing to choose for strength: nothing between them.",
        "For grip strength, hangs are on a par with rows.",
    ],
)
def test_sameness_in_many_words_needs_an_interval_that_shows_it(episode: Write, text: str) -> None:
    assert "no-difference" in kinds(episode, f"{text} [from open a]", ALL)
    assert "no-difference" not in kinds(episode, f"{text} [from even a]", ALL)


@pytest.mark.parametrize(
    "text",
    [
        "Grip strength rose about the same in both groups, and that leaves a lot of room. [from open a]",
        "Grip strength grew about the same. [from open a] With so few people, we can't rule it out. [from open a]",
    ],
)
def test_sameness_whose_doubt_is_owned_is_left_alone(episode: Write, text: str) -> None:
    assert "no-difference" not in kinds(episode, text, ALL)


def test_an_effect_that_is_denied_against_its_source_is_told(episode: Write) -> None:
    assert "denied" in kinds(episode, "Hangs don't build grip strength. [from clear a]", ALL)
    assert "denied" in kinds(episode, "Hangs won't make your grip any stronger. [from clear a]", ALL)


@pytest.mark.parametrize(
    "text",
    [
        "Hangs build grip strength. [from clear a]",
        "Hangs alone don't build grip strength. [from clear a]",
        "Hangs don't build grip strength overnight. [from clear a]",
        "Hangs don't build more grip strength than pinches. [from clear a]",
        "Hangs don't build grip strength. [from even a]",
        "Hangs don't build grip strength. [from clear a against]",
    ],
)
def test_a_limit_or_another_comparison_is_no_denial(episode: Write, text: str) -> None:
    assert "denied" not in kinds(episode, text, ALL)
