"""Captions to WebVTT and SubRip, and their figures."""

from __future__ import annotations

import re
from collections.abc import Sequence

from scriptkit.model.captions import FAST, FASTEST, SHORTEST, Caption
from scriptkit.rendering.rows import Row
from scriptkit.times import milliseconds, thousandths

_ESCAPES = str.maketrans({"&": "&amp;", "<": "&lt;", ">": "&gt;"})
# SubRip has no escape: a sign without width behind what players would take for a tag, an order or an arrow
_TAG_LIKE = re.compile(r"<(?=[A-Za-z/!?])|--(?=>)|\{(?=\\)")
APART = "\u2060"


def vtt(captions: Sequence[Caption]) -> bytes:
    """captions.vtt, as the W3C text has it."""
    cues = [
        f"{_stamp(one, '.')}\n" + "".join(f"{line.translate(_ESCAPES)}\n" for line in one.lines) for one in captions
    ]
    return "\n".join(["WEBVTT\n", *cues]).encode(errors="replace")


def srt(captions: Sequence[Caption], *, crlf: bool = False) -> bytes:
    """captions.srt, numbered from 1; lines end in CR LF where that is asked for."""
    cues = [
        f"{number}\n{_stamp(one, ',')}\n" + "".join(f"{_untagged(line)}\n" for line in one.lines)
        for number, one in enumerate(captions, 1)
    ]
    text = "\n".join(cues)
    return (text.replace("\n", "\r\n") if crlf else text).encode(errors="replace")


def figures(captions: Sequence[Caption]) -> Row:
    """How many captions there are, and those that are faster or shorter than captions should be."""
    return {
        "count": len(captions),
        "fast": sum(one.speed > FAST for one in captions),
        "too_fast": sum(one.speed > FASTEST for one in captions),
        "short": sum(one.end - one.start < SHORTEST for one in captions),
        "warnings": [
            {
                "start_s": thousandths(float(one.start)),
                "end_s": thousandths(float(one.end)),
                "speed": round(one.speed, 1),
                "lines": list(one.lines),
            }
            for one in captions
            if one.speed > FAST or one.end - one.start < SHORTEST
        ],
    }


def remark(captions: Sequence[Caption]) -> str:
    """A word about captions that are too fast or too short, to stand behind what the file is for."""
    counted = figures(captions)
    told = [
        f"{counted['fast']} of {counted['count']} faster than {FAST} characters a second" * bool(counted["fast"]),
        f"{counted['too_fast']} faster than the limit of {FASTEST}" * bool(counted["too_fast"]),
        f"{counted['short']} shorter than a second" * bool(counted["short"]),
    ]
    return "".join(f"; {one}" for one in told if one)


def _stamp(one: Caption, mark: str) -> str:
    return f"{_clock(milliseconds(one.start), mark)} --> {_clock(milliseconds(one.end), mark)}"


def _clock(value: int, mark: str) -> str:
    seconds, thousandth = divmod(value, 1000)
    return f"{seconds // 3600:02}:{seconds // 60 % 60:02}:{seconds % 60:02}{mark}{thousandth:03}"


def _untagged(line: str) -> str:
    return _TAG_LIKE.sub(rf"\g<0>{APART}", line)
