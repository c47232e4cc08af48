"""How strongly a claim is worded, and whether it speaks of figures, comparisons, causes, health or a sponsor."""

from __future__ import annotations

import pytest

from scriptkit.computing.hearing.claims import compile_cues, judge
from scriptkit.reading.words import load

CUES = compile_cues(load())


def strength(sentence: str) -> str | None:
    return judge(sentence, "", "talk", CUES).strength


def flags(sentence: str, previous: str = "") -> tuple[str, ...]:
    return judge(sentence, previous, "talk", CUES).flags


@pytest.mark.parametrize(
    "sentence",
    [
        "Sleds may build the calves.",
        "The tendon probably adapts.",
        "I suspect the tendon adapts.",
        "Coaches say sleds build the calves.",
        "Heavy hinging can aggravate the hip.",
        "As far as we know, sleds always build the calves.",
        "Sleds are thought to build the calves.",
    ],
)
def test_doubt_frequency_and_reported_belief_hedge_even_beside_certainty(sentence: str) -> None:
    assert strength(sentence) == "hedged"


@pytest.mark.parametrize(
    "sentence",
    [
        "Sleds always build the calves.",
        "It is proven that sleds build the calves.",
        "Every runner needs a sled.",
        "No drill ever built the calves.",
        "Nothing builds the calves like a sled.",
    ],
)
def test_certainty_and_universal_reach_are_absolute(sentence: str) -> None:
    assert strength(sentence) == "absolute"


@pytest.mark.parametrize(
    "sentence",
    [
        "Sleds build the calves.",
        "About half of them build the calves.",
        "Nobody has tested sleds.",
        "Nobody measured sleds.",
        "That tells you nothing about growth.",
        "It adds almost nothing.",
        "They trained every day for a month.",
        "Most people can lift it.",
        "Runners were twice as likely to finish.",
    ],
)
def test_the_rest_is_plain(sentence: str) -> None:
    assert strength(sentence) == "plain"


@pytest.mark.parametrize(
    ("sentence", "expected"),
    [
        ("The trial ran for nine weeks.", ("numeric",)),
        ("The soleus is flatter than the gastrocnemius.", ("comparative",)),
        ("Sleds build the calves.", ("causal",)),
        ("Runners with a stiff ankle have shin pain.", ("health",)),
        ("Tendinopathy is common in runners.", ("health",)),
        ("The soleus lies under the gastrocnemius.", ()),
    ],
)
def test_a_claim_tells_what_it_speaks_of(sentence: str, expected: tuple[str, ...]) -> None:
    assert flags(sentence) == expected


@pytest.mark.parametrize(
    "sentence",
    ["Your knees will thank you.", "It chews up elbows.", "This one is friendly to the shoulder."],
)
def test_a_joint_and_what_is_done_to_it_speak_of_health(sentence: str) -> None:
    assert "health" in flags(sentence)


@pytest.mark.parametrize("sentence", ["Snap the hips.", "The knee bends.", "The dog hates it, and the knee bends."])
def test_a_joint_alone_and_a_cue_do_not(sentence: str) -> None:
    assert "health" not in flags(sentence)


def test_a_threshold_compares_nothing() -> None:
    assert "comparative" not in flags("The hold lasted longer than sixty seconds.")


@pytest.mark.parametrize(
    ("sentence", "compared"),
    [
        ("On rings you lower yourself for longer and build the triceps.", False),
        ("To lower the bar slowly builds the triceps.", False),
        ("They lift fast and lower slowly, which builds the triceps.", False),
        ("The leg lower is a plank that moves and builds the core.", False),
        ("The pulse was lower on the bench.", True),
        ("Peak forces came out lower with straps.", True),
        ("The sled had lower peak forces.", True),
        ("It was a much lower pulse.", True),
    ],
)
def test_to_lower_something_compares_nothing(sentence: str, compared: bool) -> None:
    assert ("comparative" in flags(sentence)) is compared


def test_commands_and_opinions_may_speak_of_health_but_not_of_figures() -> None:
    assert flags("Stop after two sets if your knee hurts.") == ("health",)


def test_a_phrase_that_holds_a_medical_word_by_chance_is_passed_over() -> None:
    assert "health" not in flags("Her heart rate rose.")


def test_a_sentence_carries_on_a_paid_passage_that_just_began() -> None:
    assert "sponsor" in flags("They make socks.", previous="This part is sponsored by Quennick Socks.")
    assert "sponsor" in flags("Quennick makes socks.", previous="This part is sponsored by Quennick Socks.")
    assert "sponsor" not in flags("They make socks.", previous="On to the next one.")
