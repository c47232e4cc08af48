"""The script for reading aloud: every word once, waits where they are written, times that never go back."""

from __future__ import annotations

from itertools import pairwise
from typing import Any

import pytest

from scriptkit import build, keys
from scriptkit.model import Facts
from scriptkit.model.taking import KeptRecording, KeptSentence
from scriptkit.rendering import prompter, rows
from scriptkit.shipped import shipped
from tests.scripts import Write, timed, with_hang, worked_out

ONE = "title: One\npace: 160\nexercises: {hang: {name: Bar hang}}\norder: [hang]\n"


def parts(facts: Facts) -> list[dict[str, Any]]:
    return [part for segment in prompter.script(facts) for paragraph in segment["paragraphs"] for part in paragraph]


def texts(facts: Facts) -> list[tuple[str, str]]:
    return [(part["kind"], part["text"]) for part in parts(facts)]


def recorded(facts: Facts, *spans: tuple[float, float] | None, length: float = 60.0) -> Facts:
    """The facts on the clock of a recording in which the sentences of the first segment were said then."""
    segment = facts.segments[0]
    kept = [
        KeptSentence(segment.id, keys.of(one.text), *span)
        for one, span in zip(segment.sentences, spans, strict=True)
        if span
    ]
    return build.as_built(facts, KeptRecording(length, tuple(kept)))


@pytest.fixture(scope="module")
def sample() -> Facts:
    return build.as_built(worked_out(shipped("sample_episode")))


def test_every_word_is_there_once_and_in_order(sample: Facts) -> None:
    words = " ".join(text for kind, text in texts(sample) if kind == "words")
    assert words.split() == " ".join(rows.prompter(sample)).split()


def test_a_sentence_stands_where_the_clock_has_it_and_its_voice_ends_before_its_pause(sample: Facts) -> None:
    said = [one for segment in sample.timeline.segments for one in segment.sentences]
    starts = {part["start_s"]: part["end_s"] for part in parts(sample) if part["kind"] == "words"}
    assert len(said) > 100
    for one in said:
        if not one.silent:
            assert starts[round(one.start, 3)] == pytest.approx(one.start + one.spoken - one.closing, abs=0.002)


def test_times_never_go_back_and_end_with_the_script(sample: Facts) -> None:
    every = parts(sample)
    assert all(one["start_s"] <= one["end_s"] <= two["start_s"] for one, two in pairwise(every))
    assert every[-1]["end_s"] <= round(sample.timeline.total, 3)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("[hold 3s: a rep] Hang on. [aside]", [("hold", "a rep"), ("words", "Hang on.")]),
        ("Hang on. [aside] [pause 2s]", [("words", "Hang on."), ("pause", "")]),
        ("Hang [pause 1s], then go. [aside]", [("words", "Hang,"), ("pause", ""), ("words", "then go.")]),
        ("Hang [screen: Now] on. [aside]", [("words", "Hang on.")]),
        ("Hang on. [aside]\n\n[hold 2s: a rep]", [("words", "Hang on."), ("hold", "a rep")]),
        ("[shot CU side: hands]", []),
    ],
)
def test_holds_and_pauses_stand_between_the_words(episode: Write, text: str, expected: list[tuple[str, str]]) -> None:
    assert texts(with_hang(episode, text, ONE)) == expected


def test_a_wait_takes_its_seconds_and_the_words_the_rest(episode: Write) -> None:
    facts = with_hang(episode, "Hang [pause 2s] on. [aside]\n\n[hold 3s: a rep]\n\nLet go. [aside] [pause 1s]", ONE)
    every = parts(facts)
    waits = [one for one in every if one["kind"] != "words"]
    assert [(one["seconds"], round(one["end_s"] - one["start_s"], 3)) for one in waits] == [(2, 2), (3, 3), (1, 1)]
    assert waits[-1]["end_s"] == pytest.approx(timed(facts).total, abs=0.001)
    first, pause, second = every[:3]
    assert (first["end_s"], pause["end_s"]) == (pause["start_s"], second["start_s"])
    assert second["end_s"] > second["start_s"]


def test_a_recording_that_rushed_through_a_pause_leaves_the_words_their_time(episode: Write) -> None:
    facts = recorded(with_hang(episode, "Hang [pause 9s] on. [aside]", ONE), (1.0, 3.0))
    first, pause, second = parts(facts)
    assert pause["seconds"] == 9
    assert 1.0 <= first["end_s"] <= pause["start_s"] < pause["end_s"] <= second["start_s"] < second["end_s"] <= 3.6


def test_a_hold_between_two_sentences_of_a_recording_begins_when_the_voice_ends(episode: Write) -> None:
    text = "Hang on. [aside]\n\n[hold 3s: a rep]\n\nLet go. [aside]"
    first, hold, second = parts(recorded(with_hang(episode, text, ONE), (1.0, 3.0), (8.0, 9.0)))
    assert (first["end_s"], hold["start_s"], hold["end_s"], second["start_s"]) == (3.0, 3.6, 6.6, 8.0)


def test_what_a_recording_does_not_have_takes_no_time(episode: Write) -> None:
    facts = recorded(with_hang(episode, "Hang on. [aside] Let go. [aside] Rest. [aside]", ONE), (1, 3), None, (4, 5))
    assert [(part["start_s"], part["end_s"]) for part in parts(facts)] == [(1, 3), (3, 3), (4, 5)]


def test_the_pace_is_words_over_the_time_spoken(episode: Write) -> None:
    facts = with_hang(episode, "Hang on. [aside]\n\n[hold 30s: a rep]", ONE)
    spoken = timed(facts).spoken
    assert prompter.words_a_minute(facts) == pytest.approx(2 * 60 / spoken, abs=0.001)
    assert prompter.words_a_minute(with_hang(episode, "[shot CU side: hands]", ONE)) == 0
