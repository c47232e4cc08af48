"""The text of an exercise says early which exercise it is, by half of its name or more, or shows it."""

from __future__ import annotations

import pytest

from tests.scripts import Write, worked_out

OUTLINE = "title: One\nexercises: {raise: {name: Single-leg ledge raise}}\n"
REST = " It is dull. [opinion] I like dull. [opinion] My dog does not. [aside]"


def kinds(episode: Write, text: str) -> list[str]:
    facts = worked_out(episode({"outline.yaml": OUTLINE, "segments/raise.md": text}))
    return [one.kind for one in facts.stumbles if one.kind in ("unnamed", "late")]


@pytest.mark.parametrize(
    "text",
    [
        "The single-leg ledge raise." + REST,
        "You know this one. [aside] It's the ledge raises again." + REST,
        "A single leg. [aside] And a ledge." + REST,
        "{{ exercise.name }}." + REST,
        "[screen: {{ exercise.name }}] You know this one." + REST,
    ],
)
def test_named_or_shown_in_the_first_two_sentences(episode: Write, text: str) -> None:
    assert kinds(episode, text) == []


def test_named_late_or_never(episode: Write) -> None:
    assert kinds(episode, REST + " That's the ledge raise. [aside]") == ["late"]
    assert kinds(episode, REST) == ["unnamed"]


def test_a_word_or_two_of_speech_need_no_name(episode: Write) -> None:
    assert kinds(episode, "I like it. [opinion] That's all. [aside]") == []


def test_a_drafted_text_is_the_tools_own(episode: Write) -> None:
    facts = worked_out(episode({"outline.yaml": OUTLINE}))
    assert [one for one in facts.stumbles if one.kind in ("unnamed", "late")] == []
