"""The evidence register: sources by id, from YAML files and from the outline."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from scriptkit import model
from scriptkit.places import SourceFile, Text
from scriptkit.reading import faults, nodes
from scriptkit.reading.files import Folders
from scriptkit.reading.nodes import Node
from scriptkit.reading.shapes import (
    MISSING,
    Choice,
    Day,
    Field,
    Flag,
    Listed,
    Mapped,
    Number,
    Reader,
    Record,
    Shape,
    Words,
)


class Author(Shape):
    """`Surname Initials`, or {family, given}."""

    wanted = "an author such as Orre B"

    def read(self, node: Node, reader: Reader, what: str) -> Any:
        """The name as `Surname Initials`."""
        if node.kind != "mapping":
            return Words().read(node, reader, what)
        parts = {key.value: value for key, value in node.pairs() if value.kind == "text"}
        for key, _ in node.pairs():
            if key.value not in ("family", "given"):
                near = faults.near(key.value, ("family", "given"))
                reader.findings.append(faults.unknown_key(reader.place(key), key.value, near, "family, given"))
        if "family" not in parts:
            reader.findings.append(faults.missing_value(reader.place(node), "family"))
            return MISSING
        given = parts["given"].value if "given" in parts else ""
        initials = "".join(part[0] for part in given.replace("-", " ").split())
        return Text(f"{parts['family'].value} {initials}".strip(), reader.file, node.start, node.end)

    def schema(self) -> dict[str, Any]:
        """A text, or an object with family and given."""
        names = {
            "type": "object",
            "properties": {"family": {"type": "string"}, "given": {"type": "string"}},
            "required": ["family"],
        }
        return {"anyOf": [{"type": "string"}, names]}


FINDING = Record(
    model.StudyFinding,
    {
        "outcome": Field(Words(), "what was measured, in words"),
        "measure": Field(Words(), "how it was measured"),
        "site": Field(Words(), "where on the body"),
        "result": Field(Words(), "the result in words, as the source has it"),
        "values": Field(Mapped(Words(), ids=False), "labelled numbers that a sentence may speak"),
        "effect": Field(Number(-1e6, 1e6), "standardised effect"),
        "ci": Field(Listed(Number(-1e6, 1e6), 2, 2), "its interval"),
        "baseline": Field(Words(), "the value before"),
        "absolute": Field(Words(), "the change with its unit"),
        "certainty": Field(Choice("certainty", ("high", "moderate", "low", "very low")), "how certain"),
        "quote": Field(Words(), "what the source says, word for word"),
        "page": Field(Words(), "on which page"),
    },
    short="outcome",
    named="id",
)
_COUNT = Number(0, 1e9, whole=True)
SOURCE = Record(
    model.Source,
    {
        "title": Field(Words(), "the title"),
        "authors": Field(Listed(Author()), "Surname Initials, or {family, given}"),
        "year": Field(Words(), "year of publication"),
        "journal": Field(Words(), "journal"),
        "publisher": Field(Words(), "publisher of a book"),
        "doi": Field(Words(), "DOI"),
        "pmid": Field(Words(), "PMID"),
        "pmcid": Field(Words(), "PMCID"),
        "isbn": Field(Words(), "ISBN"),
        "url": Field(Words(), "address"),
        "accessed": Field(Day(), "when the address was read"),
        "status": Field(
            Choice("status", ("published", "preprint", "corrected", "concern", "retracted")), "state of the work"
        ),
        "design": Field(Words(), "randomised trial, crossover, cohort, systematic review, survey, ..."),
        "comparison": Field(
            Choice("comparison", ("within-person", "between-group", "crossover", "pre-post")), "what is compared"
        ),
        "timeframe": Field(Choice("timeframe", ("acute", "longitudinal")), "one session, or weeks"),
        "population": Field(Words(), "who took part"),
        "training": Field(Choice("training status", ("untrained", "trained", "mixed")), "training status"),
        "n": Field(_COUNT, "people"),
        "n_units": Field(_COUNT, "limbs, where they differ from people"),
        "n_per_group": Field(_COUNT, "people in each group"),
        "duration_weeks": Field(Number(0, 10_000), "weeks"),
        "registration": Field(Words(), "registration of the study"),
        "funding": Field(Words(), "who paid"),
        "invented": Field(Flag(), "an example, not a real study"),
        "findings": Field(Mapped(FINDING), "its findings, by id"),
        "note": Field(Words(), "for the fact-checker"),
    },
    named="id",
)
REGISTER = Record(
    lambda at, sources=None: sources or {}, {"sources": Field(Mapped(SOURCE), "sources by id", needed=True)}
)


def read(paths: tuple[Text, ...], folders: Folders, allows: list[model.Allow]) -> Mapping[str, model.Source]:
    """The sources of all register files that the outline names. A file that cannot be read is a finding, and the rest is read."""
    sources: dict[str, model.Source] = {}
    for path in paths:
        file = folders.text(folders.sibling(path.file, path), "an evidence register", path.place())
        if file is None:
            continue
        if not file.name.lower().endswith((".yaml", ".yml")):
            folders.findings.append(faults.evidence_format(path.place(), path))
            continue
        for name, source in _read_file(file, folders, allows).items():
            sources.setdefault(name, source)
    return sources


def _read_file(file: SourceFile, folders: Folders, allows: list[model.Allow]) -> Mapping[str, model.Source]:
    tree = nodes.read(file)
    folders.findings.extend(tree.findings)
    allows.extend(tree.allows)
    if tree.top is None:
        return {}
    found: Any = REGISTER.read(tree.top, Reader(file, folders.findings), "evidence register")
    return {} if found is MISSING else found
