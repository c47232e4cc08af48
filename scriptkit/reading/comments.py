"""Comments of spoken text: taken out, with a way back from what is left to the file."""

from bisect import bisect_right
from typing import NamedTuple

_OPEN, _CLOSE = "<!--", "-->"


class Comment(NamedTuple):
    """A comment: its words, where it opens in the file, and the offset in the left text of the line it belongs to."""

    words: str
    start: int
    belongs: int


class Left:
    """A text without its comments. A comment that has lines to itself takes them along, so that no paragraph breaks."""

    def __init__(self, text: str) -> None:
        self.comments: list[Comment] = []
        self.cuts: list[int] = []  # offsets in the left text behind which something was taken out
        self._shifts: list[int] = []
        self.text = self._without(text) if _OPEN in text else text

    def origin(self, offset: int) -> int:
        """The offset in the file of the character at `offset` of the left text."""
        number = bisect_right(self.cuts, offset)
        return offset + self._shifts[number - 1] if number else offset

    def _without(self, text: str) -> str:
        parts: list[str] = []
        size = done = 0
        above = begun = False  # whether the line above has words, and whether this one has
        for group in _groups(text):
            start, end, alone = _span(text, done, group[0][0], group[-1][1])
            part = text[done:start]
            *lines, last = part.split("\n")
            if lines:
                above = bool(lines[-1].strip()) or (len(lines) == 1 and begun)
                begun = False
            begun = begun or bool(last.strip())
            parts.append(part)
            size += len(part)
            done = end
            belongs = size - 1 if alone and above else size
            self.comments += [Comment(text[one + 4 : two - 3], one, belongs) for one, two in group]
            self.cuts.append(size)
            self._shifts.append(end - size)
        parts.append(text[done:])
        return "".join(parts)


def _span(text: str, done: int, start: int, end: int) -> tuple[int, int, bool]:
    """What is taken out for comments from `start` to `end`, and whether these are whole lines."""
    line_start = max(done, text.rfind("\n", done, start) + 1)
    if (line_start and text[line_start - 1] != "\n") or text[line_start:start].strip():
        return start, end, False
    line_end = text.find("\n", end)
    line_end = len(text) if line_end < 0 else line_end
    after = text[end:line_end].lstrip()
    if after:
        return start, line_end - len(after), False  # an indent left behind would make code of the words
    return line_start, min(len(text), line_end + 1), True


def _groups(text: str) -> list[list[tuple[int, int]]]:
    """Start and end of each comment; those with nothing but spaces between them are together."""
    groups: list[list[tuple[int, int]]] = []
    at = 0
    while (start := text.find(_OPEN, at)) >= 0 and (end := text.find(_CLOSE, start + 4)) >= 0:
        between = text[groups[-1][-1][1] : start] if groups else "text"
        at = end + 3
        if between.strip(" \t"):
            groups.append([(start, at)])
        else:
            groups[-1].append((start, at))
    return groups
