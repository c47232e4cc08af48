"""The key of a sentence or a passage: a hash that stays while its words stay, wherever and however they are set."""

from __future__ import annotations

import hashlib
import unicodedata
from collections.abc import Iterable

_SIGNS = 16  # of the hash: enough that no two sentences of any channel share a key
_SIGNS_OF_PASSAGE = 12  # enough to tell two texts of one passage apart, and short enough to copy
# what editors and spreadsheets write for each other: quotes, dashes, dots; and signs that nobody sees
_ALIKE = str.maketrans(
    {
        **dict.fromkeys("‘’‚‛ʼ′`´", "'"),
        **dict.fromkeys("“”„‟«»″", '"'),
        **dict.fromkeys("‐‑‒–—―−", "-"),
        **dict.fromkeys("\u00ad\u200b\u2060\ufeff", None),
        "…": "...",
    }
)


def same_words(sentence: str) -> str:
    """A sentence with case, white space, quotes and dashes evened out."""
    return " ".join(unicodedata.normalize("NFC", sentence).translate(_ALIKE).casefold().split())


def of(sentence: str) -> str:
    """The key of a sentence. It starts with a letter, so that no spreadsheet takes it for a number."""
    return "s-" + _hash(same_words(sentence))[:_SIGNS]


def of_passage(sentences: Iterable[str]) -> str:
    """The key of a passage, by which an approval is held against what is there; none where nothing is said."""
    words = same_words(" ".join(sentences))
    return _hash(words)[:_SIGNS_OF_PASSAGE] if words else ""


def _hash(words: str) -> str:
    return hashlib.sha256(words.encode(errors="replace")).hexdigest()


def is_key(written: str, key: str) -> bool:
    """Whether somebody wrote that key, whatever the case of its letters."""
    return bool(written.strip()) and written.strip().lower() == key
