"""Checks of whether a listener can follow: exercises named where they begin, and nothing said over and over."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.ear import stumbles
from scriptkit.checking.rules import Found, check
from scriptkit.model import Facts
from scriptkit.wording import quoted


@check("note", "record")
def exercise_not_named(facts: Facts) -> Iterator[Found]:
    """The text of an exercise does not say at its beginning which exercise it is.

    A viewer who joins there, or only listens, does not know what is talked of. One of the first two sentences should
    say the name, or a card show it; half of a long name is enough.

    Rule: ours; signposts are common practice in spoken presentations, the place is our choice.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        Oh, I love this. [opinion] My dog does too. [aside] I could go on all day. [aside] It's the bar hang. [aside]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        Oh, I love the bar hang. [opinion] My dog does too. [aside] I could go on all day. [aside]
    """
    for one in stumbles(facts, "unnamed"):
        yield (
            one.place,
            f"The text of {quoted(one.words)} never says its name.",
            "Say it in the first sentence; `{{ exercise.name | mid }}` puts it in.",
        )
    for one in stumbles(facts, "late"):
        yield (
            one.place,
            f"The text of {quoted(one.words)} says its name only in sentence {one.hint}.",
            "Say it in the first two sentences, or show it: `[screen: {{ exercise.name }}]`.",
        )


@check("note", "record")
def openings_alike(facts: Facts) -> Iterator[Found]:
    """Three exercises in a row begin with the same words.

    Rule: ours; a list that always begins alike sounds like a form being filled in.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}, row: {name: Ring row}, curl: {name: Wrist curl}}
        --- segments/hang.md
        Next up, the bar hang. [aside]
        --- segments/row.md
        Next up, the ring row. [aside]
        --- segments/curl.md
        Next up, the wrist curl. [aside]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}, row: {name: Ring row}, curl: {name: Wrist curl}}
        --- segments/hang.md
        We begin with the bar hang. [aside]
        --- segments/row.md
        Next up, the ring row. [aside]
        --- segments/curl.md
        And the wrist curl. [aside]
    """
    for one in stumbles(facts, "opening"):
        yield (
            one.place,
            f"{quoted(one.sentence)} is the third in a row to begin with {quoted(one.words)}.",
            "Begin one of them otherwise.",
        )


@check("note", "record")
def phrase_repeated(facts: Facts) -> Iterator[Found]:
    """The same phrase comes in three texts close to each other.

    What reports a study, gives a caution or speaks for the sponsor is left alone: it may be the same.

    Rule: ours; a phrase that stands out is heard as a habit from the third time on.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}, row: {name: Ring row}, curl: {name: Wrist curl}}
        --- segments/hang.md
        The bar hang works wonders on rainy afternoons, I think. [opinion]
        --- segments/row.md
        And the ring row works wonders on rainy afternoons too, I think. [opinion]
        --- segments/curl.md
        I think the wrist curl works wonders on rainy afternoons. [opinion]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}, row: {name: Ring row}, curl: {name: Wrist curl}}
        --- segments/hang.md
        The bar hang works wonders on rainy afternoons, I think. [opinion]
        --- segments/row.md
        I think the ring row is my favourite. [opinion]
        --- segments/curl.md
        The wrist curl is fine by me. [opinion]
    """
    for one in stumbles(facts, "phrase"):
        yield (
            one.place,
            f"{quoted(one.words)} comes here for the third time in texts close to each other.",
            "Put it in other words here.",
        )


@check("note", "record")
def word_repeated(facts: Facts) -> Iterator[Found]:
    """A word comes four times in three sentences.

    The words of the title, of exercises and of terms are left alone, since an episode has to say them.

    Rule: ours; the count is our choice.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        The bar hang is brutal. [opinion] It's brutal on skin, and brutal on pride. [opinion] A brutal thing. [opinion]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        The bar hang is brutal. [opinion] It's hard on skin, and hard on pride. [opinion]
    """
    for one in stumbles(facts, "again"):
        yield (
            one.place,
            f"{quoted(one.words)} is heard {one.hint} times in three sentences.",
            "Use another word for one or two of them.",
        )
