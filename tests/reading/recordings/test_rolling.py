"""Captions are put in order, and each word is there once, though captions repeat each other."""

from __future__ import annotations

from pathlib import Path

from tests.reading.recordings.files import read, said, times, told
from tests.reading.recordings.test_captions import cues

LIVE = """WEBVTT

00:00:00.000 --> 00:00:02.000 align:start position:0%
\x20
Hold<00:00:00.500><c> the</c><00:00:00.800><c> bar.</c>

00:00:02.000 --> 00:00:02.010
Hold the bar.
\x20

00:00:02.010 --> 00:00:04.000
Hold the bar.
Now<00:00:02.500><c> hang</c><00:00:03.000><c> on</c>

00:00:04.000 --> 00:00:04.010
Now hang on
\x20

00:00:04.010 --> 00:00:06.000
Now hang on
Hold<00:00:04.500><c> it.</c>
"""


def test_lines_that_roll_on_are_read_once_with_their_exact_times(tmp_path: Path) -> None:
    found = read(tmp_path, LIVE)
    assert said(found) == "Hold the bar. Now hang on Hold it."
    assert all(word.exact for word in found.words)
    assert found.words[3] == ("Now", 2.01, 2.5, True)
    assert found.troubles == ()


def test_the_same_where_a_program_took_the_spaces_at_line_ends_away(tmp_path: Path) -> None:
    assert times(read(tmp_path, LIVE.replace("\n \n", "\n\n"))) == times(read(tmp_path, LIVE))


def test_three_lines_that_roll_up_and_overlap(tmp_path: Path) -> None:
    lines = [f"line {name} here" for name in ("one", "two", "three", "four", "five", "six")]
    parts = [
        (f"00:{2 * n:02}.000 --> 00:{2 * n + 6:02}.000", "\n".join(lines[max(0, n - 2) : n + 1])) for n in range(6)
    ]
    found = read(tmp_path, cues(*parts))
    assert said(found) == " ".join(lines)
    assert [word.start for word in found.words[::3]] == [0.0, 2.0, 4.0, 6.0, 8.0, 10.0]


def test_a_line_that_grows_word_by_word(tmp_path: Path) -> None:
    grown = ["Hang", "Hang on", "Hang on the", "Hang on the bar.", "And", "And rest."]
    parts = [(f"00:0{n}.000 --> 00:0{n + 1}.000", text) for n, text in enumerate(grown)]
    assert said(read(tmp_path, cues(*parts))) == "Hang on the bar. And rest."


def test_words_that_roll_on_in_lines_broken_anew(tmp_path: Path) -> None:
    words = [f"word{n}" for n in range(30)]
    parts = []
    for n in range(0, 24, 2):
        window = words[n : n + 8]
        parts.append((f"00:{n:02}.000 --> 00:{n + 2:02}.000", " ".join(window[:5]) + "\n" + " ".join(window[5:])))
    assert said(read(tmp_path, cues(*parts))) == " ".join(words)


def test_a_word_said_twice_is_there_twice_where_captions_do_not_roll(tmp_path: Path) -> None:
    texts = ["Up.", "One more.", "One more.", "One more.\nAnd rest.", "Good.", "Now the next one.", "Breathe."]
    parts = [(f"00:0{n}.000 --> 00:0{n + 1}.000", text) for n, text in enumerate(texts)]
    assert said(read(tmp_path, cues(*parts))).count("One more.") == 3


def test_a_caption_that_is_there_twice_at_one_time_is_read_once(tmp_path: Path) -> None:
    parts = [
        ("00:01.000 --> 00:03.000", "Hang on."),
        ("00:01.000 --> 00:03.000", "Hang on."),
        ("00:01.500 --> 00:03.500", "Hang on!"),
        ("00:05.000 --> 00:06.000", "Rest."),
    ]
    assert said(read(tmp_path, cues(*parts))) == "Hang on. Rest."


def test_captions_out_of_order_are_put_in_order_and_told(tmp_path: Path) -> None:
    parts = [
        ("00:05.000 --> 00:06.000", "three"),
        ("00:01.000 --> 00:02.000", "one"),
        ("00:03.000 --> 00:04.000", "two"),
        ("00:02.500 --> 00:03.000", "and"),
    ]
    found = read(tmp_path, cues(*parts))
    assert said(found) == "one and two three"
    ((line, column, message),) = told(found)
    assert (line, column) == (4, 1)
    assert message.startswith("This caption starts before the one above it, as 1 more do. All were put in order")


def test_captions_that_overlap_give_words_in_order(tmp_path: Path) -> None:
    parts = [("00:01.000 --> 00:05.000", "Hang on"), ("00:03.000 --> 00:06.000", "and rest")]
    found = times(read(tmp_path, cues(*parts)))
    assert [word[:2] for word in found] == [("Hang", 1.0), ("on", 2.333), ("and", 3.0), ("rest", 4.286)]
    assert found[1][2] == 3.0


def test_captions_shown_at_once_are_read_one_below_the_other(tmp_path: Path) -> None:
    parts = [("00:01.000 --> 00:03.000", "Hang"), ("00:01.000 --> 00:03.000", "bars")]
    assert times(read(tmp_path, cues(*parts))) == [("Hang", 1.0, 2.0, False), ("bars", 2.0, 3.0, False)]


def test_a_speaker_is_known_by_two_lines(tmp_path: Path) -> None:
    parts = [
        ("00:01.000 --> 00:03.000", "QUILL: Hang on."),
        ("00:04.000 --> 00:05.000", "RDL: hinge first."),
        ("00:06.000 --> 00:07.000", "QUILL: Rest."),
    ]
    assert said(read(tmp_path, cues(*parts))) == "Hang on. RDL: hinge first. Rest."
