"""What a take says must be mended stays open until another take, another text or a reason settles it."""

from __future__ import annotations

from pathlib import Path

import pytest

from scriptkit import build
from tests.recorded import recording
from tests.running import run
from tests.scripts import Write

DISCLOSURE = "Hill Shoes paid for this part."
OUTLINE = f"""
    title: One
    exercises: {{hang: {{name: Bar hang, grade: B}}}}
    order: [hang, sponsor]
    sponsor: {{name: Hill Shoes, disclosure: {DISCLOSURE}}}
    cautions: {{back: {{line: "If your back hurts, stop and see a licensed clinician."}}}}
    """
HANG = "{{ cautions['back'].line }}\n\nIn that gym 38 people hung for a while. [aside]\n\nMy grade is a B. [opinion]\n"
SPONSOR = f"{DISCLOSURE} They sent me shoes and I liked them a lot on the stairs. [aside]\n"
WRONG = {
    ("hang", 0): "If your back aches, stop and see a licensed clinician.",
    ("hang", 1): "In that gym 83 people hung for a while.",
    ("hang", 2): "My grade is a C.",
    ("sponsor", 0): "Hill Shoes helped with this part.",
}


@pytest.fixture
def folder(episode: Write) -> Path:
    return episode({"outline.yaml": OUTLINE, "segments/hang.md": HANG, "segments/sponsor.md": SPONSOR})


def take(folder: Path, instead: dict[tuple[str, int], str]) -> int:
    """A recording with other lines, taken; the status."""
    heard, _, _ = recording(
        build.work_out(build.read(folder)), instead={place: [text] for place, text in instead.items()}
    )
    rows = [f'{{"word": "{one.text}", "start": {one.start}, "end": {one.end}}}' for one in heard.words]
    path = folder.parent / "heard.json"
    path.write_text(f'{{"words": [{", ".join(rows)}]}}', encoding="utf-8")
    return run("take", folder, path).status


def found(folder: Path, stage: str = "publish") -> list[tuple[str, str, int]]:
    rows = run("check", folder, "--stage", stage, "--format", "json").json["findings"]
    return [(one["severity"], one["file"], one["line"]) for one in rows if one["name"] == "recorded-otherwise"]


def test_all_that_stops_a_release_is_an_error_at_its_line_by_publication(folder: Path) -> None:
    assert take(folder, WRONG) == 1
    lines = [("segments/hang.md", 1), ("segments/hang.md", 3), ("segments/hang.md", 5), ("segments/sponsor.md", 1)]
    assert [("error", *place) for place in lines] == sorted(found(folder), key=lambda one: one[1:])
    assert {one[0] for one in found(folder, "record")} == {"note"}


def test_it_is_told_with_what_was_said_and_the_overview_counts_it(folder: Path) -> None:
    take(folder, {("hang", 2): "My grade is a C."})
    run("build", folder, "--out", folder.parent / "out", "--stage", "publish")
    page = " ".join((folder.parent / "out" / "index.html").read_text(encoding="utf-8").split())
    assert "was recorded otherwise, 0:" in page
    assert "the grade is another one; said was" in page


def test_another_take_settles_it(folder: Path) -> None:
    take(folder, WRONG)
    assert take(folder, {}) == 0
    assert found(folder) == []


def test_a_line_that_is_written_as_it_was_said_settles_it(folder: Path) -> None:
    take(folder, {("hang", 1): WRONG["hang", 1]})
    assert len(found(folder)) == 1
    text = folder / "segments" / "hang.md"
    text.write_text(text.read_text(encoding="utf-8").replace("38", "83"), encoding="utf-8")
    assert found(folder) == []


def test_a_pickup_that_was_cut_in_is_allowed(folder: Path) -> None:
    take(folder, {("hang", 1): WRONG["hang", 1]})
    text = folder / "segments" / "hang.md"
    reason = "[aside] <!-- allow: recorded-otherwise because the pickup is cut in -->"
    text.write_text(text.read_text(encoding="utf-8").replace("[aside]", reason), encoding="utf-8")
    rows = run("check", folder, "--stage", "publish", "--format", "json").json["findings"]
    assert "error" not in [one["severity"] for one in rows if one["name"] == "recorded-otherwise"]


def test_wording_is_kept_by_no_take(folder: Path) -> None:
    take(folder, {("sponsor", 1): "They sent me boots and I wore them a lot on the stairs."})
    assert '"changes": []' in (folder / "take.json").read_text(encoding="utf-8")
    assert found(folder) == []
