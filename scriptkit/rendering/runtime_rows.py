"""Where things fall on the clock, and what to cut, as plain rows."""

from __future__ import annotations

from scriptkit.model.fitting import Bearings, Cut, Fit, Landing, Still
from scriptkit.model.taking import KeptRecording
from scriptkit.rendering.rows import Row
from scriptkit.times import thousandths


def recorded(kept: KeptRecording | None) -> float | None:
    """Seconds of the recording that builds go by; None where there is none."""
    return None if kept is None or kept.length is None else thousandths(kept.length)


def bearings(found: Bearings) -> Row:
    """The sponsor's passage, the longest still picture, promises, and segments out of proportion."""
    sponsor = [_landing(one) for one in found.sponsor]
    return {
        "sponsor": sponsor[0] if sponsor else None,
        "more_of_sponsor": sponsor[1:],
        "longest_still": _still(found.still) if found.still else None,
        "promises": [
            {
                "id": one.id,
                "text": one.text,
                "made_s": [thousandths(at) for at in one.made],
                "paid_s": [thousandths(at) for at in one.paid],
            }
            for one in found.promises
        ],
        "out_of_proportion": [
            {
                "segment": one.segment,
                "total_s": thousandths(one.total),
                "against": one.than,
                "against_s": thousandths(one.limit),
            }
            for one in found.outweighs
        ],
    }


def _landing(one: Landing) -> Row:
    return {
        "segment": one.segment,
        "start_s": thousandths(one.start),
        "end_s": thousandths(one.end),
        "share": round(one.start / one.total, 3) if one.total else 0.0,
        "after_s": None if one.after is None else thousandths(one.after),
        "before_s": None if one.before is None else thousandths(one.before),
    }


def _still(one: Still) -> Row:
    return {
        "segment": one.segment,
        "start_s": thousandths(one.start),
        "end_s": thousandths(one.end),
        "duration_s": thousandths(one.end - one.start),
        "seen": one.seen,
    }


def fit(found: Fit) -> Row:
    """What to cut, what may not go although it is marked, and the totals before and after."""
    return {
        "fit": {
            "wanted_s": thousandths(found.wanted),
            "before_s": thousandths(found.before),
            "after_s": thousandths(found.after),
            "saved_s": thousandths(found.before - found.after),
            "reached": found.reached,
            "pace_needed": found.pace,
            "exact": found.exact,
            "new_warnings": list(found.news),
            "may_not_go": [{**_passage(one), "why": one.keeps} for one in found.kept],
        },
        "cuts": [
            {**_passage(one), "saves_s": thousandths(one.saves), "breaks": list(one.breaks)} for one in found.cuts
        ],
    }


def _passage(one: Cut) -> Row:
    return {
        "segment": one.segment,
        "file": one.place.file,
        "line": one.place.line,
        "last_line": one.lines[1] if one.lines else one.place.line,
        "what": "paragraph" if one.lines else "segment",
        "optional": one.number,
        "words": one.words,
    }
