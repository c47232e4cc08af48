"""Facts and findings to plain rows: what tables, pages and JSON show. No new facts, no decisions about content."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from scriptkit.findings import Finding
from scriptkit.model import Card, Facts, Mark, PlannedShot, Segment, Sentence, TimedSegment
from scriptkit.times import clock, thousandths

Row = dict[str, Any]
KIND_TITLES = {
    "opening": "Opening", "checklist": "Checklist", "group": "Group", "verdict": "Exercise", "sponsor": "Sponsor",
    "caution": "Caution", "recap": "Recap", "close": "Close", "talk": "Talk",
}  # fmt: skip


def findings(found: Sequence[Finding], facts: Facts | None = None) -> list[Row]:
    """Findings with the author's line; `allowed` is the reason an allow-comment gives, empty where there is none."""
    rows = []
    for one in found:
        file = facts.files.get(one.place.file) if facts else None
        rows.append(
            {
                "name": one.name, "severity": one.severity, "file": one.place.file, "line": one.place.line, "column": one.place.column,
                "message": one.message, "help": one.help, "stage": one.stage, "allowed": one.allowed, "protects": one.protects,
                "quote": file.line(one.place.line).strip() if file else "",
            }
        )  # fmt: skip
    return rows


def summary(found: Sequence[Finding]) -> Row:
    """How many errors, warnings and notes are open; those allowed are counted apart."""
    counts: Row = {"errors": 0, "warnings": 0, "notes": 0, "allowed": 0}
    for one in found:
        counts["allowed" if one.allowed else one.severity + "s"] += 1
    return counts


def sentences(facts: Facts) -> list[Row]:
    """The claims ledger: every spoken sentence with its kind and what gave it away."""
    rows = []
    for segment, timed in zip(facts.segments, facts.timeline.segments, strict=True):
        judged = facts.judgements[segment.id]
        for sentence, judgement, time in zip(segment.sentences, judged, timed.sentences, strict=True):
            kind = "opinion" if sentence.opinion and judgement.kind == "claim" else judgement.kind
            rows.append(
                {
                    "segment": segment.id, "file": sentence.place.file, "line": sentence.place.line, "text": sentence.text, "kind": kind,
                    "strength": judgement.strength if kind == "claim" else None, "flags": list(judgement.flags),
                    "triggers": list(judgement.triggers), "sources": list(dict.fromkeys(link.id for link in sentence.links)),
                    "certainty": _certainty(facts, sentence), "start_s": thousandths(time.start), "column": sentence.place.column,
                    "marks": _owned(sentence), "numbers": list(judgement.numbers),
                }
            )  # fmt: skip
    return rows


def _owned(sentence: Sentence) -> list[str]:
    """What the author said of the sentence by marks."""
    known = (("opinion", sentence.opinion), ("aside", sentence.aside), ("sponsor says", sentence.sponsor_says), ("override", sentence.override))
    return [name for name, is_so in known if is_so] + [f"caution {tag}" for tag in sentence.cautions]


def _certainty(facts: Facts, sentence: Sentence) -> str | None:
    """The lowest certainty that the register gives for the findings a sentence rests on; None where it gives none."""
    order = ("very low", "low", "moderate", "high")
    given = []
    for link in sentence.links:
        source = facts.register.get(link.id)
        finding = source.findings.get(link.finding) if source and link.finding else None
        if finding and finding.certainty in order:
            given.append(order.index(finding.certainty))
    return order[min(given)] if given else None


def runtime(facts: Facts) -> Row:
    """Seconds by segment and the whole."""
    line = facts.timeline
    return {
        "pace": round(line.pace, 1) if line.pace % 1 else int(line.pace), "pace_from": line.pace_from,
        "target_s": None if line.target is None else thousandths(line.target), "total_s": thousandths(line.total),
        "low_s": thousandths(line.low), "high_s": thousandths(line.high),
        "segments": [
            {
                "id": one.id, "kind": one.kind, "title": segment.title, "start_s": thousandths(one.start), "spoken_s": thousandths(one.spoken),
                "silent_s": thousandths(one.silent), "total_s": thousandths(one.total), "low_s": thousandths(one.low),
                "high_s": thousandths(one.high), "words": one.words,
            }
            for segment, one in zip(facts.segments, line.segments, strict=True)
        ],
        "cuts": [],
    }  # fmt: skip


