"""Saved lists of retractions (CSV) and saved records of works (JSON): what they say of the sources of a register."""

from __future__ import annotations

import csv
import re
from collections.abc import Iterable, Iterator, Mapping
from typing import Any, NamedTuple

from scriptkit import identifiers, model
from scriptkit.findings import Finding
from scriptkit.model import Notice, NoticeList
from scriptkit.model.register import STATUSES
from scriptkit.places import SourceFile, Text
from scriptkit.reading import csl, faults, json_nodes
from scriptkit.reading.exports import fewer
from scriptkit.reading.files import Folders
from scriptkit.reading.values import is_day

MOST_LIST_BYTES = 200_000_000  # the whole list of all fields of science has a third of it
_COLUMNS = (
    "Record ID", "Title", "Subject", "Institution", "Journal", "Publisher", "Country", "Author", "URLS", "ArticleType",
    "RetractionDate", "RetractionDOI", "RetractionPubMedID", "OriginalPaperDate", "OriginalPaperDOI",
    "OriginalPaperPubMedID", "RetractionNature", "Reason", "Paywalled", "Notes",
)  # fmt: skip
_NEEDED = ("RetractionNature", "RetractionDate", "OriginalPaperDOI", "OriginalPaperPubMedID")
_SHOWN = ("Record ID", "RetractionDOI", "Reason")  # what is told of an entry beside
_US_DATE = re.compile(r"\s*([0-9]{1,2})/([0-9]{1,2})/([0-9]{4})(?:\s+[0-9:]{1,8}(?:\s*[AaPp][Mm])?)?\s*")
_NATURES = {
    "retraction": "Retraction", "withdrawal": "Retraction", "removal": "Retraction", "retracted": "Retraction",
    "correction": "Correction", "corrigendum": "Correction", "erratum": "Correction", "addendum": "Correction",
    "clarification": "Correction", "partial retraction": "Expression of concern",
    "expression of concern": "Expression of concern", "concern": "Expression of concern",
    "reinstatement": "Reinstatement",
}  # fmt: skip
_NO_CHANGE = ("new version", "new edition")
_STATUS = {"Retraction": "retracted", "Expression of concern": "concern", "Correction": "corrected"}
MOST_TROUBLES = 1_000  # rows of one list that are told; nobody reads more
_LATEST = "9999"  # an event without a date may be the latest one


class Wanted(NamedTuple):
    """The sources that are looked up: ids by lower-cased DOI, and by PMID."""

    by_doi: Mapping[str, list[str]]
    by_pmid: Mapping[str, list[str]]

    def with_doi(self, doi: str) -> list[str]:
        """The ids of the sources with a DOI, however it is written."""
        return self.by_doi.get(identifiers.clean("doi", doi).lower(), [])


def _wanted(sources: Mapping[str, model.Source]) -> Wanted:
    by_doi: dict[str, list[str]] = {}
    by_pmid: dict[str, list[str]] = {}
    for name, source in sources.items():
        if source.doi:
            by_doi.setdefault(source.doi.lower(), []).append(name)
        if source.pmid:
            by_pmid.setdefault(source.pmid, []).append(name)
    return Wanted(by_doi, by_pmid)


def look_up(
    lists: Iterable[Text], records: Iterable[Text], sources: Mapping[str, model.Source], folders: Folders
) -> tuple[dict[str, model.Source], tuple[NoticeList, ...]]:
    """The sources with what saved lists and records say of them, and these lists."""
    wanted = _wanted(sources)
    named = {name for name, one in sources.items() if one.doi or one.pmid}
    notices: dict[str, list[Notice]] = {}
    read: list[NoticeList] = []
    for path in dict.fromkeys(lists):
        file = folders.named(path, "a list of retractions", MOST_LIST_BYTES)
        if file is not None:
            rows = _Rows(file, wanted, notices)
            if rows.read(folders.findings):
                read.append(NoticeList(file.name, rows.newest, frozenset(named), path))
    for path in dict.fromkeys(records):
        file = folders.named(path, "saved records", MOST_LIST_BYTES)
        if file is not None:
            read.append(_Records(file, wanted, notices).read(path, folders.findings))
    return {name: _with_notices(one, notices.get(name, [])) for name, one in sources.items()}, tuple(read)


def _with_notices(source: model.Source, found: list[Notice]) -> model.Source:
    if not found:
        return source
    kept = _once(sorted(found, key=lambda one: one.date or _LATEST))
    status = _status(kept)
    worse = max(source.status or "published", status, key=STATUSES.index)
    return source._replace(notices=tuple(kept), status=worse if worse != "published" else source.status)


