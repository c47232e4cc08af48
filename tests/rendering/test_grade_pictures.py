"""The picture of the grades: every score on one scale, inside the drawing, with its grade beside it."""

from __future__ import annotations

from itertools import pairwise
from typing import Any
from xml.etree import ElementTree as ET

import pytest

from scriptkit import build
from scriptkit.rendering import grade_pictures
from scriptkit.shipped import shipped
from tests.ranked import AHEAD, outline
from tests.running import run
from tests.scripts import Write


@pytest.fixture(scope="module")
def sample() -> dict[str, Any]:
    picture = grade_pictures.grades(build.work_out(build.read(shipped("sample_episode")), drawn=True))
    assert picture is not None
    return picture


def test_better_scores_stand_further_right_and_higher_up(sample: dict[str, Any]) -> None:
    for better, worse in pairwise(sample["rows"]):
        assert better["x"] >= worse["x"]
        assert better["line_y"] < worse["line_y"]


def test_nothing_leaves_the_drawing(sample: dict[str, Any]) -> None:
    places = [row[key] for row in sample["rows"] for key in ("x", "reach_low", "reach_high", "range_low")]
    assert min(places) >= sample["left"]
    assert max(places) <= sample["right"]
    assert max(row["line_y"] for row in sample["rows"]) < sample["bottom"] < sample["height"]


def test_a_score_stands_in_its_band(sample: dict[str, Any]) -> None:
    edges = [(edge["name"], edge["x"]) for edge in sample["edges"]]
    assert [name for name, _ in edges] == ["A", "B", "C", "D"]
    for row in sample["rows"]:
        band = next(name for name, x in edges if row["x"] >= x)
        assert row["given"] or row["grade"].startswith(band)


def test_a_grade_of_another_mind_is_hollow_and_says_both(sample: dict[str, Any]) -> None:
    (hollow,) = [row for row in sample["rows"] if row["given"]]
    assert hollow["full"] == "Skipping rope"
    assert "earns D+, given C" in hollow["told"]


def test_the_file_is_a_drawing_with_its_words(episode: Write, tmp_path) -> None:
    folder = episode({"outline.yaml": outline(AHEAD, hang="grade: B+", row="").replace("Bar hang", "<Bar> & hang")})
    run("build", folder, "--out", tmp_path / "out")
    top = ET.fromstring((tmp_path / "out" / "grades.svg").read_text(encoding="utf-8"))  # noqa: S314 - our own file
    words = "".join(top.itertext())
    assert "<Bar> & hang" in words
    assert top.get("role") == "img"
    described = (top.get("aria-labelledby") or "").split()
    assert described
    assert all(any(one.get("id") == name and one.text for one in top.iter()) for name in described)


def test_without_ratings_it_says_so(episode: Write, tmp_path) -> None:
    folder = episode({"outline.yaml": "title: One\nexercises: {hang: {name: Bar hang, grade: A}}\n"})
    run("build", folder, "--out", tmp_path / "out")
    assert "Nothing is rated yet" in (tmp_path / "out" / "grades.svg").read_text(encoding="utf-8")
