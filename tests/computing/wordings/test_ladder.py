"""Sentences are held to the ladder; what is marked, asked or commanded is not; people are named once for a source."""

from __future__ import annotations

import pytest

from scriptkit.model import Worded
from tests.scripts import Write, with_hang

OUTLINE = """
    title: Ways to train your grip
    exercises: {hang: {name: Bar hang}}
    sources:
      mora-2022: {title: Timed hangs, population: climbers, n: 38, invented: true}
    """


def worded(episode: Write, text: str) -> tuple[Worded, ...]:
    return with_hang(episode, text, OUTLINE).worded["hang"]


def test_a_sentence_has_its_step_and_the_words_that_say_so(episode: Write) -> None:
    text = "Hanging may build a little grip. [from mora-2022]"
    (one,) = worded(episode, text)
    assert (one.step, text[slice(*one.words)], one.size, one.report) == (2, "may", "small", False)


@pytest.mark.parametrize(
    "text",
    [
        "I think hanging builds grip. [opinion]",
        "Hanging builds grip. [aside]",
        "Hanging builds grip. [sponsor says]",
        "Does hanging build grip? [from mora-2022]",
        "Never bounce at the bottom. [from mora-2022]",
    ],
)
def test_what_is_marked_or_asked_is_not_judged(episode: Write, text: str) -> None:
    assert [one.step for one in worded(episode, text)] == [0]


def test_a_report_names_its_people_once(episode: Write) -> None:
    told = worded(episode, "Hang time rose by a fifth. [from mora-2022]\n")
    assert [(one.report, one.named) for one in told] == [(True, False)]
    text = "In 38 climbers, hang time rose. [from mora-2022]\n\nGrip strength rose too. [from mora-2022]\n"
    assert [one.named for one in worded(episode, text)] == [True, True]
    text = "Some climbers tried it. [aside] Hang time rose by a fifth. [from mora-2022]\n"
    assert [one.named for one in worded(episode, text)] == [True, True]


@pytest.mark.parametrize(
    ("text", "banned"),
    [
        ("Hanging is scientifically proven to build grip. [from mora-2022]", "scientifically proven"),
        ("The trial proves that hanging builds grip. [from mora-2022]", "proves"),
        ("More grip is guaranteed with hanging. [from mora-2022]", "guaranteed"),
        ("Nobody has proven that hanging builds grip. [from mora-2022]", ""),
        ("That proves nothing about grip. [from mora-2022]", ""),
        ("The bar is guaranteed for ten years. [from mora-2022]", ""),
    ],
)
def test_words_of_proof_are_told(episode: Write, text: str, banned: str) -> None:
    (one,) = worded(episode, text)
    assert [text[slice(*span)] for span in one.banned] == ([banned] if banned else [])


@pytest.mark.parametrize(
    ("text", "loose"),
    [
        ("Hanging always builds grip. [from mora-2022]", "always"),
        ("Hanging doesn't always build grip. [from mora-2022]", ""),
        ("Hanging makes a significant difference to grip. [from mora-2022]", "significant"),
        ("Hanging makes a statistically significant difference to grip. [from mora-2022]", ""),
        ("Hang time rose significantly, by 22 percent. [from mora-2022]", ""),
    ],
)
def test_words_of_certainty_are_told(episode: Write, text: str, loose: str) -> None:
    (one,) = worded(episode, text)
    assert [text[slice(*span)] for span in one.loose] == ([loose] if loose else [])
