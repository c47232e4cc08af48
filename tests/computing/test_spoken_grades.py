"""Grades are heard in many wordings, and a letter that is no grade is not taken for one."""

from __future__ import annotations

import time

import pytest

from scriptkit.computing.spoken_grades import Finder
from scriptkit.model import Episode, Exercise
from tests.scripts import Write, worked_out

LETTERS = """
    title: One
    exercises:
      hang: {name: Bar hang, grade: A-}
      row: {name: Ring row, grade: B}
      curl: {name: Wrist curl, grade: C}
    """
WORDS = "title: One\ngrades: {must-do: 4, good: 3, skip: 1}\nexercises: {hang: {name: Bar hang, grade: must-do}}\n"
NUMBERS = "title: One\ngrades: {10: 4.5, 9: 4, 8: 3}\nexercises: {hang: {name: Bar hang, grade: 9}}\n"


def heard(episode: Write, text: str, outline: str = LETTERS, where: str = "hang") -> list[str]:
    facts = worked_out(episode({"outline.yaml": outline, f"segments/{where}.md": text}))
    return [one.grade for one in facts.spoken_grades if one.segment == where]


@pytest.mark.parametrize(
    ("text", "grade"),
    [
        ("I give it a B plus.", "B+"),
        ("I give it an a minus.", "A-"),
        ("I give it {{ grade | spoken | a }}.", "A-"),
        ("That's an A.", "A"),
        ("My grade: B.", "B"),
        ("My final grade is B minus.", "B-"),
        ("B for me.", "B"),
        ("Solid B.", "B"),
        ("B tier, in my book.", "B"),
        ("A minus, then.", "A-"),
        ("I rate it B.", "B"),
        ("I'd call it a B.", "B"),
        ("Call it a C, all in all.", "C"),
        ("For me it's a C.", "C"),
        ("It earns a solid B for that.", "B"),
        ("[screen: Grade B+] Hi.", "B+"),
        ("[screen: {{ exercise.name }}: {{ grade }}] Hi.", "A-"),
        ("[screen: A−] Hi.", "A-"),
    ],
)
def test_a_letter_is_heard_as_a_grade(episode: Write, text: str, grade: str) -> None:
    assert heard(episode, text) == [grade]


@pytest.mark.parametrize(
    "text",
    [
        "Take vitamin D.",
        "Make a C shape with your hand.",
        "Plan B is a table.",
        "Grab an A frame.",
        "A type B fibre.",
        "Vitamin B plus iron.",
        "Go from point A to point B.",
        "Give it a go.",
        "That's a plus.",
        "A plus is that it is quick.",
        "This is a D-handle.",
        "That's a C-clamp.",
        "I use a size C band here.",
        "It's a B-side.",
        "Is it a B?",
        "[screen: Exhibit A] Hi.",
        "I give it a C or so much as a look.",
        "It's a must.",
        "It makes a D with the bar.",
    ],
)
def test_a_letter_that_is_no_grade_is_left_alone(episode: Write, text: str) -> None:
    assert heard(episode, text) == []


@pytest.mark.parametrize(
    ("text", "grades"),
    [
        ("My grade is good.", ["good"]),
        ("I give it a must-do.", ["must-do"]),
        ("Grade: skip.", ["skip"]),
        ("You can skip it on a bad day.", []),
        ("It's good for the grip.", []),
        ("That's good.", []),
    ],
)
def test_a_scale_of_words_is_heard_where_a_grade_is_given(episode: Write, text: str, grades: list[str]) -> None:
    assert heard(episode, text, WORDS) == grades


