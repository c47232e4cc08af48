"""The paces of earlier takes, in takes.yaml beside channel.yaml, or in the episode where there is no channel."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from scriptkit import model
from scriptkit.findings import Finding
from scriptkit.model import Spot
from scriptkit.model.kept_takes import KeptTake
from scriptkit.places import SourceFile
from scriptkit.reading import nodes
from scriptkit.reading.files import Folders
from scriptkit.reading.shapes import MISSING, Field, Listed, Reader, Record
from scriptkit.reading.values import Number, Words

TAKE = Record(
    KeptTake,
    {
        "episode": Field(Words(), "the folder of the episode", needed=True),
        "pace": Field(Number(60, 400), "words a minute", needed=True),
        "letters": Field(Number(4, 60), "letters a second between pauses, as they are spoken"),
        "words": Field(Number(0, 1e6, whole=True), "words it was measured on"),
        "seconds": Field(Number(0, 1e6), "seconds they took, planned silence left out"),
    },
)


def _list(at: Spot, takes: Sequence[KeptTake] = ()) -> Sequence[KeptTake]:  # noqa: ARG001 - a noun takes its place
    return takes


TAKES = Record(_list, {"takes": Field(Listed(TAKE), "one for each episode, the latest last")})


def read(folders: Folders, path: Path, allows: list[model.Allow]) -> tuple[KeptTake, ...]:
    """All takes in the order of the file; what is wrong with one is a finding, and the rest is read."""
    file = folders.text(path, "the paces of earlier takes")
    return () if file is None else from_text(file, folders.findings, allows)


def from_text(file: SourceFile, findings: list[Finding], allows: list[model.Allow]) -> tuple[KeptTake, ...]:
    """The takes of a file's text."""
    tree = nodes.read(file)
    findings.extend(tree.findings)
    allows.extend(tree.allows)
    if tree.top is None:
        return ()
    found = TAKES.read(tree.top, Reader(file, findings), "takes")
    return () if found is MISSING else tuple(one for one in found if one.pace)
