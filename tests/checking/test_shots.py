"""An exercise is shown by a mark in its text or by shots of the outline."""

from __future__ import annotations

import pytest

from tests.scripts import Write, found, with_hang, worked_out

ONE = "title: One\nexercises: {hang: {name: Bar hang%s}}\norder: [{segment: hang%s}]\n"


@pytest.mark.parametrize(
    ("text", "exercise", "step", "shown"),
    [
        ("Hello. [aside]", "", "", False),
        ("Hello. [shot FS: hang] [aside]", "", "", True),
        ("[shot MS front: presenter to camera] Hello. [aside]", "", "", False),
        ("[shot FS: hang]\n\nHello. [aside]", "", "", True),
        ("Hello. [aside]", ", shots: [{size: FS, of: hang}]", "", True),
        ("Hello. [aside]", "", ", shots: [{size: FS, of: hang}]", True),
    ],
)
def test_shown_or_not(episode: Write, text: str, exercise: str, step: str, shown: bool) -> None:
    told = found(with_hang(episode, text, ONE % (exercise, step)), "exercise-not-shown")
    assert [place for place, _ in told] == ([] if shown else ["outline.yaml:2:13"])


def test_the_stock_text_shows_every_exercise(episode: Write) -> None:
    assert found(worked_out(episode({"outline.yaml": ONE % ("", "")})), "exercise-not-shown") == []


def told(episode: Write, name: str, mark: str, text: str = "I like it. [opinion]", rate: str = "25") -> list[str]:
    outline = f"title: One\nrate: {rate}\n" + (ONE % ("", "")).removeprefix("title: One\n")
    return [message for _, message in found(with_hang(episode, f"[shot FS side: hang; {mark}] {text}", outline), name)]


@pytest.mark.parametrize(
    ("mark", "text", "count"),
    [
        ("reps 3", "I like it. [opinion] [hold 12s: three]", 0),
        ("reps 3", "I like it. [opinion]", 1),
        ("reps 3; tempo 1-0-1", "I like it. [opinion] [hold 6s: three]", 0),
        ("reps 3; fps 50", "I like it. [opinion] [hold 12s: three]", 1),
        ("reps 3; fps 50", "I like it. [opinion] [hold 24s: three]", 0),
    ],
)
def test_repetitions_take_their_tempo_times_the_slow_motion(episode: Write, mark: str, text: str, count: int) -> None:
    assert len(told(episode, "reps-do-not-fit", mark, text)) == count


def test_one_repetition_is_told_as_one(episode: Write) -> None:
    (message,) = told(episode, "reps-do-not-fit", "reps 1")
    assert message.startswith('A repetition of "hang" takes 4 s; it is seen for')


@pytest.mark.parametrize(("mark", "count"), [("fps 100; sound sync", 1), ("fps 100; sound MOS", 0), ("sound sync", 0)])
def test_slow_motion_has_no_sound_of_its_own(episode: Write, mark: str, count: int) -> None:
    assert len(told(episode, "slow-motion-with-speech", mark)) == count


@pytest.mark.parametrize(
    ("fps", "rate", "count"),
    [("60", "24", 1), ("120", "24", 0), ("119.88", "29.97", 0), ("24", "25", 0), ("60", "25", 1)],
)
def test_slow_motion_is_even_where_the_capture_rate_is_a_multiple(
    episode: Write, fps: str, rate: str, count: int
) -> None:
    assert len(told(episode, "slow-motion-uneven", f"fps {fps}", rate=rate)) == count


@pytest.mark.parametrize(("fps", "count"), [("fast", 1), ("0", 1), ("100", 0), ("100 fps", 0)])
def test_a_capture_rate_is_a_number(episode: Write, fps: str, count: int) -> None:
    assert len(told(episode, "capture-rate-unclear", f"fps {fps}")) == count


@pytest.mark.parametrize(
    ("mark", "told"),
    [
        ("FS side correct: bar hang", "framed alike"),
        ("FS side correct: bar hang; reps 9", "framed alike"),
        ("FS side correct: hang", ""),
        ("FS front correct: bar hang", ""),
        ("FS side fault: bar hang; label Fault", ""),
        ("FS side correct: bar hang; fps 100", ""),
    ],
)
def test_a_shot_that_text_and_outline_ask_for_in_other_words(episode: Write, mark: str, told: str) -> None:
    outline = ONE % (", shots: [{size: FS, plane: side, form: correct, of: hang}]", "")
    facts = with_hang(episode, f"[shot {mark}] Hello. [aside]", outline)
    messages = [message for _, message in found(facts, "shot-perhaps-twice")]
    wanted = ['The outline asks for "hang", the text for "bar hang": framed alike.'] if told else []
    assert messages == wanted


@pytest.mark.parametrize(("tempo", "count"), [("3-1-2", 0), ("slow", 1), ("30x1", 1)])
def test_a_tempo_that_cannot_be_read_is_told(episode: Write, tempo: str, count: int) -> None:
    assert len(told(episode, "tempo-unclear", f"tempo {tempo}")) == count
