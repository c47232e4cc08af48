"""How a message quotes an author, lists words, and offers a near name; where a word ends."""

from __future__ import annotations

import re
from collections.abc import Iterable
from itertools import islice

LONGEST_WORD = 80  # a longer word is compared with nothing: it would take too long
MOST_WORDS = 2000  # nor are more words than these
NO_ADVICE = "These checks are no legal or medical advice; local rules and licensed practice come first."
# what the stock text of the close says at its end, for the description
SAFETY = (
    "This is education, not medical advice. Stop if something hurts, and see a licensed clinician, who can examine you."
)
SIGNS = {"+": "+", "-": "-", "−": "-", "–": "-"}  # as authors write plus and minus behind a grade, and as it is kept


def quoted(words: object, most: int = 70) -> str:
    """The author's words in a message: on one line, cut where they are long."""
    line = " ".join(str(words)[: 10 * most].split())
    return f'"{line[: most - 1]}…"' if len(line) > most else f'"{line}"'


def paid_for(name: str) -> str:
    """A disclosure in plain words, where the outline gives none; the stock text of the sponsor's passage says it."""
    return f"Ad. {name} paid for this part."


def signed(words: str, initials: str, date: str) -> str:
    """What was said, by whom and when, as far as that is known: `verified by XY on 2026-03-02`."""
    return words + (f" by {initials}" if initials else "") + (f" on {date}" if date else "")


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


def word_end(text: str, offset: int) -> int:
    """The offset, moved behind the word that it stands in."""
    if not offset or text[offset - 1].isspace():
        return offset
    return next((at for at in range(offset, len(text)) if text[at].isspace()), len(text))


def grade_parts(grade: str) -> tuple[str, str]:
    """A grade without its sign, and that sign as `+` or `-`; of "A−" they are "A" and "-"."""
    written = grade.strip()
    sign = SIGNS.get(written[-1:], "") if len(written) > 1 else ""
    return (written[:-1].rstrip(), sign) if sign else (written, "")


def did_you_mean(word: str, known: Iterable[object]) -> str:
    """`Did you mean ...?` with the nearest known word, or nothing."""
    nearest = near(word, known)
    return f"Did you mean {quoted(nearest)}?" if nearest else ""


def is_web_address(text: str) -> bool:
    """Whether a text can be typed or clicked: https or no scheme, a host with a dot, no white space."""
    return re.fullmatch(r"(?:https://)?[\w-]+(?:\.[\w-]+)+(?:[/?#]\S*)?", text) is not None
