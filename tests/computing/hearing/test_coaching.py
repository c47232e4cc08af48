"""Cues that are no bare commands."""

from __future__ import annotations

import pytest

from scriptkit.computing.hearing.clauses import compile_cues, take_apart
from scriptkit.computing.hearing.coaching import cue
from scriptkit.reading.words import load

CUES = compile_cues(load())


def is_cue(clause: str) -> bool:
    speech = take_apart(clause, CUES)
    return bool(cue(speech, speech.clauses[0], 0, CUES))


@pytest.mark.parametrize(
    "clause",
    [
        "stop",
        "knees out",
        "elbows tucked",
        "soft on the landing",
        "chest to the bar",
        "slower than that",
        "lighter please",
        "warm socks compulsory",
        "you bring the knee in",
        "we take the arms up",
        "you lower yourself",
        "you lower the bar to your chest",
        "hips rotate slowly",
        "elbows stay home",
        "no running till it settles",
        "you must breathe",
    ],
)
def test_a_cue_needs_no_command(clause: str) -> None:
    assert is_cue(clause)


@pytest.mark.parametrize(
    "clause",
    [
        "knees hurt",
        "knees are out",
        "light on evidence",
        "faster than the other group",
        "you lose the arm",
        "you lower your blood pressure",
        "you see the light",
        "the hip is a joint",
        "no runner improved until week six",
        "back in a minute",
        "calves",
    ],
)
def test_a_statement_is_no_cue(clause: str) -> None:
    assert not is_cue(clause)
