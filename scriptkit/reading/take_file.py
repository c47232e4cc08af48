"""When each sentence was said, in take.json beside the outline; `scriptkit take` writes it."""

from __future__ import annotations

from pathlib import Path

from scriptkit.findings import Finding
from scriptkit.model.taking import KeptAdLib, KeptChange, KeptRecording, KeptSentence, ScriptOf
from scriptkit.places import SourceFile
from scriptkit.reading import json_nodes
from scriptkit.reading.files import Folders
from scriptkit.reading.shapes import MISSING, Field, Listed, Reader, Record
from scriptkit.reading.values import Choice, Number, Words

_SECONDS = Number(0, 1e6)
SENTENCE = Record(
    KeptSentence,
    {
        "segment": Field(Words(), "where it stands", needed=True),
        "key": Field(Words(), "the hash of its words", needed=True),
        "start": Field(_SECONDS, "seconds from the start of the recording", needed=True),
        "end": Field(_SECONDS, "the same", needed=True),
    },
)
AD_LIB = Record(
    KeptAdLib,
    {
        "segment": Field(Words(), "in which it was said", needed=True),
        "after": Field(Words(), "the hash of the line before it"),
        "text": Field(Words(), "what was said", needed=True),
        "start": Field(_SECONDS, "seconds from the start of the recording", needed=True),
        "end": Field(_SECONDS, "the same"),
    },
)
CHANGE = Record(
    KeptChange,
    {
        "segment": Field(Words(), "in which its line stands", needed=True),
        "key": Field(Words(), "the hash of the line", needed=True),
        "weight": Field(
            Choice("weight", ("stop", "cut")), "whether it has to be recorded again, or cut in", needed=True
        ),
        "kind": Field(Words(), "what differs"),
        "what": Field(Words(), "the same in words", needed=True),
        "start": Field(_SECONDS, "seconds from the start of the recording; left out for what was not said"),
        "said": Field(Words(), "what was said there"),
    },
)
SCRIPT = Record(
    ScriptOf,
    {
        "segment": Field(Words(), "which one", needed=True),
        "keys": Field(Listed(Words()), "the hashes of its sentences", needed=True),
    },
)
TAKE = Record(
    KeptRecording,
    {
        "about": Field(Words(), "what this file is"),
        "length": Field(_SECONDS, "seconds of the recording", needed=True),
        "sentences": Field(Listed(SENTENCE), "each sentence that was said", needed=True),
        "ad_libs": Field(Listed(AD_LIB), "each claim that was said and is not in the script"),
        "changes": Field(Listed(CHANGE), "each line that has to be mended"),
        "script": Field(Listed(SCRIPT), "each segment of the script at that time"),
    },
)


def read(folders: Folders, path: Path) -> KeptRecording | None:
    """The recording; None where it cannot be read whole, since half of a clock is none."""
    file = folders.text(path, "the times of a recording")
    return None if file is None else from_text(file, folders.findings)


def from_text(file: SourceFile, findings: list[Finding]) -> KeptRecording | None:
    """The recording of a file's text."""
    tree, before = json_nodes.read(file), len(findings)
    findings.extend(tree.findings)
    if tree.top is None:
        return None
    found = TAKE.read(tree.top, Reader(file, findings), "take")
    return None if found is MISSING or len(findings) > before or found.length is None else found
