"""Caption files as other libraries read them: start and end in milliseconds, and the lines."""

from __future__ import annotations

import html
from collections.abc import Sequence
from datetime import timedelta

import srt
import webvtt

from scriptkit.model import Caption
from scriptkit.rendering.captions import APART
from scriptkit.times import milliseconds

Read = list[tuple[int, int, list[str]]]
MILLISECOND = timedelta(milliseconds=1)


def in_milliseconds(made: Sequence[Caption]) -> Read:
    return [(milliseconds(one.start), milliseconds(one.end), list(one.lines)) for one in made]


def from_vtt(data: bytes) -> Read:
    return [
        (_whole(one.start), _whole(one.end), [html.unescape(line) for line in one.lines])
        for one in webvtt.from_string(data.decode()).captions
    ]


def from_srt(data: bytes) -> Read:
    return [
        (one.start // MILLISECOND, one.end // MILLISECOND, one.content.replace(APART, "").splitlines())
        for one in srt.parse(data.decode())
    ]


def _whole(stamp: str) -> int:
    """Milliseconds of HH:MM:SS.mmm."""
    hours, minutes, seconds = stamp.split(":")
    return (int(hours) * 60 + int(minutes)) * 60_000 + int(seconds.replace(".", ""))
