"""A second rating is read like any other file: what is wrong is told, the rest is kept."""

from __future__ import annotations

import pytest

from scriptkit import build
from tests.ranked import CLEAR, outline
from tests.running import run
from tests.scripts import Write

GOOD = """
    by: Q. N.
    on: 2026-02-24
    ratings:
      hang: {steady: 4, quick: {score: 2, answer: Measured with a watch.}}
    """


def test_who_when_ratings_and_answers(episode: Write) -> None:
    again = build.read(episode({"outline.yaml": outline(CLEAR), "ratings-again.yaml": GOOD})).again
    assert again is not None
    assert (again.by, again.on) == ("Q. N.", "2026-02-24")
    assert [(name, one.score, one.answer) for name, one in again.ratings["hang"].items()] == [
        ("steady", 4, ""),
        ("quick", 2, "Measured with a watch."),
    ]


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("", ""),
        ("ratings: [1, 2]\n", "wrong-type"),
        ("ratings: {hang: {steady: four}}\n", "wrong-type"),
        ("ratngs: {hang: {steady: 4}}\n", "unknown-key"),
        ("ratings: {hang: {steady: 4\n", "yaml-syntax"),
        ("ratings: {hang: {steady: 4, steady: 5}}\n", "key-twice"),
        (b"ratings: {hang: {steady: \xff}}\n", "not-utf8"),
        ("- 1\n", "wrong-type"),
    ],
)
def test_whatever_is_wrong_is_a_finding_in_that_file(episode: Write, text: str | bytes, name: str) -> None:
    folder = episode({"outline.yaml": outline(CLEAR), "ratings-again.yaml": text})
    found = run("check", folder, "--format", "json").json["findings"]
    assert {one["name"] for one in found if one["file"] == "ratings-again.yaml"} - {"missing-value"} == (
        {name} if name else set()
    )


def test_one_rating_that_cannot_be_read_leaves_the_others(episode: Write) -> None:
    text = "ratings: {hang: {steady: four, quick: 2}}\n"
    again = build.read(episode({"outline.yaml": outline(CLEAR), "ratings-again.yaml": text})).again
    assert again is not None
    assert again.ratings["hang"]["quick"].score == 2