def shots(facts: Facts) -> list[Row]:
    """The shot list in script order."""
    return [_shot(one) for one in facts.shots]


def _shot(one: PlannedShot) -> Row:
    shot = one.shot
    return {
        "shot": one.number, "setup": one.setup, "segment": one.segment,
        "start_s": None if one.start is None else thousandths(one.start),
        "duration_s": None if one.duration is None else thousandths(one.duration),
        "size": shot.size, "plane": shot.plane, "form": shot.form, "of": shot.of, "reps": shot.reps, "reps_fit": one.reps_fit,
        "place": shot.place, "kit": list(shot.kit), "screen": list(one.cards), "sources": list(one.sources),
        "angle": shot.angle, "move": shot.move, "lens": shot.lens, "fps": shot.fps, "tempo": shot.tempo, "people": list(shot.people),
        "load": shot.load, "priority": shot.priority, "takes": shot.takes, "safety": shot.safety,
    }  # fmt: skip


def grades(facts: Facts) -> list[Row]:
    """The grade of each exercise in running order."""
    made = []
    for segment in facts.segments:
        if segment.exercise:
            graded = facts.grades[segment.exercise]
            made.append(
                {
                    "id": graded.id, "name": str(facts.episode.exercises[segment.exercise].name), "grade": graded.grade, "score": graded.score,
                    "score_low": graded.score_low, "score_high": graded.score_high, "earned": graded.earned, "given": graded.given,
                }
            )  # fmt: skip
    return made


def references(facts: Facts) -> list[Row]:
    """Sources in the order they are first spoken, numbered from 1."""
    used: dict[str, None] = {}
    for segment in facts.segments:
        for sentence in segment.sentences:
            used.update(dict.fromkeys(str(link.id) for link in sentence.links if link.id in facts.register))
    made = []
    for number, name in enumerate(used, 1):
        source = facts.register[name]
        made.append(
            {
                "number": number, "id": name, "title": str(source.title), "authors": [str(author) for author in source.authors],
                "year": str(source.year), "journal": str(source.journal), "doi": str(source.doi), "url": str(source.url),
                "design": str(source.design), "n": source.n, "status": str(source.status), "invented": source.invented,
            }
        )  # fmt: skip
    return made


def script(facts: Facts, found: Sequence[Finding]) -> list[Row]:
    """The script for the page: segments with rows; a row is a stretch of speech under one picture."""
    numbers = {row["id"]: row["number"] for row in references(facts)}
    by_place = _by_line(found)
    shots_by_segment: dict[str, list[PlannedShot]] = {}
    for shot in facts.shots:
        if shot.start is not None:
            shots_by_segment.setdefault(shot.segment, []).append(shot)
    made = []
    for segment, timed in zip(facts.segments, facts.timeline.segments, strict=True):
        own = [card for card in facts.cards if card.segment == segment.id]
        rows = _rows(segment, timed, shots_by_segment.get(segment.id, []), own, numbers, by_place)
        made.append(
            {
                "id": segment.id, "kind": segment.kind, "kind_title": KIND_TITLES[segment.kind], "title": segment.title,
                "drafted": segment.drafted and segment.kind != "talk", "file": segment.file, "optional": segment.optional,
                "start": clock(timed.start), "start_s": thousandths(timed.start), "total": clock(timed.total),
                "low": clock(timed.low), "high": clock(timed.high), "words": timed.words,
                "grade": facts.grades[segment.exercise].grade if segment.exercise else "",
                "findings": findings(by_place.pop((segment.at.place.file, segment.at.place.line), []), facts),
                "rows": rows,
            }
        )  # fmt: skip
    return made


def _by_line(found: Sequence[Finding]) -> dict[tuple[str, int], list[Finding]]:
    by_line: dict[tuple[str, int], list[Finding]] = {}
    for one in found:
        by_line.setdefault((one.place.file, one.place.line), []).append(one)
    return by_line


