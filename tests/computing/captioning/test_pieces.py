"""The voice alone is captioned: pauses and holds, and the pause at the end of a sentence, are not."""

from __future__ import annotations

import pytest

from scriptkit.computing.captioning import pieces
from scriptkit.model import Facts
from scriptkit.shipped import shipped
from tests.scripts import Write, timed, with_hang, worked_out

ONE = "title: One\npace: 160\nexercises: {hang: {name: Bar hang}}\norder: [hang]\n"
LETTER = 1 / (4.65 / (60 / 160 - 0.051))


def planned(facts: Facts) -> list[pieces.Piece]:
    return pieces.planned(facts.segments, facts.timeline)


def texts(episode: Write, text: str) -> list[str]:
    return [one.text for one in planned(with_hang(episode, text, ONE))]


def test_a_sentence_is_one_piece_without_the_pause_behind_it(episode: Write) -> None:
    first, second = planned(with_hang(episode, "Hang on. [aside] Let go. [aside]", ONE))
    assert (first.text, second.text) == ("Hang on.", "Let go.")
    assert (first.start, first.end) == pytest.approx((0, 6 * LETTER))
    assert (second.start, second.end) == pytest.approx((6 * LETTER + 0.6, 11 * LETTER + 0.6))


def test_a_pause_cuts_a_sentence_and_is_in_no_piece(episode: Write) -> None:
    facts = with_hang(episode, "Hang [pause 2s] on. [aside]", ONE)
    first, second = planned(facts)
    assert (first.text, second.text) == ("Hang", "on.")
    assert second.start - first.end == pytest.approx(2)
    assert second.end == pytest.approx(timed(facts).total - 0.6)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("[hold 3s: a rep] Hang on. [aside]", ["Hang on."]),
        ("Hang on. [aside] [pause 2s]", ["Hang on."]),
        ("[pause 1s] [pause 1s] Hang on. [aside]", ["Hang on."]),
        ("Hang [pause 1s], then let go. [aside]", ["Hang,", "then let go."]),
        ("Hang [screen: Now] on. [aside]", ["Hang on."]),
        (
            "[pause 2s]\n\nHang on. [aside]\n\n[hold 2s: a rep]\n\nLet [pause 1s] go. [aside]",
            ["Hang on.", "Let", "go."],
        ),
    ],
)
def test_no_word_is_cut_and_none_is_lost(episode: Write, text: str, expected: list[str]) -> None:
    assert texts(episode, text) == expected


def test_pieces_add_up_to_what_the_segments_say() -> None:
    facts = worked_out(shipped("sample_episode"))
    found = planned(facts)
    spoken = sum(one.end - one.start for one in found)
    sentences = sum(len(segment.sentences) for segment in facts.segments)
    pauses = 0.6 * (sentences + len(facts.segments) - 1)
    assert spoken == pytest.approx(sum(one.spoken for one in facts.timeline.segments) - pauses, abs=0.001)
    assert [(one.start, one.end) for one in found] == sorted((one.start, one.end) for one in found)
    assert " ".join(one.text for one in found) == " ".join(
        sentence.text for segment in facts.segments for sentence in segment.sentences
    )
