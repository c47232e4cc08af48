"""Findings: what is wrong, where, how much it matters, by when, and what to do; and the kinds they come in."""

from __future__ import annotations

import inspect
import re
from collections.abc import Callable, Iterable
from typing import Any, NamedTuple

from scriptkit.places import Place

SEVERITIES = ("error", "warning", "note")
STAGES = ("draft", "record", "publish")


class Kind(NamedTuple):
    """A kind of finding: `severity` is what it is at its `stage` and after; before that it is a note.
    `protects` is true where a viewer's health or an undisclosed interest is at stake: such a finding stays in sight when it is allowed.
    `maker` is the function whose docstring explains the kind, with a bad and a good example.
    """

    name: str
    severity: str
    stage: str
    protects: bool
    maker: Callable[..., Any]


class Finding(NamedTuple):
    """One thing to look at. `message` is one sentence that quotes the author; `help` says what to do."""

    name: str
    severity: str
    stage: str
    place: Place
    message: str
    help: str
    allowed: str = ""
    protects: bool = False


class Example(NamedTuple):
    """An example episode in an explanation: file name to text."""

    files: dict[str, str]


class Explanation(NamedTuple):
    """What `explain` prints of a kind: one line, the text below it, a bad and a good example."""

    summary: str
    text: str
    bad: Example
    good: Example


def kind_name(function: Callable[..., Any]) -> str:
    """The name of a kind is the name of its function in kebab case."""
    return function.__name__.replace("_", "-")


def make(kind: Kind, place: Place, message: str, help: str) -> Finding:  # noqa: A002 - the JSON key is `help`
    """A finding of that kind."""
    return Finding(kind.name, kind.severity, kind.stage, place, message, help, "", kind.protects)


def explanation(kind: Kind) -> Explanation | None:
    """The explanation in the docstring of the kind's function; None where Python threw docstrings away (-OO)."""
    doc = inspect.getdoc(kind.maker)
    if not doc:
        return None
    head, _, examples = doc.partition("\nBad:\n")
    bad, _, good = examples.partition("\nGood:\n")
    summary, _, text = head.partition("\n")
    return Explanation(summary.strip(), text.strip(), Example(_files(bad)), Example(_files(good)))


def _files(text: str) -> dict[str, str]:
    """An example is an outline, or several files each under a line `--- file name`."""
    files: dict[str, list[str]] = {}
    name = "outline.yaml"
    for line in inspect.cleandoc("\n" + text).split("\n"):
        header = re.fullmatch(r"--- (\S+)", line)
        if header:
            name = header[1]
        files.setdefault(name, []).append(line if not header else "")
    return {name: "\n".join(lines).strip("\n") + "\n" for name, lines in files.items() if "".join(lines).strip()}


def at_stage(findings: Iterable[Finding], stage: str) -> list[Finding]:
    """The findings as they stand at `stage`: what only a later stage demands is a note."""
    reached = STAGES.index(stage)
    return [found if STAGES.index(found.stage) <= reached else found._replace(severity="note") for found in findings]


def most_urgent_first(findings: Iterable[Finding]) -> list[Finding]:
    """Errors, warnings, notes; within each by place. Equal findings are given once."""
    return sorted(
        dict.fromkeys(findings),
        key=lambda found: (SEVERITIES.index(found.severity), found.place, found.name, found.message),
    )
