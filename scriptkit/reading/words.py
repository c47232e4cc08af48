"""Reads the word lists of scriptkit/words: one entry a line, `#` comments, lower case from here on."""

from collections.abc import Mapping
from pathlib import Path
from types import MappingProxyType
from typing import TypeAlias

Words: TypeAlias = Mapping[str, tuple[str, ...]]

FOLDER = Path(__file__).parent.parent / "words"


def entries(text: str) -> tuple[str, ...]:
    """The entries of one word list, lower-cased and in order; comments, blank lines and repeats are left out."""
    lines = (line.partition("#")[0].strip() for line in text.lower().splitlines())
    return tuple(dict.fromkeys(line for line in lines if line))


def load(folder: Path = FOLDER) -> Words:
    """Every word list of a folder by file name without `.txt`; a list that cannot be read is left out."""
    found: dict[str, tuple[str, ...]] = {}
    try:
        files = sorted(folder.glob("*.txt"))
    except OSError:
        files = []
    for file in files:
        try:
            text = file.read_bytes().decode("utf-8-sig", errors="replace")
        except OSError:
            continue
        found[file.stem] = entries(text)
    return MappingProxyType(found)


def stock_cautions(file: Path = FOLDER / "cautions.txt") -> dict[str, str]:
    """The stock caution lines by tag, as they are spoken; an entry is `tag: line`."""
    try:
        text = file.read_bytes().decode("utf-8-sig", errors="replace")
    except OSError:
        return {}
    entries_ = (line.partition(":") for line in text.splitlines() if not line.lstrip().startswith("#") and ":" in line)
    return {tag.strip(): line.strip() for tag, _, line in entries_}
