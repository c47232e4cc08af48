"""What a reference manager exports, whatever the format: entries to sources with ids of our kind."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Mapping
from typing import NamedTuple

from scriptkit import model
from scriptkit.findings import Finding
from scriptkit.model import Spot
from scriptkit.places import SourceFile, Text
from scriptkit.reading import faults
from scriptkit.reading.shapes import ID

MOST_ALIKE = 10  # findings of one kind about one file; the rest are counted
MOST_ENTRIES, MOST_FAULTS = 50_000, 2_000  # of one file; who has more has another kind of file
_YEAR = re.compile(r"(?<![0-9])(1[5-9][0-9]{2}|20[0-9]{2})(?![0-9])")
_DATE = re.compile(r"(?<![0-9])([12][0-9]{3})(?:[-/]([0-9]{1,2}))?(?:[-/]([0-9]{1,2}))?(?![0-9])")
# letters that do not come apart into a plain one and a sign
_PLAIN = str.maketrans(
    {"ß": "ss", "ø": "o", "Ø": "O", "æ": "ae", "Æ": "Ae", "œ": "oe", "Œ": "Oe", "ł": "l", "Ł": "L", "đ": "d", "Đ": "D"}
    | {"þ": "th", "Þ": "Th", "ð": "d", "Ð": "D", "ı": "i"}
)
_PARTICLES = frozenset("van von vom der den de del della di da dos du la le ten ter zu zur af av bin al el".split())
_PREPRINT = re.compile(r"(?i)\bpre-?print|\bpre-?published\b")
# what else a note may hold: "PMID: 12345678", one a line
_IN_NOTES = re.compile(r"(?im)\b(pmid|pmcid|doi|isbn)\s?:\s*(\S{1,200})")


class Author(NamedTuple):
    """One author: the surname, or the whole name of a body, and initials."""

    family: str
    initials: str = ""

    def __str__(self) -> str:
        """`Surname Initials`."""
        return f"{self.family} {self.initials}".strip()


class Entry(NamedTuple):
    """One entry of an export. `values` are texts by the names that our register has for them."""

    key: Text | None
    start: int
    values: Mapping[str, Text]
    authors: tuple[tuple[Author, Text], ...] = ()
    keywords: tuple[str, ...] = ()


class Export(NamedTuple):
    """All entries of a file, and what is wrong with it. `whole` is false where a part of it was lost."""

    entries: list[Entry]
    findings: list[Finding]
    whole: bool


def person(name: str) -> Author:
    """An author written `Family, Given`, `Family, Jr, Given` or `Family, Given, Jr`; without a comma as it is."""
    parts = [" ".join(part.split()) for part in name.split(",")]
    if len(parts) == 1:
        words = parts[0].split(" ")
        if len(words) > 1 and _are_initials(words[-1]):
            return Author(" ".join(words[:-1]), words[-1].replace(".", ""))  # as ours are written: Orre B
        return Author(parts[0])
    given = parts[2] if len(parts) > 2 and _is_suffix(parts[1]) else parts[1]
    return Author(parts[0], _initials(given))


def person_in_order(name: str) -> Author:
    """An author written `Given Family`, or in one of the other ways."""
    words = name.split()
    if "," in name or len(words) < 2 or _are_initials(words[-1]):
        return person(name)
    first = next((at for at, word in enumerate(words) if at and word in _PARTICLES), len(words) - 1)
    return Author(" ".join(words[first:]), _initials(" ".join(words[:first])))


def _are_initials(words: str) -> bool:
    plain = words.replace(".", "")
    return plain.isalpha() and plain.isupper() and len(plain) <= 4


def _is_suffix(words: str) -> bool:
    return words.lower().strip(".") in ("jr", "sr", "ii", "iii", "iv")


def _initials(given: str) -> str:
    return "".join(part[0] for part in re.split(r"[\s.\-‐]+", given) if part)


def year_in(words: str) -> str:
    """The year of a date, or nothing."""
    found = _YEAR.search(words[:200])
    return found[1] if found else ""


def day_in(words: str) -> str:
    """A date as YYYY-MM-DD, as far as it is told."""
    found = _DATE.search(words[:200])
    if not found:
        return ""
    parts = [part for part in found.groups() if part]
    return "-".join(parts[:1] + [part.zfill(2) for part in parts[1:]])


def is_preprint(words: str) -> bool:
    """Whether words about a work say that it is a preprint."""
    return _PREPRINT.search(words[:200]) is not None


def add_from_notes(values: dict[str, Text]) -> None:
    """Take identifiers out of a note and of an address where they have no field of their own."""
    url = values.get("url", "")
    if isinstance(url, Text) and "doi.org/" in url:
        values.setdefault("doi", url)
    note = values.get("note")
    if note is not None and ":" in note:
        for found in _IN_NOTES.finditer(note[:2000]):
            values.setdefault(found[1].lower(), note.like(found[2]))


def is_too_long(export: Export, entries: int, at: int, file: SourceFile) -> bool:
    """Whether an export has more entries or faults than are read; if so that is noted, where the reading stops."""
    for what, many, most in (("entries", entries, MOST_ENTRIES), ("faults", len(export.findings), MOST_FAULTS)):
        if many >= most:
            export.findings.append(faults.file_too_large(file.place(at), f"more than {most:,} {what}", f"{most:,}"))
            return True
    return False


def sources(export: Export, file: SourceFile) -> dict[str, model.Source]:
    """The sources of a file by id; ids that are made or changed, and those given twice, are noted in the export."""
    if not export.entries and export.whole:
        export.findings.append(faults.no_entries(file.place(0), file.name))
    ids = _Ids(export, file)
    found: dict[str, model.Source] = {}
    for entry in export.entries:
        name = ids.of(entry)
        if name in found:
            first = found[name].at.place
            where = f"{first.file}, line {first.line},"
            export.findings.append(faults.source_defined_twice(file.place(entry.start), name, where))
        else:
            found[name] = _source(entry, name, file)
    return found


def _source(entry: Entry, name: str, file: SourceFile) -> model.Source:
    values: dict[str, object] = dict(entry.values)
    keys = {key: text.file.place(text.start) for key, text in entry.values.items()}
    if entry.authors:
        values["authors"] = tuple(text.like(str(author)) for author, text in entry.authors)
        keys["authors"] = file.place(entry.authors[0][1].start)
    if entry.keywords:
        values["keywords"] = entry.keywords
    place = file.place(entry.start)
    key = str(entry.key) if entry.key is not None and entry.key != name else ""
    return model.Source(id=name, key=key, at=Spot(place, keys), **values)  # type: ignore[arg-type]


class _Ids:
    """The ids of one file's entries."""

    def __init__(self, export: Export, file: SourceFile) -> None:
        self.findings, self.file = export.findings, file
        self._taken = {str(entry.key) for entry in export.entries if entry.key is not None}
        self._times: dict[str, int] = {}

    def of(self, entry: Entry) -> str:
        """The key; an id made of it where it cannot be one; one made of surname and year where there is none."""
        key = entry.key
        if key is not None and ID.fullmatch(key):
            return str(key)
        place = self.file.place(entry.start if key is None else key.start)
        made = "" if key is None or "://" in key else as_id(key)
        if made:
            made = self._free(made)
            self.findings.append(faults.id_changed(place, str(key), made))
            return made
        title = entry.values.get("title", "")
        author = entry.authors[0][0].family if entry.authors else " ".join(title[:200].split()[:3])
        made = self._free(as_id(f"{author} {entry.values.get('year', '')}".lower()) or "entry")
        self.findings.append(faults.id_made(place, title or "without a title", made))
        return made

    def _free(self, name: str) -> str:
        """An id that no other entry has."""
        free = name
        short = name[:56]
        while free in self._taken:
            self._times[short] = self._times.get(short, 1) + 1
            free = f"{short}-{self._times[short]}"
        self._taken.add(free)
        return free


def as_id(words: str) -> str:
    """Words as an id: letters without their accents, hyphens for what an id cannot hold; perhaps nothing."""
    plain = unicodedata.normalize("NFKD", words[:200].translate(_PLAIN))
    kept = "".join(sign for sign in plain if not unicodedata.combining(sign))
    return re.sub(r"[^A-Za-z0-9_]+", "-", kept).strip("-")[:60].strip("-")


def fewer(findings: Iterable[Finding], more: int = 0) -> list[Finding]:
    """The first findings of each kind; of the rest how many there are, at the place of the first one left out.

    `more` is how many there are of the last one's kind that are not given at all.
    """
    kept: list[Finding] = []
    seen: dict[str, int] = {}
    last = ""
    left_out: dict[str, Finding] = {}
    for one in findings:
        seen[one.name] = seen.get(one.name, 0) + 1
        last = one.name
        if seen[one.name] <= MOST_ALIKE:
            kept.append(one)
        else:
            left_out.setdefault(one.name, one)
    seen[last] = seen.get(last, 0) + more
    for name, first in left_out.items():
        kept.append(faults.more_like_these(first.place, name, str(seen[name] - MOST_ALIKE)))
    return kept
