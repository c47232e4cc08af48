"""RIS to entries of an export: two letters, a dash and a value on each line; TY opens an entry and ER ends it."""

from __future__ import annotations

import re

from scriptkit.findings import Finding
from scriptkit.places import SourceFile, Text
from scriptkit.reading import faults
from scriptkit.reading.exports import (
    Author,
    Entry,
    Export,
    add_from_notes,
    day_in,
    is_preprint,
    is_too_long,
    person,
    year_in,
)

_LINE = re.compile(r"([A-Z][A-Z0-9]) {1,2}-(?: (.*)|\s*)")
_KINDS = {
    "JOUR": "article", "MGZN": "article", "NEWS": "article", "CPAPER": "article", "CONF": "article", "EJOUR": "article",
    "BOOK": "book", "EBOOK": "book", "EDBOOK": "book", "CHAP": "chapter", "ECHAP": "chapter", "ELEC": "page",
    "WEB": "page", "BLOG": "page", "VIDEO": "page", "RPRT": "report", "GOVDOC": "report", "STAND": "standard",
    "THES": "thesis", "DATA": "data", "DBASE": "data", "UNPB": "article",
}  # fmt: skip
# our names, and the tags that may hold them, best first
_TAGS = {
    "title": ("TI", "T1", "CT", "BT"),
    "journal": ("T2", "JO", "JF", "JA", "J2", "J1"),
    "publisher": ("PB",),
    "doi": ("DO", "DI"),
    "url": ("UR", "L2", "LK"),
    "note": ("N1", "RN", "U5"),
}
MOST_LINES = 20_000  # of one tag in one entry; the longest list of authors has a quarter of it
_AUTHORS = ("AU", "A1")
_STANDING_IN = ("A2", "ED", "A3", "A4")


class _Tags:
    """The lines of one entry: each tag with its values, in the order written."""

    def __init__(self, file: SourceFile, start: int) -> None:
        self.file, self.start = file, start
        self.last = ""
        self.values: dict[str, list[Text]] = {}

    def add(self, tag: str, words: str, start: int) -> None:
        self.last = tag
        plain = words.strip()
        if plain and len(self.values.get(tag, ())) < MOST_LINES:
            at = start + len(words) - len(words.lstrip())
            self.values.setdefault(tag, []).append(Text(plain, self.file, at, at + len(plain)))

    def go_on(self, words: str) -> None:
        """Take up a line without a tag: the rest of the value before it."""
        held = self.values.get(self.last)
        if held and len(held[-1]) < 2000:
            held[-1] = held[-1].like(f"{held[-1]} {words.strip()}")

    def first(self, *tags: str) -> Text | None:
        """The first value of the first of these tags that is there."""
        return next((self.values[tag][0] for tag in tags if tag in self.values), None)


def read(file: SourceFile) -> Export:
    """The entries of a file. An entry without its end is noted and read all the same."""
    export = Export([], [], whole=True)
    tags: _Tags | None = None
    start = 0
    strays = False
    for line in file.text.split("\n"):
        found = _LINE.fullmatch(line)
        if found and found[1] == "TY":
            if is_too_long(export, len(export.entries), start, file):
                tags, export = None, export._replace(whole=False)
                break
            if tags:
                export.findings.append(_unfinished(tags, "the next one begins before its last line"))
                export.entries.append(_entry(tags))
            tags = _Tags(file, start)
        elif found and found[1] == "ER" and tags:
            export.entries.append(_entry(tags))
            tags, strays = None, False
            start += len(line) + 1
            continue
        if tags and found:
            tags.add(found[1], found[2] or "", start + found.start(2))
        elif tags and line.strip():
            tags.go_on(line)
        elif line.strip() and not tags and not strays:
            strays = True
            export.findings.append(_stray(file, start, line))
        start += len(line) + 1
    if tags:
        export.findings.append(_unfinished(tags, "the file ends before its last line"))
        export.entries.append(_entry(tags))
        export = export._replace(whole=False)
    return export


def _stray(file: SourceFile, start: int, line: str) -> Finding:
    words = line.strip()
    why = "it stands outside of any entry, and an entry begins with `TY  - `"
    return faults.broken_entry(file.place(start + line.index(words[0])), words, why)


def _unfinished(tags: _Tags, why: str) -> Finding:
    name = tags.first("ID", "LB", "TI", "T1") or "without a title"
    return faults.broken_entry(tags.file.place(tags.start), name, f"{why}, `ER  - `")


def _entry(tags: _Tags) -> Entry:
    values = {name: value for name, of in _TAGS.items() if (value := tags.first(*of)) is not None}
    _add_dates(tags, values)
    _add_kind(tags, values)
    _add_identifiers(tags, values)
    add_from_notes(values)
    names = [name for tag in _AUTHORS for name in tags.values.get(tag, [])]
    names = names or [name for tag in _STANDING_IN for name in tags.values.get(tag, [])]
    authors: tuple[tuple[Author, Text], ...] = tuple((person(name), name) for name in names)
    keywords = tuple(word for word in tags.values.get("KW", []))
    return Entry(tags.first("ID", "LB"), tags.start, values, authors, keywords)


def _add_dates(tags: _Tags, values: dict[str, Text]) -> None:
    for tag in ("PY", "Y1", "DA"):
        date = tags.first(tag)
        year = year_in(date) if date else ""
        if date is not None and year:
            values["year"] = date.like(year)
            break
    read_on = tags.first("Y2")
    if read_on is not None and day_in(read_on):
        values["accessed"] = read_on.like(day_in(read_on))


def _add_kind(tags: _Tags, values: dict[str, Text]) -> None:
    kind = tags.first("TY")
    if kind is None:
        return
    if kind in _KINDS:
        values["kind"] = kind.like(_KINDS[kind])
    told = tags.first("M3")
    if kind == "UNPB" or (told and is_preprint(told)):
        values["status"] = kind.like("preprint")


def _add_identifiers(tags: _Tags, values: dict[str, Text]) -> None:
    """Numbers that stand in tags of many uses: ISBN or ISSN, and a data base's own number."""
    for number in tags.values.get("SN", []):
        digits = re.sub(r"[^0-9Xx]", "", number[:60])
        if len(digits) >= 10:
            values.setdefault("isbn", number)
    own = tags.first("AN")
    held_by = " ".join(str(one) for tag in ("DB", "DP") for one in tags.values.get(tag, [])).lower()
    if own is not None and ("pubmed" in held_by or "medline" in held_by or "nlm" in held_by):
        values.setdefault("pmid", own)
    custom = tags.first("C2")
    if custom is not None and custom.upper().startswith("PMC"):
        values.setdefault("pmcid", custom)
