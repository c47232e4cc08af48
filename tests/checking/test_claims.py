"""A statement needs a source, or words and mark of an opinion; an effect on health needs a source in any case."""

from __future__ import annotations

import pytest

from scriptkit.model import Verdict
from tests.scripts import Write, found, with_hang, worked_out

NAME = "claim-without-source"


def test_the_message_quotes_the_sentence_and_the_words_that_gave_it_away(episode: Write) -> None:
    facts = with_hang(episode, "Hi. [aside]\n\n- I say: hanging builds strength.")
    assert found(facts, NAME) == [
        (
            "segments/hang.md:3:3",
            '"I say: hanging builds strength." states a fact ("builds") and nothing stands behind it.',
        )
    ]


@pytest.mark.parametrize("mark", ["[from mora-2022]", "[aside]", "[sponsor says]", "[opinion]"])
def test_a_mark_settles_it(episode: Write, mark: str) -> None:
    assert found(with_hang(episode, f"Hanging builds strength. {mark}"), NAME) == []


def test_a_caution_mark_settles_the_warning_and_not_the_gain_beside_it(episode: Write) -> None:
    text = "Hanging doubles your grip, and warm up first. [caution warm-up]"
    assert [place for place, _ in found(with_hang(episode, text), NAME)] == ["segments/hang.md:1:1"]
    for honest in (
        "A sore elbow can flare up. [caution x]",
        "If your elbow hurts, see a licensed clinician. [caution x]",
    ):
        assert found(with_hang(episode, honest), NAME) == []


def test_an_opinion_does_not_settle_an_effect_on_health_and_the_message_names_the_word(episode: Write) -> None:
    facts = with_hang(episode, "In my view it protects your rotator cuff from tears. [opinion]")
    message = found(facts, NAME)[0][1]
    assert "effect on health" in message
    assert '"tears"' in message
    assert found(facts, "opinion-not-heard") == []


@pytest.mark.parametrize(
    "honest",
    [
        "That's for a licensed clinician who can examine you.",
        "None of these balms cures anything. [aside]",
        "You'll hear that pull-ups wreck elbows. [aside]",
        "I found no trial that sets it against rings, so what follows is taste. [opinion]",
    ],
)
def test_a_deferral_a_denial_a_reported_belief_and_an_empty_search_are_let_be(episode: Write, honest: str) -> None:
    facts = with_hang(episode, honest)
    assert found(facts, NAME) + found(facts, "opinion-not-heard") == []


def test_one_finding_a_sentence_where_an_effect_on_health_is_marked_and_not_heard_as_opinion(episode: Write) -> None:
    facts = with_hang(episode, "Hanging eases back pain. [opinion]")
    assert len(found(facts, NAME) + found(facts, "opinion-not-heard")) == 1


def test_what_only_may_be_a_claim_is_a_note_that_a_mark_settles(episode: Write) -> None:
    text = "Hotel doors have frames."
    assert found(with_hang(episode, text), NAME) == []
    assert found(with_hang(episode, text), "may-be-a-claim") == [
        ("segments/hang.md:1:1", '"Hotel doors have frames." may state a fact ("have").')
    ]
    for mark in ("[aside]", "[opinion]", "[from mora-2022]"):
        facts = with_hang(episode, f"{text} {mark}")
        assert found(facts, "may-be-a-claim") + found(facts, "opinion-not-heard") == []


def test_a_ruling_that_it_is_no_claim_settles_it(episode: Write) -> None:
    facts = with_hang(episode, "Hanging builds strength.")
    none = {one.id: (None,) * len(one.sentences) for one in facts.segments}
    for verdict, count in (("no claim", 0), ("verified", 1)):
        ruled = {**none, "hang": (Verdict(verdict=verdict),)}
        assert len(found(facts._replace(ruled=ruled), NAME)) == count


