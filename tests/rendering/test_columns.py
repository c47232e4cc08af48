"""The two-column script: what stands in which row, and when."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path

import pytest

from scriptkit import build
from scriptkit.rendering import columns

Episode = Callable[[Mapping[str, str]], Path]
OUTLINE = "title: One\nexercises: {hang: {name: Bar hang, grade: A}}\norder: [hang]\n"


@pytest.fixture
def script(episode: Episode) -> Callable[[str, str], columns.Columns]:
    """`script(text)` gives the columns of an episode of one segment with that text."""

    def write(text: str, outline: str = OUTLINE) -> columns.Columns:
        facts = build.work_out(build.read(episode({"outline.yaml": outline, "segments/hang.md": text})))
        return columns.script(facts, [one for one in build.check(facts, "record") if not one.allowed])

    return write


def test_a_shot_stands_at_the_row_in_which_it_comes_and_goes_on_below(script) -> None:
    rows = script("[shot CU side: hands] One here.\n\nTwo here.\n\n[shot FS front: body] Three here.\n").segments[0][
        "rows"
    ]
    assert [[change["of"] for change in row["picture"]] for row in rows] == [["hands"], [], ["body"]]
    assert [row["goes_on"] and row["goes_on"]["number"] for row in rows] == [None, 1, None]


def test_a_picture_alone_makes_no_row_of_its_own(script) -> None:
    rows = script("[shot CU side: hands]\n\nOne here.\n").segments[0]["rows"]
    assert [[change["of"] for change in row["picture"]] for row in rows] == [["hands"]]


def test_what_stands_inside_a_sentence_keeps_its_place(script) -> None:
    sentence = script("One [pause 2s] here. [hold 3s]\n").segments[0]["rows"][0]["sound"][0]
    assert [(part["kind"], part["text"].strip()) for part in sentence["parts"]] == [
        ("words", "One"),
        ("pause", ""),
        ("words", "here."),
    ]
    assert [(part["kind"], part["seconds"]) for part in sentence["after"]] == [("hold", 3.0)]


def test_rows_follow_one_another_on_the_clock_without_a_gap(script) -> None:
    rows = script("One here. [hold 3s]\n\n[pause 2s]\n\nTwo here.\n\nThree here.\n").segments[0]["rows"]
    ends = [row["start_s"] + row["length_s"] for row in rows]
    assert ends[:-1] == pytest.approx([row["start_s"] for row in rows[1:]], abs=0.002)


def test_findings_stand_at_their_row_their_segment_or_nowhere_and_each_once(script) -> None:
    outline = (
        "title: One\nbanana: 1\nexercises:\n  hang:\n    name: Bar hang\n    cautions: [nobody-knows]\norder: [hang]\n"
    )
    made = script("One here. [pear]\n\n<!-- a remark -->\n\nTwo here.\n", outline)
    segment = made.segments[0]
    assert [row["name"] for row in made.elsewhere] == ["unknown-key"]
    assert "unknown-caution" in [row["name"] for row in segment["findings"]]
    assert [
        ["not-a-mark" in row["name"] or "pear" in row["message"] for row in one["findings"]] for one in segment["rows"]
    ] == [[True], []]
    numbers = [
        row["number"] for part in (made.elsewhere, segment["findings"], segment["rows"][0]["findings"]) for row in part
    ]
    assert sorted(numbers) == list(range(1, len(numbers) + 1))


def test_a_source_that_is_not_in_the_register_has_no_number(script) -> None:
    sentence = script("It rose by 9 percent. [from nobody]\n").segments[0]["rows"][0]["sound"][0]
    assert sentence["sources"] == [{"number": None, "id": "nobody", "stance": "supports"}]


def test_shots_that_no_mark_places_are_listed_below_the_segment(script) -> None:
    outline = OUTLINE.replace("grade: A", "grade: A, shots: [{size: CU, of: grip}]")
    segment = script("[shot FS side: body] One here.\n", outline).segments[0]
    assert [shot["of"] for shot in segment["also_filmed"]] == ["grip"]
