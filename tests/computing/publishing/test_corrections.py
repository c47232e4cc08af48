"""An erratum finds its segment, and the words that are still wrong there."""

from __future__ import annotations

import pytest

from scriptkit.model import Correction
from tests.scripts import GRIP, Write, timed, with_hang

TEXT = "Hello there. They hung for 10 weeks. Then they\nrested. And rowed for ten weeks more."


def corrected(episode: Write, erratum: str, text: str = TEXT) -> Correction:
    (one,) = with_hang(episode, text, GRIP + f"\n    errata: [{{{erratum}}}]\n").publication.corrections
    return one


def test_it_has_the_title_and_start_of_its_segment(episode: Write) -> None:
    facts = with_hang(episode, TEXT, GRIP + "\n    errata: [{was: a, now: b, where: hang}]\n")
    (one,) = facts.publication.corrections
    assert (one.segment, one.title, one.start) == ("hang", "Bar hang", timed(facts).start)


def test_an_exercise_that_is_not_spoken_lends_its_name(episode: Write) -> None:
    facts = with_hang(episode, TEXT, GRIP + "\n    order: [hang]\n    errata: [{was: a, now: b, where: row}]\n")
    (one,) = facts.publication.corrections
    assert (one.segment, one.title, one.start) == ("", "Ring row", None)


@pytest.mark.parametrize(
    ("erratum", "column"),
    [
        ("was: ten weeks, now: eight weeks, where: hang", 14),
        ("was: Hung for 10 weeks., now: eight weeks", 14),  # nowhere is everywhere
        ("was: 'rested, and rowed', now: slept, where: hang", 38),  # from one sentence into the next
        ("was: eight weeks, now: ten weeks, where: hang", None),
        ("was: ten weeks, now: eight weeks, where: row", None),
        ("was: weeks, now: 10 weeks, where: hang", None),  # what is right holds what was wrong
        ("was: ung for, now: x, where: hang", None),  # whole words
        ("was: '...', now: x, where: hang", None),
    ],
)
def test_the_wrong_words_are_found_where_they_are_still_said(episode: Write, erratum: str, column: int | None) -> None:
    said = corrected(episode, erratum).said
    assert (said.column if said else None) == column
