"""The keys of `day:` are read in the units in which a person writes them, and wrong ones are findings."""

from __future__ import annotations

from typing import Any

import pytest

from scriptkit import build
from scriptkit.model import CallSheet
from tests.scripts import Write, found, worked_out

ONE = "title: One\nexercises: {hang: {name: Bar hang}}\nday: {breaks: [], hospital: H, contacts: C, %s}\n"


def read(episode: Write, written: str) -> CallSheet:
    day = build.read(episode({"outline.yaml": ONE % written})).episode.day
    assert day is not None
    return day


@pytest.mark.parametrize(
    ("written", "key", "value"),
    [
        ("call: 09:00", "call", 9 * 3600),
        ('call: "8.30"', "call", 8.5 * 3600),
        ("until: 17:00", "until", 17 * 3600),
        ("hours: 8", "hours", 8 * 3600),
        ("hours: 8h", "hours", 8 * 3600),
        ("hours: 7.5", "hours", 7.5 * 3600),
        ('hours: "7:30"', "hours", 7.5 * 3600),
        ("hours: 450m", "hours", 7.5 * 3600),
        ("setup: 20", "setup", 1200),
        ("setup: 20m", "setup", 1200),
        ("reframe: 90s", "reframe", 90),
        ("rest: 2m30s", "rest", 150),
        ("takes: 5", "takes", 5),
        ("mbps: 400", "mbps", 400),
        ("contacts: [A. 555 0100, B. 555 0101]", "contacts", ("C",)),
    ],
)
def test_units(episode: Write, written: str, key: str, value: Any) -> None:
    assert getattr(read(episode, written), key) == value


def test_a_break_is_a_length_perhaps_with_a_start(episode: Write) -> None:
    text = "title: One\nexercises: {hang: {name: H}}\nday: {breaks: [15, {start: 12:30, length: 45m}]}\n"
    day = build.read(episode({"outline.yaml": text})).episode.day
    assert day is not None
    assert [(one.start, one.length) for one in day.breaks] == [(None, 900), (12.5 * 3600, 2700)]


@pytest.mark.parametrize(
    ("written", "name"),
    [
        ("call: nine", "wrong-type"),
        ('call: "25:00"', "wrong-type"),
        ("call: 9", "wrong-type"),
        ("hours: long", "wrong-type"),
        ("hours: 30", "out-of-range"),
        ("setup: 2000", "out-of-range"),
        ("hospitl: x", "unknown-key"),
        ("takes: 1.5", "wrong-type"),
        ("on: soon", "wrong-type"),
        ("breaks: [{start: 12:30}]", "key-twice"),
    ],
)
def test_what_cannot_be_meant_is_found(episode: Write, written: str, name: str) -> None:
    assert name in [one for one, _ in found(worked_out(episode({"outline.yaml": ONE % written})))]


def test_a_channel_gives_what_the_outline_leaves_out(episode: Write) -> None:
    folder = episode(
        {
            "outline.yaml": "title: One\nexercises: {hang: {name: H}}\nday: {call: 10:00}\n",
            "../channel.yaml": "name: C\nday: {call: 09:00, hospital: H, setup: 20m}\n",
        }
    )
    day = build.read(folder).episode.day
    assert day is not None
    assert (day.call, day.hospital, day.setup) == (36_000, "H", 1200)
