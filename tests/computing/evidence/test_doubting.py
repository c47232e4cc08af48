"""What is said and shown in a segment, and doubts at the words they are about."""

from __future__ import annotations

from tests.scripts import Write, segment
from tests.weighed import TRIAL, doubts, kinds, told

PREPRINT = TRIAL.replace("design:", "status: preprint, design:")
SAYS = "Hangs made the grip stronger in 60 people. [from mora grip]"


def test_a_doubt_stands_at_its_words(episode: Write) -> None:
    text = "In 60 people, hangs grew the forearm. [from mora grip]"
    [doubt] = doubts(episode, text, TRIAL)
    assert (doubt.kind, doubt.said, doubt.place.column, doubt.source) == ("other-outcome", "grew", 21, "mora")


def test_what_is_on_screen_is_told_too(episode: Write) -> None:
    assert kinds(episode, SAYS, PREPRINT) == ["preprint"]
    assert kinds(episode, f"[screen: Not yet peer reviewed] {SAYS}", PREPRINT) == []
    assert kinds(episode, f"{SAYS}\n\n[screen: A preprint]\n", PREPRINT) == []


def test_doubts_stand_with_the_weight_of_their_sentence(episode: Write) -> None:
    facts = told(episode, f"Hello. [aside]\n\n{SAYS}", PREPRINT)
    found = [bool(one and one.doubts) for one in facts.weights["hang"]]
    assert found == [False, True]
    assert len(found) == len(segment(facts).sentences)
