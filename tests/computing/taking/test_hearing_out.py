"""Words of a recording keep their times when several of them are one number, and gaps are what no line covers."""

from __future__ import annotations

from scriptkit.computing.taking.aligning import Match
from scriptkit.computing.taking.hearing_out import Recorded, before, gaps, order
from scriptkit.model.recording import TimedWord


def recorded(text: str) -> Recorded:
    return Recorded([TimedWord(word, float(at), at + 0.5, exact=True) for at, word in enumerate(text.split())])


def test_a_number_of_several_words_lasts_from_the_first_to_the_last() -> None:
    one = recorded("for two hundred and twelve grams, say")
    assert one.keys[1] == "#212"
    assert (one.start(1), one.end(1)) == (1.0, 4.5)
    assert one.text(1, 2) == "two hundred and twelve grams,"


def test_what_no_line_covers_is_a_gap() -> None:
    matches = [Match(2, 4, (), 3.0), None, Match(7, 8, (), 2.0)]
    assert gaps(matches, 12) == [(0, 2), (5, 7), (9, 12)]
    assert gaps([None], 3) == [(0, 3)]
    assert gaps([], 0) == []
    assert [before(order(matches), token) for token in (0, 5, 9)] == [-1, 0, 2]
