"""The ledger as a table: one row a sentence, all of it in words, and columns left for a fact-checker's verdict."""

from __future__ import annotations

from collections.abc import Sequence

from scriptkit.rendering.rows import Row
from scriptkit.times import clock
from scriptkit.wording import listed

CSV_COLUMNS = (
    "segment", "start", "file", "line", "text", "kind", "strength", "flags", "triggers", "marks", "sources",
    "certainty", "level", "why", "says", "findings", "status", "key", "verdict", "note", "page", "initials", "date",
)  # fmt: skip
LEFT_TO_FILL_IN = ("verdict", "note", "page", "initials", "date")
# of a workbook: the column of the table, its head, its width in characters
SHEET_COLUMNS = (
    ("place", "place", 15),
    ("start", "clock", 6),
    ("text", "sentence", 38),
    ("kind", "kind", 10),
    ("status", "status", 14),
    ("says", "what the source says", 34),
    ("certainty", "certainty", 9),
    ("why", "level, and why", 27),
    ("findings", "open findings", 30),
    ("verdict", "verdict", 12),
    ("note", "note", 24),
    ("page", "page", 6),
    ("initials", "initials", 8),
    ("date", "date", 11),
    ("sources", "sources", 15),
    ("words", "given away by", 18),
    ("segment", "segment", 14),
    ("key", "key", 20),
)
IN_SIGHT = 3  # the first columns, up to the sentence, stay where they are
PRINTED = 14  # the first columns, up to those that are filled in, are printed


def table(rows: Sequence[Row]) -> list[Row]:
    """The rows of the ledger with every cell a text, a number or a list of texts."""
    return [_flat(row) for row in rows]


def _flat(row: Row) -> Row:
    levels = [f"{one['source']}: level {one['level']}" for one in row["evidence"] if one["level"] is not None]
    return {
        **row,
        "start": clock(row["start_s"]),
        "place": f"{row['file']}:{row['line']}",
        "level": levels,
        "why": [*levels, *why(row)],
        "says": [says(one) for one in row["evidence"]],
        "words": [*([row["strength"]] if row["strength"] else []), *row["flags"], *map(_in_quotes, row["triggers"])],
        "findings": [
            *(f"{one['severity']}: {one['message']} {one['help']}".strip() for one in row["findings"]),
            *(f"allowed: {one['message']} Because {one['because']}" for one in row["allowed"]),
        ],
        **row["ruling"],
    }


def _in_quotes(word: str) -> str:
    return f'"{word}"'


def why(row: Row) -> list[str]:
    """How the certainty of a sentence came about, step by step; what one source alone makes of it is said once."""
    sources = row["evidence"]
    steps = [f"{one['source']}: {step}" for one in sources for step in one["why"]]
    return steps if len(sources) == 1 and sources[0]["why"] == row["why"] else [*steps, *row["why"]]


def says(one: Row) -> str:
    """What a source says, in its own words and figures."""
    if not one["known"]:
        return f"{one['source']}: not in the register"
    name = ", ".join(part for part in (one["source"], one["finding"]) if part)
    name += f" ({one['stance']})" if one["stance"] != "supports" else ""
    page = f" (page {one['page']})" if one["page"] else ""
    figures = ", ".join(f"{label} {value}" for label, value in one["values"].items())
    parts = [f"“{one['quote']}”{page}" if one["quote"] else "", one["result"], figures]
    told = "; ".join(part for part in parts if part)
    return f"{name}: {told or one['outcome'] or nothing(one)}" + (page if page and not one["quote"] else "")


def nothing(one: Row) -> str:
    """Why there is nothing to show of what a source says."""
    if one["unnamed"]:
        return f"no finding of it is named; it has {listed(one['unnamed'], 5)}"
    return "the register does not say what it found"
