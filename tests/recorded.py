"""Recordings made of a script: said word by word at a steady rate, with what goes wrong in front of a camera."""

from __future__ import annotations

import random
from collections.abc import Mapping, Sequence

from scriptkit.model import Facts
from scriptkit.model.recording import Recording, TimedWord

LITTLE = frozenset("the and of to so is in on it a i that they".split())
SENTENCE_END = 0.6


class Voice:
    """Says words one after the other."""

    def __init__(self) -> None:
        self.words: list[TimedWord] = []
        self.now = 0.0

    def say(self, text: str) -> None:
        """The words of a text, each as long as its letters, and the pause behind them."""
        for word in text.split():
            end = self.now + 0.06 * len(word) + 0.08
            self.words.append(TimedWord(word, round(self.now, 3), round(end, 3), exact=True))
            self.now = end
        self.now += SENTENCE_END


def recording(
    facts: Facts,
    *,
    order: Sequence[int] | None = None,
    instead: Mapping[tuple[str, int], Sequence[str]] | None = None,
    fillers: float = 0.0,
    dropped: float = 0.0,
    doubled: float = 0.0,
    misheard: float = 0.0,
    seed: int = 1,
) -> tuple[Recording, dict[str, float], dict[tuple[str, int], float]]:
    """A recording, when each segment begins in it, and when each sentence does.

    `order` is that of the segments; `instead` has what is said for a sentence, by segment and number: nothing, or
    several sentences. The shares are of words; only little words are dropped, doubled and misheard.
    """
    chance, voice = random.Random(seed), Voice()  # noqa: S311 - nothing secret
    segments: dict[str, float] = {}
    sentences: dict[tuple[str, int], float] = {}
    for number in order or range(len(facts.segments)):
        segment = facts.segments[number]
        segments[segment.id] = voice.now
        for at, one in enumerate(segment.sentences):
            sentences[segment.id, at] = voice.now
            for text in (instead or {}).get((segment.id, at), [str(one.text)]):
                words = (_heard(word, chance, (fillers, dropped, doubled, misheard)) for word in text.split())
                voice.say(" ".join(word for word in words if word))
    return Recording(tuple(voice.words), voice.now), segments, sentences


def _heard(word: str, chance: random.Random, shares: tuple[float, float, float, float]) -> str:
    fillers, dropped, doubled, misheard = shares
    before = "um " if chance.random() < fillers else ""
    if word.strip(".,;:!?") in LITTLE:  # a capital letter may be a grade
        draw = chance.random()
        if draw < dropped:
            return before.strip()
        if draw < dropped + doubled:
            return f"{before}{word} {word}"
        if draw < dropped + doubled + misheard:
            return f"{before}hm{word}"
    return before + word