def _once(notices: list[Notice]) -> list[Notice]:
    """Each event once: it may stand in several lists, under one number, one date or one notice's DOI."""
    kept: list[Notice] = []
    seen: set[tuple[str, str, str]] = set()
    for one in notices:
        told = (("date", one.date), ("record", one.record), ("doi", one.doi))
        names = {(one.nature, what, value) for what, value in told if value or what == "date"}
        if seen.isdisjoint(names):
            kept.append(one)
            seen |= names
    return kept


def _status(notices: list[Notice]) -> str:
    """What events come to, in the order of their dates: the latest wins; only a reinstatement undoes a retraction."""
    status = "published"
    for one in notices:
        if one.nature == "Reinstatement":
            status = "published"
        elif status != "retracted":
            status = _STATUS[one.nature]
    return status


def _lines(text: str) -> Iterator[str]:
    """The lines of a text with their ends, one at a time: a file of a hundred megabytes is not held twice."""
    for found in re.finditer(r"[^\n]*\n|[^\n]+", text):
        yield found[0]


class _Rows:
    """The rows of one list."""

    def __init__(self, file: SourceFile, wanted: Wanted, notices: dict[str, list[Notice]]) -> None:
        self.file, self.wanted, self.notices = file, wanted, notices
        self.newest = ""
        self.troubles: list[Finding] = []
        self._untold = 0
        self._of: dict[str, int] = {}

    def read(self, findings: list[Finding]) -> bool:
        """Take in all rows; false where the list cannot be read at all."""
        reader = csv.reader(_lines(self.file.text))
        line = 1
        try:
            names = next(reader, [])
            if not self._columns(names, findings):
                return False
            line = reader.line_num + 1
            for row in reader:
                self._row(row, line)
                line = reader.line_num + 1
        except csv.Error as error:
            self._trouble(line, f"{error}; the rows after it are not read")
        if self.file.text.count('"') % 2:
            self._trouble(line, "a quote is opened and not closed, so rows may be lost")
        findings.extend(fewer(self.troubles, self._untold))
        return True

    def _columns(self, names: list[str], findings: list[Finding]) -> bool:
        plain = {re.sub(r"\s", "", name).lower(): number for number, name in reversed(list(enumerate(names)))}
        self._of = {one: plain[key] for one in _COLUMNS if (key := one.replace(" ", "").lower()) in plain}
        needed, shown = ([one for one in every if one not in self._of] for every in (_NEEDED, _SHOWN))
        place = self.file.place(0)
        if needed:
            findings.append(faults.list_not_read(place, ", ".join(needed), ",".join(names)))
        elif shown and len(self._of) > len(_NEEDED):  # a list of the four alone was cut on purpose
            findings.append(faults.list_columns(place, ", ".join(shown)))
        return not needed

    def _cell(self, row: list[str], name: str) -> str:
        number = self._of.get(name, len(row))
        return row[number].strip() if number < len(row) else ""

    def _row(self, row: list[str], line: int) -> None:
        if not any(row):
            return
        written = self._cell(row, "RetractionDate")
        date = us_date(written)
        self.newest = max(self.newest, date)
        if written and not date:
            self._trouble(line, f'"{written[:30]}" is no date of the form month/day/year')
        if len(row) <= self._of["RetractionNature"]:
            self._trouble(line, f"it has {len(row)} cells, too few to hold all columns")
        names = self._named(row)
        if names:
            self._keep(row, line, date, names)

    def _named(self, row: list[str]) -> set[str]:
        """The ids of the sources that a row is about: by DOI, else by PMID."""
        names: set[str] = set()
        for doi in _listed(self._cell(row, "OriginalPaperDOI")):
            names.update(self.wanted.by_doi.get(doi.lower()) or self.wanted.with_doi(doi))
        if not names:
            for pmid in _listed(self._cell(row, "OriginalPaperPubMedID")):
                names.update(self.wanted.by_pmid.get(pmid, ()))
        return names

    def _keep(self, row: list[str], line: int, date: str, names: set[str]) -> None:
        told = self._cell(row, "RetractionNature")
        nature = nature_of(told)
        if not nature:
            self._trouble(line, f'"{told[:40]}" is no kind of notice that is known')
            return
        reasons = "; ".join(part.strip(" +") for part in self._cell(row, "Reason").split(";") if part.strip(" +"))
        doi = self._cell(row, "RetractionDOI").lower()
        doi = "" if doi == "unavailable" else doi
        place = self.file.place(self.file.starts()[min(line, len(self.file.starts())) - 1])
        notice = Notice(nature, date, reasons, self.file.name, self._cell(row, "Record ID"), doi, place)
        for name in sorted(names):
            self.notices.setdefault(name, []).append(notice)

    def _trouble(self, line: int, why: str) -> None:
        starts = self.file.starts()
        if len(self.troubles) >= MOST_TROUBLES:
            self._untold += 1
        else:
            self.troubles.append(faults.list_row(self.file.place(starts[min(line, len(starts)) - 1]), why))


