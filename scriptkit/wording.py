"""How a message quotes an author, lists words, and offers a near name."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import islice

LONGEST_WORD = 80  # a longer word is compared with nothing: it would take too long
MOST_WORDS = 2000  # nor are more words than these


def quoted(words: object, most: int = 70) -> str:
    """The author's words in a message: on one line, cut where they are long."""
    line = " ".join(str(words)[: 10 * most].split())
    return f'"{line[: most - 1]}…"' if len(line) > most else f'"{line}"'


def listed(words: Iterable[object], most: int = 12) -> str:
    """Some words with commas between; the rest counted."""
    every = [str(word) for word in words]
    return ", ".join(every[:most]) + (f" and {len(every) - most} more" if len(every) > most else "")


def near(word: str, known: Iterable[object]) -> str:
    """The known word nearest to `word`, or nothing."""
    if len(word) > LONGEST_WORD:
        return ""
    words = [str(one) for one in islice(known, MOST_WORDS)]
    alike = word.lower().replace("_", "-")
    for one in words:
        if one.lower().replace("_", "-") == alike:
            return one
    from difflib import get_close_matches

    found = get_close_matches(word, words, 1, 0.6)
    return found[0] if found else ""


def did_you_mean(word: str, known: Iterable[object]) -> str:
    """`Did you mean ...?` with the nearest known word, or nothing."""
    nearest = near(word, known)
    return f"Did you mean {quoted(nearest)}?" if nearest else ""
