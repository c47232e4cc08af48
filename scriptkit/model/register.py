"""What the author wrote in the evidence register."""

from collections.abc import Mapping
from typing import NamedTuple

from scriptkit.model.base import EMPTY, NOWHERE, Spot


class StudyFinding(NamedTuple):
    """One finding of a study, in the study's own figures."""

    id: str = ""
    outcome: str = ""
    measure: str = ""
    site: str = ""
    result: str = ""
    values: Mapping[str, str] = EMPTY  # type: ignore[assignment]
    effect: float | None = None
    ci: tuple[float, ...] = ()
    baseline: str = ""
    absolute: str = ""
    certainty: str = ""
    quote: str = ""
    page: str = ""
    at: Spot = NOWHERE


class Source(NamedTuple):
    """One study, book or page that claims rest on."""

    id: str = ""
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
    duration_weeks: float | None = None
    registration: str = ""
    funding: str = ""
    invented: bool = False
    findings: Mapping[str, StudyFinding] = EMPTY  # type: ignore[assignment]
    note: str = ""
    at: Spot = NOWHERE
