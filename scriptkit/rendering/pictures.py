"""The numbers of a drawing: where each line and bar of the runtime picture stands, ready for a template."""

from __future__ import annotations

import re
from typing import Any

from scriptkit.model import Facts, TimedSegment, Timeline
from scriptkit.times import clock

Row = dict[str, Any]
WIDTH, LEFT, RIGHT = 400, 6, 394  # units of the drawing; small enough for a telephone to show it full size
HEAD, ROW, FOOT = 58, 31, 26
_STEPS = (1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600)  # seconds between the marks of the axis
_MOST_TICKS = 7
_LETTER = 6.3  # width of a letter of a label, seen in the usual fonts of a screen
_NOT_XML = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")


def seconds(value: float) -> str:
    """Seconds for a label: whole ones without decimals, others with one."""
    text = f"{value:.1f}"
    return text.removesuffix(".0")


def standing(facts: Facts) -> Row:
    """The runtime against its target: `way` is none (no target), inside, over or under; `by` and the rest as m:ss."""
    line, wanted = facts.timeline, facts.episode.runtime
    leeway = _leeway(facts)
    over = 0.0 if wanted.target is None else line.total - wanted.target
    way = (
        "none"
        if wanted.target is None
        else "inside"
        if abs(over) <= leeway + 0.0005
        else "over"
        if over > 0
        else "under"
    )
    return {
        "way": way,
        "by": clock(abs(over)),
        "total": clock(line.total),
        "low": clock(line.low),
        "high": clock(line.high),
        "target": "" if wanted.target is None else clock(wanted.target),
        "leeway": clock(leeway),
    }


def _leeway(facts: Facts) -> float:
    """Seconds that the runtime may be off its target."""
    wanted = facts.episode.runtime
    if wanted.tolerance.seconds is not None:
        return wanted.tolerance.seconds
    return (wanted.tolerance.share or 0.0) * (wanted.target or 0.0)


def runtime(facts: Facts) -> Row:
    """The runtime picture: a row for each segment and one for the whole, on one time axis from left to right."""
    line, target = facts.timeline, facts.episode.runtime.target
    most = max(line.high, line.total, (target or 0.0) + _leeway(facts), 1.0)
    axis = _Axis(most)
    rows = [_whole(facts, axis)]
    for number, (segment, one) in enumerate(zip(facts.segments, line.segments, strict=True), 1):
        figures = _figures(one, facts)
        bar = _bar(axis, number, one.start, one.total, one.low, one.high)
        bar["silent_x"] = bar["x"]  # at the start, where the range does not cover it
        bar["silent_width"] = round(axis.x(one.start + one.silent) - bar["x"], 1)
        rows.append({**bar, **_label(segment.title, figures), "start": clock(one.start), "silent": seconds(one.silent)})
    bottom = HEAD + ROW * len(rows)
    return {
        "width": WIDTH,
        "height": bottom + FOOT,
        "left": LEFT,
        "right": RIGHT,
        "top": HEAD - 8,
        "bottom": bottom,
        "depth": bottom - HEAD + 8,
        "tick_y": bottom + 15,
        "rows": rows,
        "ticks": axis.ticks(),
        "target": _target(facts, axis),
        "standing": standing(facts),
        "title": xml_text(facts.episode.title or "Untitled episode"),
        "any_silent": any(one.silent > 0 for one in line.segments),
    }


class _Axis:
    """Seconds to units of the drawing."""

    def __init__(self, most: float) -> None:
        self.most = most

    def x(self, at: float) -> float:
        return round(LEFT + (RIGHT - LEFT) * min(max(at, 0.0), self.most) / self.most, 1)

    def ticks(self) -> list[Row]:
        step = next((one for one in _STEPS if self.most / one <= _MOST_TICKS), self.most / _MOST_TICKS)
        places = [number * step for number in range(int(self.most / step) + 1)]
        return [{"x": self.x(at), "text": clock(at), "anchor": self.anchor(at)} for at in places]

    def anchor(self, at: float) -> str:
        """At which end a label at this time is held, so that it stays in the drawing."""
        share = at / self.most
        return "start" if share < 0.06 else "end" if share > 0.94 else "middle"


def _bar(axis: _Axis, number: int, start: float, total: float, low: float, high: float) -> Row:
    x, y = axis.x(start), HEAD + ROW * number
    return {
        "y": y,
        "label_y": y + 10,
        "bar_y": y + 15,
        "silent_y": y + 15.5,
        "range_y": y + 15.5,
        "x": x,
        "width": max(0.8, round(axis.x(start + total) - x, 1)),
        "low_x": axis.x(start + low),
        "high_x": axis.x(start + high),
    }


def _figures(one: Timeline | TimedSegment, facts: Facts) -> str:
    """How long something lasts; as it was recorded there is no range."""
    return clock(one.total) + ("" if facts.clocked else f" ({clock(one.low)} to {clock(one.high)})")


def _whole(facts: Facts, axis: _Axis) -> Row:
    line = facts.timeline
    bar = _bar(axis, 0, 0.0, line.total, line.low, line.high)
    return {
        **bar,
        **_label("Whole episode", _figures(line, facts)),
        "start": "0:00",
        "silent_x": bar["x"],
        "silent_width": 0.0,
        "silent": "0",
    }


def _label(title: str, figures: str) -> Row:
    """A title cut to the room that the figures leave beside it; `full` is the whole of it."""
    full = xml_text(title)
    return {"title": cut(full, figures, RIGHT - LEFT), "full": full, "figures": figures}


def cut(title: str, figures: str, width: float) -> str:
    """A title cut to the room that the figures beside it leave in a line `width` units long."""
    room = max(6, int(width / _LETTER - len(figures) - 2))
    return title if len(title) <= room else title[: room - 1].rstrip() + "\u2026"


def _target(facts: Facts, axis: _Axis) -> Row | None:
    target = facts.episode.runtime.target
    if target is None:
        return None
    low, high = axis.x(target - _leeway(facts)), axis.x(target + _leeway(facts))
    return {
        "x": axis.x(target),
        "low_x": low,
        "width": round(high - low, 1),
        "text": f"target {clock(target)}",
        "anchor": axis.anchor(target),
        "top": HEAD - 14,
        "name_y": HEAD - 18,
    }


def xml_text(text: object) -> str:
    """Words that an XML file may hold, on one line."""
    return " ".join(_NOT_XML.sub("\ufffd", str(text)).split())
