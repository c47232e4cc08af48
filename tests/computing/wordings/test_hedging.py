"""A ready sentence is the author's own, with the hedge that its certainty bears, in the right form of the verb."""

from __future__ import annotations

import pytest

from scriptkit.computing.hearing.clauses import compile_cues, take_apart
from scriptkit.computing.wordings.firmness import weigh
from scriptkit.computing.wordings.hedging import softened, third_person
from scriptkit.computing.wordings.rungs import rungs
from scriptkit.reading.words import load

WORDS = load()
LADDER = rungs(WORDS, compile_cues(WORDS))
DOUBT = ", but the evidence is very uncertain."


def ready(text: str, bears: int) -> str:
    speech = take_apart(text, LADDER.cues)
    return softened(speech, weigh(speech, LADDER), bears, LADDER)


@pytest.mark.parametrize(
    ("text", "probably", "may"),
    [
        ("Hanging builds grip.", "Hanging probably builds grip.", "Hanging may build grip."),
        ("Ledge raises build calves.", "Ledge raises probably build calves.", "Ledge raises may build calves."),
        ("It carries more growth.", "It probably carries more growth.", "It may carry more growth."),
        (
            "The ledge is better for growth.",
            "The ledge is probably better for growth.",
            "The ledge may be better for growth.",
        ),
        ("It's better than the floor.", "It is probably better than the floor.", "It may be better than the floor."),
        ("The ledge isn't better.", "The ledge probably isn't better.", "The ledge may not be better."),
        ("The ledge is not better.", "The ledge is probably not better.", "The ledge may not be better."),
        ("It doesn't build grip.", "It probably doesn't build grip.", "It may not build grip."),
        ("They do not build grip.", "They probably do not build grip.", "They may not build grip."),
        ("Hanging will build grip.", "Hanging will probably build grip.", "Hanging may build grip."),
        ("Hanging won't build grip.", "Hanging probably won't build grip.", "Hanging may not build grip."),
        ("It has been shown to build grip.", "It probably builds grip.", "It may build grip."),
        (
            "The ledge has more effect on growth.",
            "The ledge probably has more effect on growth.",
            "The ledge may have more effect on growth.",
        ),
        ("The ledge clearly builds more.", "The ledge probably builds more.", "The ledge may build more."),
        (
            "It builds muscle and strengthens tendons.",
            "It probably builds muscle and strengthens tendons.",
            "It may build muscle and strengthen tendons.",
        ),
        (
            "Hanging results in more strength.",
            "Hanging probably results in more strength.",
            "Hanging may result in more strength.",
        ),
    ],
)
def test_a_plain_sentence_is_softened(text: str, probably: str, may: str) -> None:
    assert ready(text, 3) == probably
    assert ready(text, 2) == may
    assert ready(text, 1) == may.removesuffix(".") + DOUBT


@pytest.mark.parametrize(
    ("text", "may"),
    [
        ("Hanging probably builds grip.", "Hanging may build grip."),
        ("The ledge is likely to build more muscle.", "The ledge may build more muscle."),
        ("Ledge raises tend to build more muscle.", "Ledge raises may build more muscle."),
        ("The ledge is probably better than the floor.", "The ledge may be better than the floor."),
        ("The ledge will probably build more.", "The ledge may build more."),
    ],
)
def test_a_likely_sentence_is_softened(text: str, may: str) -> None:
    assert ready(text, 2) == may


def test_a_possible_sentence_gets_its_doubt() -> None:
    assert ready("Hanging may build grip.", 1) == "Hanging may build grip" + DOUBT


@pytest.mark.parametrize("text", ["The ledge never fails to build muscle.", "It not only builds grip but adds muscle."])
def test_what_cannot_be_said_safely_is_left_to_the_author(text: str) -> None:
    assert ready(text, 2) == ""


@pytest.mark.parametrize(
    ("base", "said"), [("build", "builds"), ("carry", "carries"), ("push", "pushes"), ("play", "plays")]
)
def test_the_third_person(base: str, said: str) -> None:
    assert third_person(base) == said


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("You'll get a stronger grip.", "You may get a stronger grip."),
        ("They do the same job for growth.", "They may do the same job for growth."),
    ],
)
def test_contractions_and_a_do_that_acts_are_softened(text: str, said: str) -> None:
    assert ready(text, 2) == said


@pytest.mark.parametrize("text", ["Nothing builds grip like a hang.", "It's proven that hanging builds more grip."])
def test_what_would_be_no_better_is_not_offered(text: str) -> None:
    assert ready(text, 3) == ""
