"""A grade that its ratings do not earn gives its reason and speaks it."""

from __future__ import annotations

import pytest

from tests.ranked import BEHIND, CLEAR, found, outline, says
from tests.scripts import Write, helps, worked_out

REASON = "override: A bar hangs in every park in town."


def test_a_grade_that_is_not_earned_is_told_at_the_grade(episode: Write) -> None:
    facts = worked_out(episode({"outline.yaml": outline(BEHIND, "grade: A")}))
    assert found(facts, "override-missing") == [
        ("outline.yaml:9:65", '"Bar hang" has the grade "A", and its ratings earn C.')
    ]
    assert "`override:`" in helps(facts, "override-missing")[0]


@pytest.mark.parametrize("grade", ["A", "A+"])
def test_an_earned_grade_with_or_without_its_sign_needs_no_reason(episode: Write, grade: str) -> None:
    assert found(worked_out(episode({"outline.yaml": outline(CLEAR, f"grade: {grade}")})), "override-missing") == []


def test_a_missing_rating_leaves_room_only_for_what_it_could_earn(episode: Write) -> None:
    unrated = outline(("5", "null", 3, 3), "grade: %s").replace(", quick: null", "")
    for grade, told in (("A", []), ("C", []), ("D", ["C to A+"])):
        facts = worked_out(episode({"outline.yaml": unrated % grade}))
        assert [message.partition("earn ")[2].rstrip(".") for _, message in found(facts, "override-missing")] == told


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("I give it an A. [opinion]", True),
        ("I give it an A. [opinion] A bar hangs in every park in town.", False),
        ("I give it an A. [opinion] Every park in town has a bar. [opinion]", False),
        ("I give it an A. [opinion] Every park has one. [opinion]", True),
        ("I give it an A. [opinion] Because I can. [override]", False),
    ],
)
def test_its_reason_is_spoken_in_most_of_its_words_or_by_its_mark(episode: Write, text: str, told: bool) -> None:
    facts = says(episode, text, BEHIND, hang=f"grade: A, {REASON}")
    assert bool(found(facts, "override-not-spoken")) is told


def test_a_draft_speaks_it(episode: Write) -> None:
    facts = worked_out(episode({"outline.yaml": outline(BEHIND, f"grade: A, {REASON}")}))
    assert found(facts, "override-not-spoken") == []


def test_a_reason_for_a_grade_that_is_earned_is_not_needed(episode: Write) -> None:
    facts = worked_out(episode({"outline.yaml": outline(CLEAR, f"grade: A, {REASON}")}))
    assert len(found(facts, "override-not-needed")) == 1


def test_better_everywhere_and_graded_lower_is_an_error(episode: Write) -> None:
    facts = worked_out(episode({"outline.yaml": outline(CLEAR, "grade: C", "grade: B")}))
    assert [message for _, message in found(facts, "better-graded-lower")] == [
        '"Bar hang" is rated as good as "Ring row" or better on every question, and gets "C" where "Ring row" gets "B".'
    ]


@pytest.mark.parametrize(("hang", "row"), [("B", "B"), ("B-", "B"), ("A", "B")])
def test_the_same_band_is_not_lower(episode: Write, hang: str, row: str) -> None:
    facts = worked_out(episode({"outline.yaml": outline(CLEAR, f"grade: {hang}", f"grade: {row}")}))
    assert found(facts, "better-graded-lower") == []


def test_better_in_one_and_worse_in_another_is_no_dominance(episode: Write) -> None:
    facts = worked_out(episode({"outline.yaml": outline((5, 3, 3, 4), "grade: D", "grade: A")}))
    assert found(facts, "better-graded-lower") == []


def test_with_a_reason_it_is_a_note(episode: Write) -> None:
    facts = worked_out(episode({"outline.yaml": outline(CLEAR, "grade: A", f"grade: A, {REASON}")}))
    assert found(facts, "override-against-order") == []
    facts = worked_out(episode({"outline.yaml": outline(CLEAR, f"grade: C, {REASON}", "grade: B")}))
    assert found(facts, "better-graded-lower") == []
    assert len(found(facts, "override-against-order")) == 1
