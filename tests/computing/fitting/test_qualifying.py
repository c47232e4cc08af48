"""A cut that takes away what qualifies a claim is told as that, and other cuts are not."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path

import pytest

from tests.test_shortening import OUTLINE, cut, fitted

Writer = Callable[[Mapping[str, str | bytes]], Path]
CLAIM = "In one trial of 38 climbers, hangs made the grip stronger. [from mora-2022]"
TOLD = 'it qualifies the claim before it: "In one trial of 38 climbers, hangs made…"'


def breaks(episode: Writer, text: str) -> tuple[str, ...]:
    """What the one cut of the bar hang's text breaks."""
    outline = OUTLINE.replace("order:\n", "order: [opening, hang, row]\n")
    fit, _ = fitted(episode({"outline.yaml": outline, "segments/hang.md": text}), 1.0)
    assert len(cut(fit)) == 1
    return fit.cuts[0].breaks


@pytest.mark.parametrize(
    "words",
    [
        "But that was in twelve untrained men.",
        "It does not hold for anybody over sixty.",
        "It doesn't hold for anybody over sixty.",
        "However, they slept more as well.",
        "With one limit: they slept more as well.",
        "In beginners only.",
        "Only in beginners, mind.",
        "That was a small study.",
        "Nobody has tested it in women.",
    ],
)
@pytest.mark.parametrize("between", ["", "I like it. [opinion]\n\n"])
def test_a_caveat_that_goes_is_told_with_its_claim(episode: Writer, words: str, between: str) -> None:
    assert TOLD in breaks(episode, f"{CLAIM}\n\n{between}{words} [from mora-2022] [optional 2]\n")


@pytest.mark.parametrize(
    "text",
    [
        f"{CLAIM}\n\nI like chalk on the bar. [opinion] [optional 2]\n",
        f"{CLAIM}\n\nAll but one of them liked it. [aside] [optional 2]\n",
        f"I like the bar. [opinion]\n\nBut it bores me. [opinion] [optional 2]\n\n{CLAIM}\n",
        f"{CLAIM}\n\nI like it. [opinion] So would you. [opinion]\n\nBut it bores me. [opinion] [optional 2]\n",
    ],
)
def test_what_qualifies_no_claim_is_not_told(episode: Writer, text: str) -> None:
    assert not any("qualifies" in one for one in breaks(episode, text))


def test_a_caveat_that_goes_with_its_claim_is_not_told(episode: Writer) -> None:
    text = f"{CLAIM}\n\n{CLAIM} However, they slept more. [from mora-2022] [optional 2]\n"
    assert not any("qualifies" in one for one in breaks(episode, text))
