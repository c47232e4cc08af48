"""The page of grades shows how firm first place and grades are, in words that may be said."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tests.ranked import AHEAD, CLEAR, LEVEL, outline
from tests.running import run
from tests.scripts import Write


def page(episode: Write, tmp_path: Path, text: str, **files: str) -> str:
    folder = episode({"outline.yaml": text, **{name.replace("_", "."): one for name, one in files.items()}})
    run("build", folder, "--out", tmp_path / "out")
    markup = (tmp_path / "out" / "grades.html").read_text(encoding="utf-8")
    return re.sub(r"\s+|\u00a0", " ", re.sub(r"<[^>]+>", "", markup.partition("<main")[2]))


@pytest.mark.parametrize(
    ("ratings", "words"),
    [
        (CLEAR, "A clear winner: 100 % of all ways to weigh the questions put it first."),
        (
            AHEAD,
            "It comes out ahead: 67 % of all ways to weigh the questions put it first. That is by these weights.",
        ),
        (LEVEL, "Tied: Bar hang (50 %) and Ring row (50 %) of all ways to weigh the questions."),
    ],
)
def test_the_first_place_is_told_as_firmly_as_it_is(
    episode: Write, tmp_path: Path, ratings: tuple[int, ...], words: str
) -> None:
    assert words in page(episode, tmp_path, outline(ratings))


def test_grades_that_hang_on_the_weights_are_named_with_what_else_they_could_be(episode: Write, tmp_path: Path) -> None:
    told = page(episode, tmp_path, outline(AHEAD))
    assert "Fewer than 70 in 100 weightings around the author’s keep them: Bar hang (B+ or A-)." in told
    assert "another rating, and which other weight" in told or "which other rating, and which other weight" in told


def test_a_second_rating_is_shown_with_its_gaps_and_answers(episode: Write, tmp_path: Path) -> None:
    again = "by: Q. N.\non: 2026-02-24\nratings: {hang: {steady: {score: 3, answer: Wet hands.}, quick: 3}}\n"
    folder = episode({"outline.yaml": outline(AHEAD), "ratings-again.yaml": again})
    run("build", folder, "--out", tmp_path / "out")
    told = (tmp_path / "out" / "grades.html").read_text(encoding="utf-8")
    for words in ("50\u00a0% the same", "the largest gap is 2 steps", "Wet hands.", "Where the second rating differs"):
        assert words in told, words


def test_without_a_checklist_it_says_so(episode: Write, tmp_path: Path) -> None:
    told = page(episode, tmp_path, "title: One\nexercises: {hang: {name: Bar hang, grade: A}}\n")
    assert "Nothing is rated yet." in told
    assert "Bar hang not rated" in told
