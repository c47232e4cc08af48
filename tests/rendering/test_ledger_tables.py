"""The ledger as a table has a column for everything a fact-checker wants to see, and empty ones to fill in."""

from __future__ import annotations

from typing import Any

from scriptkit.rendering.ledger_tables import CSV_COLUMNS, LEFT_TO_FILL_IN, SHEET_COLUMNS, says, table

SOURCE = {
    "source": "mora-2022", "title": "Hangs", "known": True, "finding": "hang", "stance": "against", "level": 2,
    "certainty": "low", "why": ["one trial"], "outcome": "hang time", "result": "22 percent", "values": {"gain": "9 s"},
    "quote": "It rose.", "page": "7", "unnamed": [],
}  # fmt: skip


def row(**more: Any) -> dict[str, Any]:
    base = {
        "segment": "hang", "file": "segments/hang.md", "line": 3, "text": "It rose.", "kind": "claim",
        "strength": "plain", "flags": ["numeric"], "triggers": ["rose"], "sources": ["mora-2022"], "certainty": "low",
        "start_s": 61.0, "marks": [], "why": ["lowered by the author"], "evidence": [SOURCE], "findings": [],
        "allowed": [], "status": "sourced", "key": "s-1", "ruling": dict.fromkeys(LEFT_TO_FILL_IN, ""),
    }  # fmt: skip
    return {**base, **more}


def test_a_row_is_told_in_words() -> None:
    (made,) = table([row(findings=[{"severity": "error", "message": "No.", "help": "Do."}])])
    assert (made["start"], made["place"], made["level"]) == ("1:01", "segments/hang.md:3", ["mora-2022: level 2"])
    assert made["why"] == ["mora-2022: level 2", "mora-2022: one trial", "lowered by the author"]
    assert table([row(why=["one trial"])])[0]["why"] == ["mora-2022: level 2", "mora-2022: one trial"]
    assert made["words"] == ["plain", "numeric", '"rose"']
    assert made["findings"] == ["error: No. Do."]
    allowed = [{"name": "claim-without-source", "message": "Nothing stands behind it.", "because": "all know it"}]
    assert table([row(allowed=allowed)])[0]["findings"] == ["allowed: Nothing stands behind it. Because all know it"]


def test_a_source_speaks_in_its_own_words_and_figures() -> None:
    assert says(SOURCE) == "mora-2022, hang (against): “It rose.” (page 7); 22 percent; gain 9 s"
    bare = {**SOURCE, "quote": "", "values": {}, "stance": "supports"}
    assert says(bare) == "mora-2022, hang: 22 percent (page 7)"
    assert says({**bare, "result": "", "page": ""}) == "mora-2022, hang: hang time"
    assert says({**bare, "result": "", "outcome": "", "page": ""}).endswith(": the register does not say what it found")
    many = says({**bare, "finding": "", "result": "", "outcome": "", "page": "", "unnamed": ["hang", "grip"]})
    assert many == "mora-2022: no finding of it is named; it has hang, grip"
    assert says({**SOURCE, "known": False}) == "mora-2022: not in the register"


def test_a_kept_verdict_is_filled_in() -> None:
    ruling = {"verdict": "verified", "note": "yes", "page": "7", "initials": "QN", "date": "2026-03-02"}
    (made,) = table([row(ruling=ruling)])
    assert {name: made[name] for name in LEFT_TO_FILL_IN} == ruling


def test_every_column_is_there_and_those_to_fill_in_are_in_both_tables() -> None:
    (made,) = table([row()])
    assert set(CSV_COLUMNS) <= made.keys()
    assert {key for key, _, _ in SHEET_COLUMNS} <= made.keys()
    heads = {head for _, head, _ in SHEET_COLUMNS}
    assert {*LEFT_TO_FILL_IN, "key"} <= set(CSV_COLUMNS) & heads
    assert "sentence" in heads
    assert "text" in CSV_COLUMNS
