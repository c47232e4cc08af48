"""Grades for programs: the keys that other tools rely on, and figures that add up."""

from __future__ import annotations

from typing import Any

import pytest

from tests.ranked import AHEAD, CLEAR, outline
from tests.running import run
from tests.scripts import Write


def answer(episode: Write, ratings: tuple[object, ...] = AHEAD, **more: str) -> Any:
    return run("grades", episode({"outline.yaml": outline(ratings, **more)}), "--format", "json").json


def test_the_keys_that_stay(episode: Write) -> None:
    made = answer(episode)
    assert {"episode", "checklist", "exercises"} <= made.keys()
    wanted = {"id", "score", "earned", "given", "firmness", "first_share", "ratings"}
    assert all(wanted <= one.keys() for one in made["exercises"])
    assert [one["id"] for one in made["exercises"]] == ["hang", "row"]


def test_the_working_adds_up_to_the_score(episode: Write) -> None:
    for one in answer(episode)["exercises"]:
        assert sum(part["points"] for part in one["working"]) == pytest.approx(one["score"], abs=1e-3)
        assert sum(part["share"] for part in one["working"]) == pytest.approx(1, abs=1e-3)
        assert one["ratings"] == {part["criterion"]: part["rating"] for part in one["working"]}


def test_shares_of_first_place_add_up_to_one(episode: Write) -> None:
    made = answer(episode)
    assert sum(one["first_share"] for one in made["exercises"]) == pytest.approx(1, abs=1e-3)
    assert made["firmness"]["draws"] >= 10_000
    assert made["firmness"]["error"] == 0.01
    hang = made["exercises"][0]
    assert hang["first_share"] == pytest.approx(2 / 3, abs=0.01)  # ahead while the first weighs more than a third


def test_a_missing_rating_is_an_interval_and_firmness_is_open(episode: Write) -> None:
    text = outline((5, 3, 3, 4)).replace("steady: 5, quick: 3", "steady: 5")
    hang = run("grades", episode({"outline.yaml": text}), "--format", "json").json["exercises"][0]
    assert (hang["score"], hang["score_low"], hang["score_high"]) == (None, 3, 5)
    assert (hang["earned"], hang["earned_low"], hang["earned_high"]) == (None, "C", "A+")
    assert (hang["firmness"], hang["first_share"]) == (None, None)


def test_without_ratings_there_is_nothing_to_hold(episode: Write) -> None:
    made = run(
        "grades",
        episode({"outline.yaml": "title: One\nexercises: {hang: {name: Bar hang, grade: A}}\n"}),
        "--format",
        "json",
    ).json
    hang = made["exercises"][0]
    assert (hang["score"], hang["earned"], hang["firmness"], hang["given"], hang["grade"]) == (
        None,
        None,
        None,
        "A",
        "A",
    )
    assert made["checklist"] is None


def test_the_figures_are_the_same_every_time(episode: Write) -> None:
    assert answer(episode) == answer(episode)


def test_a_grade_is_one_value_in_every_file(episode: Write, tmp_path) -> None:
    import json
    import re

    folder = episode({"outline.yaml": outline(CLEAR, hang="grade: A", row="")})
    run("build", folder, "--out", tmp_path / "out")
    files = {one.name: one.read_bytes().decode(errors="replace") for one in (tmp_path / "out").iterdir()}
    report = json.loads(files["report.json"])
    assert {one["id"]: one["grade"] for one in report["grades"]} == {"hang": "A", "row": "B-"}
    assert "Bar hang: A" in files["script.md"]
    assert "Ring row: B-" in files["script.md"]
    assert re.search(r"\bB minus\b", files["prompter.txt"])
    assert "A: Bar hang" in files["shots.csv"]
    assert "B-: Ring row" in files["shots.csv"]
    sentences = [one["text"] for one in report["sentences"]]
    assert any("B minus" in text for text in sentences)
    for name in ("index.html", "grades.html"):
        assert re.search(r'class="grade">B-<', files[name]), name
    assert "3.50, B-" in files["grades.svg"]
