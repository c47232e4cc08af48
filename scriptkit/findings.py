"""Findings: what is wrong, where, how much it matters, by when, and what to do; and the kinds they come in."""

import inspect
import re
from collections.abc import Callable, Iterable
from typing import Any, NamedTuple

from scriptkit.places import Place

SEVERITIES = ("error", "warning", "note")
STAGES = ("draft", "record", "publish")


class Kind(NamedTuple):
    """A kind of finding: `severity` is what it is at its `stage` and after; before that it is a note.

    `protects` is true where a viewer's health or an undisclosed interest is at stake: such a finding stays in sight
    when it is allowed. `maker` is the function whose docstring explains the kind, with a bad and a good example.
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
    r"""An example episode in an explanation: file name to text.

    `sizes` are the bytes of files that stand for any file of that size. In a text, `\t`, `\x07` and `\xff` stand for
    a tab, a control character and a byte that is no text, which an explanation could not show.
    """

    files: dict[str, str]
    sizes: dict[str, int]

    def on_disk(self) -> dict[str, bytes]:
        """The files as they would stand in a folder."""
        made = {name: text.encode() for name, text in self.files.items()}
        for shown, meant in ((rb"\t", b"\t"), (rb"\x07", b"\x07"), (rb"\xff", b"\xff")):
            made = {name: data.replace(shown, meant) for name, data in made.items()}
        return {name: data.ljust(self.sizes.get(name, 0), b"\n") for name, data in made.items()}


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
    return Explanation(summary.strip(), text.strip(), _example(bad), _example(good))


def _example(text: str) -> Example:
    """An outline, or several files, each under a line `--- NAME`; `--- NAME of N bytes` is any file of that size."""
    files: dict[str, list[str]] = {}
    sizes: dict[str, int] = {}
    name = "outline.yaml"
    for written in inspect.cleandoc("\n" + text).split("\n"):
        line = written
        header = re.fullmatch(r"--- (\S+)(?: of (\d+) bytes)?", line)
        if header:
            name = header[1]
            if header[2]:
                sizes[name] = int(header[2])
            line = f"# {header[2]} bytes of anything" if header[2] else ""
        files.setdefault(name, []).append(line)
    told = {name: "\n".join(lines).strip("\n") + "\n" for name, lines in files.items() if "".join(lines).strip()}
    return Example(told, sizes)


def at_stage(findings: Iterable[Finding], stage: str) -> list[Finding]:
    """The findings as they stand at `stage`: what only a later stage demands is a note.

    What is no more than a note when the episode comes out is not told before.
    """
    reached = STAGES.index(stage)
    return [
        found if STAGES.index(found.stage) <= reached else found._replace(severity="note")
        for found in findings
        if STAGES.index(found.stage) <= reached or (found.severity, found.stage) != ("note", "publish")
    ]


def most_urgent_first(findings: Iterable[Finding]) -> list[Finding]:
    """Errors, warnings, notes; within each by place. Equal findings are given once."""
    return sorted(
        dict.fromkeys(findings),
        key=lambda found: (SEVERITIES.index(found.severity), found.place, found.name, found.message),
    )
