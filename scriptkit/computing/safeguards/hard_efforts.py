"""Finds whether an episode asks for hard efforts and nowhere says by which signs to stop."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from scriptkit.computing.safeguards.phrases import Hit, denied, spots
from scriptkit.computing.safeguards.watching import Lists, Seen
from scriptkit.model import Risk

if TYPE_CHECKING:
    from scriptkit.computing.safeguards.guarding import Script


def find(script: Script, seen: Sequence[Seen], lists: Lists) -> list[Risk]:
    """The first hard effort, where nobody says the signs to stop; else nothing."""
    first = _by_words(seen, lists) or _by_tag(script)
    return [] if first is None or _stop_signs_said(seen, lists) else [first]


def _by_tag(script: Script) -> Risk | None:
    tags = set(script.words.get("hard-efforts", ()))
    for segment in script.segments:
        exercise = script.episode.exercises.get(segment.exercise) if segment.exercise else None
        for tag in exercise.cautions if exercise else ():
            if exercise and str(tag) in tags:
                return Risk("hard-tag", segment.id, exercise.at.of("cautions"), str(tag), exercise.name)
    return None


def _by_words(seen: Sequence[Seen], lists: Lists) -> Risk | None:
    for row in seen:
        for hit in row.of("hard-efforts"):
            if row.judgement.kind == "instruction" and _is_asked(row, hit, lists):
                return row.risk("hard-effort", hit)
    return None


def _is_asked(row: Seen, hit: Hit, lists: Lists) -> bool:
    """Whether an effort is commanded, and neither denied nor left to a clinician ("ask a doctor before you …")."""
    return not denied(row.said, hit, lists["denials"]) and not lists.holds("referrals", row.said)


def _stop_signs_said(seen: Sequence[Seen], lists: Lists) -> bool:
    """Whether a sentence with a sign of an emergency, or one beside it, says to stop."""
    for row in seen:
        if row.of("emergency-signs"):
            near = row.segment.sentences[max(0, row.number - 1) : row.number + 2]
            if any(lists.holds("stopping", spots(one.text)) for one in near):
                return True
    return False