def _rows(
    segment: Segment, timed: TimedSegment, pictures: list[PlannedShot], cards: list[Card], numbers: Mapping[str, int],
    found: dict[tuple[str, int], list[Finding]],
) -> list[Row]:  # fmt: skip
    rows: list[Row] = []
    number = 0
    drafted_file = segment.at.place.file
    for paragraph in segment.paragraphs:
        first = number
        number += len(paragraph.sentences)
        clocks = timed.sentences[first:number]
        start = clocks[0].start if clocks else _loose_start(paragraph.loose, timed, number)
        end = clocks[-1].end if clocks else start + sum(mark.seconds or 0.0 for _, mark in paragraph.loose)
        marks = [one for one in timed.marks if (first <= one.sentence < number) or (not clocks and one.sentence == number and _in(one.mark, paragraph.loose))]
        rows.append(
            {
                "start": clock(start), "start_s": thousandths(start), "length_s": thousandths(end - start), "optional": paragraph.optional,
                "picture": _picture(pictures, cards, start, end, first_row=not rows),
                "sound": [_spoken(sentence, numbers) for sentence in paragraph.sentences],
                "silences": [{"kind": one.mark.name, "seconds": one.mark.seconds, "text": one.mark.text} for one in marks if one.mark.name in ("pause", "hold")],
                "promises": [{"kind": one.mark.name, "ids": list(one.mark.ids)} for one in marks if one.mark.name in ("promise", "payoff")],
                "findings": findings(_found_in(paragraph.sentences, paragraph.first_line, paragraph.last_line, segment, drafted_file, found)),
            }
        )  # fmt: skip
    return rows


def _in(mark: Mark, loose: Sequence[tuple[int, Mark]]) -> bool:
    return any(one is mark for _, one in loose)


def _loose_start(loose: Sequence[tuple[int, Mark]], timed: TimedSegment, number: int) -> float:
    for one in timed.marks:
        if one.sentence == number and _in(one.mark, loose):
            return one.start
    return timed.start


def _found_in(
    spoken: Sequence[Sentence], first: int, last: int, segment: Segment, drafted_file: str, found: dict[tuple[str, int], list[Finding]]
) -> list[Finding]:
    """The findings of a paragraph, each shown once."""
    if segment.file:
        lines = [(segment.file, line) for line in range(first, last + 1)]
    else:
        lines = list(dict.fromkeys((sentence.place.file, sentence.place.line) for sentence in spoken))
    return [one for line in lines for one in found.pop(line, [])]


def _picture(pictures: list[PlannedShot], cards: list[Card], start: float, end: float, first_row: bool) -> list[Row]:
    """What comes into the picture during a row: new shots and cards with their times."""
    made: list[tuple[float, int, Row]] = []
    for one in pictures:
        at = one.start or 0.0
        if start - 1e-6 <= at < end - 1e-6 or (first_row and at < start):
            made.append((at, 0, {"kind": "shot", "at": clock(at), "number": one.number, "setup": one.setup, "talking": one.talking, **_framing(one)}))
    for card in cards:
        if start - 1e-6 <= card.start < end - 1e-6 or (first_row and card.start < start):
            made.append((card.start, 1, {"kind": "screen", "at": clock(card.start), "seconds": thousandths(card.end - card.start), "text": card.text}))
    return [row for _, _, row in sorted(made, key=lambda one: one[:2])]


def _framing(one: PlannedShot) -> Row:
    shot = one.shot
    return {
        "size": shot.size, "plane": shot.plane, "form": shot.form, "of": shot.of, "reps": shot.reps, "reps_fit": one.reps_fit,
        "place": shot.place, "shot_kit": list(shot.kit), "seconds": None if one.duration is None else thousandths(one.duration),
    }  # fmt: skip


def _spoken(sentence: Sentence, numbers: Mapping[str, int]) -> Row:
    return {
        "text": sentence.text,
        "sources": [{"number": numbers.get(link.id), "id": link.id, "stance": str(link.stance)} for link in sentence.links],
        "marks": _owned(sentence),
        "file": sentence.place.file,
        "line": sentence.place.line,
    }


def prompter(facts: Facts) -> Iterator[str]:
    """What is read aloud and nothing else: a sentence a line, an empty line between paragraphs, two between segments."""
    for number, segment in enumerate(facts.segments):
        paragraphs = [paragraph for paragraph in segment.paragraphs if paragraph.sentences]
        if number and paragraphs:
            yield ""
        for paragraph in paragraphs:
            for sentence in paragraph.sentences:
                yield sentence.text
            yield ""
