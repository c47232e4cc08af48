"""Names of exercises and groups are found whole, and words of a first place belong to the right one."""

from __future__ import annotations

import pytest

from scriptkit.computing.grading.naming import Names, names_of, subject
from scriptkit.model import Episode, Exercise


@pytest.fixture
def names() -> Names:
    made = {
        "press": Exercise("press", "Floor press", group="Straight arm"),
        "row": Exercise("row", "Bar row", group="Bent arm"),
        "low": Exercise("low", "Low bar row"),
    }
    return names_of(Episode(exercises=made))


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("The floor press and the bar row.", ["press", "row"]),
        ("Floor presses are fine, bar rows too.", ["press", "row"]),
        ("The low bar row.", ["low"]),
        ("A crossbar row, a bar rowing machine.", []),
        ("", []),
    ],
)
def test_names_are_found_whole_and_the_longer_one_wins(names: Names, text: str, found: list[str]) -> None:
    assert [one.exercise for one in names.find(text)] == found


def test_a_group_is_named_with_or_without_its_hyphen(names: Names) -> None:
    assert (names.group("the bent-arm ones"), names.group("all of them")) == ("Bent arm", "")


@pytest.mark.parametrize(
    ("text", "words", "points_on", "whose"),
    [
        ("The bar row comes out on top.", "comes out on top", False, "row"),
        ("Unlike the floor press, the bar row comes out on top.", "comes out on top", False, "row"),
        ("Sorry, floor press: the winner is the bar row.", "the winner is", True, "row"),
        ("The bar row is the winner of the day.", "the winner", True, "row"),
        ("The winner: the bar row.", "The winner", True, "row"),
        ("It comes out on top.", "comes out on top", False, ""),
    ],
)
def test_whom_words_are_about(names: Names, text: str, words: str, points_on: bool, whose: str) -> None:
    start = text.index(words)
    assert subject(names.find(text), start, start + len(words), text, points_on=points_on) == whose


@pytest.mark.parametrize("name", ["", " ", "\t\n"])
def test_what_is_called_nothing_is_named_nowhere(name: str) -> None:
    empty = names_of(Episode(exercises={"a": Exercise("a", name, group=name), "b": Exercise("b", "Bar row")}))
    assert [one.exercise for one in empty.find("the bar row, and  nothing ")] == ["b"]
    assert empty.group("anything") == ""
