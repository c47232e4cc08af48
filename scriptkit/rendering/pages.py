"""Rows through templates: pages, Markdown script, runtime picture. The only module of its room that knows Jinja."""

from __future__ import annotations

import re
from base64 import b64encode
from collections.abc import Sequence
from hashlib import sha256
from typing import Any

import jinja2

from scriptkit.findings import Finding
from scriptkit.model import Facts
from scriptkit.rendering import (
    columns,
    day_rows,
    grade_pages,
    grade_rows,
    grade_words,
    graphic_rows,
    ledger,
    ledger_tables,
    pictures,
    prompter,
    rows,
    sponsor_rows,
    stages,
)
from scriptkit.shipped import shipped
from scriptkit.times import clock, length
from scriptkit.wording import NO_ADVICE

FilesOf = tuple[str, Sequence[tuple[str, str]]]  # who needs them; the name and the purpose of each
_ENVIRONMENTS: list[jinja2.Environment] = []


def _environment() -> jinja2.Environment:
    if not _ENVIRONMENTS:
        env = jinja2.Environment(
            loader=jinja2.FileSystemLoader(str(shipped("templates"))),
            undefined=jinja2.StrictUndefined,
            autoescape=lambda name: name is None or not name.endswith((".md.j2", ".txt.j2")),  # noqa: S701 - on for pages
            trim_blocks=True,
            lstrip_blocks=True,
            keep_trailing_newline=True,
        )
        env.globals["no_advice"] = NO_ADVICE
        env.filters["clock"] = clock
        env.filters["seconds"] = pictures.seconds
        env.filters["tenths"] = "{:.1f}".format  # of what was worked out, so that figures below each other agree
        env.filters["digest"] = _digest
        env.filters["hours"] = length
        env.filters["markdown"] = _markdown
        env.filters["nothing"] = ledger_tables.nothing
        env.filters["percent"] = lambda share: _kept_together(grade_words.percent(share))
        env.filters["nbsp"] = _kept_together
        env.filters["number"] = grade_words.number
        _ENVIRONMENTS.append(env)
    return _ENVIRONMENTS[0]


def page(
    template: str,
    facts: Facts,
    found: Sequence[Finding],
    stage: str,
    files: Sequence[FilesOf] = (),
) -> bytes:
    """A template filled with everything pages show. `files`: all outputs, by who needs them."""
    names = _names(facts, found, stage, files)
    if template.startswith(("script.", "index.")):
        two_columns = columns.script(facts, [one for one in found if not one.allowed])
        names |= {"script": two_columns.segments, "elsewhere": two_columns.elsewhere}
    if template.startswith(("claims.", "index.")):
        names |= _ledger(facts, found)
    if template.startswith("index."):
        names["stages"] = stages.stages(facts, found, stage, names["tally"])
    if template.startswith("graphics."):
        names |= {"graphics": graphic_rows.graphics(facts), "look": facts.card_look}
    if template.startswith("sponsor."):
        names["sponsor"] = sponsor_rows.sponsor(facts, found)
    if template.startswith("shoot."):
        names |= day_rows.names(facts)
    if template.startswith(("grades.", "index.")):
        names |= grade_pages.names(facts)
    if template.startswith("prompter."):
        names |= {"read_aloud": prompter.script(facts), "pace": prompter.words_a_minute(facts)}
    return _environment().get_template(template).render(names).encode("utf-8", errors="replace")


def _ledger(facts: Facts, found: Sequence[Finding]) -> dict[str, Any]:
    """What the page of claims and the way in show beside what all pages show."""
    table = ledger.sentences(facts, found)
    return {
        "ledger": table,
        "tally": ledger.tally(table),
        "void": ledger.void(facts),
        "numbers": {row["id"]: row["number"] for row in rows.references(facts)},
        "of_sources": ledger.of_sources(facts, found),
        "of_headlines": ledger.of_headlines(found),
    }


def _clocked(facts: Facts) -> dict[str, list[str]] | None:
    """Where the times are those of a recording, the segments that it has not, or has in other words, by title."""
    one = facts.clocked
    return one and {"stale": list(one.stale), "absent": list(one.absent)}


def _kept_together(words: str) -> str:
    """Figures that stay on one line with their percent sign."""
    return words.replace(" %", "\u00a0%")


def _digest(code: str) -> str:
    """The one script that a page runs, as its policy names it: no other one can run there."""
    return b64encode(sha256(code.encode("utf-8", errors="replace")).digest()).decode()


def _markdown(text: object) -> str:
    """A text on one line that Markdown shows as it is written."""
    return re.sub(r"([\\`*_<\[\]|~#])", r"\\\1", " ".join(str(text).split()))


def _names(facts: Facts, found: Sequence[Finding], stage: str, files: Sequence[FilesOf]) -> dict[str, Any]:
    episode = facts.episode
    return {
        "episode": {
            "title": str(episode.title) or "Untitled episode",
            "question": str(episode.question),
            "audience": str(episode.audience),
            "channel": str(episode.name),
            "publish": str(episode.publish),
        },
        "stage": stage,
        "summary": rows.summary(found),
        "findings": rows.findings(found, facts),
        "runtime": rows.runtime(facts),
        "clocked": _clocked(facts),
        "picture": pictures.runtime(facts),
        "shots": rows.shots(facts),
        "sizes": rows.sizes(facts),
        "titles": {segment.id: segment.title for segment in facts.segments},
        "grades": grade_rows.grades(facts),
        "references": rows.references(facts),
        "corrections": rows.corrections(facts),
        "files": [(who, [{"name": name, "about": about} for name, about in own]) for who, own in files],
        "any_invented": any(source.invented for source in facts.register.values()),
    }
