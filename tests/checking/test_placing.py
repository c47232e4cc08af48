"""A finding about one word of a mark points at the word."""

from __future__ import annotations

import pytest

from scriptkit.checking.placing import in_mark
from tests.scripts import Write, timed, with_hang


@pytest.mark.parametrize(
    ("text", "word", "place"),
    [
        ("One. [from fro]", "fro", (1, 12)),
        ("One. [from lind-2019,\nlind]", "lind", (2, 1)),
        ("One. [promise swap]", "swap", (1, 15)),
        ("One. [from {{ 'lind' ~ '-2019' }}]", "lind-2019", (1, 6)),
    ],
)
def test_the_word_is_found_and_where_a_tag_made_it_the_bracket(
    episode: Write, text: str, word: str, place: tuple[int, int]
) -> None:
    facts = with_hang(episode, text)
    (one,) = timed(facts).marks
    assert in_mark(facts, one.mark, word)[1:] == place


def test_a_word_behind_another_is_found_behind_that_one(episode: Write) -> None:
    facts = with_hang(episode, "It grew. [from mora-2022 hang, lind-2019 hang]")
    (mark,) = [one.mark for one in timed(facts).marks]
    assert in_mark(facts, mark, "hang", "lind-2019").column == 42
