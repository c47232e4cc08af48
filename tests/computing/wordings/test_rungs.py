"""The ladder's lists are looked up whole: the longest phrase counts, praise and fixed phrases bring nothing down."""

from __future__ import annotations

from scriptkit.computing.hearing.clauses import compile_cues, take_apart
from scriptkit.computing.wordings.rungs import find, hedges, rungs
from scriptkit.reading.words import load

WORDS = load()
LADDER = rungs(WORDS, compile_cues(WORDS))


def lowered(text: str) -> list[tuple[int, str]]:
    """The steps that words of a sentence bring it down to, with those words."""
    speech = take_apart(text, LADDER.cues)
    marks = hedges(speech, find(speech.words, LADDER))
    return [(step, " ".join(speech.words[a:b])) for step, a, b in marks]


def test_the_longest_phrase_counts() -> None:
    assert lowered("The evidence is very uncertain.") == [(1, "very uncertain")]


def test_a_fixed_phrase_is_no_hedge() -> None:
    assert lowered("You may as well hang.") == []
    assert lowered("Climbers are more likely to hang.") == []


def test_praise_is_no_hedge() -> None:
    assert lowered("A pilot study shows growth.") == []
    assert lowered("Promising early work shows growth.") == []


def test_hearsay_is_not_vouched_for() -> None:
    assert (0, "people say") in lowered("People say that it works.")
    assert lowered("The study says that it works.") == []


def test_each_list_has_words() -> None:
    names = ("ladder-probably", "ladder-may", "ladder-uncertain", "ladder-disowned", "banned-certainty")
    assert all(WORDS[name] for name in names)
    assert "proven" in LADDER.strict
