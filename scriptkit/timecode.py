"""Timecode after SMPTE 12M: numbers of frames to labels and back. A rate is written as the outline has it: `29.97df`.

Drop-frame leaves out labels, never pictures: two at each minute that ten does not divide, four where twice as many
frames are counted. It is written with a semicolon before the frames.
"""

import re
from typing import NamedTuple

from scriptkit.times import NTSC, STOCK_FRAME_RATE

START = "01:00:00:00"  # of a cut, where the outline says nothing
HOURS = 24  # behind the last label of a day comes the first
_LABEL = re.compile(r"([0-9]{2}):([0-9]{2}):([0-9]{2})([:;])([0-9]{2})")


class _Counting(NamedTuple):
    """How labels are counted: so many a second, so many left out at a minute, so many frames in ten minutes."""

    second: int
    dropped: int
    ten_minutes: int


def drops(rate: str) -> bool:
    """Whether labels are left out at that rate."""
    return rate.endswith("df")


def frames(rate: str) -> int:
    """How many frames a second of timecode counts."""
    return _counting(rate).second


def label(frame: int, rate: str) -> str:
    """The label of a frame, counted from that of 00:00:00:00."""
    second, dropped, ten_minutes = _counting(rate)
    frame %= ten_minutes * 6 * HOURS
    tens, rest = divmod(frame, ten_minutes)
    # the first minute of ten is whole; each of the others is shorter by the labels that it leaves out
    minutes = max(0, rest - dropped) // (second * 60 - dropped)
    counted = frame + dropped * (9 * tens + minutes)
    seconds, rest = divmod(counted, second)
    sign = ";" if drops(rate) else ":"
    return f"{seconds // 3600:02}:{seconds // 60 % 60:02}:{seconds % 60:02}{sign}{rest:02}"


def frame(written: str, rate: str) -> int | None:
    """The frame that has this label; None where none has. Drop-frame may be written with a colon, too."""
    found = _LABEL.fullmatch(written.strip())
    if not found or (found[4] == ";" and not drops(rate)):
        return None
    hours, minutes, seconds, rest = (int(found[group]) for group in (1, 2, 3, 5))
    second, dropped, _ = _counting(rate)
    if hours >= HOURS or minutes >= 60 or seconds >= 60 or rest >= second:
        return None
    if rest < dropped and seconds == 0 and minutes % 10:
        return None
    whole = hours * 60 + minutes
    return (whole * 60 + seconds) * second + rest - dropped * (whole - whole // 10)


def start(written: str, rate: str) -> int:
    """The frame at which a cut begins, by what the outline says; that of `START` where it says nothing or no label."""
    found = frame(written, rate)
    return (frame(START, rate) or 0) if found is None else found


def _counting(rate: str) -> _Counting:
    written = (rate or STOCK_FRAME_RATE).removesuffix("df")
    second = NTSC.get(written) or int(written)
    dropped = second // 15 if drops(rate) else 0
    return _Counting(second, dropped, second * 600 - dropped * 9)
