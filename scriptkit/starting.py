"""Starting an episode: the folder that `new` makes and the texts that `draft` writes. Neither touches what is there."""

from __future__ import annotations

import os
import shutil
from collections.abc import Mapping
from pathlib import Path

from scriptkit import writing
from scriptkit.shipped import shipped


def start(folder: Path, sample: bool) -> str:
    """Make a new episode folder; what is wrong, in a sentence, or nothing."""
    if os.path.lexists(folder) and (not folder.is_dir() or any(folder.iterdir())):
        return f"{folder} is there already and is not empty, so nothing was written. Name a new folder."
    try:
        folder.mkdir(parents=True, exist_ok=True)
        if sample:
            shutil.copytree(
                shipped("sample_episode"), folder, dirs_exist_ok=True, ignore=shutil.ignore_patterns("build", ".*")
            )
        else:
            writing.write_new(folder / "outline.yaml", (shipped("templates") / "new-outline.yaml").read_bytes())
        from scriptkit import build
        from scriptkit.rendering import sheets

        writing.write_new(folder / "outline.schema.json", sheets.to_json(build.schema("outline")))
    except OSError as error:
        return f"{folder} cannot be written: {error.strerror or error}."
    return ""


def write_drafts(episode: Path, drafts: Mapping[str, str]) -> tuple[list[str], str]:
    """Write texts into segments/ where none is; the names written, and what went wrong."""
    segments = episode / "segments"
    written: list[str] = []
    try:
        if segments.is_symlink() and not segments.resolve().is_relative_to(episode):
            return written, f"{segments} leads out of the episode's folder, so nothing was written."
        segments.mkdir(exist_ok=True)
        for name, text in drafts.items():
            if writing.write_new(segments / f"{name}.md", text.encode("utf-8")):
                written.append(f"segments/{name}.md")
    except OSError as error:
        return written, f"{error.filename or segments} cannot be written: {error.strerror or error}."
    return written, ""
