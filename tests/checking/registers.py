"""Small registers worked out: an episode whose one claim rests on the source `a`."""

from __future__ import annotations

from scriptkit.model import Facts
from tests.scripts import Write, worked_out

WHOLE = "title: Six weeks of timed hangs, year: 2022, doi: 10.5555/grip.22, design: randomised trial, n: 38, "
WHOLE += "duration_weeks: 6, findings: {hang: {outcome: hang time, result: 22 percent}}, invented: true"


def with_sources(episode: Write, *lines: str, more: str = "", **files: str) -> Facts:
    """The episode with these lines under `sources:`; `more` keys, and files beside it (`_` for the dot of a name)."""
    outline = [
        "title: One",
        "exercises: {hang: {name: Bar hang, claims: [{say: In one trial hang time rose., source: a}]}}",
        *([more] if more else []),
        *(["sources:", *(f"  {line}" for line in lines)] if lines else []),
    ]
    beside = {name.replace("_", "."): text.encode() for name, text in files.items()}
    return worked_out(episode({"outline.yaml": ("\n".join(outline) + "\n").encode(), **beside}))
