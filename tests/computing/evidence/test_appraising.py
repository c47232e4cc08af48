"""One study behind one claim: where it starts, each step down, and the level of the pair."""

from __future__ import annotations

import pytest

from tests.scripts import Write
from tests.weighed import TRIAL, study, weight

GREW = "Hangs grow your forearms. [from s a]"
STRONGER = "Hangs make your grip stronger. [from s a]"
GRIP = "outcome: grip strength"
SIZE = "outcome: muscle growth, measure: ultrasound"


@pytest.mark.parametrize(
    ("what", "finding", "level", "certainty"),
    [
        ("design: systematic review, n: 900", GRIP, 1, "high"),
        ("design: randomised trial, n: 500", GRIP, 2, "high"),
        ("design: randomised trial, n: 60", GRIP, 2, "moderate"),
        ("design: RCT, n: 38, comparison: within-person", f"{GRIP}, effect: 0.4, ci: [0.1, 0.7]", 2, "moderate"),
        ("design: randomised trial, n: 60", f"{GRIP}, effect: 0.2, ci: [-0.3, 0.7]", 2, "low"),
        ("design: randomised trial, n: 60", f"{GRIP}, effect: 0.0, ci: [-0.2, 0.2]", 2, "high"),
        ("design: randomised trial, n: 20", GRIP, 2, "low"),
        ("design: randomised trial", GRIP, 2, "moderate"),
        ("design: randomised trial, n: 500, volume_equated: false", GRIP, 2, "moderate"),
        ("design: randomised trial, n: 500, status: concern", GRIP, 2, "moderate"),
        ("design: controlled trial, n: 500", GRIP, 3, "low"),
        ("design: cohort, n: 500", GRIP, 3, "low"),
        ("design: cohort, comparison: pre-post, n: 500", GRIP, 3, "very low"),
        ("design: case series, n: 500", GRIP, 4, "very low"),
        ("design: expert opinion", GRIP, 5, "very low"),
        ("design: maker's data sheet", GRIP, 5, "very low"),
    ],
)  # fmt: skip
def test_level_and_certainty_of_a_pair(episode: Write, what: str, finding: str, level: int, certainty: str) -> None:
    pair = weight(episode, STRONGER, study("s", what, a=finding)).pairs[0]
    assert (pair.level, pair.certainty) == (level, certainty)


@pytest.mark.parametrize(
    ("what", "finding", "certainty"),
    [
        ("design: randomised trial, n: 500", SIZE, "high"),
        ("design: randomised trial, n: 500", "outcome: forearm size, measure: tape", "moderate"),
        ("design: randomised trial, n: 500", "outcome: lean mass, measure: DXA", "moderate"),
        ("design: randomised trial, n: 500, duration_weeks: 4", SIZE, "moderate"),
    ],
)
def test_how_a_muscle_was_measured_and_how_soon(episode: Write, what: str, finding: str, certainty: str) -> None:
    assert weight(episode, GREW, study("s", what, a=finding)).computed == certainty


@pytest.mark.parametrize(
    "finding", ["outcome: muscle activity, measure: EMG", "outcome: soreness", "outcome: testosterone"]
)
def test_what_a_session_shows_is_mechanism_for_growth(episode: Write, finding: str) -> None:
    pair = weight(episode, GREW, study("s", "design: randomised crossover, n: 900, timeframe: acute", a=finding)).pairs[
        0
    ]
    assert (pair.level, pair.certainty) == (5, "low")


def test_the_level_belongs_to_the_pair(episode: Write) -> None:
    emg = study("s", "design: randomised crossover, n: 500", a="outcome: muscle activity, measure: EMG")
    pair = weight(episode, "Forearm activity was higher in a hang. [from s a]", emg).pairs[0]
    assert (pair.level, pair.certainty) == (2, "high")


def test_another_outcome_is_a_step_and_a_level_down(episode: Write) -> None:
    pair = weight(episode, "Hangs grow your forearms. [from mora grip]", TRIAL).pairs[0]
    assert (pair.level, pair.certainty) == (3, "low")


def test_beginners_behind_a_claim_for_lifters_are_a_step_down(episode: Write) -> None:
    source = study("s", "design: randomised trial, n: 500, training: untrained", a=GRIP)
    assert weight(episode, STRONGER, source).computed == "high"
    assert weight(episode, "Hangs make lifters stronger. [from s a]", source).computed == "moderate"
    for_lifters = "title: One\naudience: lifters\nexercises: {hang: {name: Bar hang}}\n"
    assert weight(episode, STRONGER, source, for_lifters).computed == "moderate"


def test_the_register_may_set_it_lower_and_not_higher(episode: Write) -> None:
    def trial(certainty: str) -> str:
        return study("s", "design: randomised trial, n: 60", a=f"{GRIP}, certainty: {certainty}")

    assert weight(episode, STRONGER, trial("very low")).computed == "very low"
    assert weight(episode, STRONGER, trial("high")).computed == "moderate"


@pytest.mark.parametrize(
    ("text", "what", "finding"),
    [
        ("The set-up takes a minute. [from s a]", "design: randomised trial, n: 38", "outcome: set-up time"),
        ("The machine weighs 90 kilos. [from s a]", "design: maker's data sheet", "outcome: weight of the machine"),
        ("The muscle has two heads. [from s]", "design: textbook", ""),
        ("Of 120 runners, 68 hung from the bar. [from s a]", "design: survey, n: 120", "outcome: exercise seen"),
        ("Hangs make your grip stronger. [from s a]", "title: bare", GRIP),
        ("Hangs make your grip stronger. [from s a]", "design: vibes", GRIP),
    ],
)  # fmt: skip
def test_nothing_is_said_of_what_is_no_effect_or_not_known(episode: Write, text: str, what: str, finding: str) -> None:
    found = weight(episode, text, study("s", what.replace("title: bare", "year: 2020"), a=finding))
    assert (found.pairs[0].level, found.computed, bool(found.steps)) == (None, "", True)


def test_each_step_is_said_in_words(episode: Write) -> None:
    found = weight(episode, STRONGER, study("s", "design: randomised trial, n: 38, n_per_group: 19", a=GRIP))
    assert found.steps == (
        "randomised: starts high",
        "38 people, fewer than 400: one step down",
        "and only 19 on each side: one step down",
    )
