"""Sources to references in three styles, as plain text; volume and pages are not in a register, so not here either."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from scriptkit.computing.publishing.pasting import Paste, address
from scriptkit.model import Segment, Source
from scriptkit.model.publishing import Author, Reference

# from how many authors on a list is cut, and how many are named then
_CUT = {"vancouver": (7, 6), "ama": (7, 3), "apa": (21, 19)}
_MARKS = {
    "retracted": "RETRACTED",
    "concern": "Expression of concern",
    "corrected": "Corrected",
    "preprint": "Preprint, not peer reviewed",
}
_MONTHS = "January February March April May June July August September October November December".split()
MOST_INITIALS = 5
_INITIALS = re.compile(r"(?:[^\W\d_]\.?-?){1,5}")


def spoken_sources(segments: Sequence[Segment], register: Mapping[str, Source]) -> tuple[str, ...]:
    """The ids of the sources that sentences rest on, in the order they are first spoken."""
    used: dict[str, None] = {}
    for segment in segments:
        for sentence in segment.sentences:
            used.update(dict.fromkeys(str(link.id) for link in sentence.links if link.id in register))
    return tuple(used)


def references(ids: Sequence[str], register: Mapping[str, Source], style: str, paste: Paste) -> tuple[Reference, ...]:
    """Those sources as references, numbered from 1."""
    return tuple(
        Reference(number, name, authors(register[name]), cite(register[name], style, paste))
        for number, name in enumerate(ids, 1)
    )


def authors(source: Source) -> tuple[Author, ...]:
    """The authors of a source; `Surname Initials` taken apart, other words as the name of an organisation."""
    return tuple(_author(" ".join(author.split())) for author in source.authors if author.strip())


def cite(source: Source, style: str, paste: Paste, *, first_author: bool = False) -> str:
    """A source in the style `vancouver`, `ama` or `apa`; with the first author alone where that is asked for."""
    parts = _Parts(source, style, paste, first_author=first_author)
    if style == "apa":
        dated = f"({parts.year or 'n.d.'})."
        start = (_ended(parts.authors), dated, parts.title) if parts.authors else (parts.title, dated)
        return _joined(*start, _ended(parts.within), parts.where)
    within = f"{parts.within};" if source.publisher and not source.journal and parts.year else _ended(parts.within)
    return _joined(_ended(parts.authors), parts.title, within, _ended(parts.year), parts.where)


def cite_shortly(source: Source, paste: Paste) -> str:
    """A source by surname, year, journal and address; by its title where it has no author."""
    parts = _Parts(source, "vancouver", paste)
    names = parts.names
    who = f"{names[0].family}{' et al.' if len(names) > 1 else ''}" if names else parts.bare_title
    # an identifier finds the work; without one, the title has to
    where = address(source.url) if parts.is_online else parts.where.rstrip(".") or (parts.bare_title if names else "")
    told = [" ".join(part for part in (who, parts.year) if part), parts.within, where]
    return f"{', '.join(part for part in told if part)}{parts.marks}"


class _Parts:
    """The parts of a reference, fit to be pasted."""

    def __init__(self, source: Source, style: str, paste: Paste, *, first_author: bool = False) -> None:
        self.source, self.style, self.paste = source, style, paste
        self.names = [one._replace(family=self._words(one.family)) for one in authors(source)]
        self.bare_title = self._words(source.title or source.id)
        self.year = self._words(source.year)
        self.within = self._words(source.journal or source.publisher)
        self.authors = _authors(self.names, style, *((2, 1) if first_author else _CUT[style]))

    def _words(self, text: str) -> str:
        return self.paste.words(text, self.source.at.place)

    @property
    def marks(self) -> str:
        """What a reader has to know of it, in brackets; with a space before each."""
        marks = [_MARKS.get(self.source.status, ""), "Invented example" if self.source.invented else ""]
        return "".join(f" [{mark}]" for mark in marks if mark)

    @property
    def title(self) -> str:
        """The title with its marks, and the stop behind it."""
        online = " [Internet]" if self.source.kind == "page" and self.style == "vancouver" else ""
        return _ended(self.bare_title + online + self.marks)

    @property
    def where(self) -> str:
        """The identifier or address by which the work is found, in the style's form."""
        source = self.source
        if source.doi:
            return f"https://doi.org/{address(source.doi)}"  # a stop behind it would be clicked with it
        for label, value in (("PMID", source.pmid), ("PMCID", source.pmcid), ("ISBN", source.isbn)):
            if value:
                return f"{label}: {self._words(value)}."
        return self._online(address(source.url)) if source.url else ""

    @property
    def is_online(self) -> bool:
        """Whether the work is found by its address alone."""
        source = self.source
        return bool(source.url) and not (source.doi or source.pmid or source.pmcid or source.isbn)

    def _online(self, url: str) -> str:
        day = self.source.accessed
        if self.style == "vancouver":
            return f"[cited {day}]. Available from: {url}" if day else f"Available from: {url}"
        if not day:
            return url
        return f"Retrieved {_day(day)}, from {url}" if self.style == "apa" else f"Accessed {_day(day)}. {url}"


def _author(author: str) -> Author:
    words = author.replace(",", " , ").split()
    at = len(words)
    while at > 1 and words[at - 1] == words[at - 1].upper() and _INITIALS.fullmatch(words[at - 1]):
        at -= 1
    initials = "".join(sign for word in words[at:] for sign in word if sign.isalpha())
    family = words[: at - 1] if words[at - 1] == "," else words[:at]
    if not (initials and family and len(initials) <= MOST_INITIALS) or "," in family:
        return Author(author)
    return Author(" ".join(family), initials)


def _authors(names: Sequence[Author], style: str, least: int, shown: int) -> str:
    """The authors in a style; a list of at least so many shows only the first ones."""
    apa = style == "apa"
    made = [_apa_name(one) if apa else f"{one.family} {one.initials}".strip() for one in names]
    if len(made) >= least:
        first = ", ".join(made[:shown])
        return f"{first}, . . . {made[-1]}" if apa and shown > 1 else f"{first}, et al."
    if apa and len(made) > 1:
        return f"{', '.join(made[:-1])}, & {made[-1]}"
    return ", ".join(made)


def _apa_name(name: Author) -> str:
    return ", ".join(part for part in (name.family, " ".join(f"{sign}." for sign in name.initials)) if part)


def _day(written: str) -> str:
    """2026-03-02 as March 2, 2026."""
    year, month, day = (*written.split("-"), "", "")[:3]
    if not month:
        return year
    name = _MONTHS[int(month) - 1]
    return f"{name} {int(day)}, {year}" if day else f"{name} {year}"


def _ended(text: str) -> str:
    """A text with a stop behind it, unless it has one; nothing stays nothing."""
    return text if not text or text[-1] in ".?!" else f"{text}."


def _joined(*parts: str) -> str:
    return " ".join(part for part in parts if part)
