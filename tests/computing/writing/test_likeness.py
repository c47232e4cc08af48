"""A sentence takes over a claim's sources where it says the same, and not where it says something near."""

from __future__ import annotations

import pytest

from scriptkit.computing.writing.likeness import plain, says_the_same
from tests.scripts import Write, found, sentence, with_hang

CLAIM = "In one trial of 38 climbers, hang time rose by about a fifth in 6 weeks."
OUTLINE = f"""
    title: One
    exercises:
      hang:
        name: Bar hang
        claims:
          - say: {CLAIM}
            source: {{id: mora-2022, finding: hang, stance: mixed}}
          - {{say: I think it is easy to do anywhere., opinion: true}}
    sources: {{mora-2022: {{title: Timed hangs, invented: true, findings: {{hang: {{outcome: hang time}}}}}}}}
    """


@pytest.mark.parametrize(
    "text",
    [
        CLAIM,
        "in one trial of 38 climbers hang time rose — by about a fifth in 6 weeks",
        "In one small trial of 38 climbers, hang time rose by about a fifth in 6 weeks.",
    ],
)
def test_the_same_words_but_for_one_in_seven_say_the_same(text: str) -> None:
    assert says_the_same(text, CLAIM)


@pytest.mark.parametrize(
    "text",
    [
        CLAIM.replace("38", "83"),
        CLAIM.replace("rose", "fell"),
        CLAIM.replace("hang time rose", "hang time never rose"),
        "In one trial of 6 climbers, hang time rose by about a fifth in 38 weeks.",
        "In one trial, hang time rose.",
        "",
    ],
)
def test_another_figure_a_not_or_half_of_it_say_something_else(text: str) -> None:
    assert not says_the_same(text, CLAIM)


def test_who_beats_whom_is_told_by_the_order() -> None:
    assert not says_the_same("The floor raise beats the ledge raise.", "The ledge raise beats the floor raise.")
    assert says_the_same("In one trial the grip grew.", "The grip grew in one trial.")


def test_a_decimal_is_one_figure() -> None:
    assert plain("The side gained 1.6 mm, don’t you know.") == "the side gained 1.6 mm don't you know"


def test_the_sentence_has_the_claims_sources_and_marks(episode: Write) -> None:
    facts = with_hang(episode, f"{CLAIM}\n\nI think it is easy to do anywhere.", OUTLINE)
    assert [(link.id, link.finding, link.stance) for link in sentence(facts, "In one").links] == [
        ("mora-2022", "hang", "mixed")
    ]
    assert sentence(facts, "I think").opinion
    assert found(facts, "claim-not-said") == []


def test_a_source_that_stands_there_already_is_not_taken_over_twice(episode: Write) -> None:
    facts = with_hang(episode, f"{CLAIM} [from mora-2022 hang]", OUTLINE)
    assert len(sentence(facts, "In one").links) == 1


def test_a_claim_that_no_sentence_says_is_told(episode: Write) -> None:
    facts = with_hang(episode, f"{CLAIM}", OUTLINE)
    assert found(facts, "claim-not-said") == [
        ("outline.yaml:8:15", 'The claim "I think it is easy to do anywhere." is not said in segments/hang.md.')
    ]


def test_a_claim_of_two_sentences_is_said_by_two(episode: Write) -> None:
    outline = OUTLINE.replace("I think it is easy to do anywhere.", "I like it. I like it a lot.")
    assert found(with_hang(episode, f"{CLAIM} I like it. I like it a lot. [opinion]", outline), "claim-not-said") == []
