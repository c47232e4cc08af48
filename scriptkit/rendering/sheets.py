"""Rows to tables: CSV that a spreadsheet opens, and JSON for programs."""

from __future__ import annotations

import csv
import io
import json
import re
from collections.abc import Sequence
from itertools import islice
from typing import Any

from scriptkit.cells import guarded
from scriptkit.findings import Finding
from scriptkit.model import VERDICTS, Facts
from scriptkit.rendering import captions, day_rows, grade_rows, graphic_rows, ledger, ledger_tables, rows
from scriptkit.rendering.rows import Row
from scriptkit.times import clock

SHOT_COLUMNS = (
    "shot", "scene", "setup", "segment", "start", "start_s", "duration_s", "size", "plane", "form", "phase", "of",
    "reps", "reps_fit", "needs_s", "slow", "label", "place", "kit", "screen", "sources", "angle", "move", "lens",
    "fps", "shutter", "sound", "tempo", "people", "wear", "load", "priority", "takes", "minutes", "safety", "note",
)  # fmt: skip
DAY_COLUMNS = (
    "position", "day", "changed", "day_start_s", "setup_s", "rest_s", "day_ready_s", "day_takes", "take_s",
    "guessed", "rolled_s", "day_end_s", "says", "heavy", "dropped", "would_take_s",
)  # fmt: skip
# signs that turn the text around them or end a line; JSON has a way to write them so that no terminal acts on them
_ACTING = re.compile("[\x7f-\x9f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]")


def to_json(value: Any) -> bytes:
    """JSON in UTF-8, indented, keys as they come."""
    made = bytearray()
    pieces = json.JSONEncoder(ensure_ascii=False, indent=2, allow_nan=False).iterencode(value)
    # some at a time: the pieces of a hundred thousand findings take many times the room of their text
    while some := "".join(islice(pieces, 10_000)):
        made += _ACTING.sub(lambda found: f"\\u{ord(found[0]):04x}", some).encode(errors="replace")
    made += b"\n"
    return bytes(made)


def to_csv(columns: Sequence[str], table: Sequence[Row]) -> bytes:
    """A table with a head, in UTF-8 with a byte-order mark, so that spreadsheets read accents."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(columns)
    for row in table:
        writer.writerow([_cell(row.get(column)) for column in columns])
    return b"\xef\xbb\xbf" + out.getvalue().encode(errors="replace")


def _cell(value: Any) -> str:
    """A value as a spreadsheet reads it; a text that starts like a formula gets a quote before it, and stays a text."""
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float):
        return f"{value:.3f}"
    text = "; ".join(map(str, value)) if isinstance(value, list | tuple) else str(value)
    return guarded(text)


def _with_clock(table: Sequence[Row]) -> list[Row]:
    return [{**row, "start": "" if row["start_s"] is None else clock(row["start_s"])} for row in table]


def shots_csv(facts: Facts) -> bytes:
    """shots.csv."""
    return to_csv(SHOT_COLUMNS, _with_clock(rows.shots(facts)))


def graphics_csv(facts: Facts) -> bytes:
    """graphics.csv."""
    return to_csv(graphic_rows.CSV_COLUMNS, graphic_rows.table(facts))


def shoot_csv(facts: Facts) -> bytes:
    """shoot.csv."""
    return to_csv((*DAY_COLUMNS, *SHOT_COLUMNS), _with_clock(day_rows.shots(facts)))


def shots_xlsx(facts: Facts) -> bytes:
    """shots.xlsx."""
    from scriptkit.rendering import shot_tables  # what writes workbooks takes a while to load

    return shot_tables.xlsx(facts)


def shoot_xlsx(facts: Facts) -> bytes:
    """shoot.xlsx."""
    from scriptkit.rendering import shot_tables

    return shot_tables.day_xlsx(facts)


def claims_csv(facts: Facts, found: Sequence[Finding]) -> bytes:
    """claims.csv."""
    return to_csv(ledger_tables.CSV_COLUMNS, ledger_tables.table(ledger.sentences(facts, found)))


def claims_xlsx(facts: Facts, found: Sequence[Finding]) -> bytes:
    """claims.xlsx."""
    from scriptkit.rendering import workbooks

    forms = dict.fromkeys(ledger_tables.LEFT_TO_FILL_IN, "@") | {"date": "yyyy-mm-dd"}
    columns = [
        workbooks.Column(key, head, width, forms.get(key, ""), VERDICTS if key == "verdict" else ())
        for key, head, width in ledger_tables.SHEET_COLUMNS
    ]
    title = f"{facts.episode.title or 'Untitled episode'}: claims"
    look = workbooks.Look(ledger_tables.IN_SIGHT, ledger_tables.PRINTED)
    return workbooks.workbook("claims", title, columns, ledger_tables.table(ledger.sentences(facts, found)), look)


def check_json(found: Sequence[Finding], episode: str, facts: Facts | None = None) -> Row:
    """The JSON of `check`. What an allow-comment covers stands apart, under `allowed`."""
    listed = rows.findings(found, facts)
    return {
        "episode": episode,
        "findings": [row for row in listed if not row["allowed"]],
        "allowed": [row for row in listed if row["allowed"]],
        "summary": rows.summary(found),
    }


def report(facts: Facts, found: Sequence[Finding], episode: str, stage: str) -> bytes:
    """report.json: all findings and figures."""
    return to_json(
        {
            **check_json(found, episode, facts),
            "stage": stage,
            "title": str(facts.episode.title),
            "runtime": rows.runtime(facts),
            "grades": grade_rows.grades(facts),
            "checklist": grade_rows.checklist(facts),
            "firmness": grade_rows.firmness(facts),
            "second_rating": grade_rows.again(facts),
            "sentences": ledger.sentences(facts, found),
            "void_verdicts": ledger.void(facts),
            "shots": rows.shots(facts),
            "day": day_rows.totals(facts),
            "captions": captions.figures(facts.captions),
            "references": rows.references(facts),
            "errata": rows.corrections(facts),
            "publication": rows.publication(facts),
        }
    )
