"""Texts in cells of a CSV table: guarded, so that no spreadsheet takes one for a formula, and read back as written."""

from __future__ import annotations

import re

# what a spreadsheet may take for the start of a formula, also behind white space and in its wide form
_FORMULA = re.compile(r"'*(?:\s*[=+\-@＝＋－＠]|[\t\r\n])")
_NUMBER = re.compile(r"[+-]?[0-9]+(\.[0-9]+)?")


def guarded(text: str) -> str:
    """The text; where it starts like a formula, or like one that was guarded, with a quote before it."""
    return f"'{text}" if _FORMULA.match(text) and not _NUMBER.fullmatch(text) else text


def unguarded(text: str) -> str:
    """A text without the quote that guards it."""
    return text[1:] if text.startswith("'") and _FORMULA.match(text) else text
