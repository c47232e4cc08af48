"""How a message quotes an author and offers a near name."""

from __future__ import annotations

from collections.abc import Iterable


def quoted(words: object, most: int = 70) -> str:
    """The author's words on one line, cut where they are long."""
    line = " ".join(str(words).split())
    return f'"{line[: most - 1]}…"' if len(line) > most else f'"{line}"'


def listed(words: Iterable[object], most: int = 12) -> str:
    """Some words with commas between; the rest counted."""
    every = [str(word) for word in words]
    return ", ".join(every[:most]) + (f" and {len(every) - most} more" if len(every) > most else "")


def near(word: str, known: Iterable[object]) -> str:
    """`Did you mean ...?` with the nearest known word, or nothing."""
    if len(word) > 80:
        return ""
    from difflib import get_close_matches

    found = get_close_matches(str(word), [str(one) for one in known][:2000], 1, 0.6)
    return f"Did you mean {quoted(found[0])}?" if found else ""
