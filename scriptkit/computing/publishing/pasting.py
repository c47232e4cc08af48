"""An author's words as a description can hold them: on one line, and without angle brackets."""

from __future__ import annotations

import re

from scriptkit.model.publishing import Replaced
from scriptkit.places import Place, place_of

# what a bracket says, best first: a bound before a number, an arrow
_NUMBER = r"\s*(?=[-+−$£€]?\.?\d)"
_SAYS = (
    (rf"\s*<\s*={_NUMBER}", " at most "),
    (rf"\s*>\s*={_NUMBER}", " at least "),
    (rf"\s*<{_NUMBER}", " under "),
    (rf"\s*(?<![-=])>{_NUMBER}", " over "),
    (r"[-=]{1,9}>", "→"),
    (r"<[-=]{1,9}", "←"),
)
_ALIKE = str.maketrans("<>", "‹›")


class Paste:
    """Makes words fit to be pasted, and keeps in `replaced` what was changed in them."""

    def __init__(self) -> None:
        self.replaced: dict[Place, Replaced] = {}

    def words(self, text: str, otherwise: Place) -> str:
        """The text on one line; a bound is said in words, other angle brackets become signs that look like them."""
        line = " ".join(text.split())
        if "<" not in text and ">" not in text:
            return line
        for pattern, says in _SAYS:
            line = re.sub(pattern, says, line)
        line = line.translate(_ALIKE).strip()
        place = place_of(text, otherwise, min(at for at in (text.find("<"), text.find(">")) if at >= 0))
        self.replaced[place] = Replaced(str(text), line, place)
        return line


def address(text: str) -> str:
    """An address without white space; its angle brackets are written as addresses write them."""
    return "".join(text.split()).replace("<", "%3C").replace(">", "%3E")


def cut(text: str, most: float) -> str:
    """A text of at most so many characters: it ends behind a whole word, with an ellipsis, where it was longer."""
    if len(text) <= most:
        return text
    kept = text[: int(most)]
    whole = kept[:-1] if text[len(kept) - 1] == " " else kept.rpartition(" ")[0]
    return (whole or kept[:-1]).rstrip(" ,;:–—-") + "…"
