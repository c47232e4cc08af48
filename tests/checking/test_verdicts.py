"""What a fact-checker ruled is told at the sentence, as long as the sentence stays the same."""

from __future__ import annotations

import pytest

from tests.scripts import GRIP, Write, found, helps, worked_out

RISES = "In one trial, hang time rose by a third. [from mora-2022]"


def with_verdicts(episode: Write, text: str, *verdicts: str) -> None:
    lines = "".join(f"  - {{{one}}}\n" for one in verdicts)
    episode({"outline.yaml": GRIP, "segments/hang.md": text, "verdicts.yaml": f"verdicts:\n{lines}"})


def told(episode: Write, name: str, stage: str = "record") -> list[tuple[str, str]]:
    return found(worked_out(episode({})), name, stage)


def test_an_unsupported_sentence_is_an_error_with_the_note_of_the_verdict(episode: Write) -> None:
    words = 'sentence: "In one trial, hang time rose by a third."'
    with_verdicts(
        episode, f"Hi. [aside] {RISES}", f"{words}, verdict: unsupported, note: by a fifth, page: 7, initials: QN"
    )
    assert told(episode, "verdict-unsupported") == [
        (
            "segments/hang.md:1:13",
            '"In one trial, hang time rose by a third." was found unsupported by QN: "by a fifth", page 7.',
        )
    ]


def test_a_change_that_was_asked_for_is_told_until_the_words_change(episode: Write) -> None:
    words = 'sentence: "In one trial, hang time rose by a third."'
    with_verdicts(episode, RISES, f"{words}, verdict: changed, initials: QN, date: 2026-03-02")
    assert len(told(episode, "verdict-asks-for-change")) == 1
    episode({"segments/hang.md": RISES.replace("third", "fifth")})
    assert told(episode, "verdict-asks-for-change") == []
    ((place, message),) = told(episode, "verdict-void")
    assert place == "segments/hang.md:1:1"
    assert message.startswith('The verdict on "In one trial, hang time rose by a third." (changed by QN on 2026-03-02)')
    assert message.endswith("is void: the sentence says something else now.")


def test_a_void_verdict_with_nothing_in_its_place_stands_where_it_is_kept(episode: Write) -> None:
    with_verdicts(episode, "Hi. [aside]", "sentence: Gone for good., verdict: verified")
    assert [place for place, _ in told(episode, "verdict-void")] == ["verdicts.yaml:2:16"]


def test_a_sentence_may_move_and_keeps_its_verdict(episode: Write) -> None:
    with_verdicts(episode, RISES, 'sentence: "in one trial,  hang time rose by a third.", verdict: verified')
    for text in (RISES, f"Hi. [aside]\n\n{RISES}"):
        episode({"segments/hang.md": text})
        assert told(episode, "verdict-void") == told(episode, "claims-not-verified", "publish") == []


NO_CLAIM = "verdict: no claim, note: a joke"


def test_a_ruling_that_it_is_no_claim_silences_the_check_while_the_words_stay(episode: Write) -> None:
    with_verdicts(episode, "Hanging builds strength.", f"sentence: Hanging builds strength., {NO_CLAIM}")
    assert told(episode, "claim-without-source") == []
    episode({"segments/hang.md": "Hanging builds more strength."})
    assert len(told(episode, "claim-without-source")) == 1


@pytest.mark.parametrize("mark", ["", " [aside]"])
def test_no_ruling_settles_an_effect_on_health(episode: Write, mark: str) -> None:
    with_verdicts(
        episode, f"Hanging lowers blood pressure.{mark}", f"sentence: Hanging lowers blood pressure., {NO_CLAIM}"
    )
    assert len(told(episode, "claim-without-source")) == 1


def test_claims_without_a_verdict_are_counted_once_where_a_check_has_begun(episode: Write) -> None:
    text = f"{RISES} In another trial, hang time fell by a tenth. [from lind-2019] I like both. [opinion]"
    with_verdicts(episode, text, 'sentence: "In one trial, hang time rose by a third.", verdict: verified')
    assert told(episode, "claims-not-verified", "publish") == [
        (
            "segments/hang.md:1:59",
            '1 of 2 claims have no verdict yet; the first is "In another trial, hang time fell by a tenth.".',
        )
    ]
    assert "`scriptkit claims`" in helps(worked_out(episode({})), "claims-not-verified")[0]


def test_an_author_s_own_rulings_are_no_fact_check(episode: Write) -> None:
    with_verdicts(episode, f"{RISES} Bye.", f"sentence: Bye., {NO_CLAIM}")
    assert told(episode, "claims-not-verified", "publish") == []
