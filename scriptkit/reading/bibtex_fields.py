"""The fields of a BibTeX entry, under the names that our register has for them."""

from __future__ import annotations

import re

from scriptkit.places import Text
from scriptkit.reading import latex
from scriptkit.reading.exports import Author, Entry, add_from_notes, day_in, is_preprint, person_in_order, year_in

_KINDS = {
    "article": "article", "inproceedings": "article", "conference": "article", "unpublished": "article",
    "book": "book", "mvbook": "book", "collection": "book", "proceedings": "book", "booklet": "book",
    "inbook": "chapter", "incollection": "chapter", "inreference": "chapter", "online": "page", "electronic": "page",
    "www": "page", "webpage": "page", "techreport": "report", "report": "report", "manual": "report",
    "phdthesis": "thesis", "mastersthesis": "thesis", "thesis": "thesis", "standard": "standard", "dataset": "data",
}  # fmt: skip
# our names, and the fields that may hold them, best first
_NAMES = {
    "journal": ("journaltitle", "journal", "shortjournal", "booktitle"),
    "publisher": ("publisher", "institution", "school", "organization"),
    "note": ("note", "annote", "annotation"),
}
_PLAIN_NAMES = {"doi": ("doi",), "pmid": ("pmid",), "pmcid": ("pmcid", "pmc"), "isbn": ("isbn",), "url": ("url",)}

MOST_INHERITED = 2_000  # characters; a thousand entries may refer to one
MOST_NAMES = 500_000  # characters of the authors of one work; the longest list of all has a tenth of it


class Fields:
    """The fields of one entry as they are read: each name with its raw words."""

    def __init__(self, kind: str, start: int) -> None:
        self.kind, self.start = kind, start
        self.key: Text | None = None
        self.raw: dict[str, Text] = {}

    def first(self, *names: str) -> Text | None:
        """The first of these fields that is there, in plain words."""
        for name in names:
            if name in self.raw:
                value = self.raw[name]
                plain = latex.words(value)
                if plain:
                    return value.like(plain)
        return None


def inherit(read: list[Fields]) -> None:
    """Give an entry what it refers to another one for."""
    by_key = {str(fields.key): fields for fields in reversed(read)}
    for fields in read:
        parent = by_key.get(str(fields.raw.get("crossref", ""))) if "crossref" in fields.raw else None
        if parent is not None and parent is not fields:
            for name in ("year", "date", "publisher", "isbn"):
                if len(parent.raw.get(name, "")) in range(1, MOST_INHERITED):
                    fields.raw.setdefault(name, parent.raw[name])
            if len(parent.raw.get("title", "")) in range(1, MOST_INHERITED):
                fields.raw.setdefault("booktitle", parent.raw["title"])


def entry(fields: Fields) -> Entry:
    """The fields as an entry of an export."""
    values: dict[str, Text] = {}
    title, subtitle = fields.first("title"), fields.first("subtitle")
    if title is not None:
        values["title"] = title.like(f"{title}: {subtitle}") if subtitle else title
    for name, of in _NAMES.items():
        value = fields.first(*of)
        if value is not None:
            values[name] = value
    for name, of in _PLAIN_NAMES.items():
        for one in of:
            words = latex.verbatim(fields.raw[one]) if one in fields.raw else ""
            if words:
                values.setdefault(name, fields.raw[one].like(words))
    _add_dates(fields, values)
    _add_kind(fields, values)
    _add_eprint(fields, values)
    add_from_notes(values)
    listed = fields.first("keywords", "keyword")
    keywords = tuple(word for part in re.split(r"[,;]", listed or "") if (word := part.strip()))
    return Entry(fields.key, fields.start, values, _authors(fields), keywords)


def _add_dates(fields: Fields, values: dict[str, Text]) -> None:
    for name in ("year", "date", "issued"):
        told = fields.first(name)
        year = year_in(told) if told else ""
        if told is not None and year:
            values["year"] = told.like(year)
            break
    read_on = fields.first("urldate", "lastchecked", "accessed")
    if read_on is not None and day_in(read_on):
        values["accessed"] = read_on.like(day_in(read_on))


def _add_kind(fields: Fields, values: dict[str, Text]) -> None:
    at = Text(fields.kind, fields.key.file, fields.start + 1, fields.start + 1) if fields.key else None
    somewhere = at or next(iter(fields.raw.values()), None)
    if somewhere is None:
        return
    if fields.kind in _KINDS:
        values["kind"] = somewhere.like(_KINDS[fields.kind])
    told = fields.first("pubstate", "type", "entrysubtype", "howpublished")
    if fields.kind == "unpublished" or (told and is_preprint(told)):
        values["status"] = (told or somewhere).like("preprint")


def _add_eprint(fields: Fields, values: dict[str, Text]) -> None:
    """An electronic number: that of a data base, or of a shelf of preprints where no journal is named."""
    number, shelf = fields.first("eprint"), fields.first("eprinttype", "archiveprefix")
    if number is None or shelf is None:
        return
    if shelf.lower() in ("pubmed", "pmid", "medline"):
        values.setdefault("pmid", number)
    elif shelf.lower() in ("pmc", "pmcid"):
        values.setdefault("pmcid", number)
    elif "journal" not in values and values.get("kind", "article") == "article":
        values.setdefault("status", number.like("preprint"))


def _authors(fields: Fields) -> tuple[tuple[Author, Text], ...]:
    raw = fields.raw.get("author") or fields.raw.get("editor")
    if raw is None:
        return ()
    authors = []
    for name in _split_names(raw[:MOST_NAMES]):
        bare = name.strip()
        if bare.startswith("{") and bare.endswith("}") and "," not in bare:
            authors.append((Author(latex.words(bare)), raw))  # a body, not a person
        elif latex.words(bare).lower() not in ("others", "et al.", ""):
            authors.append((person_in_order(latex.words(bare)), raw))
    return tuple(authors)


def _split_names(raw: str) -> list[str]:
    """Names with `and` between them, where it stands outside of braces."""
    if "{" not in raw:
        return re.split(r"\s+and\s+", " ".join(raw.split()))
    names, depth, last = [], 0, 0
    for found in re.finditer(r"[{}]|\sand\s", raw):
        if found[0] in "{}":
            depth += 1 if found[0] == "{" else -1
        elif depth == 0:
            names.append(raw[last : found.start()])
            last = found.end()
    return [*names, raw[last:]]
