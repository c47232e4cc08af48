"""Episodes of a few rated exercises, and what is found of what they say: what the tests of grades ask for."""

from __future__ import annotations

from scriptkit.model import Facts
from tests.scripts import Write, found, worked_out

TWO = """
    title: One
    audience: boulderers
    grades: {A: 4.05, B: 3.4, C: 2.6, D: 1}
    checklist:
      criteria:
        steady: {ask: Is it steady?, weight: 50, anchors: {1: no, 3: so so, 5: yes}}
        quick: {ask: Is it quick?, weight: 50, anchors: {1: no, 3: so so, 5: yes}}
    exercises:
      hang: {name: Bar hang, ratings: {steady: %s, quick: %s}%s}
      row: {name: Ring row, ratings: {steady: %s, quick: %s}%s}
    """
# how many of all weightings put the hang first: two in three, all, half, none
AHEAD, CLEAR, LEVEL, BEHIND = (5, 3, 3, 4), (5, 5, 3, 4), (5, 3, 3, 5), (3, 3, 5, 5)


def outline(ratings: tuple[object, ...], hang: str = "", row: str = "", more: str = "") -> str:
    """Two exercises with their ratings; `hang` and `row` are more keys of each."""
    one, other, third, fourth = ratings
    return TWO % (one, other, hang and f", {hang}", third, fourth, row and f", {row}") + more


def says(episode: Write, text: str, ratings: tuple[object, ...], *names: str, hang: str = "", row: str = "") -> Facts:
    """The episode in which the exercise `hang` has this text; `names` are other segments with the same text."""
    texts = {f"segments/{name}.md": text for name in names or ("hang",)}
    return worked_out(episode({"outline.yaml": outline(ratings, hang, row), **texts}))


def kinds(facts: Facts) -> list[str]:
    """What is doubtful about grades and places, in order."""
    return [one.kind for one in facts.grade_doubts]


__all__ = ["AHEAD", "BEHIND", "CLEAR", "LEVEL", "found", "kinds", "outline", "says"]
