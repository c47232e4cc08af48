"""Reads an episode folder: outline, channel, registers, texts, word lists and what is kept beside them."""

from __future__ import annotations

import os
from collections.abc import Mapping
from pathlib import Path
from typing import NamedTuple

from scriptkit import model
from scriptkit.computing import timing
from scriptkit.model.kept_takes import KeptTake
from scriptkit.model.taking import KeptRecording
from scriptkit.reading import faults, limits, nodes, outline, registers, spoken
from scriptkit.reading import words as word_lists
from scriptkit.reading.files import MOST_SPOKEN_BYTES, Folders
from scriptkit.reading.shapes import Reader, Record
from scriptkit.reading.stock import Stock

VERDICTS_FILE = "verdicts.yaml"
RATINGS_AGAIN_FILE = "ratings-again.yaml"
TAKES_FILE = "takes.yaml"
TAKE_FILE = "take.json"
KEPT_FILES = (
    "outline.yaml",
    "channel.yaml",
    "evidence.yaml",
    RATINGS_AGAIN_FILE,
    VERDICTS_FILE,
    TAKE_FILE,
    TAKES_FILE,
)


class Material(NamedTuple):
    """All that was read of an episode. `readable` is false where there is no outline that is a mapping."""

    folders: Folders
    episode: model.Episode
    library: model.Library
    register: Mapping[str, model.Source]
    texts: Mapping[str, model.SegmentText]
    stock: Mapping[str, model.SegmentText]
    allows: tuple[model.Allow, ...]
    words: word_lists.Words
    limits: model.Limits
    verdicts: tuple[model.Verdict, ...]
    again: model.RatingsAgain | None
    pace_from_channel: bool
    takes: tuple[KeptTake, ...]  # paces of earlier takes, the latest last
    recording: KeptRecording | None  # when each sentence was said
    readable: bool

    def pace(self, given: float | None = None) -> timing.Pace:
        """The pace to go by; `given` goes before what is written and before what was measured."""
        return timing.Pace(self.episode, given, from_channel=self.pace_from_channel, takes=self.takes)


def read(folder: Path | Folders) -> Material:
    """Read an episode folder. Whatever is wrong is a finding in `folders`."""
    folders = folder if isinstance(folder, Folders) else Folders(folder)
    allows: list[model.Allow] = []
    ours = _outline(folders, folders.episode / "outline.yaml", allows, outline.OUTLINE)
    episode = ours or model.Episode()
    theirs = None
    if folders.has_channel:
        theirs = _outline(folders, folders.channel / "channel.yaml", allows, outline.CHANNEL)
    pace_from_channel = bool(theirs and theirs.pace and not episode.pace)
    if theirs:
        episode = outline.join(episode, theirs)
    library = registers.read(episode, folders, allows)
    texts = _texts(folders, allows)
    return Material(
        folders,
        episode,
        library,
        library.sources,
        texts,
        Stock(),
        tuple(allows),
        word_lists.load(),
        limits.load(),
        _verdicts(folders, allows),
        _again(folders, allows),
        pace_from_channel,
        _takes(folders, allows),
        _recording(folders),
        ours is not None,
    )


def _verdicts(folders: Folders, allows: list[model.Allow]) -> tuple[model.Verdict, ...]:
    if not os.path.lexists(folders.episode / VERDICTS_FILE):
        return ()
    from scriptkit.reading import verdicts  # only an episode that has some needs it

    return verdicts.read(folders, folders.episode / VERDICTS_FILE, allows)


def _takes(folders: Folders, allows: list[model.Allow]) -> tuple[KeptTake, ...]:
    path = takes_file(folders)
    if not os.path.lexists(path):
        return ()
    from scriptkit.reading import takes  # only a channel that has some needs it

    return takes.read(folders, path, allows)


def _recording(folders: Folders) -> KeptRecording | None:
    path = folders.episode / TAKE_FILE
    if not os.path.lexists(path):
        return None
    from scriptkit.reading import take_file  # only an episode that was recorded has one

    return take_file.read(folders, path)


def takes_file(folders: Folders) -> Path:
    """Where the paces of takes are kept: beside channel.yaml, or in the episode where there is none."""
    return (folders.channel if folders.has_channel else folders.episode) / TAKES_FILE


def _again(folders: Folders, allows: list[model.Allow]) -> model.RatingsAgain | None:
    if not os.path.lexists(folders.episode / RATINGS_AGAIN_FILE):
        return None
    from scriptkit.reading import ratings_again  # only an episode that has one needs it

    return ratings_again.read(folders, folders.episode / RATINGS_AGAIN_FILE, allows)


def _outline(folders: Folders, path: Path, allows: list[model.Allow], shape: Record) -> model.Episode | None:
    file = folders.text(path, "the outline" if shape is outline.OUTLINE else "the channel's file")
    if file is None:
        return None
    tree = nodes.read(file)
    folders.findings.extend(tree.findings)
    allows.extend(tree.allows)
    if tree.top is None or tree.top.kind != "mapping":
        if not tree.findings and shape is outline.OUTLINE:
            folders.findings.append(faults.no_outline(file.place(0)))
        elif tree.top is not None:
            outline.read(tree.top, Reader(file, folders.findings), shape)
        return None
    return outline.read(tree.top, Reader(file, folders.findings), shape)


def _texts(folders: Folders, allows: list[model.Allow]) -> dict[str, model.SegmentText]:
    """The author's segment texts by id: the episode's, else the channel's."""
    texts: dict[str, model.SegmentText] = {}
    for origin, base in (("episode", folders.episode), ("channel", folders.channel)):
        for name, path in folders.texts(base / "segments"):
            if name in texts:
                continue
            file = folders.text(path, "a segment's text", most=MOST_SPOKEN_BYTES)
            if file is not None:
                texts[name] = spoken.read(name, origin, file, folders.findings, allows)
    return texts


def files_read(material: Material) -> list[Path]:
    """Every file of the episode and channel that is read, now or later: none of them is ever written over."""
    folders = material.folders
    named = [folders.episode / name for name in folders.files]
    for base in (folders.episode, folders.channel):
        named += [base / name for name in KEPT_FILES]
    listed = (*material.episode.evidence, *material.episode.retractions, *material.episode.crossref)
    return named + [folders.sibling(path.file, path) for path in listed if "\0" not in path]
