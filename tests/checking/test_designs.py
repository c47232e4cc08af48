"""Findings on a study's design, what it compares, and the scale of its effect."""

from __future__ import annotations

from tests.scripts import Write, found, helps
from tests.weighed import places, study, told


def test_an_unknown_design_is_told_where_it_is_written(episode: Write) -> None:
    facts = told(episode, "Grip rose. [from s]", study("s", "n: 90, design: cohrt"))
    assert [place for place, _ in found(facts, "unknown-design")] == ["outline.yaml:4:48"]
    assert helps(facts, "unknown-design") == ['Did you mean "cohort"?']


def test_a_design_unlike_any_gets_examples(episode: Write) -> None:
    facts = told(episode, "Grip rose. [from s]", study("s", "n: 90, design: qqq"))
    assert helps(facts, "unknown-design")[0].startswith("Say it in plain words")


def test_a_large_effect_is_read_on_the_scale_of_its_comparison(episode: Write) -> None:
    text = "Hangs had a large effect on strength. [from s a]"
    between = study("s", "design: RCT, n: 90", a="outcome: grip strength, effect: 0.6")
    within = study("s", "design: pre-post, n: 90", a="outcome: grip strength, effect: 0.6")
    told_so = study("s", "design: RCT, n: 90", a="outcome: grip strength, effect: 0.6, effect_type: pre-post")
    assert places(episode, "effect-on-wrong-scale", text, between) == []
    assert places(episode, "effect-on-wrong-scale", text, within) == ["segments/hang.md:1:13"]
    assert places(episode, "effect-on-wrong-scale", text, told_so) == ["segments/hang.md:1:13"]


def test_strength_between_limbs_is_a_note(episode: Write) -> None:
    limbs = study("s", "design: RCT, comparison: within-person, n: 90", a="outcome: grip strength")
    text = "The hung hand got stronger than the lazy one. [from s a]"
    assert places(episode, "strength-across-limbs", text, limbs) == ["segments/hang.md:1:19"]
