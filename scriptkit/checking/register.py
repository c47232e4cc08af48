"""Checks of the sources themselves: what is retracted, too bare to judge, or not used."""

from __future__ import annotations

import re
from collections.abc import Iterator

from scriptkit.checking.rules import Found, check
from scriptkit.checking.sources import in_use, is_written, some, used
from scriptkit.model import Facts, Source
from scriptkit.places import Place
from scriptkit.wording import listed, quoted

_SAYS_RETRACTED = r"(?i)\W*retracted(?:\s+(?:article|paper))?\s*[:\].]"
# designs that count no people, and those that go on for weeks
_NO_PEOPLE = (
    *("review", "meta-analysis", "standard", "guideline", "data sheet", "book", "page", "tally", "count", "survey"),
    *("statement", "position", "consensus", "model", "cadaver", "animal", "test of", "measurement"),
)
_FOR_WEEKS = ("trial", "cohort", "pre-post", "longitudinal", "case series")
_NO_STUDIES = ("book", "chapter", "page", "standard", "data")


@check("error")
def source_retracted(facts: Facts) -> Iterator[Found]:
    """Something rests on a source that was retracted.

    It is said in `status:`, in the title of the work, or in a saved list or record. A retracted study shows nothing,
    whatever its numbers were, and who cites one need not know. A reinstatement undoes an earlier retraction.

    Rule: COPE retraction guidelines, as commonly told: retracted findings are not to be relied on.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang, claims: [{say: Hang time rose in one trial., source: mora-2022}]}}
        sources: {mora-2022: {title: Timed hangs, status: retracted, invented: true}}
    Good:
        title: One
        exercises: {hang: {name: Bar hang, claims: [{say: Hang time rose in one trial., source: mora-2022}]}}
        sources: {mora-2022: {title: Timed hangs, status: published, invented: true}}
    """
    for source in in_use(facts):
        told = _told_retracted(source)
        if told:
            yield (
                *told,
                "Take out what rests on it, or rest it on another source; a rating that used it needs another look.",
            )


def _told_retracted(source: Source) -> tuple[Place, str] | None:
    """Where and how it is told that a source was retracted."""
    if source.status == "retracted":
        by = next((one for one in reversed(source.notices) if one.nature == "Retraction"), None)
        if by is None:
            return source.at.of("status"), f"The source {quoted(source.id)} is retracted, and something rests on it."
        on = f" on {by.date}" if by.date else ""
        why = f", for: {by.reason}" if by.reason else ""
        place = source.at.of("doi" if "doi" in source.at.keys else "pmid")
        return place, f"The source {quoted(source.id)} was retracted{on}, says {by.file}, line {by.at.line}{why}."
    if source.title and "etracted" in source.title.lower() and re.match(_SAYS_RETRACTED, source.title):
        return source.at.of("title"), f"The title of {quoted(source.id)} says that it was retracted."
    return None


@check("warning")
def source_bare(facts: Facts) -> Iterator[Found]:
    """A source that something rests on says too little of itself to be judged.

    What a study can show hangs on its design, its people, its weeks and what it found; without them the claim gets no
    certainty. A book, page, standard, maker's sheet or tally is not asked for people.

    Rule: CONSORT 2025 and PRISMA 2020 name what a report of a study has to tell; which of it is asked for here is ours.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang, claims: [{say: Hang time rose in one trial., source: mora-2022}]}}
        sources: {mora-2022: {title: Timed hangs, year: 2022, doi: 10.5555/grip.22, invented: true}}
    Good:
        title: One
        exercises: {hang: {name: Bar hang, claims: [{say: Hang time rose in one trial., source: mora-2022}]}}
        sources:
          mora-2022:
            title: Timed hangs
            year: 2022
            doi: 10.5555/grip.22
            design: randomised trial
            n: 38
            duration_weeks: 6
            findings: {hang: {outcome: hang time, result: 22 percent}}
            invented: true
    """
    return some(_bare(facts), lambda count: f"{count} more sources of this file say too little to be judged.")


def _bare(facts: Facts) -> Iterator[Found]:
    for source in in_use(facts):
        missing = _missing(source) if source.status != "retracted" else []
        if missing:
            beside = "" if is_written(source) else f", under `{source.id}:` in a YAML register beside the export"
            keys = listed([f"`{one}:`" for one in missing])
            yield (
                source.at.place,
                f"{quoted(source.id)} says too little to be judged: it has no {' and no '.join(missing)}.",
                f"Add {keys}{beside}.",
            )


def _missing(source: Source) -> list[str]:
    """The keys that a source has to have and has not."""
    design = source.design.lower()
    alone = not (source.doi or source.pmid or source.pmcid or source.journal)
    is_study = source.kind not in _NO_STUDIES and not (alone and not design and (source.isbn or source.url))
    missing = [] if source.title else ["title"]
    if not (source.year or source.accessed):
        missing.append("year")
    if alone and not (source.isbn or source.url or (source.publisher and not is_study)):
        missing.append("doi")
    if is_study:
        missing += _missing_of_study(source, design)
    return missing


def _missing_of_study(source: Source, design: str) -> list[str]:
    missing = []
    if not design:
        missing.append("design")
    if source.n is None and source.n_units is None and not any(word in design for word in _NO_PEOPLE):
        missing.append("n")
    goes_on = source.timeframe == "longitudinal" or (
        not source.timeframe and any(word in design for word in _FOR_WEEKS)
    )
    if source.duration_weeks is None and goes_on and not any(word in design for word in _NO_PEOPLE):
        missing.append("duration_weeks")
    if not source.findings:
        missing.append("findings")
    return missing


@check("note")
def source_unused(facts: Facts) -> Iterator[Found]:
    """Nothing rests on a source of the register.

    It may be left over, or a claim may have lost its link. The sources of a channel's register are for all its
    episodes and are not looked at.

    Rule: ours; a study that was read and is left out may be the one that disagrees.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources: {mora-2022: {title: Timed hangs, invented: true}}
    Good:
        title: One
        exercises: {hang: {name: Bar hang, claims: [{say: Hang time rose in one trial., source: mora-2022}]}}
        sources: {mora-2022: {title: Timed hangs, invented: true}}
    """
    linked = used(facts)
    unused = (
        (
            source.at.place,
            f"Nothing rests on the source {quoted(source.id)}.",
            "Link a claim to it, or take it out of the register.",
        )
        for source in facts.register.values()
        if source.id not in linked and not source.at.place.file.startswith("../")
    )
    return some(unused, lambda count: f"Nothing rests on {count} more sources of this file.")
