"""Findings: kinds, explanations with their examples, stages, order."""

from __future__ import annotations

from scriptkit.findings import Finding, Kind, at_stage, explanation, kind_name, make, most_urgent_first
from scriptkit.places import Place


def some_kind() -> None:
    r"""It says so.

    And why.

    Bad:
        title: \xff\t
        --- segments/hang.md
        One.

        Two.
        --- huge.yaml of 12 bytes
    Good:
        title: One
    """


KIND = Kind("some-kind", "error", "record", protects=True, maker=some_kind)
PLACE = Place("outline.yaml", 2, 3)


def finding(
    name: str = "a", severity: str = "error", stage: str = "draft", line: int = 1, message: str = ""
) -> Finding:
    return Finding(name, severity, stage, Place("outline.yaml", line, 1), message, "")


def test_a_kind_is_named_by_its_function() -> None:
    assert kind_name(some_kind) == "some-kind"


def test_a_finding_takes_after_its_kind() -> None:
    assert make(KIND, PLACE, "It is.", "Do.") == Finding(
        "some-kind", "error", "record", PLACE, "It is.", "Do.", "", protects=True
    )


def test_an_explanation_is_read_out_of_the_docstring() -> None:
    told = explanation(KIND)
    assert told is not None
    assert (told.summary, told.text) == ("It says so.", "And why.")
    assert told.bad.files == {
        "outline.yaml": "title: \\xff\\t\n",
        "segments/hang.md": "One.\n\nTwo.\n",
        "huge.yaml": "# 12 bytes of anything\n",
    }
    assert told.good.files == {"outline.yaml": "title: One\n"}


def test_an_example_on_disk_holds_what_cannot_be_shown() -> None:
    told = explanation(KIND)
    assert told is not None
    bad = told.bad.on_disk()
    assert bad["outline.yaml"] == b"title: \xff\t\n"
    assert explanation(KIND._replace(maker=lambda: None)) is None
    assert told.bad.sizes == {"huge.yaml": 12}


def test_a_file_of_a_size_has_that_size() -> None:
    def sized() -> None:
        """It is.

        Bad:
            --- a.yaml of 4000 bytes
        Good:
            title: One
        """

    told = explanation(KIND._replace(maker=sized))
    assert told is not None
    assert {name: len(data) for name, data in told.bad.on_disk().items()} == {"a.yaml": 4000}


def test_what_a_later_stage_demands_is_a_note_until_then() -> None:
    found = [finding(stage=stage) for stage in ("draft", "record", "publish")]
    assert [one.severity for one in at_stage(found, "draft")] == ["error", "note", "note"]
    assert [one.severity for one in at_stage(found, "record")] == ["error", "error", "note"]
    assert [one.severity for one in at_stage(found, "publish")] == ["error", "error", "error"]


def test_the_most_urgent_come_first_by_place_and_each_once() -> None:
    note, late, early = finding(severity="note"), finding(line=9), finding("b", line=2)
    assert most_urgent_first([note, late, early, late]) == [early, late, note]
