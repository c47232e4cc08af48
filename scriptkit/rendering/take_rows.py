"""A recording held against the script, as plain rows for programs."""

from __future__ import annotations

from scriptkit.model import Pickup, Take, TakeChange, TakenSegment
from scriptkit.model.taking import KeptChange
from scriptkit.rendering.rows import Row
from scriptkit.times import thousandths


def take(one: Take) -> Row:
    """Times by segment, what differs, worst first, and what to record again."""
    return {
        "pace": one.pace,
        "letters_a_second": one.letters,
        "length_s": thousandths(one.length),
        "wording_compared": one.worded,
        "unclear_lines": one.unclear,
        "fillers": one.fillers if one.worded else None,
        "retakes": one.retakes if one.worded else None,
        "segments": [_segment(segment) for segment in one.segments],
        "changes": [_change(change) for change in one.changes],
        "pickups": [_pickup(pickup) for pickup in one.pickups],
    }


def kept(one: Take) -> Row:
    """What take.json keeps: when each sentence was said, and what the script was."""
    return {
        "about": "Written by scriptkit take, which replaces it: when each sentence was said, and what was otherwise.",
        "length": thousandths(one.length),
        "sentences": [
            {
                "segment": heard.segment,
                "key": heard.key,
                "start": thousandths(heard.start),
                "end": thousandths(heard.end),
            }
            for heard in one.sentences
        ],
        "ad_libs": [
            {
                "segment": said.segment,
                "after": said.after,
                "text": said.text,
                "start": _seconds(said.start),
                "end": _seconds(said.end),
            }
            for said in one.ad_libs
        ],
        "changes": [_kept_change(change) for change in one.unmended],
        "script": [{"segment": part.segment, "keys": list(part.keys)} for part in one.script],
    }


def _kept_change(one: KeptChange) -> Row:
    row = {"segment": one.segment, "key": one.key, "weight": one.weight, "kind": one.kind, "what": one.what}
    return (
        row
        | ({} if one.start is None else {"start": thousandths(one.start)})
        | ({"said": one.said} if one.said else {})
    )


def _segment(one: TakenSegment) -> Row:
    return {
        "id": one.id,
        "planned_s": thousandths(one.planned),
        "start_s": _seconds(one.start),
        "end_s": _seconds(one.end),
        "state": one.state,
    }


def _change(one: TakeChange) -> Row:
    return {
        "class": one.weight,
        "kind": one.kind,
        "what": one.what,
        "at_s": _seconds(one.at),
        "segment": one.segment,
        "file": one.place.file,
        "line": one.place.line,
        "script": one.script,
        "said": one.said,
    }


def _pickup(one: Pickup) -> Row:
    return {
        "setup": one.setup,
        "segment": one.segment,
        "file": one.place.file,
        "line": one.place.line,
        "text": one.line,
        "why": one.why,
    }


def _seconds(value: float | None) -> float | None:
    return None if value is None else thousandths(value)
