"""The recogniser finds words in what a voice says, and only of the lines that it is asked for."""

from __future__ import annotations

from pathlib import Path

import pytest

from scriptkit.model.recording import TimedWord, Utterance
from scriptkit.reading.recordings.opening import Unreadable
from scriptkit.reading.recordings.recogniser import Recogniser, demand
from tests.voice import RATE, spoken

LINES = [
    "put your heel off a step and sink slowly".split(),
    "quennick soleus".split(),
    "a small trial found no clear difference".split(),
]


@pytest.fixture(scope="module")
def recogniser() -> Recogniser:
    pytest.importorskip("pocketsphinx")
    return Recogniser(LINES, 2 * RATE)


def sound(*texts: str, folder: Path) -> bytes:
    samples = [0] * RATE
    for text in texts:
        samples += [*(one for one in spoken(text, folder) for _ in range(2)), *[0] * RATE]
    return b"".join(one.to_bytes(2, "little", signed=True) for one in samples)


def words(found: list[TimedWord]) -> str:
    return " ".join(one.text for one in found)


@pytest.mark.speech
def test_a_line_is_found_where_it_was_said(recogniser: Recogniser, tmp_path: Path) -> None:
    said = sound("Put your heel off a step, and sink slowly.", folder=tmp_path)
    ((at, part),) = recogniser.utterances([said])
    assert at.start == pytest.approx(0.5, abs=0.4)
    assert "heel off a step and sink slowly" in words(recogniser.words(at, part))
    placed = recogniser.placed(at, part, [0, 1, 2])
    assert words(placed) == " ".join(LINES[0])
    assert placed[0].start == pytest.approx(0.5, abs=0.1)


@pytest.mark.speech
def test_what_was_not_said_is_not_placed(recogniser: Recogniser, tmp_path: Path) -> None:
    said = sound("The kettle in our kitchen has a lid that never quite closes.", folder=tmp_path)
    found = [word for at, part in recogniser.utterances([said]) for word in recogniser.placed(at, part, [0, 2])]
    assert len(found) < 4


@pytest.mark.speech
def test_two_lines_with_a_pause_are_two_utterances(recogniser: Recogniser, tmp_path: Path) -> None:
    said = sound("Put your heel off a step.", "A small trial found no clear difference.", folder=tmp_path)
    one, two = [at for at, _ in recogniser.utterances([said])]
    assert one.end <= two.start


def test_silence_holds_no_utterance(recogniser: Recogniser) -> None:
    assert list(recogniser.utterances([bytes(4 * RATE)])) == []
    assert list(recogniser.utterances([])) == []


def test_words_that_it_does_not_know_are_passed_over(recogniser: Recogniser) -> None:
    assert recogniser.lines[1] == []
    assert recogniser.placed(Utterance(0, 1), bytes(4 * RATE), [1]) == []
    with pytest.raises(Unreadable, match="no word that the recogniser knows"):
        Recogniser([["quennick"]], 16_000)


def test_without_it_the_way_to_install_it_is_told(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(__import__("sys").modules, "pocketsphinx", None)
    with pytest.raises(Unreadable, match=r"pip install 'scriptkit\[take\]'"):
        demand()
