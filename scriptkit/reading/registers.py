"""The evidence register: sources by id, from the outline, from YAML files and from exports, joined."""

from __future__ import annotations

import gc
from collections.abc import Mapping
from typing import Any

from scriptkit import identifiers, model
from scriptkit.model import Spot
from scriptkit.model.register import EFFECT_TYPES, STATUSES
from scriptkit.places import SourceFile, Text
from scriptkit.reading import faults, nodes
from scriptkit.reading.files import MOST_BYTES, Folders
from scriptkit.reading.shapes import MISSING, Field, Listed, Mapped, Reader, Record
from scriptkit.reading.values import Choice, Day, Flag, Number, Words


def _author(at: Spot, family: Text | None = None, given: str = "", orcid: str = "") -> Any:  # noqa: ARG001 - a noun takes its place
    """`Surname Initials`."""
    if family is None:
        return MISSING
    initials = "".join(part[0] for part in given.replace("-", " ").split())
    return family.like(f"{family} {initials}") if initials else family


class Orcid(Words):
    """The number of an author."""

    def read(self, node: nodes.Node, reader: Reader, what: str) -> Any:
        """The number as it is written plainly."""
        value = super().read(node, reader, what)
        if value is MISSING:
            return value
        plain = identifiers.clean("orcid", value)
        trouble = identifiers.trouble("orcid", plain)
        if trouble:
            reader.findings.append(faults.orcid_wrong(reader.place(node), plain, trouble))
        return value.like(plain)


AUTHOR = Record(
    _author,
    {
        "family": Field(Words(), "surname", needed=True),
        "given": Field(Words(), "given names or initials"),
        "orcid": Field(Orcid(), "ORCID"),
    },
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
        "effect_type": Field(
            Choice("type of effect", EFFECT_TYPES), "between groups or conditions, or from before to after in one group"
        ),
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
        "kind": Field(
            Choice("kind of work", ("article", "book", "chapter", "page", "report", "standard", "thesis", "data")),
            "article if left out",
        ),
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
        "status": Field(Choice("status", STATUSES), "state of the work"),
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
        "sex": Field(Words(), "women, men, or how many of each"),
        "ages": Field(Words(), "how old they were"),
        "country": Field(Words(), "where it was done"),
        "duration_weeks": Field(Number(0, 10_000), "weeks"),
        "sessions": Field(Number(0, 100_000), "sessions in all"),
        "dropout": Field(Words(), "how many left, and why"),
        "adherence": Field(Words(), "how much of the training was done"),
        "volume_equated": Field(Flag(), "whether all groups did the same amount of work"),
        "effort": Field(Words(), "how close to failure"),
        "registration": Field(Words(), "registration of the study"),
        "funding": Field(Words(), "who paid"),
        "invented": Field(Flag(), "an example, not a real study"),
        "findings": Field(Mapped(FINDING), "its findings, by id"),
        "keywords": Field(Listed(Words()), "what it is about"),
        "note": Field(Words(), "for the fact-checker"),
    },
    named="id",
)


def _sources(at: Spot, sources: Mapping[str, model.Source] | None = None) -> Mapping[str, model.Source]:  # noqa: ARG001 - a noun takes its place
    """The sources of a register."""
    return sources or {}


REGISTER = Record(_sources, {"sources": Field(Mapped(SOURCE), "sources by id", needed=True)})


FORMATS = {".yaml": "yaml", ".yml": "yaml", ".bib": "bibtex", ".bibtex": "bibtex", ".ris": "ris", ".json": "csl"}
MOST_EXPORT_BYTES = 20_000_000  # an export holds abstracts, several thousand of them


def read(episode: model.Episode, folders: Folders, allows: list[model.Allow]) -> model.Library:
    """All sources: those of the outline, then those of the files that it names, with what saved lists say of them.

    A file that cannot be read is a finding, and the rest is read; so is an id that was there before.
    """
    paused = gc.isenabled()
    gc.disable()  # two thousand sources are half a million objects, none of them rubbish: looking costs half the time
    try:
        return _read(episode, folders, allows)
    finally:
        if paused:
            gc.enable()


