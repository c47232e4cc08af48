"""Checks of what a work is found by: its identifiers, and the year in them."""

from __future__ import annotations

import re
from collections.abc import Iterator

from scriptkit import identifiers
from scriptkit.checking.rules import Found, check
from scriptkit.checking.sources import in_use, looked_at, some
from scriptkit.model import Facts
from scriptkit.wording import quoted


@check("warning")
def identifier_wrong(facts: Facts) -> Iterator[Found]:
    """A DOI, PMID, PMCID or ISBN is not one: its form or its check digit is wrong.

    Addresses, labels and a stray full stop around it do not matter; they are taken off. Nobody can find the work by a
    wrong number, and neither can a saved list of retractions.

    Rule: the ISBN standard's check digits, PMC's own form, and the form that all but a few registered DOIs have.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources: {mora-2022: {title: The hanging book, isbn: 0-306-40615-3, publisher: Made up, invented: true}}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources: {mora-2022: {title: The hanging book, isbn: 0-306-40615-2, publisher: Made up, invented: true}}
    """
    return some(_wrong_identifiers(facts), lambda count: f"{count} more identifiers in this file are wrong.")


def _wrong_identifiers(facts: Facts) -> Iterator[Found]:
    for source in looked_at(facts):
        for kind in identifiers.KINDS:
            value = getattr(source, kind)
            trouble = identifiers.trouble(kind, value) if value else ""
            if trouble:
                yield (
                    source.at.of(kind),
                    f"The {identifiers.NAMES[kind]} {quoted(value)} of {quoted(source.id)} {trouble}.",
                    "Copy it again from the work itself.",
                )


@check("warning", "publish")
def doi_of_examples(facts: Facts) -> Iterator[Found]:
    """A DOI begins with 10.5555, which stands for examples.

    It is often made up or not registered, so nobody finds a work by it. A source that is an example says so with
    `invented: true`.

    Rule: common practice; registration agencies use this prefix in their own examples.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang, claims: [{say: Hang time rose in one trial., source: mora-2022}]}}
        sources: {mora-2022: {title: Timed hangs, doi: 10.5555/grip.22}}
    Good:
        title: One
        exercises: {hang: {name: Bar hang, claims: [{say: Hang time rose in one trial., source: mora-2022}]}}
        sources: {mora-2022: {title: Timed hangs, doi: 10.5555/grip.22, invented: true}}
    """
    for source in in_use(facts):
        if source.doi.startswith(identifiers.EXAMPLES) and not source.invented:
            yield (
                source.at.of("doi"),
                f"The DOI {quoted(source.doi)} of {quoted(source.id)} begins as examples do.",
                "Give the work's own DOI, or its address or ISBN; `invented: true` says that it is an example.",
            )


@check("warning")
def year_differs(facts: Facts) -> Iterator[Found]:
    """The year of a source is not the one in its DOI.

    Many DOIs hold the year; a year's difference is usual, since works appear on line before they are printed. More is
    likely a slip, and the year is what viewers hear.

    Rule: ours; not every DOI holds a year, so only one that plainly does is looked at.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources: {mora-2022: {title: Timed hangs, year: 2002, doi: 10.5555/grip.2022.3, invented: true}}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources: {mora-2022: {title: Timed hangs, year: 2022, doi: 10.5555/grip.2022.3, invented: true}}
    """
    return some(_other_years(facts), lambda count: f"{count} more sources of this file have another year.")


def _other_years(facts: Facts) -> Iterator[Found]:
    for source in looked_at(facts):
        year = source.year.strip()
        if not (source.doi and len(year) == 4 and year.isdigit()):
            continue
        behind = source.doi.partition("/")[2][:200]
        years = [int(one) for one in re.findall(r"(?<![0-9A-Za-z])(?:19[5-9][0-9]|20[0-4][0-9])(?=[./_-])", behind)]
        if years and all(abs(one - int(year)) > 1 for one in years):
            yield (
                source.at.of("year"),
                f"{quoted(source.id)} is of {year} here, and its DOI {quoted(source.doi)} holds {years[0]}.",
                "Look the year up, or correct the DOI.",
            )
