"""The files that `build` writes: name, purpose, and the function that makes it; a new one is one line here."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple

from scriptkit.findings import Finding
from scriptkit.model import Facts
from scriptkit.rendering import captions, edl, fcpxml, graphic_rows, otio, pages, publishing, rows, sheets
from scriptkit.rendering.cut import cut


class Asked(NamedTuple):
    """What an output is made from. `stage` is the one the findings stand at, `episode` the name of its folder.

    `crlf`: the lines of captions.srt end in CR LF.
    """

    facts: Facts
    found: Sequence[Finding]
    stage: str
    episode: str
    crlf: bool = False


Maker = Callable[[Asked], bytes]


class Output(NamedTuple):
    """One file of a build."""

    name: str
    about: str
    make: Maker


def _page(template: str) -> Maker:
    def make(asked: Asked) -> bytes:
        told = {CAPTIONS: captions.remark(asked.facts.captions), **publishing.remarks(asked.facts)}
        listed = [(who, [(one.name, one.about + told.get(one.name, "")) for one in own]) for who, own in GROUPS]
        return pages.page(template, asked.facts, asked.found, asked.stage, listed)

    return make


def _prompter(asked: Asked) -> bytes:
    return ("\n".join(rows.prompter(asked.facts)).strip("\n") + "\n").encode(errors="replace")


def _report(asked: Asked) -> bytes:
    return sheets.report(asked.facts, asked.found, asked.episode, asked.stage)


CAPTIONS = "captions.vtt"
GROUPS: tuple[tuple[str, tuple[Output, ...]], ...] = (
    (
        "Where it stands",
        (
            Output("index.html", "the way in: what is open, runtime against target, grades", _page("index.html.j2")),
            Output("runtime.svg", "seconds by segment against the target, with ranges", _page("runtime.svg.j2")),
            Output("report.json", "all findings and figures, for programs", _report),
        ),
    ),
    (
        "To speak",
        (
            Output(
                "script.html",
                "the script in two columns, picture and sound, with a running clock",
                _page("script.html.j2"),
            ),
            Output("script.md", "the same script as plain Markdown", _page("script.md.j2")),
            Output(
                "prompter.html",
                "the same in large letters, moved by the clock, with holds and pauses",
                _page("prompter.html.j2"),
            ),
            Output("prompter.txt", "what is read aloud and nothing else", _prompter),
        ),
    ),
    (
        "To film",
        (
            Output("shots.html", "the shot list to look at and to print", _page("shots.html.j2")),
            Output("shots.csv", "the shot list for a spreadsheet", lambda asked: sheets.shots_csv(asked.facts)),
            Output("shots.xlsx", "the same as a workbook", lambda asked: sheets.shots_xlsx(asked.facts)),
            Output(
                "shoot.html",
                "the day: call sheet, safety lines, the same shots in shooting order",
                _page("shoot.html.j2"),
            ),
            Output("shoot.csv", "the day for a spreadsheet, a row a shot", lambda asked: sheets.shoot_csv(asked.facts)),
            Output("shoot.xlsx", "the same as a workbook", lambda asked: sheets.shoot_xlsx(asked.facts)),
        ),
    ),
    (
        "To cut",
        (
            Output(
                "graphics.html", "every text and card on screen, as it looks, with its times", _page("graphics.html.j2")
            ),
            Output("graphics.csv", "the same for a spreadsheet", lambda asked: sheets.graphics_csv(asked.facts)),
            Output("graphics.xlsx", "the same as a workbook", lambda asked: graphic_rows.xlsx(asked.facts)),
            Output(
                "timeline.otio",
                "the rough cut as OpenTimelineIO: a clip a shot, markers for segments, claims to be sourced and cards",
                lambda asked: otio.otio(cut(asked.facts)),
            ),
            Output(
                "timeline.edl", "the same as an edit decision list, CMX 3600", lambda asked: edl.edl(cut(asked.facts))
            ),
            Output("timeline.fcpxml", "the same as FCPXML 1.9", lambda asked: fcpxml.fcpxml(cut(asked.facts))),
            Output(
                CAPTIONS,
                "captions, timed by the plan or, after a take, by the recording",
                lambda asked: captions.vtt(asked.facts.captions),
            ),
            Output(
                "captions.srt",
                "the same for players and editors that read SubRip",
                lambda asked: captions.srt(asked.facts.captions, crlf=asked.crlf),
            ),
        ),
    ),
    (
        "To check",
        (
            Output(
                "claims.html",
                "the claims ledger: what each claim rests on, how certain it is, how it stands",
                _page("claims.html.j2"),
            ),
            Output(
                "claims.csv",
                "the claims ledger for a spreadsheet, with columns for verdicts",
                lambda asked: sheets.claims_csv(asked.facts, asked.found),
            ),
            Output(
                "claims.xlsx",
                "the same as a workbook, for the fact-checker to fill in",
                lambda asked: sheets.claims_xlsx(asked.facts, asked.found),
            ),
            Output(
                "grades.html",
                "the grades: how each comes about, how firm it is, what would change it",
                _page("grades.html.j2"),
            ),
            Output("grades.svg", "all scores on one scale, with the edges of the grades", _page("grades.svg.j2")),
        ),
    ),
    (
        "To approve",
        (Output("sponsor.html", "the sponsor's passage alone, for approval", _page("sponsor.html.j2")),),
    ),
    (
        "To publish",
        (
            Output(
                "description.txt",
                "the text under the video: disclosure, corrections, chapters, sources, cautions, links",
                lambda asked: publishing.description(asked.facts),
            ),
            Output("chapters.txt", "the chapters alone", lambda asked: publishing.chapters(asked.facts)),
            Output(
                "references.txt",
                "the sources, numbered as they are spoken",
                lambda asked: publishing.references(asked.facts),
            ),
            Output(
                "references.json",
                "the same as CSL-JSON, for reference managers",
                lambda asked: publishing.references_json(asked.facts),
            ),
        ),
    ),
)
OUTPUTS = tuple(one for _, group in GROUPS for one in group)


def render(asked: Asked) -> dict[str, bytes]:
    """Every file of a build by name. Nothing is written to disk here."""
    return {one.name: one.make(asked) for one in OUTPUTS}
