"""Remarks are asked for by kind, and come in the order of the script."""

from __future__ import annotations

from scriptkit.checking import remarks
from tests.scripts import worked_out
from tests.weighed import HEAD, TRIAL, told

ANIMALS = (
    "  orre: {title: One, invented: true, design: randomised trial, population: mice, n: 30, "
    "findings: {x: {outcome: grip strength}}}\n"
)


def test_doubts_of_other_kinds_and_sentences_without_sources_are_left_out(episode) -> None:
    facts = told(episode, "I like it. [opinion] Hanging builds grip strength. [from orre x]", ANIMALS)
    assert [one.source for one in remarks.doubts(facts, "animals")] == ["orre"]
    assert not [*remarks.doubts(facts, "limbs", "percent")]


def test_an_episode_without_a_doubt_has_none(episode) -> None:
    facts = told(episode, "In one trial of 60 people, grip strength rose. [from mora grip]", TRIAL)
    assert not [*remarks.doubts(facts, "animals", "limbs")]


def test_risks_are_asked_for_by_kind(episode) -> None:
    sponsor = "sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid., must_say: [free returns]}\n"
    text = "Ad. Quennick Socks paid. They come in grey. [sponsor says]"
    outline = f"{HEAD}{sponsor}"
    facts = worked_out(episode({"outline.yaml": outline, "segments/sponsor.md": text}))
    assert [one.words for one in remarks.risks(facts, "must-say")] == ["free returns"]
    assert not [*remarks.risks(facts, "other-code")]
