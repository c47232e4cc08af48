"""The shot list as a workbook: one row a shot, what is looked at on the day first."""

from __future__ import annotations

from collections.abc import Sequence

from scriptkit.model import Facts
from scriptkit.rendering import day_rows, rows, workbooks
from scriptkit.rendering.rows import Row
from scriptkit.times import clock

# the key of the row, its head, its width in characters
COLUMNS = (
    ("slate", "slate", 7),
    ("shot", "shot", 5),
    ("start", "clock", 6),
    ("length", "seconds", 8),
    ("framing", "picture", 11),
    ("of", "what is seen", 28),
    ("repetitions", "reps", 8),
    ("place", "place", 16),
    ("kit", "kit", 14),
    ("people", "people", 12),
    ("load", "load", 10),
    ("label", "label", 16),
    ("screen", "on screen", 26),
    ("camera", "camera", 20),
    ("sound", "sound", 7),
    ("takes", "takes", 6),
    ("priority", "priority", 8),
    ("safety", "safety", 18),
    ("note", "note", 18),
    ("done", "done", 6),
    ("wear", "clothes", 12),
    ("segment", "segment", 14),
    ("sources", "sources", 16),
)
DAY_COLUMNS = (
    ("day", "time of day", 8),
    ("position", "order", 6),
    ("changed", "to change", 12),
    ("set_up", "set-up min", 7),
    ("rest", "rest min", 6),
)
IN_SIGHT = 2  # the slate and the number stay where they are
PRINTED = 20  # the first columns, up to the one that is ticked off


def xlsx(facts: Facts) -> bytes:
    """shots.xlsx."""
    return _book(facts, "shot list", COLUMNS, rows.shots(facts))


def day_xlsx(facts: Facts) -> bytes:
    """shoot.xlsx: the same shots in shooting order, with the clock of the day before them."""
    return _book(facts, "shooting order", (*DAY_COLUMNS, *COLUMNS), day_rows.shots(facts))


def _book(facts: Facts, name: str, heads: Sequence[tuple[str, str, int]], table: Sequence[Row]) -> bytes:
    columns = [workbooks.Column(key, head, width, "@" if key == "done" else "") for key, head, width in heads]
    title = f"{facts.episode.title or 'Untitled episode'}: {name}"
    look = workbooks.Look(len(heads) - len(COLUMNS) + IN_SIGHT, len(heads) - len(COLUMNS) + PRINTED)
    return workbooks.workbook(name, title, columns, [flat(row) for row in table], look)


def flat(row: Row) -> Row:
    """A shot with every cell a text, a number or a list of texts."""
    form = {"fault": "fault", "correct": "correct form"}.get(row["form"], "")
    framing = " ".join(part for part in (row["size"], row["plane"], row["phase"]) if part)
    camera = [f"{name} {row[name]}" for name in ("angle", "move", "lens", "fps", "shutter", "tempo") if row[name]]
    return {
        **row,
        "slate": f"{row['scene']}{row['setup']}",
        "start": "" if row["start_s"] is None else clock(row["start_s"]),
        "length": None if row["duration_s"] is None else round(row["duration_s"], 1),
        "framing": [part for part in (framing, form) if part],
        "repetitions": _repetitions(row),
        "camera": camera,
        "day": "dropped" if row.get("dropped") else row.get("day"),
        "set_up": _minutes(row.get("setup_s")),
        "rest": _minutes(row.get("rest_s")),
    }


def _repetitions(row: Row) -> str:
    if not row["reps"]:
        return ""
    fit = "" if row["reps_fit"] is None or row["reps_fit"] >= row["reps"] else f" ({row['reps_fit'] or 'none'} fit)"
    return f"{row['reps']}{fit}"


def _minutes(seconds: float | None) -> float | None:
    return round(seconds / 60, 1) if seconds else None
