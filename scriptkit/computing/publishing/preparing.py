"""All that is published beside the video, from one set of facts."""

from __future__ import annotations

from scriptkit.computing.publishing.chapters import chapters
from scriptkit.computing.publishing.citing import references, spoken_sources
from scriptkit.computing.publishing.describing import Parts, describe
from scriptkit.computing.publishing.labelling import labelled
from scriptkit.computing.publishing.pasting import Paste
from scriptkit.model import Facts
from scriptkit.model.publishing import STYLES, Correction, Publication


def prepare(facts: Facts) -> Publication:
    """Chapters, references, corrections and the description by the clock and the running order of the facts."""
    paste = Paste()
    style = facts.episode.references.style or STYLES[0]
    found = chapters(facts.segments, facts.timeline, facts.limits, paste)
    kept = tuple(found) if len(found) >= facts.limits.chapters else ()
    cited = references(spoken_sources(facts.segments, facts.register), facts.register, style, paste)
    corrected = _corrections(facts)
    links = labelled(facts.episode)
    described = describe(facts, Parts(kept, cited, corrected, links, style), paste)
    return Publication(
        chapters=kept,
        parts=len(found),
        references=cited,
        corrections=corrected,
        links=links,
        description=described.text,
        steps=described.steps,
        listed=described.listed,
        replaced=tuple(paste.replaced.values()),
    )


def _corrections(facts: Facts) -> tuple[Correction, ...]:
    if not facts.episode.errata:
        return ()
    from scriptkit.computing.publishing.corrections import corrections  # only a corrected episode needs it

    return corrections(facts.episode, facts.segments, facts.timeline)
