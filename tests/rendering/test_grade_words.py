"""Shares, weights and what would change a grade, in words that are true as they are written."""

from __future__ import annotations

from typing import Any

import pytest

from scriptkit import build
from scriptkit.model import Facts
from scriptkit.rendering import grade_rows, grade_words
from tests.ranked import AHEAD, BEHIND, outline
from tests.scripts import Write


def rows(episode: Write, ratings: tuple[object, ...], **more: str) -> tuple[list[Any], Facts]:
    facts = build.work_out(build.read(episode({"outline.yaml": outline(ratings, **more)})), drawn=True)
    return grade_rows.grades(facts), facts


@pytest.mark.parametrize(
    ("share", "words"),
    [(0, "0 %"), (0.001, "under 1 %"), (0.014, "1 %"), (0.665, "66 %"), (0.999, "over 99 %"), (1, "100 %")],
)
def test_a_share_that_is_not_quite_all_or_nothing_says_so(share: float, words: str) -> None:
    assert grade_words.percent(share) == words


def test_weights_are_rounded_to_the_side_on_which_they_are_true() -> None:
    assert (grade_words.weight_from(0.5371), grade_words.weight_to(0.5379)) == ("from 53.8 %", "at 53.7 % or less")
    assert (grade_words.weight_from(0.5), grade_words.weight_to(0.5)) == ("from 50 %", "at 50 % or less")


def test_on_an_edge_itself_only_what_lies_beyond_it_is_another_grade() -> None:
    assert (grade_words.weight_from(0.3, beyond=True), grade_words.weight_to(0.2, beyond=True)) == (
        "above 30 %",
        "below 20 %",
    )
    assert grade_words.weight_from(0.3005, beyond=True) == "from 30.1 %"


def test_a_score_has_as_many_decimals_as_its_grade_needs(episode: Write) -> None:
    text = (
        outline((4, 4, 3, 4))
        .replace("weight: 50", "weight: 49.99", 1)
        .replace("steady: 4, quick: 4", "steady: 3, quick: 5")
    )
    facts = build.work_out(build.read(episode({"outline.yaml": text.replace("A: 4.05", "A: 4.001")})), drawn=True)
    (hang, _) = grade_rows.grades(facts)
    assert (hang["earned"], grade_words.score(hang, facts)) == ("B+", "4.00")
    near = build.work_out(build.read(episode({"outline.yaml": text.replace("A: 4.05", "A: 4.00005")})), drawn=True)
    (hang, _) = grade_rows.grades(near)
    assert (hang["earned"], grade_words.score(hang, near)) == ("A-", "4.0001")


def test_each_criterion_tells_which_rating_and_which_weight_would_make_another_grade(episode: Write) -> None:
    (hang, _), facts = rows(episode, AHEAD)  # 4.0: B+; bands: A 4.05, B 3.4
    steady, quick = grade_words.changes(hang, facts)
    assert (steady["by_rating"], quick["by_rating"]) == (["4: B-"], ["4: A", "2: B-"])
    assert steady["by_weight"] == ["from 52.5 %: A-", "at 41.6 % or less: B"]
    assert quick["by_weight"] == ["from 58.4 %: B", "at 47.5 % or less: A-"]


def test_the_way_to_its_rival_is_told_both_ways(episode: Write) -> None:
    (hang, _), facts = rows(episode, AHEAD)
    told = " ".join(grade_words.told(hang, facts))
    assert "It is 0.5 ahead of Ring row, its closest rival." in told
    assert "level where “quick” weighs 66.7 % instead of 50 %" in told
    assert "Rated 2 instead of 3 on “quick”, Bar hang would fall behind or level." in told
    assert "It stays first with “steady” from 33.4 % up" in told


def test_an_override_is_told_with_its_reason(episode: Write) -> None:
    (hang, _), facts = rows(episode, BEHIND, hang="grade: A, override: A bar is in every park.")
    assert "Its ratings earn C, and it is given A. The reason given: A bar is in every park." in " ".join(
        grade_words.told(hang, facts)
    )
    assert "No weighting puts it first." in " ".join(grade_words.told(hang, facts))


def test_who_is_not_first_learns_with_which_weight_it_would_be(episode: Write) -> None:
    (_, row), facts = rows(episode, AHEAD)
    assert (
        "It would come first with “steady” up to 33.3 % or “quick” from 66.7 % up, the other questions keeping their "
        "proportions." in " ".join(grade_words.told(row, facts))
    )
