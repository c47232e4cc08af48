"""Rows say what the facts say: in script order, seconds in thousandths, nothing left out and nothing made up."""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest

from scriptkit.model import Facts
from scriptkit.rendering import grade_rows, rows
from scriptkit.session import Session
from tests.running import SMALLEST

Writer = Callable[[dict[str, str | bytes]], Path]
TEXT = """
[shot CU side: hands on the bar; reps 3; kit bar]

In one trial hang time rose by 22 percent. [from mora-2022 hang] I think it is the one to start with. [opinion]

[shot FS front: the whole hang] [screen: Grade A] It costs nothing. [aside] [hold 2s: hang]

So it is an A for me. [opinion]
"""


@pytest.fixture
def facts(episode: Writer) -> Facts:
    work = Session(episode({"outline.yaml": SMALLEST, "segments/bar-hang.md": TEXT}))
    assert work.facts is not None
    return work.facts


def of_bar_hang(table: list[dict[str, Any]]) -> list[dict[str, Any]]:
    return [row for row in table if row["segment"] == "bar-hang"]


def test_shots_come_in_script_order_and_fill_the_clock(facts: Facts) -> None:
    made = rows.shots(facts)
    assert [row["shot"] for row in made] == list(range(1, len(made) + 1))
    placed = [row for row in made if row["start_s"] is not None]
    for before, after in pairwise(placed):
        assert before["start_s"] + before["duration_s"] == pytest.approx(after["start_s"], abs=0.002)
    assert placed[-1]["start_s"] + placed[-1]["duration_s"] == pytest.approx(facts.timeline.total, abs=0.002)


def test_a_shot_has_what_its_mark_says(facts: Facts) -> None:
    close, wide = [row for row in of_bar_hang(rows.shots(facts)) if row["start_s"] is not None][-2:]
    assert (close["size"], close["plane"], close["of"], close["reps"], close["kit"]) == (
        "CU", "side", "hands on the bar", 3, ["bar"],
    )  # fmt: skip
    assert close["sources"] == ["mora-2022"]
    assert (wide["size"], wide["screen"]) == ("FS", ["Grade A"])


def test_the_runtime_is_the_sum_of_its_segments(facts: Facts) -> None:
    row = rows.runtime(facts)
    for part in ("total_s", "low_s", "high_s"):
        assert row[part] >= 0
    assert sum(one["total_s"] for one in row["segments"]) == pytest.approx(row["total_s"], abs=0.01)
    for one in row["segments"]:
        assert one["spoken_s"] + one["silent_s"] == pytest.approx(one["total_s"], abs=0.002)
        assert one["low_s"] <= one["total_s"] <= one["high_s"]
    assert row["target_s"] is None
    assert [one["id"] for one in row["segments"]] == [segment.id for segment in facts.segments]


def test_grades_and_references_come_in_the_order_of_speech(facts: Facts) -> None:
    assert [(row["id"], row["grade"]) for row in grade_rows.grades(facts)] == [("bar-hang", "A")]
    assert [(row["number"], row["id"], row["href"]) for row in rows.references(facts)] == [
        (1, "mora-2022", "https://doi.org/10.5555/grip.22")
    ]


def test_a_finding_has_the_authors_line_and_allowed_ones_are_counted_apart(episode: Writer) -> None:
    outline = """
        title: One
        runtime: 30:00 # allow: runtime-off-target because it is a teaser
        exercises: {hang: {name: Bar hang, grad: A}}
        """
    work = Session(episode({"outline.yaml": outline}))
    made = {row["name"]: row for row in rows.findings(work.found, work.facts)}
    assert made["unknown-key"]["quote"] == "exercises: {hang: {name: Bar hang, grad: A}}"
    assert made["runtime-off-target"]["allowed"] == "it is a teaser"
    counts = rows.summary(work.found)
    assert counts["allowed"] == 1
    assert counts["errors"] + counts["warnings"] + counts["notes"] + 1 == len(work.found)


@pytest.mark.parametrize(
    ("given", "href"),
    [
        ("doi: 10.5555/a b?c#d", "https://doi.org/10.5555/a%20b%3Fc%23d"), ("url: https://example.org/x", "https://example.org/x"),
        ("url: 'javascript:alert(1)'", ""), ("title: A", ""),
    ],
)  # fmt: skip
def test_only_an_address_of_the_web_is_a_link(episode: Writer, given: str, href: str) -> None:
    work = Session(episode({"outline.yaml": SMALLEST.replace("doi: 10.5555/grip.22", given.replace("title", "note"))}))
    assert work.facts is not None
    assert [row["href"] for row in rows.references(work.facts)] == [href]


def test_the_prompter_parts_paragraphs_and_segments(facts: Facts) -> None:
    lines = list(rows.prompter(facts))
    at = lines.index("In one trial hang time rose by 22 percent.")
    assert lines[at - 2 : at] == ["", ""]
    assert lines[at + 1 : at + 6] == [
        "I think it is the one to start with.", "", "It costs nothing.", "", "So it is an A for me.",
    ]  # fmt: skip


def test_a_kind_of_segment_that_nobody_named_has_a_title_too() -> None:
    assert [rows.kind_title(kind) for kind in ("verdict", "myth")] == ["Exercise", "Myth"]
