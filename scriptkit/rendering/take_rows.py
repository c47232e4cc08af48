"""A recording held against the script, as plain rows for programs."""

from __future__ import annotations

from scriptkit.model import Take
from scriptkit.rendering.rows import Row
from scriptkit.times import thousandths


def take(one: Take) -> Row:
    """Times by segment, what differs, worst first, and what to record again."""
    return {
        "pace": one.pace,
        "length_s": thousandths(one.length),
        "fillers": one.fillers,
        "retakes": one.retakes,
        "segments": [
            {
                "id": segment.id,
                "planned_s": thousandths(segment.planned),
                "start_s": _seconds(segment.start),
                "end_s": _seconds(segment.end),
                "state": segment.state,
            }
            for segment in one.segments
        ],
        "changes": [
            {
                "class": change.weight,
                "kind": change.kind,
                "what": change.what,
                "at_s": _seconds(change.at),
                "segment": change.segment,
                "file": change.place.file,
                "line": change.place.line,
                "script": change.script,
                "said": change.said,
            }
            for change in one.changes
        ],
        "pickups": [
            {
                "setup": pickup.setup,
                "segment": pickup.segment,
                "file": pickup.place.file,
                "line": pickup.place.line,
                "text": pickup.line,
                "why": pickup.why,
            }
            for pickup in one.pickups
        ],
    }


def _seconds(value: float | None) -> float | None:
    return None if value is None else thousandths(value)
