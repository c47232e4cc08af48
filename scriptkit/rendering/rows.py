"""Facts and findings to plain rows: what tables, pages and JSON show. No new facts, no decisions about content."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any
from urllib.parse import quote

from scriptkit.findings import Finding
from scriptkit.model import Facts, PlannedShot, Sentence, Source
from scriptkit.times import thousandths

Row = dict[str, Any]
KIND_TITLES = {
    "opening": "Opening",
    "checklist": "Checklist",
    "group": "Group",
    "verdict": "Exercise",
    "sponsor": "Sponsor",
    "caution": "Caution",
    "recap": "Recap",
    "close": "Close",
    "talk": "Talk",
}


def kind_title(kind: str) -> str:
    """What a kind of segment is called on a page."""
    return KIND_TITLES.get(kind, kind.capitalize())


SIZE_NAMES = {
    "ELS": "extreme long shot",
    "LS": "long shot",
    "FS": "full shot",
    "MLS": "medium long shot",
    "MS": "medium shot",
    "MCU": "medium close-up",
    "CU": "close-up",
    "BCU": "big close-up",
    "ECU": "extreme close-up",
    "INS": "insert",
    "2S": "two-shot",
    "OTS": "over the shoulder",
    "POV": "point of view",
}


def findings(found: Sequence[Finding], facts: Facts | None = None) -> list[Row]:
    """Findings with the author's line; `allowed` is the reason an allow-comment gives, empty where there is none."""
    rows = []
    for one in found:
        file = facts.files.get(one.place.file) if facts else None
        rows.append(
            {
                "name": one.name,
                "severity": one.severity,
                "file": one.place.file,
                "line": one.place.line,
                "column": one.place.column,
                "message": one.message,
                "help": one.help,
                "stage": one.stage,
                "allowed": one.allowed,
                "protects": one.protects,
                "quote": file.excerpt(one.place) if file else "",
            }
        )
    return rows


def summary(found: Sequence[Finding]) -> Row:
    """How many errors, warnings and notes are open; those allowed are counted apart."""
    counts: Row = {"errors": 0, "warnings": 0, "notes": 0, "allowed": 0}
    for one in found:
        counts["allowed" if one.allowed else one.severity + "s"] += 1
    return counts


def owned(sentence: Sentence) -> list[str]:
    """What the author said of the sentence by marks."""
    known = (
        ("opinion", sentence.opinion),
        ("aside", sentence.aside),
        ("sponsor says", sentence.sponsor_says),
        ("override", sentence.override),
    )
    return [name for name, is_so in known if is_so] + [f"caution {tag}" for tag in sentence.cautions]


def runtime(facts: Facts) -> Row:
    """Seconds by segment and the whole."""
    line = facts.timeline
    return {
        "pace": round(line.pace, 1) if line.pace % 1 else int(line.pace),
        "pace_from": line.pace_from,
        "target_s": None if line.target is None else thousandths(line.target),
        "total_s": thousandths(line.total),
        "low_s": thousandths(line.low),
        "high_s": thousandths(line.high),
        "segments": [
            {
                "id": one.id,
                "kind": one.kind,
                "title": segment.title,
                "start_s": thousandths(one.start),
                "spoken_s": thousandths(one.spoken),
                "silent_s": thousandths(one.silent),
                "total_s": thousandths(one.total),
                "low_s": thousandths(one.low),
                "high_s": thousandths(one.high),
                "words": one.words,
            }
            for segment, one in zip(facts.segments, line.segments, strict=True)
        ],
        "cuts": [],
    }


def shots(facts: Facts) -> list[Row]:
    """The shot list in script order."""
    return [planned(one) for one in facts.shots]


def sizes(facts: Facts) -> list[Row]:
    """The sizes of the shot list with their names, widest first."""
    used = {one.shot.size for one in facts.shots}
    return [{"size": size, "name": name} for size, name in SIZE_NAMES.items() if size in used]


