"""What the author wrote in the evidence register."""

from collections.abc import Mapping
from typing import NamedTuple

from scriptkit.model.base import EMPTY, NOWHERE, Spot
from scriptkit.places import Place, Text

STATUSES = ("published", "corrected", "preprint", "concern", "retracted")  # the later, the worse
EFFECT_TYPES = ("between", "pre-post")  # what a standardised effect compares


class StudyFinding(NamedTuple):
    """One finding of a study, in the study's own figures."""

    id: str = ""
    outcome: str = ""
    measure: str = ""
    site: str = ""
    result: str = ""
    values: Mapping[str, str] = EMPTY  # type: ignore[assignment]
    effect: float | None = None
    effect_type: str = ""
    ci: tuple[float, ...] = ()
    baseline: str = ""
    absolute: str = ""
    certainty: str = ""
    quote: str = ""
    page: str = ""
    at: Spot = NOWHERE


class Notice(NamedTuple):
    """A retraction, correction, expression of concern or reinstatement of a work, as a saved list or record has it.

    `date` is YYYY-MM-DD, "" where there is none; `record` is its number, `doi` the notice's own.
    """

    nature: str
    date: str
    reason: str
    file: str
    record: str
    doi: str
    at: Place


class NoticeList(NamedTuple):
    """A saved list of retractions, or saved records of works. `as_of` is the date of the newest entry, YYYY-MM-DD.

    `looked_up` are the ids of the sources that could be looked up in it, by DOI or PMID.
    """

    file: str
    as_of: str
    looked_up: frozenset[str]
    path: Text


class Source(NamedTuple):
    """One study, book or page that claims rest on.

    `key` is what a reference manager calls it, where that cannot be an id. `status` is the worse of what the author
    gives and what `notices` come to.
    """

    id: str = ""
    key: str = ""
    kind: str = ""
    title: str = ""
    authors: tuple[str, ...] = ()
    year: str = ""
    journal: str = ""
    publisher: str = ""
    doi: str = ""
    pmid: str = ""
    pmcid: str = ""
    isbn: str = ""
    url: str = ""
    accessed: str = ""
    status: str = ""
    design: str = ""
    comparison: str = ""
    timeframe: str = ""
    population: str = ""
    training: str = ""
    n: int | None = None
    n_units: int | None = None
    n_per_group: int | None = None
    sex: str = ""
    ages: str = ""
    country: str = ""
    duration_weeks: float | None = None
    sessions: float | None = None
    dropout: str = ""
    adherence: str = ""
    volume_equated: bool | None = None
    effort: str = ""
    registration: str = ""
    funding: str = ""
    invented: bool = False
    findings: Mapping[str, StudyFinding] = EMPTY  # type: ignore[assignment]
    keywords: tuple[str, ...] = ()
    note: str = ""
    notices: tuple[Notice, ...] = ()
    at: Spot = NOWHERE


class Library(NamedTuple):
    """All sources by id, and what was read beside them.

    `unread` are the registers of which a part or all could not be read, `lists` the saved lists of notices.
    """

    sources: Mapping[str, Source] = EMPTY  # type: ignore[assignment]
    unread: tuple[str, ...] = ()
    lists: tuple[NoticeList, ...] = ()
