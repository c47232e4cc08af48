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
    assert (grade_words.weight_from(0.5371), grade_words.weight_to(0.5379)) == ("53.8 %", "53.7 %")
    assert (grade_words.weight_from(0.5), grade_words.weight_to(0.5)) == ("50 %", "50 %")


def test_each_criterion_tells_which_rating_and_which_weight_would_make_another_grade(episode: Write) -> None:
    (hang, _), facts = rows(episode, AHEAD)  # 4.0: B+; bands: A 4.05, B 3.4
    steady, quick = grade_words.changes(hang, facts)
    assert (steady["by_rating"], quick["by_rating"]) == (["4: B-"], ["4: A", "2: B-"])
    assert steady["by_weight"] == ["from 52.5 %: A-", "at 41.6 % or less: B"]
    assert quick["by_weight"] == ["from 58.4 %: B", "at 47.5 % or less: A-"]


def test_the_way_to_its_rival_is_told_both_ways(episode: Write) -> None:
    (hang, _), facts = rows(episode, AHEAD)
    told = " ".join(grade_words.told(hang, facts))
    assert "Its closest rival is Ring row: it is 0.5 ahead of it." in told
    assert "level where “quick” weighs 66.7 % instead of 50 %" in told
    assert "A rating of 2 instead of 3 for “quick” of this one closes the gap as well." in told
    assert "It stays first with “steady” from 33.4 % up" in told


def test_an_override_is_told_with_its_reason(episode: Write) -> None:
    (hang, _), facts = rows(episode, BEHIND, hang="grade: A, override: A bar is in every park.")
    assert "Its ratings earn C, and it is given A. The reason given: A bar is in every park." in " ".join(
        grade_words.told(hang, facts)
    )
    assert "No weighting puts it first." in " ".join(grade_words.told(hang, facts))
