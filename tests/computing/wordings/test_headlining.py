"""Title, question, answer and promises are judged as sentences, where they state an effect."""

from __future__ import annotations

import pytest

from scriptkit.model import Headline
from tests.scripts import Write, worked_out

SOURCES = """
exercises: {hang: {name: Bar hang}}
sources:
  mora-2022:
    {title: Timed hangs, year: 2022, design: case series, n: 9, population: climbers, duration_weeks: 6,
     timeframe: longitudinal, invented: true,
     findings: {grip: {outcome: grip strength, result: rose by 3 kg, certainty: low}}}
"""
TEXT = "Hanging may build grip strength, but the evidence is very uncertain. [from mora-2022 grip]\n"


def headlines(episode: Write, top: str) -> tuple[Headline, ...]:
    return worked_out(episode({"outline.yaml": f"{top}{SOURCES}", "segments/hang.md": TEXT})).headlines


@pytest.mark.parametrize(
    "title",
    [
        "Ten calf exercises, graded for hill runners",
        "Five dry-land pulls for open-water swimmers",
        "Ways to train your grip",
        "Does hanging build grip strength?",
        "How to hang",
        "Hang from a bar",
    ],
)
def test_a_title_that_states_no_effect_is_passed_over(episode: Write, title: str) -> None:
    assert headlines(episode, f'title: "{title}"') == ()


@pytest.mark.parametrize(
    "title",
    ["Hanging builds grip strength", "Why hanging builds grip strength", "Why does hanging build grip strength?"],
)
def test_a_title_that_states_or_presupposes_an_effect_is_judged(episode: Write, title: str) -> None:
    (one,) = headlines(episode, f'title: "{title}"')
    assert (one.what, one.worded.step, one.certainty, one.exercise) == ("title", 4, "very low", "hang")
    assert one.backed


def test_the_place_is_the_verb(episode: Write) -> None:
    (one,) = headlines(episode, "title: Hanging builds grip strength")
    assert (one.place.line, one.place.column) == (1, 16)
    assert one.worded.ready == "Hanging may build grip strength, but the evidence is very uncertain."


def test_the_answer_in_the_description_is_judged_too(episode: Write) -> None:
    (one,) = headlines(episode, "title: Hangs\nanswer: Hanging builds grip strength.")
    assert (one.what, one.place.line, one.place.column) == ("answer", 2, 17)


def test_a_promise_is_judged_too(episode: Write) -> None:
    (one,) = headlines(episode, "title: Hangs\npromises: {grip: why hanging builds grip strength}")
    assert one.what == "promise grip"


@pytest.mark.parametrize("promise", ["which shoes to wear on a hill", "whether hanging builds grip strength"])
def test_a_promise_that_asks_states_no_effect(episode: Write, promise: str) -> None:
    assert headlines(episode, f"title: Hangs\npromises: {{shoes: {promise}}}") == ()


def test_a_title_nothing_speaks_of_is_not_backed(episode: Write) -> None:
    (one,) = headlines(episode, "title: Socks make you faster")
    assert not one.backed
