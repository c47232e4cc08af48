"""What a sentence claims, what a study measured, and how far one is from the other."""

from __future__ import annotations

import pytest

from scriptkit.computing.evidence import outcomes
from scriptkit.computing.evidence.lexicon import Lexicon
from scriptkit.computing.evidence.outcomes import Measured
from scriptkit.model import Source, StudyFinding
from scriptkit.reading import words

LEXICON = Lexicon(words.load())


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("Presses grow your chest.", "growth"),
        ("It gained 1.6 millimetres of muscle.", "growth"),
        ("Curls give you bigger arms.", "growth"),
        ("Hangs build a grip.", "growth?"),
        ("It makes you stronger.", "strength"),
        ("Hangs build grip strength.", "strength"),
        ("Hang time rose by a fifth.", "performance"),
        ("It's the best exercise for the calf.", "benefit"),
        ("The chest was more active: activation rose.", "activity"),
        ("Squats raise growth hormone.", "activity"),
        ("Activation was higher, so it grows more muscle.", "growth"),
        ("The set-up takes a minute.", "plain"),
        ("It is cheap and cheerful.", ""),
    ],
)
def test_the_words_of_a_sentence_tell_what_it_claims(text: str, kind: str) -> None:
    assert outcomes.kind_of(text, LEXICON) == kind


@pytest.mark.parametrize(
    ("finding", "expected"),
    [
        (StudyFinding(outcome="muscle growth", measure="MRI volume"), ("growth", False, "direct")),
        (StudyFinding(outcome="forearm size", measure="tape"), ("growth", False, "rough")),
        (StudyFinding(outcome="lean mass", measure="DXA"), ("growth", False, "indirect")),
        (StudyFinding(outcome="peak activation", measure="surface EMG"), ("activity", True, "")),
        (StudyFinding(outcome="growth hormone", measure="blood"), ("activity", True, "")),
        (StudyFinding(outcome="one-repetition maximum"), ("strength", False, "")),
    ],
)
def test_what_a_finding_measured(finding: StudyFinding, expected: tuple[str, bool, str]) -> None:
    found = outcomes.measured(Source(duration_weeks=8), finding, "randomised", LEXICON)
    assert (found.outcome, found.acute, found.how) == expected


def test_a_size_measured_within_a_session_is_acute() -> None:
    source = Source(timeframe="acute")
    assert outcomes.measured(source, StudyFinding(outcome="muscle thickness"), "randomised", LEXICON).acute


def test_a_laboratory_measures_within_a_session_unless_it_lasts_weeks() -> None:
    assert outcomes.is_one_session(Source(), "laboratory")
    assert not outcomes.is_one_session(Source(duration_weeks=8), "laboratory")


def test_a_link_without_a_finding_means_the_only_one_or_the_one_of_that_kind() -> None:
    growth, grip = StudyFinding(id="a", outcome="muscle growth"), StudyFinding(id="b", outcome="grip strength")
    both = Source(findings={"a": growth, "b": grip})
    assert outcomes.pick(Source(findings={"a": growth}), "", "", "randomised", LEXICON) is growth
    assert outcomes.pick(both, "", "strength", "randomised", LEXICON) is grip
    assert outcomes.pick(both, "", "", "randomised", LEXICON) is None
    assert outcomes.pick(both, "a", "strength", "randomised", LEXICON) is growth


def test_a_vague_word_means_what_was_measured_unless_that_is_activity() -> None:
    assert outcomes.claimed("growth?", [Measured("strength", acute=False)]) == "strength"
    assert outcomes.claimed("growth?", [Measured("activity", acute=True)]) == "growth"
    assert outcomes.claimed("", [Measured("range", acute=False)]) == "range"


@pytest.mark.parametrize(
    ("said", "tested", "far"),
    [("growth", "strength", True), ("strength", "performance", False), ("growth", "", False), ("range", "pain", False)],
)
def test_how_far_what_is_said_is_from_what_was_measured(said: str, tested: str, *, far: bool) -> None:
    assert outcomes.differ(said, tested) is far


def test_people_who_had_not_trained() -> None:
    assert outcomes.untrained(Source(training="untrained"), LEXICON)
    assert outcomes.untrained(Source(population="adults new to lifting"), LEXICON)
    assert not outcomes.untrained(Source(training="trained", population="novices once"), LEXICON)
