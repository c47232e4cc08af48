"""A sponsor's claim of health or performance is found, and backing is a randomised trial in people."""

from __future__ import annotations

import pytest

from scriptkit.computing.safeguards.backing import cannot_bear
from scriptkit.model import Source, StudyFinding
from tests.scripts import Write, worked_out

OUTLINE = """
    title: One
    exercises: {hang: {name: Bar hang}}
    sponsor:
      name: Quennick Socks
      disclosure: Ad. Quennick Socks paid.
      claims:
        - {say: "In a trial of 60 runners, they had fewer blisters.", sponsor_wording: true, backing: [sock-trial]}
    sources: {sock-trial: {title: Socks, year: 2024, design: randomised trial, n: 60, invented: true}}
    """
KINDS = ("unbacked", "never-claimed", "own-use")


def kinds(episode: Write, text: str) -> list[str]:
    facts = worked_out(episode({"outline.yaml": OUTLINE, "segments/sponsor.md": f"Ad. Quennick Socks paid.\n\n{text}"}))
    return [risk.kind for risk in facts.risks if risk.kind in KINDS]


@pytest.mark.parametrize(
    "text",
    [
        "It boosts your recovery.",
        "They stop blisters.",
        "You'll run faster in these.",
        "My knee pain is gone.",
        "Less soreness the day after.",
        "It helps you sleep.",
        "My elbows stopped hurting.",
        "Early studies look promising for sleep.",
        "It balances your hormones.",
    ],
)
@pytest.mark.parametrize("mark", [" [sponsor says]", " [opinion]", " [aside]"])
def test_an_effect_on_a_body_needs_backing_whatever_its_mark(episode: Write, text: str, mark: str) -> None:
    assert kinds(episode, text + mark) == ["unbacked"]


@pytest.mark.parametrize(
    "text",
    [
        "It's clinically proven.",
        "Doctors recommend it.",
        "It burns fat.",
        "It raises testosterone.",
        "Good for arthritis.",
    ],
)
def test_some_words_may_not_be_said_at_all(episode: Write, text: str) -> None:
    assert kinds(episode, f"{text} [sponsor says]") == ["never-claimed"]


@pytest.mark.parametrize(
    "text",
    [
        "They keep your feet dry.",
        "The wool is warmer than cotton.",
        "They cost 12 pounds a pair, and returns are free.",
        "The app plans your week and counts your sets.",
        "It has 20 grams of protein a scoop.",
        "It won't make you faster, and nobody says so.",
        "Ask your doctor before you take any supplement.",
        "Do they stop blisters?",
    ],
)
def test_what_it_is_and_costs_needs_none(episode: Write, text: str) -> None:
    assert kinds(episode, f"{text} [sponsor says]") == []


def test_the_listed_claim_may_be_said(episode: Write) -> None:
    assert kinds(episode, "In a trial of 60 runners, they had fewer blisters. [sponsor says]") == []


def test_saying_to_use_it_is_seen(episode: Write) -> None:
    assert kinds(episode, "I wear them on every hill. [aside]") == ["own-use"]


@pytest.mark.parametrize(
    ("source", "reason"),
    [
        (Source(design="randomised trial"), ""),
        (Source(design="meta-analysis"), ""),
        (Source(design="cohort"), "x is no randomised trial but cohort"),
        (Source(), "x is no randomised trial"),
        (Source(design="randomised trial", population="aged mice"), "x looked at animals or cells"),
        (
            Source(design="randomised crossover", findings={"a": StudyFinding(measure="surface EMG")}),
            "x measured muscle activity, which is no effect",
        ),
        (Source(design="randomised trial", status="retracted"), "x was retracted"),
    ],
)
def test_only_a_randomised_trial_in_people_can_bear_it(source: Source, reason: str) -> None:
    assert cannot_bear("x", {"x": source}) == reason


def test_a_source_that_is_not_there_bears_nothing() -> None:
    assert cannot_bear("y", {}) == "y is not in the register"
