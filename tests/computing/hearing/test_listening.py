"""What a listener hears: opinion as opinion, and signs that cannot be read."""

from __future__ import annotations

from tests.scripts import Write, with_hang


def test_each_sentence_has_its_judgement_and_whether_opinion_is_heard(episode: Write) -> None:
    facts = with_hang(episode, "I like it best, I think. It builds strength.")
    assert facts.heard["hang"] == (True, False)
    assert [one.kind for one in facts.judgements["hang"]] == ["opinion", "claim"]


def test_a_claim_with_a_source_behind_it_is_surely_one(episode: Write) -> None:
    facts = with_hang(episode, "Hotel doors have frames. [aside] Hotel doors have frames. [from mora-2022]")
    assert [one.sure for one in facts.judgements["hang"]] == [False, True]


def test_beside_a_caution_mark_a_warning_is_no_claim(episode: Write) -> None:
    facts = with_hang(episode, "A sore elbow can flare up. [caution elbow] A sore elbow can flare up. [aside]")
    assert [one.kind for one in facts.judgements["hang"]] == ["instruction", "claim"]


def test_a_sign_is_found_where_it_stands(episode: Write) -> None:
    facts = with_hang(episode, "I like it.\n\n- Do three sets ≥ ten\n  reps × two. [aside]")
    assert [(one.sign, one.place.line, one.place.column) for one in facts.signs] == [("≥", 3, 17), ("×", 4, 8)]
