"""The stock texts of segments, each read when it is first asked for: few episodes use all of them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path

from scriptkit import stock
from scriptkit.model import SegmentText
from scriptkit.places import SourceFile
from scriptkit.reading import spoken
from scriptkit.shipped import shipped


class Stock(Mapping[str, SegmentText]):
    """The stock texts by kind of segment."""

    def __init__(self, folder: Path | None = None) -> None:
        self._paths = {path.stem: path for path in sorted((folder or shipped("segments")).glob("*.md"))}
        self._texts: dict[str, SegmentText] = {}

    def __getitem__(self, kind: str) -> SegmentText:
        if kind not in self._texts:
            path = self._paths[kind]
            self._texts[kind] = read(kind, SourceFile(path.name, path.read_text(encoding="utf-8")))
        return self._texts[kind]

    def __iter__(self) -> Iterator[str]:
        return iter(self._paths)

    def __len__(self) -> int:
        return len(self._paths)

    def __contains__(self, kind: object) -> bool:
        return kind in self._paths


def read(kind: str, file: SourceFile) -> SegmentText:
    """A stock text: what was made of it before, or else read anew."""
    made = stock.made(kind)
    if made is not None and stock.mark(file.text) == made.MARK:
        return SegmentText(kind, "stock", file, made.TEMPLATE, made.PARAGRAPHS)
    return spoken.read(kind, "stock", file, [], [])
