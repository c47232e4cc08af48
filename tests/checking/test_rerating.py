"""A second rating is held against the first: gaps want an answer, changed grades a word."""

from __future__ import annotations

import pytest

from tests.ranked import CLEAR, found, outline
from tests.scripts import Write, worked_out

NAMES = ("rerating-unanswered", "rerating-changes-grade", "rerating-of-nothing", "rerating-off-scale")


def told(episode: Write, ratings: str) -> dict[str, str]:
    """Name and place of what is found; the first ratings are 5 and 5, and 3 and 4."""
    facts = worked_out(episode({"outline.yaml": outline(CLEAR), "ratings-again.yaml": f"ratings: {{{ratings}}}\n"}))
    return {name: found(facts, name)[0][0] for name in NAMES if found(facts, name)}


@pytest.mark.parametrize(
    ("ratings", "names"),
    [
        ("hang: {steady: 5, quick: 5}", {}),
        ("hang: {steady: 4}", {}),
        ("hang: {steady: 3, quick: {score: 3, answer: A.}}", {"rerating-unanswered": "", "rerating-changes-grade": ""}),
        ("row: {quick: 3}", {"rerating-changes-grade": "outline.yaml:10:34"}),
        ("row: {quick: {score: 3, answer: The first one stands.}}", {}),
        (
            "hang: {steady: 3}",
            {"rerating-unanswered": "ratings-again.yaml:1:26", "rerating-changes-grade": "outline.yaml:9:35"},
        ),
        ("hang: {steady: {score: 3, answer: Rated with wet hands.}}", {}),
        ("hagn: {steady: 5}", {"rerating-of-nothing": "ratings-again.yaml:1:11"}),
        ("hang: {stedy: 5}", {"rerating-of-nothing": "ratings-again.yaml:1:18"}),
        ("hang: {steady: 6}", {"rerating-off-scale": "ratings-again.yaml:1:26"}),
    ],
)
def test_what_is_told_and_where(episode: Write, ratings: str, names: dict[str, str]) -> None:
    found_ = told(episode, ratings)
    assert {name: place if names.get(name) else "" for name, place in found_.items()} == names


def test_without_a_second_rating_nothing_is(episode: Write) -> None:
    facts = worked_out(episode({"outline.yaml": outline(CLEAR)}))
    assert facts.again is None
    assert [name for name in NAMES if found(facts, name)] == []
