"""From where an exercise is filmed follows from all its shots, those in marks and those of the outline."""

from __future__ import annotations

import pytest

from scriptkit.model import Coverage, Facts
from tests.scripts import Write, worked_out

OUTLINE = "title: One\nMORE\nexercises: {hang: {name: Bar hang}}\norder: [hang]\n"
ALL = """\
[shot FS side correct: hang] One. [aside] [shot FS front correct: hang] Two. [aside] [shot FS 45 correct: hang]
Three. [aside] [shot FS side start: hang] Four. [aside] [shot FS side end: hang] Five. [aside] [shot CU side: hand]
Six. [aside] [shot FS side fault: shrug; label Fault: shrug] Seven. [aside]
"""


def hang(episode: Write, text: str, more: str = "") -> Facts:
    return worked_out(episode({"outline.yaml": OUTLINE.replace("MORE\n", more), "segments/hang.md": text}))


def only(facts: Facts) -> Coverage:
    (one,) = facts.coverage
    return one


def test_an_exercise_that_is_filmed_from_everywhere_lacks_nothing(episode: Write) -> None:
    one = only(hang(episode, ALL))
    assert (one.needed, one.others, one.no_twin) == ((), (), ())
    assert one.cells["side"] == (1, 4, 5, 6, 7)


@pytest.mark.parametrize(
    ("text", "needed"),
    [
        ("[shot FS side: hang] One. [aside]", ()),
        ("[shot FS front: hang] One. [aside]", ("side",)),
        ("[shot FS: hang] One. [aside]", ("side",)),
        ("[shot FS side fault: hang; label Fault] One. [aside]", ("correct",)),
        ("[shot FS side fault: hang; label Fault] One. [aside] [shot FS side: hang] Two. [aside]", ("correct",)),
    ],
)
def test_side_and_correct_form_are_needed_and_beside_a_fault_correct_form_is_called_so(
    episode: Write, text: str, needed: tuple[str, ...]
) -> None:
    assert only(hang(episode, text)).needed == needed


def test_the_author_s_own_list_takes_the_place_of_ours(episode: Write) -> None:
    one = only(hang(episode, "[shot FS front: hang] One. [aside]", "coverage: [front, top]\n"))
    assert (one.needed, one.others) == ((), ("top",))


def test_an_exercise_without_a_shot_of_its_own_is_no_matter_of_coverage(episode: Write) -> None:
    assert hang(episode, "One. [aside]").coverage == ()


def test_a_drafted_text_plans_no_shots_of_the_author_s(episode: Write) -> None:
    assert worked_out(episode({"outline.yaml": OUTLINE.replace("MORE\n", "")})).coverage == ()


@pytest.mark.parametrize(
    ("correct", "no_twin"),
    [
        ("FS side correct: a", ()),
        ("MS side correct: a", (2,)),
        ("FS front correct: a", (2,)),
        ("FS side correct: a; lens 85", (2,)),
    ],
)
def test_a_twin_has_the_fault_s_size_side_and_lens(episode: Write, correct: str, no_twin: tuple[int, ...]) -> None:
    text = f"[shot {correct}] One. [aside] [shot FS side fault: b; label Fault: b] Two. [aside]"
    assert only(hang(episode, text)).no_twin == no_twin


@pytest.mark.parametrize(
    ("marks", "bare"),
    [
        ("[shot FS side fault: b; label Shoulders up]", ()),
        ("[screen: A common mistake] [shot FS side fault: b]", ()),
        ("[screen: Bar hang: A] [shot FS side fault: b]", (2,)),
        ("[shot FS side fault: b]", (2,)),
        ("[screen 1s: Fault] [shot FS side fault: b]", (2,)),
    ],
)
def test_a_fault_is_called_one_as_long_as_it_is_seen(episode: Write, marks: str, bare: tuple[int, ...]) -> None:
    text = f"[shot FS side correct: a] One. [aside] {marks} Two is a little longer than the first. [aside]"
    assert hang(episode, text).bare_faults == bare


def test_two_labels_in_turn_may_cover_a_fault(episode: Write) -> None:
    text = """\
[shot FS side correct: a] One. [aside] [screen: A fault] [shot FS side fault: b] Two is a little longer. [aside]
[screen: Still wrong] Three. [aside]"""
    assert hang(episode, text).bare_faults == ()
