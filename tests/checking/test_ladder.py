"""Words are held against weight: on the verb, with the reasons, and with a sentence that would be right."""

from __future__ import annotations

import pytest

from tests.scripts import Write, found, helps, with_hang

SMALL = """
    title: Ways to train your grip
    exercises: {hang: {name: Bar hang}}
    sources:
      mora-2022:
        {title: Timed hangs, year: 2022, design: case series, n: 9, population: climbers, duration_weeks: 6,
         timeframe: longitudinal, invented: true,
         findings: {grip: {outcome: grip strength, result: rose by 3 kg, certainty: low}}}
    """
NAME = "worded-too-firmly"


def test_a_sentence_that_says_too_much_is_told_at_its_verb(episode: Write) -> None:
    facts = with_hang(episode, "Hi. [aside]\n\nHanging builds grip strength. [from mora-2022 grip]", SMALL)
    ((place, message),) = found(facts, NAME)
    assert place == "segments/hang.md:3:9"
    assert message.startswith('"builds" says more than its sources bear: their certainty is very low')
    assert helps(facts, NAME) == ['Say: "Hanging may build grip strength, but the evidence is very uncertain."']


def test_its_ready_sentence_settles_it(episode: Write) -> None:
    text = "Hanging may build grip strength, but the evidence is very uncertain. [from mora-2022 grip]"
    assert found(with_hang(episode, text, SMALL), NAME) == []


@pytest.mark.parametrize(
    "text",
    [
        "In 9 climbers, grip strength rose by 3 kilos. [from mora-2022 grip]",
        "Nobody knows whether hanging builds grip strength. [from mora-2022 grip]",
        "I wouldn't say hanging builds grip strength. [from mora-2022 grip]",
        "That's one small study of 9 climbers. [from mora-2022]",
    ],
)
def test_reports_and_admissions_are_not_too_firm(episode: Write, text: str) -> None:
    assert found(with_hang(episode, text, SMALL), NAME) == []


@pytest.mark.parametrize(
    "text",
    ["A promising pilot shows hanging builds grip strength.", "The study finds that hanging builds grip strength."],
)
def test_praise_and_a_study_that_speaks_bring_nothing_down(episode: Write, text: str) -> None:
    assert len(found(with_hang(episode, f"{text} [from mora-2022 grip]", SMALL), NAME)) == 1


def test_where_there_is_no_certainty_nothing_is_said(episode: Write) -> None:
    assert found(with_hang(episode, "Hanging builds grip strength. [from lind-2019]"), NAME) == []


def test_what_cannot_be_said_ready_gets_a_form(episode: Write) -> None:
    facts = with_hang(episode, "It not only builds grip but adds muscle. [from mora-2022 grip]", SMALL)
    assert helps(facts, NAME) == [
        'Put it in this form: "... may result in ..., but the evidence is very uncertain".',
    ]


def test_a_word_of_proof_is_told_on_its_column(episode: Write) -> None:
    facts = with_hang(episode, "Hanging is proven to build grip strength. [from mora-2022 grip]", SMALL)
    assert [place for place, _ in found(facts, "word-of-proof")] == ["segments/hang.md:1:9"]


def test_a_word_of_certainty_is_a_warning(episode: Write) -> None:
    facts = with_hang(episode, "Hanging always builds grip strength. [from mora-2022 grip]", SMALL)
    assert [place for place, _ in found(facts, "word-of-certainty")] == ["segments/hang.md:1:9"]
    assert found(with_hang(episode, "Never bounce.", SMALL), "word-of-certainty") == []


def test_the_people_of_a_source_are_asked_for_once(episode: Write) -> None:
    facts = with_hang(
        episode, "Hang time rose a lot. [from mora-2022 grip] It rose again. [from mora-2022 grip]", SMALL
    )
    assert len(found(facts, "report-without-people")) == 1


def test_a_report_without_people_offers_them(episode: Write) -> None:
    facts = with_hang(episode, "Grip strength rose by 3 kilos. [from mora-2022 grip]", SMALL)
    assert [place for place, _ in found(facts, "report-without-people")] == ["segments/hang.md:1:1"]
    assert helps(facts, "report-without-people") == ['Say who they were: "In 9 climbers, ..."']


def test_a_reason_is_told_in_full(episode: Write) -> None:
    outline = SMALL.replace("title: Ways", "audience: lifters\n    title: Ways").replace(
        "n: 9,", "n: 9, training: untrained,"
    )
    ((_, message),) = found(with_hang(episode, "Hanging builds grip strength. [from mora-2022 grip]", outline), NAME)
    assert "its people had not trained, and it is said of people who have: one step down" in message


@pytest.mark.parametrize(
    "text",
    [
        "The key to a strong grip is the bar hang.",
        "Hanging is great for grip strength.",
        "Hang every day and you'll get a stronger grip.",
        "Hanging doubles your grip strength.",
        "Hanging beats squeezing for grip strength.",
        "Hanging is your ticket to grip strength.",
    ],
)
def test_an_effect_without_a_verb_of_effect_is_heard(episode: Write, text: str) -> None:
    assert len(found(with_hang(episode, f"{text} [from mora-2022 grip]", SMALL), NAME)) == 1


def test_a_source_makes_a_fact_of_an_aside_and_of_an_opinion_that_sounds_like_one(episode: Write) -> None:
    for mark in ("aside", "opinion"):
        facts = with_hang(episode, f"Hanging builds grip strength. [{mark}] [from mora-2022 grip]", SMALL)
        assert len(found(facts, NAME)) == 1
    facts = with_hang(episode, "I think hanging builds grip strength. [opinion] [from mora-2022 grip]", SMALL)
    assert found(facts, NAME) == []


def test_a_may_on_very_little_is_a_matter_for_a_warning(episode: Write) -> None:
    facts = with_hang(episode, "Hanging may build grip strength. [from mora-2022 grip]", SMALL)
    assert found(facts, NAME) == []
    assert len(found(facts, "very-uncertain-unsaid")) == 1


def test_what_science_says_about_something_is_a_topic(episode: Write) -> None:
    assert (
        found(with_hang(episode, "Here is what science says about hanging. [from mora-2022]", SMALL), "word-of-proof")
        == []
    )


@pytest.mark.parametrize(
    "text",
    ["In 9 rowers, grip strength rose by 3 kilos.", "In one mail carrier's diary, grip strength rose by 3 kilos."],
)
def test_people_are_named_by_their_number_or_by_any_noun_of_their_description(episode: Write, text: str) -> None:
    outline = SMALL.replace("population: climbers", "population: one mail carrier")
    assert found(with_hang(episode, f"{text} [from mora-2022 grip]", outline), "report-without-people") == []
