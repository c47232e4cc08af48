"""Letter grades are found in what was said however a recogniser writes them, and an article is none."""

from __future__ import annotations

import re

import pytest

from scriptkit.computing.taking import letter_grades
from scriptkit.shipped import shipped
from tests.computing.taking.test_differing import OUTLINE, changes, held
from tests.scripts import Write, worked_out

GRADE = r"\{\{ (?:g|exercise)\.(?:grade|close) \| spoken \| a \}\}"


def stock_wordings() -> list[str]:
    """Each sentence of the stock templates that gives a grade, with GRADE where it stands."""
    texts = [(shipped("segments") / f"{name}.md").read_text(encoding="utf-8") for name in ("verdict", "recap")]
    found = [one for text in texts for one in re.findall(rf"[^{{}}%\]\n]*{GRADE}[^{{}}%\[\n]*", text)]
    made = [re.sub(GRADE, "GRADE", one).strip() for one in found]
    return list(dict.fromkeys(one if one.endswith(".") else f"{one} the bar hang." for one in made))


WORDINGS = stock_wordings()


def test_there_are_the_wordings_of_both_templates() -> None:
    assert "My next grade is GRADE: the bar hang." in WORDINGS
    assert "I've counted both sides, and my grade is GRADE." in WORDINGS
    assert len(WORDINGS) > 30


@pytest.mark.parametrize(
    ("grade", "others"),
    [
        ("a B", ("a C", "an A", "a B plus", "a B minus", "a B+", "a B-plus", "a bee minus", "a b plus")),
        ("a D plus", ("a D", "a D minus", "a C plus", "an eh plus")),
        ("an A", ("a B", "an A minus", "an A-", "a bee")),
    ],
)
def test_another_letter_or_sign_in_a_stock_wording_stops_a_release(
    episode: Write, grade: str, others: tuple[str, ...]
) -> None:
    text = "\n\n".join(f"{one.replace('GRADE', grade)} [opinion]" for one in WORDINGS)
    facts = worked_out(episode({"outline.yaml": OUTLINE, "segments/hang.md": text}))
    hang = next(one for one in facts.segments if one.id == "hang")
    for wording, part in zip(WORDINGS, hang.paragraphs, strict=True):
        alone = [hang._replace(paragraphs=(part,))]
        assert held(facts, alone, wording.replace("GRADE", grade)) == []
        for other in others:
            found = held(facts, alone, wording.replace("GRADE", other))
            assert [(one.weight, one.kind) for one in found] == [("stop", "grade")], (wording, other)


@pytest.mark.parametrize(
    ("text", "grades"),
    [
        ("my grade is a B.", ["b"]),
        ("I'd grade it a B minus", ["b minus"]),
        ("I give it B plus", ["b plus"]),
        ("it's a C um plus", ["c plus"]),
        ("an eh, minus", ["a minus"]),
        ("grade: A-", ["a minus"]),
        ("it's a D - and that's that", ["d"]),
        ("unlike the B for the row", ["b"]),
        ("an S-hook and a D-ring", []),
        ("it's a good one", []),
        ("that's a plus", []),
        ("I'd grade a row of it's", []),
    ],
)
def test_what_is_a_grade_in_what_was_said(text: str, grades: list[str]) -> None:
    assert [one.grade for one in letter_grades.heard(text)] == grades


def test_in_the_script_letters_are_capitals_and_known_by_their_place() -> None:
    assert letter_grades.written("Like a sea of pads, it's a C plus.") == [("c plus", 27)]


@pytest.mark.parametrize(
    ("script", "said"),
    [
        ("It's a good one for a day like that.", "It's a good one for the day like that."),
        ("With a B from me it stays low.", "With B from me it stays low."),
        ("It's like a sea of pads in there.", "It's like a field of pads in there."),
    ],
)
def test_words_that_give_no_other_grade_are_no_grade(episode: Write, script: str, said: str) -> None:
    assert "grade" not in [one.kind for one in changes(episode, f"{script} [opinion]", said)]


def test_a_grade_that_was_left_out_of_its_line_stops_a_release(episode: Write) -> None:
    script = "My grade is a B, and you're welcome to argue. [opinion]"
    assert [one.kind for one in changes(episode, script, "My grade, and you're welcome to argue.")] == ["grade"]


@pytest.mark.parametrize(
    ("script", "said", "told"),
    [
        ("For me, it's a C.", "For me, it's a C plus.", ("it's a C", "it's a C plus.")),
        ("For me, it's a D plus.", "For me, it's a D. Then", ("it's a D plus", "it's a D.")),
        (
            "For me it's a B, and that's it.",
            "For me it's a C, and that's it.",
            ("it's a B, and that's it", "it's a C, and that's it."),
        ),
    ],
)
def test_the_excerpts_have_the_grade_and_run_to_the_end_of_the_line(
    episode: Write, script: str, said: str, told: tuple[str, str]
) -> None:
    (one,) = changes(episode, f"{script} [opinion]", said)
    assert (one.script, one.said) == told
