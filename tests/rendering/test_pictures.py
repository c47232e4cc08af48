"""The runtime picture: every bar inside the drawing, in proportion, and the words beside it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest

from scriptkit import build
from scriptkit.rendering import pictures
from scriptkit.shipped import shipped

Episode = Callable[[Mapping[str, str]], Path]


@pytest.fixture(scope="module")
def sample() -> dict[str, Any]:
    return pictures.runtime(build.work_out(build.read(shipped("sample_episode"))))


def test_segments_follow_one_another_from_left_to_right(sample: dict[str, Any]) -> None:
    bars = sample["rows"][1:]
    assert all(later["x"] == pytest.approx(sooner["x"] + sooner["width"], abs=0.8) for sooner, later in pairwise(bars))
    assert [bar["y"] for bar in bars] == sorted(bar["y"] for bar in bars)


def test_the_whole_is_as_long_as_its_segments(sample: dict[str, Any]) -> None:
    whole, *bars = sample["rows"]
    assert bars[-1]["x"] + bars[-1]["width"] == pytest.approx(whole["x"] + whole["width"], abs=0.3)


def test_nothing_leaves_the_drawing(sample: dict[str, Any]) -> None:
    places = [row[key] for row in sample["rows"] for key in ("x", "low_x", "high_x")] + [
        tick["x"] for tick in sample["ticks"]
    ]
    assert min(places) >= sample["left"]
    assert max(places) <= sample["right"]
    assert max(row["y"] for row in sample["rows"]) < sample["bottom"] < sample["height"]


def test_the_marks_of_the_axis_are_few_and_even(sample: dict[str, Any]) -> None:
    steps = [later["x"] - sooner["x"] for sooner, later in pairwise(sample["ticks"])]
    assert 2 <= len(steps) <= 7
    assert max(steps) - min(steps) <= 0.2


@pytest.mark.parametrize(
    ("runtime", "way"),
    [
        ("", "none"),
        ("runtime: {target: 9:00}", "under"),
        ("runtime: {target: 1s}", "over"),
        ("runtime: {target: 30s, tolerance: 30s}", "inside"),
    ],
)
def test_the_runtime_is_over_under_or_inside_its_target(episode: Episode, runtime: str, way: str) -> None:
    outline = f"title: One\n{runtime}\nexercises: {{hang: {{name: Bar hang, grade: A}}}}\n"
    assert pictures.standing(build.work_out(build.read(episode({"outline.yaml": outline}))))["way"] == way


def test_a_long_title_is_cut_and_kept_whole_beside(episode: Episode) -> None:
    outline = f"title: One\nexercises: {{hang: {{name: {'Very long ' * 40}hang}}}}\norder: [hang]\n"
    row = pictures.runtime(build.work_out(build.read(episode({"outline.yaml": outline}))))["rows"][1]
    assert len(row["title"]) < 60
    assert row["title"].endswith("…")
    assert len(row["full"]) > 400


def test_an_episode_without_segments_has_a_picture_without_rows(episode: Episode) -> None:
    picture = pictures.runtime(build.work_out(build.read(episode({"outline.yaml": "title: One\norder: []\n"}))))
    assert picture["rows"][0]["title"] == "Whole episode"


@pytest.mark.parametrize(("value", "text"), [(6.0, "6"), (2.26, "2.3"), (0.04, "0"), (10.0, "10")])
def test_seconds_have_one_decimal_where_they_need_it(value: float, text: str) -> None:
    assert pictures.seconds(value) == text