def planned(one: PlannedShot) -> Row:
    """One shot of the list."""
    shot = one.shot
    return {
        "shot": one.number,
        "setup": one.setup,
        "scene": one.scene,
        "segment": one.segment,
        "start_s": None if one.start is None else thousandths(one.start),
        "duration_s": None if one.duration is None else thousandths(one.duration),
        "size": shot.size,
        "plane": shot.plane,
        "form": shot.form,
        "of": shot.of,
        "reps": shot.reps,
        "reps_fit": one.reps_fit,
        "needs_s": None if one.needs is None else thousandths(one.needs),
        "slow": round(one.slow, 3),
        "slow_motion": slow_motion(one),
        "place": shot.place,
        "kit": list(shot.kit),
        "screen": list(one.cards),
        "sources": list(one.sources),
        "phase": shot.phase,
        "label": shot.label,
        "angle": shot.angle,
        "move": shot.move,
        "lens": shot.lens,
        "fps": shot.fps,
        "shutter": shot.shutter,
        "sound": shot.sound,
        "tempo": shot.tempo,
        "people": list(shot.people),
        "wear": shot.wear,
        "load": shot.load,
        "priority": shot.priority,
        "takes": shot.takes,
        "minutes": shot.minutes,
        "safety": shot.safety,
        "note": shot.note,
    }


def slow_motion(one: PlannedShot) -> str:
    """How much slower a shot is seen than it was filmed, and how long it is filmed; empty where it is not slowed."""
    if one.slow <= 1:
        return ""
    seen = max(one.duration or 0.0, one.needs or 0.0)
    lengths = f": film about {seen / one.slow:.0f} s for {seen:.0f} s" if seen else ""
    return f"{one.slow:.3g}× slow{lengths}"


def references(facts: Facts) -> list[Row]:
    """Sources in the order they are first spoken, numbered from 1."""
    made = []
    for one in facts.publication.references:
        source = facts.register[one.id]
        made.append(
            {
                "number": one.number,
                "id": one.id,
                "title": str(source.title),
                "authors": [str(author) for author in source.authors],
                "year": str(source.year),
                "journal": str(source.journal),
                "doi": str(source.doi),
                "url": str(source.url),
                "design": str(source.design),
                "n": source.n,
                "status": str(source.status),
                "invented": source.invented,
                "href": _address(source),
                "reference": one.text,
            }
        )
    return made


def corrections(facts: Facts) -> list[Row]:
    """The errata of the outline, in its order, with the segment that each is about."""
    return [
        {
            "was": str(one.erratum.was),
            "now": str(one.erratum.now),
            "why": str(one.erratum.why),
            "where": str(one.erratum.where),
            "since": str(one.erratum.since),
            "segment": one.segment,
            "title": one.title,
            "start_s": None if one.start is None else thousandths(one.start),
        }
        for one in facts.publication.corrections
    ]


def publication(facts: Facts) -> Row:
    """Chapters, and how the description came out."""
    made = facts.publication
    return {
        "chapters": [{"start_s": thousandths(one.start), "title": one.title} for one in made.chapters],
        "description_bytes": made.size,
        "shortened": list(made.steps),
        "references_listed": made.listed,
    }


def _address(source: Source) -> str:
    """Where a browser finds a source; empty where that is not known, or where the address is not of the web."""
    if source.doi:
        return "https://doi.org/" + quote(str(source.doi), safe="/:;()", errors="replace")
    return str(source.url) if source.url.lower().startswith(("https://", "http://")) else ""


def prompter(facts: Facts) -> Iterator[str]:
    """What is read aloud and nothing else: a sentence a line, space between paragraphs, more between segments."""
    for number, segment in enumerate(facts.segments):
        paragraphs = [paragraph for paragraph in segment.paragraphs if paragraph.sentences]
        if number and paragraphs:
            yield ""
        for paragraph in paragraphs:
            for sentence in paragraph.sentences:
                yield sentence.text
            yield ""
