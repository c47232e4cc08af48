"""The sponsor's passage as rows: what is said and shown in it, what was agreed, and which text is to be approved."""

from __future__ import annotations

from collections.abc import Sequence

from scriptkit import keys
from scriptkit.findings import Finding
from scriptkit.model import Agreed, Facts, PlannedShot, Segment, TimedSegment, TimedSentence
from scriptkit.rendering import rows
from scriptkit.rendering.rows import Row, owned
from scriptkit.times import clock

OF_SPONSOR = ("sponsor", "disclosure", "approv", "code", "link", "never", "must-say", "offer", "interest", "unbacked")


def sponsor(facts: Facts, found: Sequence[Finding]) -> Row | None:
    """What the sponsor's page shows; None where the episode has neither a sponsor nor a passage."""
    timed = zip(facts.segments, facts.timeline.segments, strict=True)
    passages = [_passage(facts, at, *pair) for at, pair in enumerate(timed) if pair[0].kind == "sponsor"]
    who = facts.episode.sponsor
    if who is None and not passages:
        return None
    approved = who.approved if who else None
    return {
        "name": str(who.name) if who else "",
        "passages": [one for one in passages if one["lines"]],
        "agreed": [_agreed(one, passages) for one in facts.agreed],
        "claims": [_claim(str(one.say), passages) for one in who.claims] if who else [],
        "never_say": _never_say(facts),
        "runs": _runs(facts),
        "valid": [str(one) for one in who.valid] if who else [],
        "length": _length(facts),
        "window": _window(facts),
        "hash": facts.sponsor_hash,
        "approved": {"by": str(approved.by), "on": str(approved.on), "hash": str(approved.hash)} if approved else None,
        "holds": bool(approved and keys.is_key(str(approved.hash), facts.sponsor_hash)),
        "open": [one for one in found if not one.allowed and _is_of_sponsor(one, facts)],
    }


def _passage(facts: Facts, at: int, segment: Segment, timed: TimedSegment) -> Row:
    total = facts.timeline.total
    cards = [card for card in facts.cards if card.segment == segment.id]
    pictures = [one for one in facts.shots if one.segment == segment.id]
    lines = []
    for number, (sentence, time) in enumerate(zip(segment.sentences, timed.sentences, strict=True)):
        shown = [card.text for card in cards if time.start <= card.start < time.end]
        kept = [one.what for one in facts.agreed if one.said == (segment.id, number)]
        marks = [one for one in owned(sentence) if one != "aside"]
        lines.append(
            {
                "start": time.start,
                "text": sentence.text,
                "screen": shown,
                "seen": [rows.planned(one) for one in pictures if _begins(one, time, first=number == 0)],
                "kept": kept,
                "marks": marks,
                "number": number,
            }
        )
    before = [one for one in facts.segments[:at] if one.sentences]
    behind = [one for one in facts.segments[at + 1 :] if one.sentences]
    return {
        "segment": segment.id,
        "start": timed.start,
        "end": timed.start + timed.total,
        "length": timed.total,
        "low": timed.low,
        "high": timed.high,
        "from": timed.start / total if total else 0.0,
        "to": (timed.start + timed.total) / total if total else 0.0,
        "lines": lines,
        "before": before[-1].sentences[-1].text if before else "",
        "behind": behind[0].sentences[0].text if behind else "",
    }


def _begins(one: PlannedShot, time: TimedSentence, *, first: bool) -> bool:
    """Whether a shot comes into the picture while a sentence is said, or before the first one."""
    return one.start is not None and (first or one.start >= time.start) and one.start < time.end


def _agreed(one: Agreed, passages: Sequence[Row]) -> Row:
    """Something agreed, when it is said, and on which words on screen it stands."""
    starts = {(row["segment"], line["number"]): line["start"] for row in passages for line in row["lines"]}
    return {
        "what": one.what,
        "words": one.words,
        "said": starts.get(one.said) if one.said else None,
        "shown": one.shown,
        "kept": one.said is not None and one.shown is not None,
    }


def _claim(words: str, passages: Sequence[Row]) -> Row:
    """A claim that was agreed, and when it is said in these words."""
    lines = (line for row in passages for line in row["lines"])
    return {"words": words, "said": next((one["start"] for one in lines if one["text"] == words), None)}


def _never_say(facts: Facts) -> list[Row]:
    """Words that were agreed not to be said, and whether they are said or shown."""
    who = facts.episode.sponsor
    said = {str(risk.words) for risk in facts.risks if risk.kind == "never-say"}
    return [{"words": str(one), "said": str(one) in said} for one in who.never_say] if who else []


def _runs(facts: Facts) -> bool | None:
    """Whether the offer runs on the day of publication; None where a day is missing."""
    who, day = facts.episode.sponsor, str(facts.episode.publish)
    if not who or len(who.valid) != 2 or not day:
        return None
    first, last = map(str, who.valid)
    return first[: len(day)] <= day and day[: len(last)] <= last


def _length(facts: Facts) -> str:
    length = facts.episode.sponsor.length if facts.episode.sponsor else None
    if length is None:
        return ""
    parts = (("at least", length.least), ("at most", length.most))
    return ", ".join(f"{word} {value:g} s" for word, value in parts if value is not None)


def _window(facts: Facts) -> str:
    window = facts.episode.sponsor.window if facts.episode.sponsor else None
    if window is None:
        return ""
    total = facts.timeline.total
    parts = (("not before", window.after), ("done by", window.before))
    return ", ".join(f"{word} {clock(extent.of(total))}" for word, extent in parts if extent is not None)


def _is_of_sponsor(one: Finding, facts: Facts) -> bool:
    """Whether a finding is about the sponsor: by its name, or because it stands in the passage's own text."""
    own = {segment.file for segment in facts.segments if segment.kind == "sponsor" and segment.file}
    return one.severity != "note" and (one.place.file in own or any(part in one.name for part in OF_SPONSOR))
