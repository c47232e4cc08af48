"""Starts an episode: the folder that `new` makes and the texts that `draft` writes; neither touches what is there."""

from __future__ import annotations

import os
from collections.abc import Iterator, Mapping
from pathlib import Path

from scriptkit.shipped import shipped
from scriptkit.writing import Refused, write_new

SCHEMA = "outline.schema.json"


def start(folder: Path, *, sample: bool) -> None:
    """Make a new episode folder. Raises Refused where something is there, else OSError."""
    if os.path.lexists(folder) and not folder.is_dir():
        raise Refused(f"{folder} is there already and is no folder, so nothing was written. Name a new folder.")
    if folder.is_dir() and any(folder.iterdir()):
        raise Refused(f"{folder} is there already and is not empty, so nothing was written. Name a new folder.")
    files = _sample() if sample else {"outline.yaml": (shipped("templates") / "new-outline.yaml").read_bytes()}
    files[SCHEMA] = _schema()
    made: list[Path] = []
    try:
        made += _folders(folder / name for name in ("", *{os.path.dirname(name) for name in files}))  # noqa: PTH120
        for name, data in files.items():
            if write_new(folder / name, data):
                made.append(folder / name)
    except OSError:
        for path in reversed(made):
            path.rmdir() if path.is_dir() else path.unlink()
        raise


def _folders(wanted: Iterator[Path]) -> Iterator[Path]:
    """Make folders that are not there, those around them first; each that was made."""
    for folder in wanted:
        for path in (*reversed(folder.parents), folder):
            if not path.is_dir():
                path.mkdir()
                yield path


def _sample() -> dict[str, bytes]:
    """The files of the sample episode; what a build or an editor left there is no part of it."""
    top = shipped("sample_episode")
    paths = (path.relative_to(top) for path in sorted(top.rglob("*")) if path.is_file())
    own = (path for path in paths if path.parts[0] != "build" and not any(part.startswith(".") for part in path.parts))
    return {path.as_posix(): (top / path).read_bytes() for path in own}


def _schema() -> bytes:
    from scriptkit import build
    from scriptkit.rendering import sheets

    return sheets.to_json(build.schema("outline"))


def write_drafts(episode: Path, drafts: Mapping[str, str]) -> Iterator[str]:
    """Write texts into segments/ where none is; each name as it is written. Raises Refused or OSError."""
    segments = episode / "segments"
    if segments.is_symlink() and not segments.resolve().is_relative_to(episode.resolve()):
        raise Refused(f"{segments} leads out of the episode's folder, so nothing was written.")
    if os.path.lexists(segments) and not segments.is_dir():
        raise Refused(f"{segments} is no folder, so nothing was written. Drafts go into a folder of that name.")
    for name, text in drafts.items():
        segments.mkdir(exist_ok=True)
        if write_new(segments / f"{name}.md", text.encode(errors="replace")):
            yield f"segments/{name}.md"
