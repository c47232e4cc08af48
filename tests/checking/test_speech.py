"""Marks, brackets, tags, breath and signs of spoken text are looked at as whoever reads it aloud would."""

from __future__ import annotations

import pytest

from tests.scripts import GRIP, Write, found, helps, with_hang, worked_out


def test_a_bracket_that_is_no_mark_is_told_with_a_near_name(episode: Write) -> None:
    facts = with_hang(episode, "Hello [opnion] there. [sponser\nsays] [a note]")
    assert [place for place, _ in found(facts, "not-a-mark")] == [
        "segments/hang.md:1:7",
        "segments/hang.md:1:23",
        "segments/hang.md:2:7",
    ]
    assert helps(facts, "not-a-mark")[0] == 'Did you mean "opinion"?'


def test_a_mark_that_is_not_understood_says_how_it_is_written(episode: Write) -> None:
    facts = with_hang(episode, "Hello. [pause soon]")
    assert found(facts, "not-a-mark") == [("segments/hang.md:1:8", 'The mark "[pause soon]" is not understood.')]
    assert helps(facts, "not-a-mark") == ["`soon` is no time: write it as `1s`, `2.5s` or `1:10`."]


def test_a_spoken_bracket_is_written_with_a_backslash(episode: Write) -> None:
    facts = with_hang(episode, "I say \\[yes\\] to that. [aside]")
    assert found(facts, "not-a-mark") == found(facts, "bracket-not-closed") == []


@pytest.mark.parametrize(("text", "column"), [("I like [opinion it.", 8), ("I like opinion] it.", 15)])
def test_half_a_bracket_is_told(episode: Write, text: str, column: int) -> None:
    assert [place for place, _ in found(with_hang(episode, text), "bracket-not-closed")] == [
        f"segments/hang.md:1:{column}"
    ]


@pytest.mark.parametrize(
    ("count", "comma", "long"), [(22, "", False), (23, "", True), (23, ",", False), (30, ",", False), (31, ",", True)]
)
def test_a_breath_is_thirty_words_and_twenty_two_without_a_comma(
    episode: Write, count: int, comma: str, long: bool
) -> None:
    text = f"Hang{comma} " + " ".join(["on"] * (count - 1)) + ". [aside]"
    assert bool(found(with_hang(episode, text), "sentence-too-long")) is long


def test_a_sign_says_what_to_write_instead(episode: Write) -> None:
    facts = with_hang(episode, "I do 3 × 10. [aside]")
    assert found(facts, "sign-not-speakable") == [
        ("segments/hang.md:1:8", 'The sign "×" in "I do 3 × 10." cannot be read aloud.')
    ]
    assert helps(facts, "sign-not-speakable")[0][0].isupper()


def test_a_bracket_in_spoken_words_of_the_outline_is_told_where_it_stands(episode: Write) -> None:
    outline = GRIP.replace("grade: A-}", "grade: A-, claims: [{say: 'I like it. [opnion]', opinion: true}]}")
    facts = worked_out(episode({"outline.yaml": outline}))
    assert [place for place, _ in found(facts, "mark-in-outline")] == ["outline.yaml:3:64"]
