"""Words of evidence in a text, by list and kind."""

from __future__ import annotations

from scriptkit.computing.evidence.lexicon import MOST_LETTERS, Lexicon

WORDS = {
    "designs": ("non randomised/randomized = controlled", "randomised/randomized = randomised", "case series = series"),
    "outcomes": ("grow/grows = growth", "grows ... muscle = muscle"),
}


def test_words_are_found_with_their_kind_and_place() -> None:
    found = Lexicon(WORDS).look("It grows well.")["outcomes"]
    assert [(one.kind, one.start, one.end) for one in found] == [("growth", 3, 8)]


def test_the_longer_words_count() -> None:
    assert Lexicon(WORDS).kinds("outcomes", "It grows a little muscle.") == {"muscle"}


def test_a_stretch_inside_another_does_not_count() -> None:
    assert Lexicon(WORDS).kinds("designs", "Non-randomized trial") == {"controlled"}


def test_the_first_of_a_kind_is_given() -> None:
    lexicon = Lexicon(WORDS)
    assert lexicon.first("designs", "a case series, randomised later", "randomised") is not None
    assert lexicon.first("designs", "a case series", "randomised") is None


def test_entries_are_named_in_their_first_spelling() -> None:
    assert Lexicon(WORDS).names("designs") == ("non randomised", "randomised", "case series")


def test_what_stands_far_behind_is_not_looked_at() -> None:
    assert Lexicon(WORDS).kinds("outcomes", " " * MOST_LETTERS + "grows") == set()


def test_without_lists_nothing_is_found() -> None:
    assert Lexicon({}).look("It grows.") == {}
