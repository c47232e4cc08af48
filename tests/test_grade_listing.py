"""The table of `grades`: best first, with how firm each grade is, in the width there is."""

from __future__ import annotations

import pytest

from scriptkit import build, grade_listing
from scriptkit.shipped import shipped
from scriptkit.terminal import Ink, width
from tests.ranked import BEHIND, LEVEL, outline
from tests.running import run
from tests.scripts import Write


def printed(episode: Write, text: str) -> list[str]:
    done = run("grades", episode({"outline.yaml": text}))
    assert (done.status, done.err) == (0, "")
    return done.out.splitlines()


def test_the_best_comes_first_with_its_ratings(episode: Write) -> None:
    head, first, second, *_ = printed(episode, outline(BEHIND))
    assert head.split() == ["exercise", "grade", "score", "keeps", "first", "steady", "quick"]
    assert first.split()[:5] == ["1", "Ring", "row", "A+", "5.00"]
    assert second.split()[:5] == ["2", "Bar", "hang", "C", "3.00"]


def test_ties_uncertain_ratings_and_floors_are_marked_and_explained(episode: Write) -> None:
    text = outline(LEVEL).replace("steady: 5", "steady: {score: 5, range: [4, 5]}")
    lines = printed(episode, text.replace("weight: 50, anchors", "weight: 50, floor: 4, anchors"))
    assert lines[1].split()[0] == "1"
    assert "Tied: Bar hang with Ring row." in lines or "Tied: Ring row with Bar hang." in lines
    assert "~5" in lines[1]
    assert any("3!" in line for line in lines)
    told = " ".join(lines)
    assert "~: uncertain. !: below the floor." in told


def test_a_grade_of_another_mind_shows_what_is_earned_and_why(episode: Write) -> None:
    told = " ".join(
        printed(episode, outline(BEHIND, hang="grade: A, override: For me a bar in every park counts for more."))
    )
    assert "A (earns C)" in told
    assert "Bar hang: given A, earns C. Reason: For me a bar in every park counts for more." in told


def test_a_missing_rating_shows_the_interval(episode: Write) -> None:
    lines = printed(episode, outline((5, 3, 3, 4)).replace("steady: 5, quick: 3", "steady: 5"))
    assert any("3.00-5.00" in line and "?" in line for line in lines)


@pytest.mark.parametrize("columns", [60, 80, 100, 160])
def test_it_fits_the_terminal_and_drops_the_ratings_where_there_is_no_room(columns: int) -> None:
    facts = build.work_out(build.read(shipped("sample_episode")), drawn=True)
    text = grade_listing.grades(facts, Ink(columns=columns))
    assert max(width(line) for line in text.splitlines()) <= columns
    assert ("steady" in text.splitlines()[0]) is (columns >= 100)


@pytest.mark.parametrize("text", ["title: One\n", "title: One\nexercises: {hang: {name: Bar hang, grade: A}}\n"])
def test_without_ratings_it_says_so(episode: Write, text: str) -> None:
    told = " ".join(run("grades", episode({"outline.yaml": text})).out.split())
    assert "nothing to work out" in told or "no exercise yet" in told
