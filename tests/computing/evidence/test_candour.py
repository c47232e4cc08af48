"""What a script has to say of its sources: few people, a preprint, a correction, a concern."""

from __future__ import annotations

import pytest

from tests.scripts import Write
from tests.weighed import HEAD, doubts, kinds, study, told

SMALL = study("s", "design: randomised trial, n: 24, n_per_group: 12", a="outcome: grip strength")
SAYS = "One trial made the grip stronger. [from s a]"


@pytest.mark.parametrize(
    "text",
    [
        "One trial of 24 climbers made the grip stronger. [from s a]",
        "One trial, twelve in each group, made the grip stronger. [from s a]",
        "One small trial made the grip stronger. [from s a]",
        f"{SAYS} It had 24 people.",
        f"[screen: 24 climbers] {SAYS}",
    ],
)
def test_few_people_are_said_by_number_or_word(episode: Write, text: str) -> None:
    assert kinds(episode, SAYS, SMALL) == ["few"]
    assert kinds(episode, text, SMALL) == []


def test_few_people_are_told_of_once(episode: Write) -> None:
    assert kinds(episode, f"{SAYS}\n\n{SAYS}", SMALL) == ["few"]
    [doubt] = doubts(episode, SAYS, SMALL)
    assert doubt.has == "24 people, 12 in a group"


@pytest.mark.parametrize("what", ["design: survey, n: 12", "design: textbook, n: 1", "design: randomised trial, n: 60"])
def test_enough_people_or_no_comparison(episode: Write, what: str) -> None:
    assert kinds(episode, SAYS, study("s", what, a="outcome: grip strength")) == []


@pytest.mark.parametrize(
    ("status", "kind", "said"),
    [
        ("preprint", "preprint", "It hasn't been peer reviewed."),
        ("concern", "concern", "The journal put an expression of concern on it."),
        ("corrected", "correction", "It was corrected last year."),
    ],
)
def test_what_became_of_a_work_is_said_in_each_segment(episode: Write, status: str, kind: str, said: str) -> None:
    source = study("s", f"design: randomised trial, n: 90, status: {status}", a="outcome: grip strength")
    assert kinds(episode, f"{SAYS}\n\n{SAYS}", source) == [kind]
    assert kinds(episode, f"{SAYS} {said}", source) == []


def test_a_note_on_the_correction_settles_it(episode: Write) -> None:
    what = "design: randomised trial, n: 90, status: corrected, note: Reread; only a name changed"
    assert kinds(episode, SAYS, study("s", what, a="outcome: grip strength")) == []


def test_a_design_that_is_not_known_is_told_with_the_nearest(episode: Write) -> None:
    [doubt] = doubts(episode, SAYS, study("s", "design: cohrt, n: 90", a="outcome: grip strength"))
    assert (doubt.kind, doubt.said, doubt.has) == ("design", "cohrt", 'Did you mean "cohort"?')


@pytest.mark.parametrize(("certainty", "kind"), [("high", "far-above"), ("low", "step-above"), ("very low", "")])
def test_a_certainty_of_the_register_above_what_the_study_bears(episode: Write, certainty: str, kind: str) -> None:
    source = study("s", "design: pre-post, n: 90", a=f"outcome: grip strength, certainty: {certainty}")
    assert kinds(episode, f"{SAYS} {SAYS}", source) == ([kind] if kind else [])


def test_a_source_that_is_not_there_is_left_to_others(episode: Write) -> None:
    assert told(episode, "It rose. [from nobody]", SMALL, HEAD).weights["hang"][0] is not None
    assert kinds(episode, "It rose. [from nobody]", SMALL) == []
