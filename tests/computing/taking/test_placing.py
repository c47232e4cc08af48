"""Which lines may be in which stretch of sound, by what was roughly heard."""

from __future__ import annotations

from scriptkit.computing.taking import hearing_out, placing
from scriptkit.model.recording import TimedWord, Utterance
from scriptkit.shipped import shipped
from tests.recorded import recording
from tests.scripts import worked_out

FACTS = worked_out(shipped("sample_episode"))
SCRIPT = hearing_out.spoken(FACTS.segments)


def test_lines_are_as_they_are_spoken() -> None:
    words = [" ".join(one) for one in placing.lines(SCRIPT)]
    assert any("gained one point six millimetres of muscle" in line for line in words)
    assert all(letter.islower() or letter in " '" for line in words for letter in line)


def test_an_utterance_may_hold_the_lines_heard_in_it_and_those_beside_them() -> None:
    made, _, starts = recording(FACTS)
    number = next(at for at, one in enumerate(SCRIPT) if one.segment.id == "ledge-raise" and one.at == 3)
    start = starts["ledge-raise", 3]
    (near,) = placing.near(SCRIPT, made.words, [Utterance(start, start + 2)])
    assert set(range(number - 2, number + 3)) <= set(near)
    assert len(near) < 10


def test_where_nothing_was_heard_all_between_the_neighbours_may_be() -> None:
    made, _, starts = recording(FACTS)
    low, high = starts["ledge-raise", 3], starts["ledge-raise", 7]
    words = [word for word in made.words if not low <= word.start < high]
    number = next(at for at, one in enumerate(SCRIPT) if one.segment.id == "ledge-raise" and one.at == 3)
    (near,) = placing.near(SCRIPT, words, [Utterance(low, high - 0.2)])
    assert set(range(number, number + 4)) <= set(near)


def test_where_nothing_at_all_was_heard_only_the_first_and_last_lines_may_be() -> None:
    (near,) = placing.near(SCRIPT, [], [Utterance(0, 5)])
    assert set(near) <= {0, 1, len(SCRIPT) - 2, len(SCRIPT) - 1}


def test_words_close_together_are_one_stretch_of_speech() -> None:
    words = [TimedWord("a", at, at + 0.2, exact=True) for at in (1.0, 1.3, 5.0)]
    assert placing.speech(words) == (Utterance(1.0, 1.5), Utterance(5.0, 5.2))
