"""What is published beside the video as files: chapters, description, references as text and as CSL-JSON."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from scriptkit.model import Facts, Source
from scriptkit.model.publishing import Author
from scriptkit.rendering.rows import Row
from scriptkit.rendering.sheets import to_json

_KINDS = {
    "article": "article-journal", "book": "book", "chapter": "chapter", "page": "webpage", "report": "report",
    "standard": "standard", "thesis": "thesis", "data": "dataset",
}  # fmt: skip
_NUMBERS = {"DOI": "doi", "PMID": "pmid", "PMCID": "pmcid", "ISBN": "isbn", "URL": "url"}


def chapters(facts: Facts) -> bytes:
    """chapters.txt: a chapter a line; nothing at all where there are too few, since what is there gets pasted."""
    return _lines(one.line for one in facts.publication.chapters)


def description(facts: Facts) -> bytes:
    """description.txt."""
    return facts.publication.description.encode(errors="replace")


def references(facts: Facts) -> bytes:
    """references.txt: a reference a line, numbered as spoken."""
    return _lines(one.line for one in facts.publication.references)


def references_json(facts: Facts) -> bytes:
    """references.json: the same works as CSL-JSON, in the same order."""
    return to_json([_item(facts.register[one.id], one.authors) for one in facts.publication.references])


def remarks(facts: Facts) -> dict[str, str]:
    """A word by file about what an author would not expect of it, to stand behind what the file is for."""
    made, limits = facts.publication, facts.limits
    none = f"; empty: {made.parts} would come about, and {limits.chapters} are needed" * (not made.chapters)
    size = f"; {made.size:,} bytes" + (
        f" of {limits.description_bytes:,}" if made.size <= limits.description_bytes < float("inf") else ""
    )
    over = f", more than the {limits.description_bytes:,} it may have" * (made.size > limits.description_bytes)
    shorter = f"; to be short enough, {', '.join(made.steps)}" * bool(made.steps)
    return {
        "chapters.txt": none,
        "description.txt": size + over + shorter,
        "references.txt": "" if made.references else "; empty: no source is spoken",
    }


def _lines(lines: Iterable[str]) -> bytes:
    return "".join(f"{line}\n" for line in lines).encode(errors="replace")


def _item(source: Source, authors: Sequence[Author]) -> Row:
    """A work as CSL-JSON. What a register holds beyond that, that it is invented above all, stands in its note."""
    made: Row = {"id": str(source.id), "type": _type(source), "title": str(source.title or source.id)}
    made |= {"author": [_author(one) for one in authors]} if authors else {}
    made |= {"issued": _date(source.year)} if source.year else {}
    made |= {"container-title": str(source.journal)} if source.journal else {}
    made |= {"publisher": str(source.publisher)} if source.publisher else {}
    made |= {name: str(getattr(source, key)) for name, key in _NUMBERS.items() if getattr(source, key)}
    made |= {"accessed": _date(source.accessed)} if source.accessed else {}
    made |= {"status": str(source.status)} if source.status else {}
    return made | ({"note": "Invented example, not a real study."} if source.invented else {})


def _type(source: Source) -> str:
    """The kind as CSL calls it; where none is given, by what the work is found by."""
    if source.kind:
        return _KINDS.get(source.kind, "document")
    if source.status == "preprint":
        return "article"
    if "standard" in source.design.lower().split():
        return "standard"
    if source.isbn and not source.journal:
        return "book"
    if source.url and not (source.journal or source.doi or source.pmid or source.pmcid):
        return "webpage"
    return "article-journal"


def _author(one: Author) -> Row:
    """A person with given and family name, or a name that is not taken apart."""
    if not one.initials:
        return {"literal": one.family}
    return {"family": one.family, "given": " ".join(f"{sign}." for sign in one.initials)}


def _date(written: str) -> Row:
    """A date in parts, or as it is written where it is none."""
    found = re.fullmatch(r"(\d{4})(?:-(\d{2}))?(?:-(\d{2}))?", written.strip())
    return {"date-parts": [[int(part) for part in found.groups() if part]]} if found else {"literal": written}
