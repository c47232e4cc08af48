"""Draws are made where somebody asks, or a script claims firmness, and nowhere else."""

from __future__ import annotations

from scriptkit import build
from tests.ranked import AHEAD, kinds, outline, says
from tests.scripts import Write


def test_a_script_that_claims_nothing_is_not_drawn_for(episode: Write) -> None:
    assert says(episode, "I like it. [opinion]", AHEAD).ranking is None


def test_a_claim_of_firmness_is_drawn_for(episode: Write) -> None:
    assert says(episode, "By my weights it comes out ahead. [opinion]", AHEAD).ranking is not None


def test_who_asks_gets_the_same_figures_as_who_claims(episode: Write) -> None:
    claimed = says(episode, "By my weights it comes out ahead. [opinion]", AHEAD).ranking
    asked = build.work_out(build.read(episode({"outline.yaml": outline(AHEAD)})), drawn=True).ranking
    assert claimed is not None
    assert claimed == asked
    assert asked.draws >= 10_000


def test_grades_out_of_order_are_told_once_and_nothing_is_held_to_them(episode: Write) -> None:
    wrong = outline(AHEAD, hang="grade: A", more="").replace("B: 3.4", "B: 4.4")
    facts = build.work_out(build.read(episode({"outline.yaml": wrong})))
    assert kinds(facts) == []
    assert [one.name for one in build.check(facts, "record") if one.severity == "error"] == ["grades-out-of-order"]


def test_an_episode_without_grades_is_left_alone(episode: Write) -> None:
    facts = build.work_out(build.read(episode({"outline.yaml": "title: The clear winner\n"})), drawn=True)
    assert (kinds(facts), facts.ranking, facts.again) == ([], None, None)
