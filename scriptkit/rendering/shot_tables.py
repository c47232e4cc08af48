"""The shot list as a workbook: one row a shot, what is looked at on the day first."""

from __future__ import annotations

from scriptkit.model import Facts
from scriptkit.rendering import rows, workbooks
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
IN_SIGHT = 2  # the slate and the number stay where they are
PRINTED = 20  # the first columns, up to the one that is ticked off


def xlsx(facts: Facts) -> bytes:
    """shots.xlsx."""
    columns = [workbooks.Column(key, head, width, "@" if key == "done" else "") for key, head, width in COLUMNS]
    title = f"{facts.episode.title or 'Untitled episode'}: shot list"
    look = workbooks.Look(IN_SIGHT, PRINTED)
    return workbooks.workbook("shots", title, columns, [flat(row) for row in rows.shots(facts)], look)


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
    }


def _repetitions(row: Row) -> str:
    if not row["reps"]:
        return ""
    fit = "" if row["reps_fit"] is None or row["reps_fit"] >= row["reps"] else f" ({row['reps_fit'] or 'none'} fit)"
    return f"{row['reps']}{fit}"
