"""The script as one row of words: where each stands, and which phrases of a list it holds."""

from __future__ import annotations

from itertools import pairwise

from scriptkit.computing.delivery.lines import Phrases, entries, holds, lines, offset, words_of
from tests.scripts import Write, with_hang


def test_words_are_in_lower_case_and_a_hyphen_parts_them() -> None:
    assert words_of("The Single-leg raise’s 1.5 kg, don't!") == [
        "the",
        "single",
        "leg",
        "raise's",
        "1.5",
        "kg",
        "don't",
    ]


def test_a_word_is_found_again_in_its_text() -> None:
    text = "“Well”, the single-leg raise"
    assert text[offset(text, 3) :] == "leg raise"


def test_every_line_knows_how_many_words_came_before_it(episode: Write) -> None:
    made = lines(with_hang(episode, "One two three. [aside] Four. [aside]").segments)
    assert all(later.before == earlier.before + len(earlier.words) for earlier, later in pairwise(made))


def test_of_phrases_the_longest_counts_and_a_plural_is_the_same() -> None:
    known = Phrases(["motor", "motor unit", "soleus"])
    words = words_of("The motor unit and the motors of a soleus")
    assert [known.at(words, number)[0] for number in range(len(words))] == [
        "", "motor unit", "", "", "", "motor", "", "", "soleus",
    ]  # fmt: skip


def test_an_entry_has_what_stands_behind_its_colon() -> None:
    assert entries(("hypertrophy: muscle growth",)) == {"hypertrophy": "muscle growth"}


def test_most_of_a_meaning_in_whatever_form_will_do() -> None:
    little = frozenset({"the", "under", "one", "big"})
    assert holds(["it", "is", "a", "flat", "muscles"], "the flat muscle under the big one", little)
    assert not holds(["a", "muscle"], "the flat muscle under the big one", little)
