"""Findings on whom and how a source measured, and on the author's certainty."""

from __future__ import annotations

import pytest

from tests.scripts import Write, found
from tests.weighed import TRIAL, places, study, told

GRIP = "outcome: grip strength"
SAYS = "Hangs make lifters stronger. [from s a]"


@pytest.mark.parametrize(
    ("name", "text", "what", "finding", "column"),
    [
        ("beginners-for-lifters", SAYS, "design: RCT, n: 90, training: untrained", GRIP, 12),
        ("animals-for-people", SAYS, "design: animal study, n: 90", GRIP, 1),
        ("rough-measure", "Hangs grew muscle. [from s a]", "design: RCT, n: 90", "outcome: arm size, measure: tape", 7),
        ("growth-too-early", "Hangs grew muscle. [from s a]", "design: RCT, duration_weeks: 3", "outcome: growth", 7),
    ],
)  # fmt: skip
def test_it_stands_at_the_words(episode: Write, name: str, text: str, what: str, finding: str, column: int) -> None:
    assert places(episode, name, text, study("s", what, a=finding)) == [f"segments/hang.md:1:{column}"]


def test_for_whom_an_episode_is_counts_as_well(episode: Write) -> None:
    head = "title: One\naudience: lifters\nexercises: {hang: {name: Bar hang}}\n"
    source = study("s", "design: RCT, n: 90, training: untrained, population: students", a=GRIP)
    facts = told(episode, "Hangs make you stronger. [from s a]", source, head)
    [(_, message)] = found(facts, "beginners-for-lifters")
    assert message.startswith('The people of s had not trained ("students"), and this is for people who have')


def claimed(more: str) -> str:
    claim = f'{{say: "Hangs make you stronger.", source: {{id: mora, finding: grip}}, {more}}}'
    return f"title: One\nexercises:\n  hang:\n    name: Bar hang\n    claims:\n      - {claim}\n"


def test_a_certainty_that_is_higher_wants_a_reason(episode: Write) -> None:
    facts = told(episode, "Hangs make you stronger.", TRIAL, claimed("certainty: high"))
    [(place, message)] = found(facts, "certainty-without-reason")
    assert place == "outline.yaml:6:89"
    assert message == (
        '"high" is more than its sources give, moderate: randomised: starts high; '
        "60 people, fewer than 400: one step down."
    )


@pytest.mark.parametrize("more", ["certainty: moderate", "certainty: low", "certainty: high, reason: I was there"])
def test_one_that_is_lower_or_has_a_reason_is_the_authors(episode: Write, more: str) -> None:
    assert found(told(episode, "Hangs make you stronger.", TRIAL, claimed(more)), "certainty-without-reason") == []


@pytest.mark.parametrize(
    ("certainty", "name"), [("high", "certainty-far-above"), ("low", "certainty-a-step-above"), ("very low", "")]
)
def test_a_certainty_in_the_register(episode: Write, certainty: str, name: str) -> None:
    source = study("s", "design: pre-post, n: 90", a=f"{GRIP}, certainty: {certainty}")
    facts = told(episode, SAYS, source)
    raised = {one for one, _ in found(facts) if one.startswith("certainty-")}
    assert raised == ({name} if name else set())
