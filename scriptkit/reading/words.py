"""Reads the word lists of scriptkit/words: one entry a line, `#` comments, lower case from here on."""

from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path
from typing import TypeAlias

Words: TypeAlias = Mapping[str, tuple[str, ...]]

FOLDER = Path(__file__).parent.parent / "words"


def entries(text: str) -> tuple[str, ...]:
    """The entries of one word list, lower-cased and in order; comments, blank lines and repeats are left out."""
    lines = text.lower().splitlines()
    if "#" in text:
        lines = [line.partition("#")[0] for line in lines]
    found = dict.fromkeys(map(str.strip, lines))
    found.pop("", None)
    return tuple(found)


class _Lists(Mapping[str, tuple[str, ...]]):
    """The lists of a folder, each read when it is first asked for: no episode needs all of them."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder
        self._read: dict[str, tuple[str, ...] | None] = {}

    def __getitem__(self, name: str) -> tuple[str, ...]:
        if name not in self._read:
            text = _text(self._folder / f"{name}.txt")
            self._read[name] = None if text is None else entries(text)
        found = self._read[name]
        if found is None:
            raise KeyError(name)
        return found

    def __iter__(self) -> Iterator[str]:
        return (path.stem for path in sorted(self._folder.glob("*.txt")) if path.stem in self)

    def __len__(self) -> int:
        return sum(1 for _ in self)


@cache
def load(folder: Path = FOLDER) -> Words:
    """Every word list of a folder by file name without `.txt`; a list that cannot be read is left out."""
    return _Lists(folder)


def stock_cautions(file: Path = FOLDER / "cautions.txt") -> dict[str, str]:
    """The stock caution lines by tag, as they are spoken; an entry is `tag: line`."""
    lines = (_text(file) or "").splitlines()
    entries_ = (line.partition(":") for line in lines if not line.lstrip().startswith("#") and ":" in line)
    return {tag.strip(): line.strip() for tag, _, line in entries_}


def _text(file: Path) -> str | None:
    """The text of a list; None where it cannot be read."""
    try:
        return file.read_bytes().decode("utf-8-sig", errors="replace")
    except OSError:
        return None
