"""Ratings fit the checklist, grades fit the scale, and what is spoken fits the outline."""

from __future__ import annotations

from tests.scripts import GRIP, Write, found, helps, with_hang, worked_out

RATED = """
    title: One
    checklist: {scale: [1, 5], cap: %s, criteria: {long: {ask: Long?}, quick: {ask: Quick?}}}
    grades: {A: 4, B: 3, C: 1}
    exercises:
      hang: {name: Bar hang, grade: %s, ratings: {%s}}
    """


def test_a_rating_for_another_question_off_the_scale_or_missing_is_told(episode: Write) -> None:
    facts = worked_out(episode({"outline.yaml": RATED % ("C", "A", "lnog: 4, quick: {score: 7}")}))
    assert [place for place, _ in found(facts, "unknown-criterion")] == ["outline.yaml:5:46"]
    assert found(facts, "rating-off-scale") == [
        ("outline.yaml:5:70", '"Bar hang" has 7 for "quick"; the scale is 1 to 5.')
    ]
    assert len(found(facts, "missing-rating")) == 1


def test_a_grade_may_have_a_sign_and_not_another_letter(episode: Write) -> None:
    assert found(worked_out(episode({"outline.yaml": RATED % ("C+", "B+", "")})), "unknown-grade") == []
    facts = worked_out(episode({"outline.yaml": RATED % ("E", "F", "")}))
    assert [place for place, _ in found(facts, "unknown-grade")] == ["outline.yaml:2:33", "outline.yaml:5:33"]


def test_without_grades_any_word_is_one(episode: Write) -> None:
    assert found(worked_out(episode({"outline.yaml": GRIP.replace("A-", "must-do")})), "unknown-grade") == []


def test_a_grade_spoken_otherwise_is_told_where_it_is_said(episode: Write) -> None:
    facts = with_hang(episode, "I like it. [opinion]\nI give it\na clear B plus. [opinion]")
    assert found(facts, "grade-spoken-otherwise") == [
        (
            "segments/hang.md:3:9",
            '"I give it a clear B plus." gives "Bar hang" the grade "B+", and the outline has "A-".',
        )
    ]
    assert "exercise.grade | spoken" in helps(facts, "grade-spoken-otherwise")[0]


def test_a_card_counts_as_speech_does(episode: Write) -> None:
    facts = with_hang(episode, "Well.\n[screen: Grade B] [aside]")
    assert [place for place, _ in found(facts, "grade-spoken-otherwise")] == ["segments/hang.md:2:1"]


def test_in_a_recap_each_name_has_its_own(episode: Write) -> None:
    facts = worked_out(episode({"outline.yaml": GRIP, "segments/recap.md": "- Bar hang: A-\n- Ring row: C\n"}))
    assert [place for place, _ in found(facts, "grade-spoken-otherwise")] == ["segments/recap.md:2:13"]
