"""Checks of the words on screen."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from scriptkit.checking.rules import Found, check
from scriptkit.model import Facts
from scriptkit.wording import quoted

LEAST_CONTRAST = 4.5
TOLERANCE = 0.25  # seconds that nobody misses


@check("warning", "record")
def card_too_short(facts: Facts) -> Iterator[Found]:
    """Words on screen are gone before they can be read.

    They need a third of a second a word and one second to be found, and a second and a half at least. A card stands
    until the next one, until its segment ends, or for as long as it says.

    Rule: ours, after what captioners allow for reading.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        [shot FS side: bar hang] I like this one. [opinion]
        [screen 1s: Hang with straight arms and let go when the grip opens] It's cold here. [aside]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        [shot FS side: bar hang] I like this one. [opinion]
        [screen 1.6s: Straight arms] It's cold here. [aside]
    """
    drafted = {segment.id for segment in facts.segments if segment.drafted}  # nobody wrote those marks
    paid = {passage.card_place for passage in facts.passages}  # a disclosure's time is a matter of its own
    for card in facts.cards:
        if card.place in paid or card.segment in drafted:
            continue
        stands = card.end - card.start
        if stands + TOLERANCE < card.reads:
            yield (
                card.place,
                f"{quoted(card.text)} is on screen for {stands:.1f} s and takes {card.reads:.1f} s to read.",
                "Put the mark earlier, make the words fewer, or give it time with a `[pause]`.",
            )


@check("warning", "record")
def card_cut_off(facts: Facts) -> Iterator[Found]:
    """Words that are to stand for so many seconds are replaced by others before that.

    Two texts at one place cannot both be read, so the next one ends the one before it.

    Rule: ours.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        [shot FS side: bar hang] [screen 20s: Straight arms] I like this one. [opinion]
        [screen: Let go] It's cold here. [aside]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        [shot FS side: bar hang] [screen: Straight arms] I like this one a lot. [opinion]
        [screen: Let go] It's cold here. [aside]
    """
    cards = [card for card in facts.cards if card.what == "card"]
    for card, following in pairwise(cards):
        if card.asked is None or following.segment != card.segment:
            continue
        if following.start + TOLERANCE < card.start + card.asked:
            after = following.start - card.start
            yield (
                card.place,
                f"{quoted(card.text)} is to stand {card.asked:g} s; {quoted(following.text)} comes after {after:.1f}.",
                "Give it less time, or put the next mark later.",
            )


@check("warning", "record")
def card_contrast_low(facts: Facts) -> Iterator[Found]:
    """The colours of words on screen are too close to each other.

    Rule: WCAG 2.2, 1.4.3: a contrast of 4.5 to 1 at least.

    Bad:
        title: One
        cards: {text: "#999999", ground: "#FFFFFF"}
        exercises: {hang: {name: Bar hang}}
    Good:
        title: One
        cards: {text: "#595959", ground: "#FFFFFF"}
        exercises: {hang: {name: Bar hang}}
    """
    look = facts.card_look
    if look.contrast < LEAST_CONTRAST:
        yield (
            facts.episode.at.of("cards"),
            f"Words on screen in {look.text} on {look.ground} have a contrast of {look.contrast:.1f} to 1.",
            f"Make one darker or the other lighter, until it is {LEAST_CONTRAST} to 1.",
        )