def _read(episode: model.Episode, folders: Folders, allows: list[model.Allow]) -> model.Library:
    shelf = _Shelf(episode.sources, folders)
    seen: set[str] = set()
    for path in episode.evidence:
        form = FORMATS.get(path[path.rfind(".") :].lower(), "")
        if not form and "\x00" not in path and folders.allowed(folders.sibling(path.file, path)):
            folders.findings.append(faults.evidence_format(path.place(), path))
            shelf.unread.append(str(path))
            continue
        most = MOST_EXPORT_BYTES if form in ("bibtex", "ris", "csl") else MOST_BYTES
        file = folders.named(path, "an evidence register", most)
        if file is None:
            shelf.unread.append(str(path))
        elif file.name not in seen:
            seen.add(file.name)
            shelf.add_yaml(file, allows) if form == "yaml" else shelf.add_export(file, form)
    sources = shelf.sources()
    lists: tuple[model.NoticeList, ...] = ()
    if episode.retractions or episode.crossref:
        from scriptkit.reading import notices  # only an episode that names such a list needs it

        sources, lists = notices.look_up(episode.retractions, episode.crossref, sources, folders)
    return model.Library(sources, tuple(shelf.unread), lists)


class _Shelf:
    """Sources as they come in: those that authors wrote in YAML, and those that were exported."""

    def __init__(self, known: Mapping[str, model.Source], folders: Folders) -> None:
        self.folders = folders
        self.unread: list[str] = []
        self._order: dict[str, None] = dict.fromkeys(known)
        self._written: dict[str, model.Source] = dict(known)
        self._exported: dict[str, model.Source] = {}

    def add_yaml(self, file: SourceFile, allows: list[model.Allow]) -> None:
        """Take the sources of a YAML register."""
        self._add(self._written, self._yaml(file, allows))

    def _yaml(self, file: SourceFile, allows: list[model.Allow]) -> Mapping[str, model.Source]:
        tree = nodes.read(file)
        self.folders.findings.extend(tree.findings)
        allows.extend(tree.allows)
        if tree.top is None:
            if not tree.findings:
                self.folders.findings.append(faults.missing_value(file.place(0), "sources"))
            else:
                self.unread.append(file.name)
            return {}
        found: Mapping[str, model.Source] = REGISTER.read(
            tree.top, Reader(file, self.folders.findings), "evidence register"
        )
        return {} if found is MISSING else found

    def add_export(self, file: SourceFile, form: str) -> None:
        """Take the sources of what a reference manager exported."""
        from scriptkit.reading import exports  # only such a file needs it, and its own reader

        export = _reader(form).read(file)
        found = exports.sources(export, file)
        self.folders.findings.extend(exports.fewer(export.findings))
        if not export.whole:
            self.unread.append(file.name)
        self._add(self._exported, found)

    def _add(self, kept: dict[str, model.Source], found: Mapping[str, model.Source]) -> None:
        for name, source in found.items():
            self._order.setdefault(name)
            first = kept.setdefault(name, source)
            if first is not source:
                kept[name] = _joined(first, source)  # so that the second place is told, and not all that is missing
                place = first.at.place
                where = f"{place.file}, line {place.line},"
                self.folders.findings.append(faults.source_defined_twice(source.at.place, name, where))

    def sources(self) -> dict[str, model.Source]:
        """All sources by id; what stands in both kinds of register is one source."""
        made = {}
        for name in self._order:
            written, exported = self._written.get(name), self._exported.get(name)
            source = _joined(written, exported) if written and exported else written or exported
            if source is not None:
                made[str(name)] = _cleaned(source)
        return made


def _reader(form: str) -> Any:
    """The module that reads a format."""
    if form == "bibtex":
        from scriptkit.reading import bibtex

        return bibtex
    if form == "ris":
        from scriptkit.reading import ris

        return ris
    from scriptkit.reading import csl

    return csl


def _joined(first: model.Source, second: model.Source) -> model.Source:
    """A source that is told twice, key by key and finding by finding; the first wins where both say something."""
    values = {name: getattr(second, name) for name in second.at.keys if name not in first.at.keys}
    values["findings"] = {**first.findings, **second.findings, **first.findings}
    keys = {**second.at.keys, **first.at.keys}
    return first._replace(**values, key=first.key or second.key, at=Spot(first.at.place, keys))


def _cleaned(source: model.Source) -> model.Source:
    """A source with its identifiers as they are written plainly."""
    changed: dict[str, Any] = {}
    for kind in identifiers.KINDS:
        given = getattr(source, kind)
        plain = identifiers.clean(kind, given) if given else given
        if plain != given:
            changed[kind] = given.like(plain) if isinstance(given, Text) else plain
    return source._replace(**changed) if changed else source
