"""Where the Jinja tags and the brackets of a spoken text end."""

from __future__ import annotations

import re

_BRACKETS = re.compile(r"\\.|\[|\]|\{[{%#]", re.DOTALL)
_JINJA_CLOSE = {
    "{{": re.compile(r"\"[^\"\n]*\"|'[^'\n]*'|\}\}"),
    "{%": re.compile(r"\"[^\"\n]*\"|'[^'\n]*'|%\}"),
    "{#": re.compile(r"#\}"),
}


class Pieces:
    """Where the Jinja tags and the brackets of one text end, by where they start: found in one go."""

    def __init__(self, text: str) -> None:
        self.tags: dict[int, int] = {}
        self.brackets: dict[int, int] = {}
        opened: list[int] = []
        unclosed: set[str] = set()
        at = 0
        while found := _BRACKETS.search(text, at):
            start, sign, at = found.start(), found[0], found.end()
            if sign == "[":
                opened.append(start)
            elif sign == "]" and opened:
                self.brackets[opened.pop()] = at
            elif sign in _JINJA_CLOSE and sign not in unclosed:
                end = jinja_end(text, start)
                if end > 0:
                    self.tags[start] = at = end
                else:
                    unclosed.add(sign)  # nothing after it closes either: looking again would take too long


def jinja_end(text: str, start: int) -> int:
    """The offset behind the Jinja tag that opens at `start`; -1 where it is not closed."""
    for found in _JINJA_CLOSE[text[start : start + 2]].finditer(text, start + 2):
        if found[0][0] not in "\"'":
            return found.end()
    return -1
