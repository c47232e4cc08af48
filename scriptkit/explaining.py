"""Explanations of findings and the tables made from them: for `explain`, the README and the tests."""

from __future__ import annotations

from collections.abc import Mapping

from scriptkit.checking import rules
from scriptkit.findings import SEVERITIES, Explanation, Kind, explanation
from scriptkit.reading import faults


def kinds() -> dict[str, Kind]:
    """All kinds of findings by name: those of the reading room and the checks."""
    return dict(sorted({**faults.KINDS, **rules.kinds()}.items()))


def explained(name: str) -> tuple[Kind, Explanation] | str:
    """A kind and its explanation, or what to tell somebody who asked for one that is not there."""
    known = kinds()
    kind = known.get(name)
    if kind is None:
        near = faults.near(name, known)
        return f'There is no finding called "{name}".' + (
            f' Did you mean "{near}"?' if near else " `scriptkit explain` lists them all."
        )
    found = explanation(kind)
    return (
        (kind, found)
        if found
        else "Explanations need Python's normal mode: it was started with -OO, which throws them away."
    )


def example(files: Mapping[str, str]) -> str:
    """An example episode as it is printed: its files, each under its name where there are several."""
    if list(files) == ["outline.yaml"]:
        return "\n".join("    " + line for line in files["outline.yaml"].rstrip().split("\n"))
    parts = []
    for name, text in files.items():
        parts += [f"  {name}", *("    " + line for line in text.rstrip().split("\n"))]
    return "\n".join(parts)


def findings_table() -> str:
    """The table of findings for the README, most urgent first."""
    rows = ["| finding | severity | from stage | what it says |", "| --- | --- | --- | --- |"]
    for kind in sorted(kinds().values(), key=lambda one: (SEVERITIES.index(one.severity), one.name)):
        found = explanation(kind)
        rows.append(f"| `{kind.name}` | {kind.severity} | {kind.stage} | {found.summary if found else ''} |")
    return "\n".join(rows) + "\n"
