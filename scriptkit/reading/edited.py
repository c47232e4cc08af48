"""The files of an episode as they would be after an edit that nobody has written yet."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from scriptkit.findings import Finding
from scriptkit.places import Place
from scriptkit.reading.files import Folders


class Edited(Folders):
    """An episode folder in which some files, by their name in messages, hold something else."""

    def __init__(self, episode: Path, instead: Mapping[str, bytes]) -> None:
        super().__init__(episode)
        self.instead = instead

    def _bytes(self, path: Path, name: str, place: Place, what: str, most: int) -> Finding | bytes:
        return self.instead[name] if name in self.instead else super()._bytes(path, name, place, what, most)
