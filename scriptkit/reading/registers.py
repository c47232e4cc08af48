"""The evidence register: sources by id, from YAML files and from the outline."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from scriptkit import model
from scriptkit.model import Spot
from scriptkit.places import SourceFile, Text
from scriptkit.reading import faults, nodes
from scriptkit.reading.files import Folders
from scriptkit.reading.shapes import MISSING, Field, Listed, Mapped, Reader, Record
from scriptkit.reading.values import Choice, Day, Flag, Number, Words


def _author(at: Spot, family: Text | None = None, given: str = "") -> Any:  # noqa: ARG001 - a noun takes its place
    """`Surname Initials`."""
    if family is None:
        return MISSING
    initials = "".join(part[0] for part in given.replace("-", " ").split())
    return family.like(f"{family} {initials}") if initials else family


AUTHOR = Record(
    _author,
    {"family": Field(Words(), "surname", needed=True), "given": Field(Words(), "given names or initials")},
    short="family",
)
FINDING = Record(
    model.StudyFinding,
    {
        "outcome": Field(Words(), "what was measured, in words"),
        "measure": Field(Words(), "how it was measured"),
        "site": Field(Words(), "where on the body"),
        "result": Field(Words(), "the result in words, as the source has it"),
        "values": Field(Mapped(Words(), ids=False), "labelled numbers that a sentence may speak"),
        "effect": Field(Number(-1e6, 1e6), "standardised effect"),
        "ci": Field(Listed(Number(-1e6, 1e6), 2), "its interval"),
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
        "authors": Field(Listed(AUTHOR), "Surname Initials, or {family, given}"),
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


def _sources(at: Spot, sources: Mapping[str, model.Source] | None = None) -> Mapping[str, model.Source]:  # noqa: ARG001 - a noun takes its place
    """The sources of a register."""
    return sources or {}


REGISTER = Record(_sources, {"sources": Field(Mapped(SOURCE), "sources by id", needed=True)})


def read(
    paths: tuple[Text, ...], known: Mapping[str, model.Source], folders: Folders, allows: list[model.Allow]
) -> Mapping[str, model.Source]:
    """All sources: those `known` from the outline, then those of the files that it names.

    A file that cannot be read is a finding, and the rest is read; so is an id that was there before.
    """
    sources = dict(known)
    seen: set[str] = set()
    for path in paths:
        file = folders.named(path, "an evidence register")
        if file is None or file.name in seen:
            continue
        seen.add(file.name)
        if not file.name.lower().endswith((".yaml", ".yml")):
            folders.findings.append(faults.evidence_format(path.place(), path))
            continue
        for name, source in _read_file(file, folders, allows).items():
            first = sources.setdefault(name, source)
            if first is not source:
                place = first.at.place
                where = f"{place.file}, line {place.line},"
                folders.findings.append(faults.source_defined_twice(source.at.place, name, where))
    return sources


def _read_file(file: SourceFile, folders: Folders, allows: list[model.Allow]) -> Mapping[str, model.Source]:
    tree = nodes.read(file)
    folders.findings.extend(tree.findings)
    allows.extend(tree.allows)
    if tree.top is None:
        if not tree.findings:
            folders.findings.append(faults.missing_value(file.place(0), "sources"))
        return {}
    found: Mapping[str, model.Source] = REGISTER.read(tree.top, Reader(file, folders.findings), "evidence register")
    return {} if found is MISSING else found
