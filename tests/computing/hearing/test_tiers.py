"""Two tiers of claims: what an editor would stop for, and what only may be one; and a warning is no promise."""

from __future__ import annotations

import pytest

from scriptkit.computing.hearing.claims import Judgement, compile_cues, judge
from scriptkit.reading.words import load

CUES = compile_cues(load())


def judged(sentence: str, previous: str = "", *, caution: bool = False) -> Judgement:
    return judge(sentence, previous, "talk", CUES, caution=caution)


@pytest.mark.parametrize(
    "sentence",
    [
        "The soleus crosses one joint.",
        "Sleds build the calves.",
        "In one trial the rowers gained a tenth.",
        "The strap is two metres long.",
        "Coaches say it ruins the knees.",
        "I suspect the tendon adapts later than the muscle.",
        "Every client I've coached got stronger on it.",
        "The sample was tiny.",
    ],
)
def test_a_statement_about_the_field_needs_a_source(sentence: str) -> None:
    assert (judged(sentence).kind, judged(sentence).sure) == ("claim", True)


@pytest.mark.parametrize(
    "sentence",
    [
        "Hotel doors have frames.",
        "Take two bolts out and everybody will laugh.",
        "The barista has a system.",
        "Then I read the study.",
        "I have never met a rower who owns an iron.",
        "My dog stretches better than I do.",
        "The sled is a wheelbarrow with a grudge.",
        "Letters go to the office.",
    ],
)
def test_a_joke_or_a_scene_in_the_form_of_a_statement_only_may_be_one(sentence: str) -> None:
    got = judged(sentence)
    assert got.kind != "claim" or not got.sure


def test_an_answer_to_a_question_needs_one_whatever_it_speaks_of() -> None:
    assert not judged("It is blue.").sure
    assert judged("It is blue.", previous="Which colour is it?").sure


@pytest.mark.parametrize("sentence", ["I like the sled.", "Press the floor away.", "Welcome back."])
def test_what_is_no_claim_is_no_half_claim(sentence: str) -> None:
    assert judged(sentence).sure


@pytest.mark.parametrize(
    "sentence",
    [
        "Hard hinges can aggravate a disc.",
        "A worn band snaps.",
        "If your heel hurts, see a licensed clinician.",
        "A fall from two metres can break a wrist.",
        "This does not cure a sore knee.",
    ],
)
def test_beside_a_caution_mark_a_warning_is_no_claim(sentence: str) -> None:
    assert judged(sentence, caution=True).kind == "instruction"


@pytest.mark.parametrize(
    "sentence",
    [
        "This doubles your bench, and warm up first.",
        "It protects the knee, so go slowly.",
        "Sleds build the calves, and stop if it hurts.",
        "It is stronger than any press, and mind your back.",
    ],
)
def test_beside_a_caution_mark_a_promise_still_is_one(sentence: str) -> None:
    assert judged(sentence, caution=True).kind == "claim"


@pytest.mark.parametrize(
    "sentence",
    [
        "You'll hear that pull-ups wreck elbows.",
        "Some coaches swear that it fixes a bad back.",
        "None of these balms cures anything.",
        "No massage heals a torn muscle.",
    ],
)
def test_what_others_say_and_a_benefit_denied_are_not_vouched_for(sentence: str) -> None:
    assert not judged(sentence).asserted


@pytest.mark.parametrize(
    "sentence",
    [
        "It protects your knees.",
        "Pull-ups don't wreck elbows.",
        "People say pull-ups wreck your elbows, and they do.",
        "My physio says it cures sciatica.",
        "It will not cure your back pain, but it halves the pain.",
    ],
)
def test_an_effect_of_the_speakers_own_word_is_vouched_for(sentence: str) -> None:
    assert judged(sentence).asserted
    assert judged(sentence).kind == "claim"


def test_a_disclaimer_asserts_no_effect_and_excuses_none_beside_it() -> None:
    assert not judged("I'm not a doctor, and nothing here is treatment.").asserted
    assert judged("I'm not a doctor, but hanging cures back pain.").asserted
