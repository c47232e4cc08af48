"""Overused and underused need a figure of use that leans their way, or are opinion."""

from __future__ import annotations

import pytest

from tests.ranked import CLEAR, found, says
from tests.scripts import Write

NAMES = ("use-without-figure", "use-unsourced", "use-against-figure", "use-hardly-off")


def told(episode: Write, text: str, use: str = "") -> list[str]:
    facts = says(episode, text, CLEAR, hang=use)
    return [name for name in NAMES if found(facts, name)]


@pytest.mark.parametrize(
    ("text", "use", "names"),
    [
        ("It's overused. [aside]", "", ["use-without-figure"]),
        ("To me it's overused. [opinion]", "", []),
        ("It isn't overused. [aside]", "", []),
        ("Is it overused?", "", []),
        ("To me it's overrated. [opinion]", "", []),
        ("To me it's underused. [opinion]", "use: {share: 0.1, source: mora, seen: 2026-01}", []),
        ("To me it's overused. [opinion]", "use: {share: 0.1, source: mora, seen: 2026-01}", ["use-against-figure"]),
        ("To me it's underused. [opinion]", "use: {share: 0.1, source: mora}", ["use-unsourced"]),
        ("To me it's underused. [opinion]", "use: {share: 0.1, seen: 2026-01}", ["use-unsourced"]),
        ("It's underused. [aside]", "use: {share: 0.9, source: mora, seen: 2026-01}", ["use-hardly-off"]),
    ],
)
def test_the_word_is_held_against_the_figure(episode: Write, text: str, use: str, names: list[str]) -> None:
    assert told(episode, text, use) == names


def test_it_is_told_at_the_word_and_of_the_exercise_it_names(episode: Write) -> None:
    facts = says(episode, "I like it. [opinion]\nThe ring row is overused. [aside]", CLEAR)
    (place, message), *more = found(facts, "use-without-figure")
    assert (place, more) == ("segments/hang.md:2:17", [])
    assert '"Ring row"' in message
