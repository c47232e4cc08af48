"""What is read on screen while it is heard, and how much of it can be read."""

from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from fractions import Fraction

LINE, LINES = 42, 2  # characters, lines
SHORTEST, LONGEST = 1, 7  # seconds
FAST, FASTEST = 17, 20  # characters a second, spaces too: a warning, the limit


class Caption(NamedTuple):
    """A caption. `start` and `end` are in seconds, both exactly on a frame."""

    start: "Fraction"
    end: "Fraction"
    lines: tuple[str, ...]

    @property
    def speed(self) -> float:
        """Characters a second."""
        return sum(map(len, self.lines)) / float(self.end - self.start)
