"""What could not be read of one recorded file: the first ones of a kind told with their places, the rest counted."""

from __future__ import annotations

from scriptkit.model.recording import Trouble
from scriptkit.places import SourceFile

MOST_OF_A_KIND = 20  # who sees twenty knows what is wrong with the file


class Notes:
    """The troubles of one file."""

    def __init__(self, file: SourceFile) -> None:
        self.file = file
        self._kinds: dict[str, list[tuple[int, str]]] = {}
        self._more: dict[str, int] = {}

    def note(self, kind: str, offset: int, message: str) -> None:
        """Keep a trouble that stands at an offset; `kind` is whatever counts with it."""
        kept = self._kinds.setdefault(kind, [])
        if len(kept) < MOST_OF_A_KIND:
            kept.append((offset, message))
        else:
            self._more[kind] = self._more.get(kind, 0) + 1

    def troubles(self) -> list[Trouble]:
        """All of them, by place."""
        found = [
            Trouble(self.file.place(offset), message + (self._rest(kind) if number == MOST_OF_A_KIND - 1 else ""))
            for kind, kept in self._kinds.items()
            for number, (offset, message) in enumerate(kept)
        ]
        return sorted(found, key=lambda one: one.place)

    def _rest(self, kind: str) -> str:
        more = self._more.get(kind, 0)
        return f" There are {more:,} more like this." if more else ""