def test_what_a_sponsor_claims_of_health_is_told_once(episode: Write) -> None:
    outline = (
        "title: One\nexercises: {hang: {name: Bar hang}}\n"
        "sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid for this.}\n"
    )
    for mark in ("", " [sponsor says]"):
        text = f"Ad. Quennick Socks paid for this. They prevent shin splints.{mark}"
        facts = worked_out(episode({"outline.yaml": outline, "segments/sponsor.md": text}))
        assert found(facts, NAME) == []
        assert len(found(facts, "sponsor-claim-forbidden")) == 1


def test_a_cautions_line_needs_no_mark(episode: Write) -> None:
    outline = (
        "title: One\nexercises: {hang: {name: Bar hang, cautions: [own]}}\ncautions: "
        "{own: {line: A worn band snaps. Look it over.}}\n"
    )
    assert found(with_hang(episode, "A worn band snaps. Look it over.", outline), NAME) == []


@pytest.mark.parametrize("mark", ["[opinion]", "[aside]", "[sponsor says]"])
def test_an_effect_on_health_is_settled_by_a_source_alone(episode: Write, mark: str) -> None:
    assert len(found(with_hang(episode, f"I think hanging eases back pain. {mark}"), NAME)) == 1
    assert found(with_hang(episode, f"I think hanging eases back pain. {mark} [from mora-2022]"), NAME) == []


@pytest.mark.parametrize(
    "text", ["My elbow hurt once. [aside]", "Stop if it hurts. [aside]", "My shoulder hurts when I do it. [opinion]"]
)
def test_ones_own_ache_and_a_word_of_care_are_no_such_effect(episode: Write, text: str) -> None:
    assert found(with_hang(episode, text), NAME) == []


def test_an_opinion_has_to_be_heard(episode: Write) -> None:
    facts = with_hang(
        episode, "Hanging builds the most strength. [opinion]\n\nI think hanging builds the most strength. [opinion]"
    )
    assert [place for place, _ in found(facts, "opinion-not-heard")] == ["segments/hang.md:1:1"]


def test_a_disclosure_of_several_sentences_needs_no_mark(episode: Write) -> None:
    outline = (
        "title: One\nexercises: {hang: {name: Bar hang}}\n"
        "sponsor: {name: Quennick Socks, disclosure: This bit is an ad. Quennick Socks paid for it.}\n"
    )
    drafted = {"outline.yaml": outline}
    own = {**drafted, "segments/sponsor.md": "{{ sponsor.disclosure }}\n\nThis sock is warmer than any other.\n"}
    assert found(worked_out(episode(drafted)), NAME) == []
    assert [place for place, _ in found(worked_out(episode(own)), NAME)] == ["segments/sponsor.md:3:1"]


CLAIMED = (
    "title: One\nexercises: {hang: {name: Bar hang, claims: [{say: Hang time rose by a fifth in one trial., "
    "source: {id: mora-2022, finding: hang}}]}}\n"
    "sources: {mora-2022: {title: Timed hangs, invented: true, findings: {hang: {outcome: hang time}}}}\n"
)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("They held on a lot longer. [from mora-2022 hang]", 0),
        ("They held on a lot longer. [from mora-2022]", 1),
        ("They held on a lot longer. [aside]", 1),
    ],
)
def test_a_claims_sources_behind_other_words_settle_it(episode: Write, text: str, told: int) -> None:
    assert len(found(with_hang(episode, text, CLAIMED), "claim-not-said")) == told


def test_a_grade_that_one_goes_with_is_heard_as_opinion(episode: Write) -> None:
    text = "I'm still going with a B, because you can do them anywhere. [opinion]"
    assert found(with_hang(episode, text), "opinion-not-heard") == []


def test_a_swimmers_stroke_is_no_illness(episode: Write) -> None:
    assert found(with_hang(episode, "I think it does very little for your stroke. [opinion]"), NAME) == []
    assert len(found(with_hang(episode, "I think hanging helps you after a stroke. [opinion]"), NAME)) == 1
