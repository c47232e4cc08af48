"""What is other in a script after a cut: what is heard and seen of each segment, and what a check then finds."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence

from scriptkit.findings import Finding
from scriptkit.model import Mark, Segment


def heard(segment: Segment) -> tuple[object, ...]:
    """What is heard and seen of a segment: its sentences and marks in their order, wherever they are written."""
    return (
        segment.id,
        tuple(tuple((one.text, _marks(one.cues)) for one in part.sentences) for part in segment.paragraphs),
        tuple(_marks(part.loose) for part in segment.paragraphs),
    )


def _marks(cues: Sequence[tuple[int, Mark]]) -> tuple[tuple[int, str], ...]:
    return tuple((offset, mark.raw) for offset, mark in cues)


def changed(before: Sequence[Segment], after: Sequence[Segment]) -> frozenset[str]:
    """The segments that are there before and after, and say something else, as a drafted recap does."""
    was = {one.id: one for one in before}
    return frozenset(one.id for one in after if one.id in was and heard(one) != heard(was[one.id]))


def new_findings(before: Sequence[Finding], after: Sequence[Finding]) -> list[Finding]:
    """Open findings that were not there before, whatever times and counts they tell."""
    known = Counter(_key(one) for one in before if not one.allowed)
    new = []
    for one in after:
        if one.allowed:
            continue
        if known[_key(one)] <= 0:
            new.append(one)
        known[_key(one)] -= 1
    return new


def _key(one: Finding) -> tuple[str, str]:
    return one.name, re.sub(r"\d+", "", one.message)
