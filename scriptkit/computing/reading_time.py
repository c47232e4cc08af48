"""How long words on screen have to stand to be read."""

from __future__ import annotations

WORDS_A_SECOND = 3.0
LEAST = 1.5  # seconds for a card of a word or two
LEAST_PAID = 3.0  # seconds for words that tell who pays


def seconds(text: str, least: float = LEAST) -> float:
    """Seconds for a text: a third of a second a word, and one to find it."""
    return max(least, len(text.split()) / WORDS_A_SECOND + 1.0)
