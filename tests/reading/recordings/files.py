"""A recording written to disk, and what was read of it."""

from __future__ import annotations

import json
from pathlib import Path

from scriptkit.model.recording import Recording
from scriptkit.reading import recordings


def read(folder: Path, *files: str | bytes | object) -> Recording:
    """The recording that files with these contents are: text, bytes, or a value to be written as JSON."""
    paths = []
    for number, content in enumerate(files):
        path = folder / f"{number}.rec"
        text = content if isinstance(content, str | bytes) else json.dumps(content)
        path.write_bytes(text if isinstance(text, bytes) else text.encode())
        paths.append(path)
    return recordings.read(paths)


def said(recording: Recording) -> str:
    """The words of a recording that was read, in one line."""
    assert recording.refused == ""
    return " ".join(word.text for word in recording.words)


def times(recording: Recording) -> list[tuple[str, float, float, bool]]:
    """The words of a recording with all that is known of them."""
    assert recording.refused == ""
    return [(word.text, word.start, word.end, word.exact) for word in recording.words]


def told(recording: Recording) -> list[tuple[int, int, str]]:
    """Line, column and words of each trouble."""
    return [(one.place.line, one.place.column, one.message) for one in recording.troubles]
