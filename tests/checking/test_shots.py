"""An exercise is shown by a mark in its text or by shots of the outline."""

from __future__ import annotations

import pytest

from tests.scripts import Write, found, with_hang, worked_out

ONE = "title: One\nexercises: {hang: {name: Bar hang%s}}\norder: [{segment: hang%s}]\n"


@pytest.mark.parametrize(
    ("text", "exercise", "step", "shown"),
    [
        ("Hello. [aside]", "", "", False),
        ("Hello. [shot FS: hang] [aside]", "", "", True),
        ("[shot FS: hang]\n\nHello. [aside]", "", "", True),
        ("Hello. [aside]", ", shots: [{size: FS, of: hang}]", "", True),
        ("Hello. [aside]", "", ", shots: [{size: FS, of: hang}]", True),
    ],
)
def test_shown_or_not(episode: Write, text: str, exercise: str, step: str, shown: bool) -> None:
    told = found(with_hang(episode, text, ONE % (exercise, step)), "exercise-not-shown")
    assert [place for place, _ in told] == ([] if shown else ["outline.yaml:2:13"])


def test_the_stock_text_shows_every_exercise(episode: Write) -> None:
    assert found(worked_out(episode({"outline.yaml": ONE % ("", "")})), "exercise-not-shown") == []
