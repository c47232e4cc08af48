"""The picture of the grades: each exercise on the checklist's scale, with the edges of the grades and its reach."""

from __future__ import annotations

from typing import Any

from scriptkit.model import Facts
from scriptkit.rendering import grade_rows, grade_words
from scriptkit.rendering.pictures import cut, xml_text

Row = dict[str, Any]
WIDTH, LEFT, RIGHT = 400, 8, 392  # units of the drawing; small enough for a telephone to show it full size
HEAD, ROW, FOOT = 62, 36, 8
REACH = 2  # standard deviations of the score that the thin line goes either way
_NARROW = 15  # units below which the name of a grade finds no room between its edges


def grades(facts: Facts) -> Row | None:
    """The picture, best score first; None where there is nothing to draw."""
    rows = [row for row in grade_rows.ranked(facts) if row["score_low"] is not None]
    checklist = grade_rows.checklist(facts)
    if not rows or checklist is None:
        return None
    low, high = checklist["scale"]
    axis = _Axis(low, high)
    bottom = HEAD + ROW * len(rows)
    return {
        "width": WIDTH,
        "height": bottom + FOOT,
        "left": LEFT,
        "right": RIGHT,
        "top": HEAD - 20,
        "bottom": bottom,
        "title": xml_text(facts.episode.title or "Untitled episode"),
        "low": grade_words.number(low),
        "high": grade_words.number(high),
        "edges": _edges(facts, axis, low, high),
        "rows": [_row(row, number, axis, facts) for number, row in enumerate(rows)],
        "any_range": any(row["score_low"] < row["score_high"] for row in rows),
        "any_override": any(not row["agrees"] for row in rows),
    }


class _Axis:
    """Scores to units of the drawing."""

    def __init__(self, low: float, high: float) -> None:
        self.low, self.span = low, (high - low) or 1.0

    def x(self, score: float) -> float:
        share = min(1.0, max(0.0, (score - self.low) / self.span))
        return round(LEFT + (RIGHT - LEFT) * share, 1)


def _edges(facts: Facts, axis: _Axis, low: float, high: float) -> list[Row]:
    """Where each grade begins, with its name in the middle of its band where there is room."""
    found, end = [], high
    for name, lowest in facts.bands:
        least = max(low, lowest)
        if least >= end:
            continue
        width = axis.x(end) - axis.x(least)
        shown = xml_text(name) if len(name) * 7 < width and width >= _NARROW else ""
        found.append({"x": axis.x(least), "name": shown, "name_x": round((axis.x(end) + axis.x(least)) / 2, 1)})
        end = least
    return found


def _row(row: Row, number: int, axis: _Axis, facts: Facts) -> Row:
    y = HEAD + ROW * number
    full = xml_text(row["name"])
    earned = grade_words.earned(row)
    grade = row["grade"] or earned or "no grade"
    if row["capped"] and row["agrees"]:
        grade += ", capped"
    score = grade_words.score(row, facts) if row["score"] is not None else _span(row)
    figures = f"{score}, {grade}" if row["agrees"] else f"{score} earns {earned}, given {grade}"
    reach = REACH * (row["spread"] or 0.0)
    return {
        "full": full,
        "name": cut(full, figures, RIGHT - LEFT),
        "grade": xml_text(grade),
        "figures": xml_text(figures),
        "label_y": y + 10,
        "line_y": y + 21,
        "x": None if row["score"] is None else axis.x(row["score"]),
        "reach_low": axis.x((row["score"] or 0.0) - reach),
        "reach_high": axis.x((row["score"] or 0.0) + reach),
        "range_low": axis.x(row["score_low"]),
        "range_width": round(axis.x(row["score_high"]) - axis.x(row["score_low"]), 1),
        "given": not row["agrees"],
        "told": _told(row, figures),
    }


def _span(row: Row) -> str:
    return f"{grade_words.number(row['score_low'])} to {grade_words.number(row['score_high'])}"


def _told(row: Row, figures: str) -> str:
    """A row as it is read aloud."""
    told = f"{row['name']}: {figures}"
    if row["firmness"] is not None:
        told += f"; {grade_words.percent(row['firmness'])} of the weightings around the author's keep what it earns"
    return xml_text(told)
