"""The key of a sentence: a hash that stays while its words stay, wherever it stands and however it is set."""

from __future__ import annotations

import hashlib
import unicodedata

_SIGNS = 16  # of the hash: enough that no two sentences of any channel share a key
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
    return "s-" + hashlib.sha256(same_words(sentence).encode(errors="replace")).hexdigest()[:_SIGNS]
