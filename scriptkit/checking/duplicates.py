"""Checks of sources against each other: one work under two ids, and two versions of one work."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from scriptkit import identifiers
from scriptkit.checking.rules import Found, check
from scriptkit.checking.sources import is_written, used
from scriptkit.model import Facts, Source
from scriptkit.wording import quoted

SHORT_TITLE = 15  # letters; a shorter title may belong to many works
MOST_ALIKE = 6  # sources with one title or number that are held against each other


def _pairs(facts: Facts) -> Iterator[tuple[Source, Source, str]]:
    """Two sources that may be one work, each pair once, and what they share; at least one is used or ours."""
    groups: dict[tuple[str, str], list[Source]] = {}
    for source in facts.register.values():
        for kind in ("doi", "pmid", "isbn"):
            value = identifiers.same(kind, getattr(source, kind)) if getattr(source, kind) else ""
            if value:
                groups.setdefault((identifiers.NAMES[kind], value), []).append(source)
        title = _title(source)
        if title:
            groups.setdefault(("title", title), []).append(source)
    met: set[tuple[str, str]] = set()
    alike = {key: group for key, group in groups.items() if len(group) > 1}
    linked = used(facts) if alike else set()
    for (what, _), group in alike.items():
        for first, second in combinations(group[:MOST_ALIKE], 2):
            if (first.id, second.id) not in met and _matters(first, second, linked):
                met.add((first.id, second.id))
                yield first, second, what


def _matters(first: Source, second: Source, linked: set[str]) -> bool:
    return bool({first.id, second.id} & linked) or is_written(first) or is_written(second)


def _title(source: Source) -> str:
    """What a title is compared by; nothing of one that may belong to many works."""
    plain = "".join(sign for sign in source.title[:400].casefold() if sign.isalnum())
    return plain if len(plain) >= SHORT_TITLE else ""


def _are_versions(first: Source, second: Source) -> bool:
    """Whether two sources of one title have DOIs of their own."""
    return bool(first.doi and second.doi) and first.doi.lower() != second.doi.lower()


def _are_one(first: Source, second: Source, what: str) -> bool:
    if what == "title":
        return first.year == second.year and not _are_versions(first, second)
    if what == "ISBN":  # chapters of one book are works of their own
        return first.title.casefold() == second.title.casefold() or "chapter" not in (first.kind, second.kind)
    return True


@check("warning")
def same_work_twice(facts: Facts) -> Iterator[Found]:
    """One work stands in the register under two ids.

    It has the same DOI, PMID or ISBN, or the same title and year. A study that is counted twice looks like two that
    agree.

    Rule: PRISMA 2020 counts studies, not reports; ours for the signs it is known by.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          mora-2022: {title: Six weeks of timed hangs, year: 2022, doi: 10.5555/grip.22, invented: true}
          mora-22: {title: "Six weeks of timed hangs: a trial", year: 2022, doi: 10.5555/GRIP.22, invented: true}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          mora-2022: {title: Six weeks of timed hangs, year: 2022, doi: 10.5555/grip.22, invented: true}
          mora-2023: {title: Six months of timed hangs, year: 2023, doi: 10.5555/grip.23, invented: true}
    """
    for first, second, what in _pairs(facts):
        if _are_one(first, second, what):
            key = "title" if what == "title" else what.lower()
            shared = "title and year" if what == "title" else what
            place = first.at.place
            yield (
                second.at.of(key),
                f"{quoted(second.id)} has the {shared} of {quoted(first.id)} ({place.file}, line {place.line}).",
                f"Keep one, and link to it everywhere; or correct the {shared} of one.",
            )


@check("note")
def work_in_two_versions(facts: Facts) -> Iterator[Found]:
    """Two sources have the same title and each a DOI of its own: perhaps a preprint and its article.

    One study is then counted twice. The article is the one to cite, and the preprint's numbers may be other ones.

    Rule: ours; a preprint has to be looked up again for its journal version.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          mora-2021: {title: Six weeks of timed hangs, year: 2021, doi: 10.5555/shelf.1, status: preprint}
          mora-2022: {title: Six weeks of timed hangs, year: 2022, doi: 10.5555/grip.22, invented: true}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          mora-2022: {title: Six weeks of timed hangs, year: 2022, doi: 10.5555/grip.22, invented: true}
    """
    for first, second, what in _pairs(facts):
        if what == "title" and _are_versions(first, second):
            where = f"{first.at.place.file}, line {first.at.place.line}"
            yield (
                second.at.of("title"),
                f"{quoted(second.id)} and {quoted(first.id)} ({where}) have one title and two DOIs.",
                "If they are a preprint and its article, keep the article.",
            )
