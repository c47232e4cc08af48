"""Labels of frames: those that drop-frame leaves out, and back from each label to its frame."""

from __future__ import annotations

import pytest

from scriptkit import timecode
from scriptkit.reading.outline import RATES

DAY = 24 * 60 * 60


@pytest.mark.parametrize(
    ("frame", "rate", "label"),
    [
        (0, "29.97df", "00:00:00;00"),
        (1_799, "29.97df", "00:00:59;29"),
        (1_800, "29.97df", "00:01:00;02"),
        (3_597, "29.97df", "00:01:59;29"),
        (3_598, "29.97df", "00:02:00;02"),
        (17_981, "29.97df", "00:09:59;29"),
        (17_982, "29.97df", "00:10:00;00"),
        (107_892, "29.97df", "01:00:00;00"),
        (3_599, "59.94df", "00:00:59;59"),
        (3_600, "59.94df", "00:01:00;04"),
        (35_963, "59.94df", "00:09:59;59"),
        (35_964, "59.94df", "00:10:00;00"),
        (215_784, "59.94df", "01:00:00;00"),
        (1_800, "29.97", "00:01:00:00"),
        (3_600, "59.94", "00:01:00:00"),
        (86_400, "23.976", "01:00:00:00"),
        (86_399, "24", "00:59:59:23"),
        (1_500, "", "00:01:00:00"),
        (2_589_408, "29.97df", "00:00:00;00"),
        (90_000 * 24 + 7, "25", "00:00:00:07"),
    ],
)
def test_a_frame_has_its_label(frame: int, rate: str, label: str) -> None:
    assert timecode.label(frame, rate) == label


@pytest.mark.parametrize(("rate", "frames"), [("29.97df", 200_000), ("59.94df", 400_000)])
def test_each_label_leads_back_to_its_frame(rate: str, frames: int) -> None:
    assert [timecode.frame(timecode.label(number, rate), rate) for number in range(frames)] == list(range(frames))


@pytest.mark.parametrize("rate", RATES)
def test_labels_follow_each_other_over_a_day_and_leave_out_what_drop_frame_drops(rate: str) -> None:
    second = timecode.frames(rate)
    dropped = second // 15 if rate.endswith("df") else 0
    day = DAY * second - dropped * (24 * 60 - 24 * 6)
    for number in (0, 1, second * 60 - 1, second * 600, day // 3, day - 1):
        assert timecode.frame(timecode.label(number, rate), rate) == number
    assert timecode.label(day, rate) == timecode.label(0, rate)
    sign = ";" if dropped else ":"
    assert timecode.label(day - 1, rate) == f"23:59:59{sign}{second - 1:02}"


@pytest.mark.parametrize("frames", ["00", "01"])
@pytest.mark.parametrize("sign", [";", ":"])
def test_a_label_that_is_left_out_is_no_frames(frames: str, sign: str) -> None:
    for minute in range(60):
        there = timecode.frame(f"01:{minute:02}:00{sign}{frames}", "29.97df") is not None
        assert there == (minute % 10 == 0)
        assert timecode.frame(f"01:{minute:02}:00:{frames}", "29.97") is not None


def test_at_twice_the_rate_four_labels_are_left_out() -> None:
    left_out = [number for number in range(60) if timecode.frame(f"00:01:00;{number:02}", "59.94df") is None]
    assert left_out == [0, 1, 2, 3]


@pytest.mark.parametrize(
    "written",
    ["", "1:00:00:00", "01:00:00", "24:00:00:00", "00:60:00:00", "00:00:60:00", "00:00:00:25", "01:00:00;00", "soon",
     "01:00:00:0", "01.00.00.00", "-1:00:00:00", "01:00:00:000", "٠١:00:00:00"],
)  # fmt: skip
def test_what_is_no_label(written: str) -> None:
    assert timecode.frame(written, "25") is None
    assert timecode.start(written, "25") == 90_000


def test_drop_frame_may_be_written_with_a_colon() -> None:
    assert timecode.frame("01:00:00:00", "29.97df") == timecode.frame("01:00:00;00", "29.97df") == 107_892


def test_a_cut_begins_where_the_outline_says() -> None:
    assert timecode.start("10:00:00:00", "25") == 900_000
    assert timecode.start("", "59.94df") == 215_784
