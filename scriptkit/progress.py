"""How far a long piece of work is: one line on a terminal, wiped when the work is done."""

from __future__ import annotations

import sys
from time import monotonic
from types import TracebackType
from typing import Self, TextIO

WAIT, BETWEEN = 2.0, 0.2  # seconds before the first line, and between two


class Progress:
    """Tells a person at a terminal how much of some work is done; says nothing to a file or a program.

    `what` is short, so that the line fits the narrowest terminal: only a line that does not wrap can be wiped.
    """

    def __init__(self, what: str, stream: TextIO | None = None) -> None:
        self.what = what
        self.stream = stream if stream is not None else sys.stderr
        self.next = monotonic() + WAIT
        self.shown = ""

    def __enter__(self) -> Self:
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, at: TracebackType | None) -> None:
        if self.shown:
            self._show("")

    def tell(self, done: int, of: int) -> None:
        """So many steps of so many are done."""
        now = monotonic()
        if now < self.next:
            return
        self.next = now + BETWEEN
        if self.stream is not None and self.stream.isatty():
            self._show(f"{self.what}: {100 * done // of} %")

    def _show(self, line: str) -> None:
        """A line in place of the one before; no colour and no control code but a return, so that any terminal can."""
        if line == self.shown or self.stream is None:
            return
        wiped = " " * max(0, len(self.shown) - len(line))
        try:
            self.stream.write(f"\r{line}{wiped}" + ("" if line else "\r"))
            self.stream.flush()
        except OSError:  # nobody can be told; the work goes on
            self.stream = None
        self.shown = line