def _listed(cell: str) -> list[str]:
    """What a cell lists: all of it, for an old DOI may hold a semicolon, and each part of it."""
    parts = [cell, *(part.strip() for part in cell.split(";"))] if ";" in cell else [cell]
    return [part for part in parts if part.lower() not in ("", "0", "unavailable")]


def us_date(written: str) -> str:
    """A date written month/day/year, as YYYY-MM-DD; nothing where it is none."""
    found = _US_DATE.fullmatch(written)
    if not found:
        return ""
    day = f"{found[3]}-{found[1].zfill(2)}-{found[2].zfill(2)}"
    return day if is_day(day) else ""


def nature_of(words: str) -> str:
    """What kind of notice words name; nothing where it is none that is known."""
    return _NATURES.get(re.sub(r"[\s_-]+", " ", words[:60]).strip().lower(), "")


class _Records:
    """The saved records of one file: what each says of itself, and of the work it updates."""

    def __init__(self, file: SourceFile, wanted: Wanted, notices: dict[str, list[Notice]]) -> None:
        self.file, self.wanted, self.notices = file, wanted, notices
        self.newest = ""
        self.looked_up: set[str] = set()
        self.troubles: list[Finding] = []

    def read(self, path: Text, findings: list[Finding]) -> NoticeList:
        """Take in all records."""
        tree = json_nodes.read(self.file)
        items = [node for node in csl.items_of(tree.top) if node.kind == "mapping"]
        if not items and tree.whole:
            tree.findings.append(faults.no_entries(self.file.place(0), self.file.name))
        for node in items:
            record: Any = json_nodes.plain(node)
            self._record(record, node.start)
        findings.extend(fewer([*tree.findings, *self.troubles]))
        return NoticeList(self.file.name, self.newest, frozenset(self.looked_up), path)

    def _record(self, record: Mapping[str, Any], start: int) -> None:
        own = str(record.get("DOI") or "")
        self.newest = max(self.newest, _day(record.get("indexed")))
        names = self.wanted.with_doi(own)
        self.looked_up.update(names)
        for event in _mappings(record.get("updated-by")) if names else ():
            self._event(event, names, str(event.get("DOI") or ""), start)
        for event in _mappings(record.get("update-to")):
            of = self.wanted.with_doi(str(event.get("DOI") or ""))
            self.looked_up.update(of)
            if of:
                self._event(event, of, own, start)

    def _event(self, event: Mapping[str, Any], names: list[str], notice: str, start: int) -> None:
        told = str(event.get("type") or event.get("label") or "")
        nature = nature_of(told) or nature_of(str(event.get("label") or ""))
        place = self.file.place(start)
        if re.sub(r"[\s_-]+", " ", told).lower() in _NO_CHANGE:
            return
        if not nature:
            self.troubles.append(faults.list_row(place, f'"{told[:40]}" is no kind of notice that is known'))
            return
        date = _day(event.get("updated"))
        self.newest = max(self.newest, date)
        record = str(event.get("record-id") or "")
        found = Notice(nature, date, "", self.file.name, record, identifiers.clean("doi", notice).lower(), place)
        for name in names:
            self.notices.setdefault(name, []).append(found)


def _mappings(value: Any) -> list[Mapping[str, Any]]:
    return [one for one in value if isinstance(one, dict)] if isinstance(value, list) else []


def _day(value: Any) -> str:
    """The day of a date with `date-parts` or `date-time`, as YYYY-MM-DD."""
    if not isinstance(value, dict):
        return ""
    parts = value.get("date-parts")
    first = parts[0] if isinstance(parts, list) and parts else None
    if isinstance(first, list) and first and all(isinstance(one, str) and one.isdigit() for one in first[:3]):
        day = "-".join([first[0].zfill(4), *(one.zfill(2) for one in first[1:3])])
    else:
        day = str(value.get("date-time") or "")[:10]
    return day if is_day(day) else ""
