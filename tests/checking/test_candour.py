"""Findings on what a script does not say of its sources."""

from __future__ import annotations

import pytest

from tests.scripts import Write, found, helps
from tests.weighed import TRIAL, places, study, told

SAYS = "In one trial hangs made the grip stronger. [from s grip]"
GRIP = "outcome: grip strength"


@pytest.mark.parametrize(
    ("name", "what"),
    [
        ("few-people-unsaid", "design: RCT, n: 24"),
        ("preprint-unsaid", "design: RCT, n: 90, status: preprint"),
        ("concern-unsaid", "design: RCT, n: 90, status: concern"),
        ("correction-unread", "design: RCT, n: 90, status: corrected"),
        ("source-left-out", "design: RCT, n: 90"),
    ],
)
def test_it_stands_at_the_first_sentence(episode: Write, name: str, what: str) -> None:
    assert places(episode, name, f"{SAYS}\n\n{SAYS}\n", study("s", what, grip=GRIP) + TRIAL) == ["segments/hang.md:1:1"]


def test_few_people_come_with_a_ready_half_sentence(episode: Write) -> None:
    facts = told(episode, SAYS, study("s", "design: RCT, n: 24", grip=GRIP))
    assert helps(facts, "few-people-unsaid") == ['Say it where you speak of it: "a small study, with 24 people".']


@pytest.mark.parametrize(
    ("stance", "words"), [("against", "speaks against this"), ("null", "finds nothing"), ("mixed", "points both ways")]
)
def test_dissent_says_which_way_the_source_points(episode: Write, stance: str, words: str) -> None:
    lind = study("s", "design: RCT, n: 90", grip=GRIP)
    facts = told(episode, f"Hangs make you stronger. [from mora grip, s grip {stance}]", TRIAL + lind)
    [(_, message)] = found(facts, "dissent-unsaid")
    assert message.startswith(f"s {words}, and this segment never says so")
