"""WebVTT and SRT are read in whatever state they come; what cannot be read is told with its place."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.reading.recordings.files import read, said, times, told


def cues(*parts: tuple[str, str], head: str = "") -> str:
    """A caption file with these times and texts."""
    return head + "".join(f"{time}\n{text}\n\n" for time, text in parts)


def test_webvtt_with_all_that_may_stand_in_it(tmp_path: Path) -> None:
    text = """WEBVTT - made for a test
Kind: captions
X-TIMESTAMP-MAP=LOCAL:00:00:00.000,MPEGTS:0

STYLE
::cue(b) { color: red }

REGION
id:one
width:40%

NOTE These words
are for nobody.

first
00:01.000 --> 00:02.000 align:start line:0 position:10%
<v Quill>Hang <b>on</b> <c.loud>the</c> <lang en>bar</lang>

NOTE

1:00:03.000-->1:00:04.000
<ruby>two<rt>second</rt></ruby> &lt;hands&gt; &amp; 5&nbsp;kg
"""
    found = read(tmp_path, text)
    assert said(found) == "Hang on the bar two <hands> & 5 kg"
    assert (found.words[0].start, found.words[-1].end, found.length) == (1.0, 3604.0, 3604.0)
    assert found.troubles == ()


def test_times_between_words_are_the_words_own(tmp_path: Path) -> None:
    text = "WEBVTT\n\n00:01.000 --> 00:04.000\nHang<00:01.500><c> on</c><00:02.000> the bar <00:03.000>now<00:03.500>\n"
    assert times(read(tmp_path, text)) == [
        ("Hang", 1.0, 1.5, True),
        ("on", 1.5, 2.0, True),
        ("the", 2.0, 2.5, False),
        ("bar", 2.5, 3.0, False),
        ("now", 3.0, 4.0, True),
    ]


@pytest.mark.parametrize("stamp", ["00:00.500", "00:09.000", "99:99:99:99"])
def test_a_time_between_words_that_does_not_fit_is_passed_over(tmp_path: Path, stamp: str) -> None:
    text = f"WEBVTT\n\n00:01.000 --> 00:03.000\nHang <{stamp}>bars\n"
    assert times(read(tmp_path, text)) == [("Hang", 1.0, 2.0, False), ("bars", 2.0, 3.0, False)]


def test_a_time_inside_a_word_leaves_it_whole(tmp_path: Path) -> None:
    text = "WEBVTT\n\n00:01.000 --> 00:03.000\nshoul<00:01.500>der <00:02.000>blades\n"
    assert times(read(tmp_path, text)) == [("shoulder", 1.0, 2.0, True), ("blades", 2.0, 3.0, True)]


def test_words_share_the_time_of_their_caption_by_their_letters(tmp_path: Path) -> None:
    found = read(tmp_path, cues(("00:00:10,000 --> 00:00:20,000", "A bar, held.\nTwo")))
    assert times(found) == [
        ("A", 10.0, 10.909, False),
        ("bar,", 10.909, 13.636, False),
        ("held.", 13.636, 17.273, False),
        ("Two", 17.273, 20.0, False),
    ]


def test_a_caption_for_each_word_gives_exact_times(tmp_path: Path) -> None:
    found = read(tmp_path, cues(("00:01.0 --> 00:01.4", "Hang"), ("00:01.4 --> 00:02.0", "on")))
    assert [word.exact for word in found.words] == [True, True]


@pytest.mark.parametrize(
    "text",
    [
        "1\n00:00:01,000 --> 00:00:02,000\nHang on.\n2\n00:00:03,000 --> 00:00:04,000\nRest now.\n",
        "00:00:01,000 --> 00:00:02,000\nHang on.\n\n00:00:03,000 --> 00:00:04,000\nRest now.",
        "\n\n7\n\n00:00:01.000 --> 00:00:02.000\n\nHang on.\n\n\n8\n\n00:00:03.0 --> 00:00:04.0\nRest now.\n\n9\n",
        "1\n0:0:1, 000 -> 0:0:2, 000\n{\\an8}<font size='2'>Hang</font> on.\n\n2\n00:03 → 00:04\n<i>Rest</i><br>now.",
        "1\n00:00:01,000 --> 00:00:02,000 X1:1 X2:2\n \nHang\n\non.\n\n2\n00:00:03,000 --> 00:00:04,000\nRest\n \nnow.",
    ],
)
def test_srt_in_every_state(tmp_path: Path, text: str) -> None:
    found = read(tmp_path, text)
    assert said(found) == "Hang on. Rest now."
    assert (found.words[0].start, found.words[2].start, found.length) == (1.0, 3.0, 4.0)
    assert found.troubles == ()
    assert found.files[0].form == "SRT"


def test_a_spoken_number_is_no_number_of_a_caption(tmp_path: Path) -> None:
    text = "1\n00:00:01,000 --> 00:00:02,000\nNext set\n10\n\n2\n00:00:03,000 --> 00:00:04,000\n20\n"
    assert said(read(tmp_path, text)) == "Next set 10 20"


def test_a_sign_less_than_is_no_tag(tmp_path: Path) -> None:
    assert said(read(tmp_path, cues(("00:01.0 --> 00:02.0", "A < B and 5<6>4 <- so")))) == "A B and 5<6>4 so"


def test_hours_may_have_more_digits(tmp_path: Path) -> None:
    assert read(tmp_path, cues(("100:00:01,000 --> 100:00:02,000", "Hang"))).words[0].start == 360001.0


def test_times_that_cannot_be_right_are_told_with_their_place(tmp_path: Path) -> None:
    text = cues(
        ("-00:00:01,000 --> 00:00:02,000", "Hang up"),
        ("00:00:09,000 --> 00:00:05,000", "on"),
        ("00:00:1x,000 --> 00:00:12,000", "never"),
        ("999999:00:00,000 --> 999999:00:01,000", "never"),
        ("00:00:13,000 --> 00:00:14,000", "now rest"),
    )
    found = read(tmp_path, text)
    assert times(found)[1:3] == [("up", 1.333, 2.0, False), ("on", 9.0, 9.152, False)]
    assert said(found) == "Hang up on now rest"
    assert told(found) == [
        (1, 1, "This caption starts before 0, at -00:00:01,000; it is read from 0 on."),
        (4, 1, 'This caption ends before it starts ("00:00:09,000 --> 00:00:05,000"); only its start is used.'),
        (7, 1, 'The times "00:00:1x,000 --> 00:00:12,000" cannot be read; their caption is left out.'),
        (10, 1, 'The time "999999:00:00,000 --> 999999:00:01,000" is none; its caption is left out.'),
    ]


def test_words_under_no_time_are_told(tmp_path: Path) -> None:
    found = read(tmp_path, "WEBVTT\n\n00:01.0 --> 00:02.0\nHang\n\nlost words\nand more\n\nid\n00:03.0 --> 00:04.0\non")
    assert said(found) == "Hang on"
    assert told(found) == [(6, 1, 'The line "lost words" stands under no time and is left out.')]
    found = read(tmp_path, "My talk\n\n1\n00:01.0 --> 00:02.0\nHang")
    assert told(found) == [(1, 1, 'The line "My talk" stands under no time and is left out.')]


def test_of_very_many_troubles_twenty_are_told_and_the_rest_counted(tmp_path: Path) -> None:
    found = read(tmp_path, cues(*[(f"00:{n:02}.500 --> 00:{n:02}.100", "up") for n in range(50)]))
    assert len(found.troubles) == 20
    assert found.troubles[-1].message.endswith("only its start is used. There are 30 more like this.")


def test_a_file_name_stands_in_each_place(tmp_path: Path) -> None:
    (trouble,) = read(tmp_path, cues(("00:02.0 --> 00:01.0", "Hang"))).troubles
    assert trouble.place.file == str(tmp_path / "0.rec")
