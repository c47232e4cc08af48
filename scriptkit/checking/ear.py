"""Checks of what a listener trips over: figures, words misheard, trade words, cues read aloud."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.rules import Found, check
from scriptkit.model import Facts, Stumble
from scriptkit.wording import listed, quoted


def stumbles(facts: Facts, kind: str) -> Iterator[Stumble]:
    """Those of one kind, in the order of the script."""
    return (one for one in facts.stumbles if one.kind == kind)


@check("warning", "record")
def too_many_figures(facts: Facts) -> Iterator[Found]:
    """A sentence has more figures than a listener can keep.

    A listener cannot look back. Two results in a sentence can be held side by side; whom a study had and for how long
    may be told with them, a range counts as one, and small counts such as "three sets" are light.

    Rule: ours, after the common practice of broadcast writing to keep to one or two figures a sentence.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        I held it for 41 seconds, then 50 seconds, then 62 seconds, and on the towel for 19 seconds. [aside]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        I went from 41 seconds to 62 seconds. [aside] On the towel I lasted 19. [aside]
    """
    for one in stumbles(facts, "figures"):
        yield (
            one.place,
            f"{quoted(one.sentence)} has {one.hint} figures to keep in the ear: {listed(one.words.split('; '), 6)}.",
            "Say two of them, and give the others a sentence of their own or a card: `[screen: ...]`.",
        )


@check("warning", "record")
def word_misheard(facts: Facts) -> Iterator[Found]:
    """A word is easily heard as another one that turns the sense round.

    "Abduction" and "adduction" are opposites and sound alike, and captions get them wrong as well. Plain words near
    its first use settle it for the rest of the episode, and so does a `say:` under `terms:`, which tells the presenter
    how to say it.

    Rule: ours; the list of pairs is words/ear-traps.txt.

    Bad:
        title: One
        exercises: {side: {name: Side raise}}
        --- segments/side.md
        I like this one for abduction. [opinion]
    Good:
        title: One
        exercises: {side: {name: Side raise}}
        --- segments/side.md
        I like this one for abduction, moving the leg out and away from the body. [opinion]
    """
    for one in stumbles(facts, "word"):
        word, _, other = one.words.partition(" / ")
        yield (
            one.place,
            f"{quoted(word)} in {quoted(one.sentence)} is easily heard as {quoted(other)}.",
            f"Say {quoted(one.hint)} with it or in its place, or give it a `say:` under `terms:`.",
        )


@check("note", "record")
def number_misheard(facts: Facts) -> Iterator[Found]:
    """A number is easily heard as another one: fifteen and fifty.

    It is told once a segment, and only where it matters: a percentage that rests on a source, or both numbers close
    together. A card with the number settles it.

    Rule: ours; numbers in -teen and -ty are a common trap for the ear.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources: {tarn-2023: {title: Timed hangs, year: 2023, invented: true}}
        --- segments/hang.md
        In one trial hang time rose by 15 percent. [from tarn-2023]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources: {tarn-2023: {title: Timed hangs, year: 2023, invented: true}}
        --- segments/hang.md
        [screen: plus 15 percent] In one trial hang time rose by 15 percent. [from tarn-2023]
    """
    for one in stumbles(facts, "number"):
        said, _, other = one.hint.partition(" / ")
        yield (
            one.place,
            f"{quoted(said)} in {quoted(one.sentence)} is easily heard as {quoted(other)}.",
            f"Show it: `[screen: {one.words} ...]`. Or say it slowly and once more in other words.",
        )


@check("warning", "record")
def term_not_explained(facts: Facts) -> Iterator[Found]:
    """A term of the outline is not explained where it is spoken first.

    Most words of its gloss have to be heard within about 25 words of its first use in the running order. When the
    order changes, another place may be the first, so this is worked out anew each time.

    Rule: ours; to explain a trade word at its first use is common practice, the distance is our choice.

    Bad:
        title: One
        terms: {soleus: {gloss: the flat muscle under the big one}}
        exercises: {seated: {name: Seated raise}}
        --- segments/seated.md
        I do this one for the soleus. [opinion]
    Good:
        title: One
        terms: {soleus: {gloss: the flat muscle under the big one}}
        exercises: {seated: {name: Seated raise}}
        --- segments/seated.md
        I do this one for the soleus, {{ terms.soleus.gloss }}. [opinion]
    """
    for one in stumbles(facts, "term"):
        yield (
            one.place,
            f"{quoted(one.words)} is spoken here for the first time and not explained near it.",
            f"Say what it is right there: {quoted(f'{one.words}, {one.hint}')}.",
        )


@check("note", "record")
def trade_word_unexplained(facts: Facts) -> Iterator[Found]:
    """A word of the trade is used and never explained.

    Viewers who do not know it lose the thread. If yours all know it, leave it.

    Rule: ours; the list of words is words/trade-words.txt.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        I don't do this one for hypertrophy. [opinion]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        I don't do this one for hypertrophy, which is muscle growth. [opinion]
    """
    for one in stumbles(facts, "trade"):
        yield (
            one.place,
            f"{quoted(one.words)} is a word of the trade, and nothing explains it.",
            f"Say {quoted(one.hint)} with it or in its place, or put it under `terms:` with a `gloss:`.",
        )


@check("note", "record")
def cue_spoken(facts: Facts) -> Iterator[Found]:
    """A cue in round brackets would be read aloud.

    Only square brackets hold what is not spoken.

    Rule: ours; marks are the square brackets of this tool.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        The bar hang. (Look at Bob.) I like this one. [opinion]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        The bar hang. [shot MS front: presenter, looking at Bob] I like this one. [opinion]
    """
    for one in stumbles(facts, "cue"):
        yield (
            one.place,
            f"{quoted(one.words)} looks like a cue, and it would be read aloud.",
            "Make it a mark such as `[shot ...: ...]`, `[pause 1s]` or `[hold 2s: ...]`, or a comment: `<!-- ... -->`.",
        )
