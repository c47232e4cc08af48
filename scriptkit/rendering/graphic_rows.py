"""Everything on screen as rows: for a page, a table and a workbook."""

from __future__ import annotations

from scriptkit.model import Facts
from scriptkit.rendering.rows import Row
from scriptkit.times import clock, thousandths

CSV_COLUMNS = (
    "card", "kind", "segment", "start", "start_s", "end_s", "shown_s", "reads_s", "enough", "text", "sources",
    "contrast", "text_colour", "ground_colour", "file", "line",
)  # fmt: skip
SHEET_COLUMNS = (
    ("card", "card", 6),
    ("kind", "kind", 11),
    ("start", "in", 7),
    ("end", "out", 7),
    ("shown_s", "seconds", 8),
    ("reads_s", "to read", 8),
    ("enough", "enough", 8),
    ("text", "words on screen", 48),
    ("sources", "sources", 18),
    ("contrast", "contrast", 9),
    ("segment", "segment", 16),
    ("place", "written in", 24),
    ("done", "done", 6),
)
IN_SIGHT = 2


def graphics(facts: Facts) -> list[Row]:
    """One row for each, in the order in which it comes on screen."""
    return [
        {
            "card": number,
            "kind": one.kind,
            "segment": one.segment,
            "start_s": thousandths(one.start),
            "end_s": thousandths(one.end),
            "shown_s": thousandths(one.end - one.start),
            "reads_s": thousandths(one.reads),
            "enough": one.enough,
            "text": one.text,
            "sources": list(one.sources),
            "contrast": round(facts.card_look.contrast, 2),
            "text_colour": facts.card_look.text,
            "ground_colour": facts.card_look.ground,
            "file": one.place.file,
            "line": one.place.line,
        }
        for number, one in enumerate(facts.graphics, 1)
    ]


def table(facts: Facts) -> list[Row]:
    """The same with times and answers as people read them."""
    return [
        {
            **row,
            "start": clock(row["start_s"]),
            "end": clock(row["end_s"]),
            "enough": "yes" if row["enough"] else "no",
            "place": f"{row['file']}:{row['line']}",
        }
        for row in graphics(facts)
    ]


def xlsx(facts: Facts) -> bytes:
    """graphics.xlsx."""
    from scriptkit.rendering import workbooks

    columns = [workbooks.Column(key, head, width, "@" if key == "done" else "") for key, head, width in SHEET_COLUMNS]
    title = f"{facts.episode.title or 'Untitled episode'}: on screen"
    return workbooks.workbook("on screen", title, columns, table(facts), workbooks.Look(IN_SIGHT))
