"""Sources that disagree and are not mentioned, and those that are left out."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from tests.scripts import Write, worked_out
from tests.weighed import HEAD, TRIAL, doubts, kinds, study, told

AGAINST = study("lind", "design: randomised trial, n: 90", grip="outcome: grip strength")
WEAK = study("lind", "design: cohort, n: 90", grip="outcome: grip strength")
OTHER = study("lind", "design: randomised trial, n: 90", grip="outcome: muscle growth, measure: MRI")
SAYS = "Hangs made the grip of 60 people stronger. [from mora grip]"
CLAIM = "{say: Hangs work., source: [{id: mora, finding: grip}, {id: lind, finding: grip, stance: against}]}"
CLAIMED = f"title: One\nexercises: {{hang: {{name: Bar hang, claims: [{CLAIM}]}}}}\n"


def test_a_source_against_it_that_only_the_outline_names(episode: Write) -> None:
    [doubt] = doubts(episode, SAYS, TRIAL + AGAINST, CLAIMED)
    assert (doubt.kind, doubt.source, doubt.has) == ("dissent", "lind", "against")


def test_a_link_alone_is_not_heard(episode: Write) -> None:
    text = "Hangs made the grip of 60 people stronger. [from mora grip, lind grip against]"
    assert kinds(episode, text, TRIAL + AGAINST) == ["dissent"]


def test_a_segment_is_asked_for_it_once(episode: Write) -> None:
    again = "So hangs make the grip stronger. [from mora grip]"
    assert kinds(episode, f"{SAYS} {again}", TRIAL + AGAINST, CLAIMED) == ["dissent"]


@pytest.mark.parametrize(
    "more",
    [
        "A trial of 90 did not. [from lind grip against]",
        "Mind you, the trials disagree. [aside]",
        "Another trial found less. [aside]",
    ],
)
def test_a_sentence_on_it_settles_it(episode: Write, more: str) -> None:
    assert kinds(episode, f"{SAYS} {more}", TRIAL + AGAINST, CLAIMED) == []


def test_a_weaker_source_need_not_be_mentioned(episode: Write) -> None:
    assert kinds(episode, SAYS, TRIAL + WEAK, CLAIMED) == []


def test_a_source_on_another_outcome_is_no_dissent(episode: Write) -> None:
    head = CLAIMED.replace("[{id: mora, finding: grip}, ", "[")
    assert kinds(episode, SAYS, TRIAL + OTHER, head) == []
    assert kinds(episode, SAYS, TRIAL + AGAINST, head) == ["dissent"]


def test_another_segment_that_says_it_again_has_to_mention_it_too(episode: Write) -> None:
    outline = f"{HEAD}order: [hang, row, {{segment: end, kind: talk}}]\nsources:\n{TRIAL}{AGAINST}"
    texts = {
        "outline.yaml": outline,
        "segments/hang.md": f"{SAYS} A trial of 90 did not. [from lind grip against]\n",
        "segments/end.md": "So the bar hang makes you stronger. [from mora grip]\n",
    }

    def at_the_end(more: Mapping[str, str]) -> list[str]:
        facts = worked_out(episode({**texts, **more}))
        return [doubt.kind for one in facts.weights["end"] if one for doubt in one.doubts]

    assert at_the_end({}) == ["dissent"]
    assert at_the_end({"segments/end.md": texts["segments/end.md"] + "The trials don't agree, though. [aside]\n"}) == []


def test_a_study_of_the_same_outcome_that_nobody_links_to(episode: Write) -> None:
    [doubt] = doubts(episode, f"{SAYS} {SAYS}", TRIAL + AGAINST)
    assert (doubt.kind, doubt.source, doubt.has) == ("left-out", "lind", "grip strength")


def test_another_site_is_another_question(episode: Write) -> None:
    here = study("mora", "design: RCT, n: 90", grip="outcome: muscle growth, site: calf")
    there = study("lind", "design: RCT, n: 90", grip="outcome: muscle growth, site: thigh")
    assert kinds(episode, "The calf grew. [from mora grip]", here + there) == []


def test_nothing_is_told_where_nobody_disagrees(episode: Write) -> None:
    assert told(episode, SAYS, TRIAL).weights["hang"][0] is not None
    assert kinds(episode, SAYS, TRIAL) == []
