"""Entries of word lists are found in speech: either word, a gap, a word that has to follow; and what denies them."""

from __future__ import annotations

import time

import pytest

from scriptkit.computing.safeguards.phrases import Phrases, denied, denied_inside, spots

WORDS = {
    "cures": (
        "fix/fixes + parts = train",
        "put/puts ... back in place",
        "no pain no gain",
        "runner's high",
        "no risk ! of",
    ),
    "parts": ("knee/knees", "lower back"),
    "denials": ("never", "no one", "without"),
}


def found(text: str) -> list[tuple[int, int]]:
    return [(hit.first, hit.last) for hit in Phrases(WORDS, "cures").find(spots(text))]


@pytest.mark.parametrize(
    ("text", "hits"),
    [
        ("It fixes your knees.", [(1, 1)]),
        ("It fixes a sore and stiff lower back.", [(1, 1)]),
        ("It fixes the rack.", []),
        ("Fix the rack, knees apart.", []),
        ("It puts your hip back in place.", [(1, 6)]),
        ("Put it there. Back in place, you go on.", []),
        ("No pain, no gain.", [(0, 3)]),
        ("A runner’s high.", [(1, 2)]),
        ("There is no risk.", [(2, 3)]),
        ("There is no risk of boredom.", []),
        ("", []),
    ],
)
def test_an_entry_is_found_as_it_is_written(text: str, hits: list[tuple[int, int]]) -> None:
    assert found(text) == hits


def test_a_quick_look_never_misses_what_a_close_one_finds() -> None:
    phrases = Phrases(WORDS, "cures")
    assert phrases.may_be_in("it fixes your knees")
    assert phrases.may_be_in("the runner's high")
    assert not phrases.may_be_in("it puts your hip in place")


def test_a_gap_may_hold_what_denies_the_entry() -> None:
    said = spots("It puts it not quite back in place.")
    (hit,) = Phrases(WORDS, "cures").find(said)
    assert denied_inside(said, hit)
    said = spots("No pain, no gain.")
    (hit,) = Phrases(WORDS, "cures").find(said)
    assert not denied_inside(said, hit)


def test_an_entry_may_say_what_to_say_instead() -> None:
    (hit,) = Phrases(WORDS, "cures").find(spots("It fixes knees."))
    assert hit.entry.hint == "train"


@pytest.mark.parametrize(
    ("text", "is_denied"),
    [
        ("It won't fix your knees.", True),
        ("No one fixes knees.", True),
        ("It will never, I promise, fix your knees.", True),
        ("It doesn't just fix your knees.", False),
        ("Nobody's magic, and it fixes your knees.", False),
        ("It isn't magic and it fixes your knees.", False),
        ("They won't tell you that it fixes your knees.", False),
        ("I won't tell you that it fixes your knees.", True),
        ("It fixes your knees.", False),
    ],
)
def test_a_not_counts_before_the_words_it_denies(text: str, is_denied: bool) -> None:
    said = spots(text)
    hit = Phrases(WORDS, "cures").find(said)[-1]
    assert denied(said, hit, Phrases(WORDS, "denials")) is is_denied


def test_a_word_knows_where_it_stands() -> None:
    text = "Then it FIXES knees."
    spot = spots(text)[2]
    assert (spot.word, text[spot.start : spot.end]) == ("fixes", "FIXES")


def test_a_very_long_sentence_takes_time_by_its_length() -> None:
    text = "fix put no pain knee " * 20000
    started = time.process_time()
    Phrases(WORDS, "cures").find(spots(text))
    assert time.process_time() - started < 10  # on a slow machine; it takes one second
