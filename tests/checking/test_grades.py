"""Ratings fit the checklist, grades fit the scale, and what is spoken fits the outline."""

from __future__ import annotations

import pytest

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


def test_a_checklist_that_cannot_be_read_is_told_once_and_not_again_at_each_rating(episode: Write) -> None:
    exercises = "exercises: {hang: {name: Bar hang, ratings: {long: 4, quick: 2}}}"
    for checklist in ("[{id: long, ask: Long?}]", "{criteria: [long, quick]}"):
        facts = worked_out(episode({"outline.yaml": f"title: One\nchecklist: {checklist}\n{exercises}\n"}))
        assert len(found(facts, "wrong-type")) == 1
        assert found(facts, "unknown-criterion") == []


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


def test_a_real_minus_or_a_dash_in_the_outline_is_a_minus(episode: Write) -> None:
    for sign in ("−", "–"):
        outline = f"title: One\ngrades: {{A{sign}: 4, B: 3}}\nexercises: {{hang: {{name: Bar hang, grade: A{sign}}}}}\n"
        facts = with_hang(episode, "Bar hang. I give it an A minus. [screen: A-] [opinion]", outline)
        assert facts.grades["hang"].grade == "A-"
        assert found(facts, "unknown-grade") == found(facts, "grade-spoken-otherwise") == []


def test_what_ratings_earn_without_grades_is_the_scale(episode: Write) -> None:
    outline = (RATED % ("C", "must-do", "long: 4, quick: 4")).replace("    grades: {A: 4, B: 3, C: 1}\n", "")
    facts = worked_out(episode({"outline.yaml": outline}))
    assert found(facts, "unknown-grade") == [("outline.yaml:4:33", '"must-do" is no grade of this outline.')]
    assert helps(facts, "unknown-grade")[0].startswith("Its grades: A, B, C, D, F")
    assert found(worked_out(episode({"outline.yaml": outline.replace("must-do", "B+")})), "unknown-grade") == []


def test_a_grade_of_several_names_has_to_be_right_for_every_one(episode: Write) -> None:
    files = {"outline.yaml": GRIP, "segments/recap.md": "The bar hang and the ring row get a B. [opinion]"}
    assert [place for place, _ in found(worked_out(episode(files)), "grade-spoken-otherwise")] == [
        "segments/recap.md:1:37"
    ]


def test_a_grade_given_earlier_is_held_against_the_one_it_was_given_to(episode: Write) -> None:
    facts = with_hang(episode, "The bar hang is better than the A minus I gave the ring row. [opinion]")
    (told,) = found(facts, "grade-spoken-otherwise")
    assert '"Ring row"' in told[1]


def test_what_the_ratings_earn_may_be_said_beside_a_grade_of_another_mind(episode: Write) -> None:
    from tests.ranked import BEHIND, says

    hang = "grade: A, override: For me a bar in every park counts for more."
    text = "By my checklist it earns %s. [opinion] For me a bar in every park counts for more. [override]"
    for earned, told in (("a C", 0), ("a D", 1)):
        assert len(found(says(episode, text % earned, BEHIND, hang=hang), "grade-spoken-otherwise")) == told


@pytest.mark.parametrize(("floor", "told"), [("1", 1), ("0", 1), ("1.5", 0), ("5", 0), ("6", 1)])
def test_a_floor_that_no_rating_or_every_rating_is_below_is_told(episode: Write, floor: str, told: int) -> None:
    outline = (RATED % ("C", "A", "long: 2, quick: 4")).replace("{ask: Quick?}", f"{{ask: Quick?, floor: {floor}}}")
    messages = [message for _, message in found(worked_out(episode({"outline.yaml": outline})), "floor-off-scale")]
    assert len(messages) == told
    assert all(f"and {'every' if floor == '6' else 'no'} rating is below it" in one for one in messages)


def test_a_floor_off_the_scale_and_a_range_beside_its_rating_are_told(episode: Write) -> None:
    outline = RATED % ("C", "A", "long: {score: 2, range: [3, 5]}, quick: 4")
    facts = worked_out(episode({"outline.yaml": outline.replace("{ask: Quick?}", "{ask: Quick?, floor: 6}")}))
    assert [message for _, message in found(facts, "floor-off-scale")] == [
        'The floor of "quick" is 6, and every rating is below it; the scale is 1 to 5.'
    ]
    assert [message for _, message in found(facts, "range-without-rating")] == [
        '"Bar hang" has 2 for "long", and a range of 3 to 5.'
    ]


def test_a_weight_may_be_written_as_a_percentage(episode: Write) -> None:
    outline = RATED % ("C", "A", "long: 5, quick: 1")
    facts = worked_out(
        episode(
            {
                "outline.yaml": outline.replace("{ask: Quick?}", "{ask: Quick?, weight: 30 %}").replace(
                    "{ask: Long?}", "{ask: Long?, weight: 70%}"
                )
            }
        )
    )
    assert facts.criteria_shares == {"long": 0.7, "quick": 0.3}
