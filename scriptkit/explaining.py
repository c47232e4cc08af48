"""Kinds of findings by name, and what is told of them: for `explain`, the README and the tests."""

from __future__ import annotations

from scriptkit.checking import rules
from scriptkit.findings import SEVERITIES, Explanation, Kind, explanation
from scriptkit.reading import faults
from scriptkit.wording import did_you_mean, quoted


def kinds() -> dict[str, Kind]:
    """All kinds of findings by name: those of the reading room and the checks."""
    return dict(sorted({**faults.KINDS, **rules.kinds()}.items()))


def explained(name: str) -> tuple[Kind, Explanation] | str:
    """A kind and its explanation, or what to tell somebody who asked for one that is not there."""
    known = kinds()
    kind = known.get(name.strip().lower().replace("_", "-"))
    if kind is None:
        hint = did_you_mean(name, known) or "`scriptkit explain` lists them all."
        return f"There is no finding called {quoted(name)}. {hint}"
    return (
        (kind, found)
        if (found := explanation(kind))
        else "Explanations need Python's normal mode: it was started with -OO, which throws them away."
    )


def summaries() -> dict[str, tuple[Kind, str]]:
    """Each kind by name with the line that says what it is; that line is empty where Python threw docstrings away."""
    told = {name: (kind, explanation(kind)) for name, kind in kinds().items()}
    return {name: (kind, found.summary if found else "") for name, (kind, found) in told.items()}


def findings_table() -> str:
    """The table of findings for the README, most urgent first."""
    rows = ["| finding | severity | from stage | what it says |", "| --- | --- | --- | --- |"]
    for kind, summary in sorted(summaries().values(), key=lambda one: (SEVERITIES.index(one[0].severity), one[0].name)):
        rows.append(f"| `{kind.name}` | {kind.severity} | {kind.stage} | {summary} |")
    return "\n".join(rows) + "\n"
