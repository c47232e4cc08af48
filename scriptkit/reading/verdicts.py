"""The verdicts kept beside an episode, in verdicts.yaml: what was ruled of which sentence, by whom and when."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from scriptkit import keys, model
from scriptkit.findings import Finding
from scriptkit.model import Spot
from scriptkit.places import SourceFile
from scriptkit.reading import faults, nodes
from scriptkit.reading.files import Folders
from scriptkit.reading.shapes import MISSING, Field, Listed, Reader, Record
from scriptkit.reading.values import Choice, Day, Words

VERDICT = Record(
    model.Verdict,
    {
        "sentence": Field(Words(), "the sentence it is about, as it is spoken", needed=True),
        "segment": Field(Words(), "where it was spoken when the verdict was given"),
        "verdict": Field(Choice("verdict", model.VERDICTS), "what was ruled", needed=True),
        "note": Field(Words(), "why, or what the source says instead"),
        "page": Field(Words(), "where the source says so"),
        "initials": Field(Words(), "whose verdict it is"),
        "date": Field(Day(), "when it was given"),
    },
)


def _list(at: Spot, verdicts: Sequence[model.Verdict] = ()) -> Sequence[model.Verdict]:  # noqa: ARG001 - a noun takes its place
    """All verdicts of the file."""
    return verdicts


VERDICTS = Record(_list, {"verdicts": Field(Listed(VERDICT), "verdicts, oldest first")})


def read(folders: Folders, path: Path, allows: list[model.Allow]) -> tuple[model.Verdict, ...]:
    """All verdicts in the order of the file; what is wrong with one is a finding, and the rest is read."""
    file = folders.text(path, "what was ruled of the sentences")
    return () if file is None else from_text(file, folders.findings, allows)


def from_text(file: SourceFile, findings: list[Finding], allows: list[model.Allow]) -> tuple[model.Verdict, ...]:
    """The verdicts of a file's text."""
    tree = nodes.read(file)
    findings.extend(tree.findings)
    allows.extend(tree.allows)
    if tree.top is None:
        return ()
    reader = Reader(file, findings)
    found = VERDICTS.read(tree.top, reader, "verdicts")
    return () if found is MISSING else tuple(_keyed(one) for one in found if _counts(one, reader))


def _keyed(one: model.Verdict) -> model.Verdict:
    return one._replace(key=keys.of(one.sentence))


def _counts(one: model.Verdict, reader: Reader) -> bool:
    """Whether it says of which sentence it is and what was ruled, and gives a reason where it needs one."""
    if not one.sentence.strip() or not one.verdict:
        return False
    if one.verdict == "no claim" and not one.note.strip():
        reader.findings.append(faults.ruling_without_reason(one.at.of("verdict"), one.sentence))
        return False
    return True
