"""The list of files that `build` writes: name, what it is for, and the function that makes it. A new output is one line here."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple

from scriptkit.findings import Finding
from scriptkit.model import Facts
from scriptkit.rendering import pages, rows, sheets


class Output(NamedTuple):
    """One file of a build."""

    name: str
    about: str
    make: Callable[[Facts, Sequence[Finding], str, str], bytes]  # facts, findings, stage, episode name


def _page(template: str) -> Callable[[Facts, Sequence[Finding], str, str], bytes]:
    def make(facts: Facts, found: Sequence[Finding], stage: str, episode: str) -> bytes:
        return pages.page(template, facts, found, stage, [(one.name, one.about) for one in OUTPUTS])

    return make


def _prompter(facts: Facts, found: Sequence[Finding], stage: str, episode: str) -> bytes:
    return ("\n".join(rows.prompter(facts)).strip("\n") + "\n").encode("utf-8")


OUTPUTS: tuple[Output, ...] = (
    Output("index.html", "the way in: what is open, runtime against target, grades", _page("index.html.j2")),
    Output(
        "script.html",
        "the script in two columns: picture and sound, with a running clock and sources",
        _page("script.html.j2"),
    ),
    Output("script.md", "the same script as plain Markdown", _page("script.md.j2")),
    Output("prompter.txt", "what is read aloud and nothing else", _prompter),
    Output("shots.html", "the shot list to look at and to print", _page("shots.html.j2")),
    Output(
        "shots.csv", "the shot list for a spreadsheet", lambda facts, found, stage, episode: sheets.shots_csv(facts)
    ),
    Output(
        "claims.csv",
        "every spoken sentence with its kind and sources, for the fact-checker",
        lambda facts, found, stage, episode: sheets.claims_csv(facts),
    ),
    Output("runtime.svg", "seconds by segment against the target, with ranges", _page("runtime.svg.j2")),
    Output(
        "report.json",
        "all findings and figures, for programs",
        lambda facts, found, stage, episode: sheets.report(facts, found, episode, stage),
    ),
)


def render(facts: Facts, found: Sequence[Finding], stage: str, episode: str) -> dict[str, bytes]:
    """Every file of a build by name. Nothing is written to disk here."""
    return {one.name: one.make(facts, found, stage, episode) for one in OUTPUTS}