@pytest.mark.parametrize(
    ("text", "grades"),
    [
        ("I give it a nine.", ["9"]),
        ("I give it eight.", ["8"]),
        ("My grade is 9.", ["9"]),
        ("It's an eight from me.", ["8"]),
        ("Grade 10.", ["10"]),
        ("I do eight reps.", []),
        ("Rest for 10 seconds.", []),
        ("I give it 10 minutes.", []),
        ("Hold it for a ten count.", []),
    ],
)
def test_a_scale_of_numbers_is_heard_where_a_grade_is_given(episode: Write, text: str, grades: list[str]) -> None:
    assert heard(episode, text, NUMBERS) == grades


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("Bar hang gets an A minus, ring row a B and wrist curl a C.", {"hang": "A-", "row": "B", "curl": "C"}),
        ("An A minus for the bar hang and a B for wrist curl.", {"hang": "A-", "curl": "B"}),
        ("Bar hang, A minus. Ring row, B.", {"hang": "A-", "row": "B"}),
        ("A minus: bar hang. B: ring row, wrist curl.", {"hang": "A-", "row": "B", "curl": "B"}),
        ("The ring row and the wrist curl get a B.", {"row": "B", "curl": "B"}),
        ("- Bar hang: A-\n- Ring row: C", {"hang": "A-", "row": "C"}),
        ("[screen: Bar hang A-, Ring row C] Hi.", {"hang": "A-", "row": "C"}),
        ("[screen: A-: Bar hang, Ring row] Hi.", {"hang": "A-", "row": "A-"}),
        ("Only the bar hang got an A minus; the rest got a C or less.", {"hang": "A-"}),
        ("Somebody got a B.", {}),
    ],
)
def test_in_a_recap_each_grade_is_of_the_names_beside_it(episode: Write, text: str, meant: dict[str, str]) -> None:
    facts = worked_out(episode({"outline.yaml": LETTERS, "segments/recap.md": text}))
    said = [one for one in facts.spoken_grades if one.segment == "recap"]
    assert {name: one.grade for one in said for name in one.exercises} == meant
    assert all(one.every for one in said)


def test_another_exercise_named_in_passing_may_have_its_own_grade(episode: Write) -> None:
    facts = worked_out(
        episode(
            {
                "outline.yaml": LETTERS,
                "segments/hang.md": "Unlike the ring row with its clear B, this one gets an A minus.",
            }
        )
    )
    (said,) = (one for one in facts.spoken_grades if one.segment == "hang")
    assert (said.exercises, said.every) == (("hang", "row"), False)


def test_of_two_names_one_inside_the_other_the_longer_counts(episode: Write) -> None:
    outline = (
        "title: One\nexercises: "
        "{raise: {name: Ledge raise, grade: A}, single: {name: Single-leg ledge raise, grade: B}}\n"
    )
    facts = worked_out(episode({"outline.yaml": outline, "segments/recap.md": "The single-leg ledge raises get a B."}))
    assert [one.exercises for one in facts.spoken_grades if one.segment == "recap"] == [("single",)]


@pytest.mark.parametrize("where", ["hang", "close"])
@pytest.mark.parametrize(
    "text",
    [
        "It's worse than the C I gave the ring row.",
        "It beats the C that I've just given to the ring row.",
        "It's far from the C the ring row got.",
    ],
)
def test_a_grade_that_was_given_to_another_is_that_ones_wherever_it_is_said(
    episode: Write, text: str, where: str
) -> None:
    facts = worked_out(episode({"outline.yaml": LETTERS, f"segments/{where}.md": text}))
    (said,) = (one for one in facts.spoken_grades if one.segment == where)
    assert (said.grade, said.exercises, said.every) == ("C", ("row",), True)


@pytest.mark.parametrize("sign", ["-", "−", "–"])
def test_a_minus_is_a_minus_however_it_is_written(episode: Write, sign: str) -> None:
    outline = LETTERS.replace("A-", f"A{sign}")
    assert heard(episode, f"[screen: A{sign}] I give it {{{{ grade | spoken | a }}}}. My grade: A{sign}.", outline) == [
        "A-",
        "A-",
        "A-",
    ]


def test_a_name_is_heard_in_several_of_a_kind_and_a_longer_name_goes_before_one_inside_it() -> None:
    names = {"row": "Row", "ring": "Ring row", "press": "Press", "side": "(Side) row"}
    finder = Finder(Episode(exercises={key: Exercise(name=name) for key, name in names.items()}), ["A", "B"])
    text = "Ring rows, rows, presses, a (side) row, an arrow and rowing."
    heard_there = [(text[start:end], key) for start, end, key in finder.names_in(text)]
    assert heard_there == [("Ring rows", "ring"), ("rows", "row"), ("presses", "press"), ("(side) row", "side")]


def test_thousands_of_names_take_no_more_than_their_number() -> None:
    exercises = {f"n{number}": Exercise(name=f"{chr(97 + number % 26)}{number} raise") for number in range(20_000)}
    finder = Finder(Episode(exercises=exercises), ["A", "B"])
    start = time.process_time()
    for number in range(2_000):
        text = f"A good raise is one that you can do each day without a sore heel, as the z{number * 26 + 25} raise is."
        assert len(finder.names_in(text)) == (number * 26 + 25 < len(exercises))
    assert time.process_time() - start < 1  # a twentieth; where each name was looked for, more than two
