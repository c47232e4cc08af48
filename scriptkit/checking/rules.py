"""The register of checks: `@check` takes one in, `run` puts facts to all of them, allow-comments take findings out."""

from __future__ import annotations

import importlib
import pkgutil
from bisect import bisect_right
from collections.abc import Callable, Iterable, Iterator

from scriptkit.findings import Finding, Kind, kind_name
from scriptkit.model import Allow, Facts
from scriptkit.places import Place

KINDS: dict[str, Kind] = {}
Found = tuple[Place, str, str]  # place, message, help


def check(
    severity: str, stage: str = "draft", *, protects: bool = False
) -> Callable[[Callable[[Facts], Iterator[Found]]], Callable[[Facts], Iterator[Found]]]:
    """Take a function into the register.

    Its name in kebab case is the name of the finding, its docstring the explanation; it gives place, message and help
    of each finding.
    """

    def keep(function: Callable[[Facts], Iterator[Found]]) -> Callable[[Facts], Iterator[Found]]:
        kind = Kind(kind_name(function), severity, stage, protects, function)
        if KINDS.setdefault(kind.name, kind) is not kind:
            raise ValueError(f"two checks are called {kind.name}")
        return function

    return keep


def kinds() -> dict[str, Kind]:
    """All checks of this folder, by name: a new module is found by being there."""
    package = importlib.import_module(__package__ or "scriptkit.checking")
    for module in sorted(found.name for found in pkgutil.iter_modules(package.__path__)):
        importlib.import_module(f"{package.__name__}.{module}")
    return KINDS


def run(facts: Facts, known: Iterable[str]) -> list[Finding]:
    """Put the facts to all checks. `known` are the names of kinds from outside this room, for allow-comments.

    What an allow-comment covers is kept, with its reason, as a note that is `allowed`.
    """
    findings = list(facts.found)
    for kind in kinds().values():
        for place, message, help_ in kind.maker(facts):
            findings.append(Finding(kind.name, kind.severity, kind.stage, place, message, help_, "", kind.protects))
    return _allowed(findings, facts.allows, {*known, *KINDS})


def _allowed(findings: list[Finding], allows: Iterable[Allow], known: set[str]) -> list[Finding]:
    spans: dict[tuple[str, str], dict[tuple[int, int], list[Allow]]] = {}
    for allow in allows:
        spans.setdefault((allow.place.file, allow.name), {}).setdefault((allow.first, allow.last), []).append(allow)
    # lines and paragraphs do not overlap, so the last span that starts before a finding is the only one to look at
    starts = {key: sorted(group) for key, group in spans.items()}
    used: set[tuple[str, str, tuple[int, int]]] = set()
    kept = []
    for finding in findings:
        key = (finding.place.file, finding.name)
        ordered = starts.get(key, [])
        number = bisect_right(ordered, finding.place.line, key=lambda span: span[0]) - 1
        if number >= 0 and finding.place.line <= ordered[number][1]:
            used.add((*key, ordered[number]))
            kept.append(finding._replace(allowed=spans[key][ordered[number]][0].reason))
        else:
            kept.append(finding)
    for key, group in spans.items():
        kept.extend(_unused(one, known) for span in group if (*key, span) not in used for one in group[span])
    return kept


def _unused(allow: Allow, known: set[str]) -> Finding:
    kind = KINDS["allow-unused"]
    if allow.name in known:
        message = f'The comment allows "{allow.name}", and there is no such finding on the line or paragraph it covers.'
    else:
        message = f'The comment allows "{allow.name}", and there is no finding of that name.'
    return Finding(
        kind.name,
        kind.severity,
        kind.stage,
        allow.place,
        message,
        "Delete the comment, or move it to where the finding is.",
    )


@check("warning")
def allow_unused(_facts: Facts) -> Iterator[Found]:
    """An allow-comment allows nothing.

    It may have done its work, or stand on the wrong line: in YAML it covers its own line, or the next one if it
    stands alone;
    in spoken text its paragraph, or the next one. Left in place it would hide a finding that comes later.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}} # allow: unknown-key because I like it
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
    """
    # found by `run`, which alone knows what was allowed
    return iter(())
