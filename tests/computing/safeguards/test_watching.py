"""Sentences with words that safety is judged by are kept, and each list is made ready once."""

from __future__ import annotations

from scriptkit.computing.safeguards.phrases import spots
from scriptkit.computing.safeguards.watching import Lists
from scriptkit.reading import words
from tests.scripts import Write, with_hang


def test_a_list_gives_what_nothing_before_it_denies() -> None:
    lists = Lists(words.load())
    assert lists.holds("referrals", spots("Ask your doctor before you hang."))
    assert not lists.holds("referrals", spots("You don't have to ask your doctor."))
    assert lists["referrals"] is lists["referrals"]


def test_a_word_inside_an_excepted_phrase_is_not_kept(episode: Write) -> None:
    assert with_hang(episode, "Not for the faint of heart.").risks == ()


def test_every_list_that_an_entry_needs_is_there() -> None:
    known = words.load()
    needed = {
        name
        for entries in known.values()
        for entry in entries
        for name in entry.partition(" = ")[0].partition(" + ")[2].strip().split("/")
        if name
    }
    assert needed - known.keys() == set()
