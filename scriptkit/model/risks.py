"""What of a script may mislead a viewer about who pays, or may hurt one."""

from typing import NamedTuple

from scriptkit.places import Place


class Passage(NamedTuple):
    """A sponsor's passage and how it tells that it is paid for.

    `told` is where it is heard within the first seconds, None where it is not; `vague` are the words it tells it with
    and the market whose guidance calls them unclear. `first_claim` stands before `told`. `card` is how many seconds
    the words are on screen, None where they are not there at the start; `needed` how many it takes to read them.
    """

    segment: str
    place: Place
    first_words: str
    told: Place | None
    vague: tuple[tuple[str, str], ...]
    first_claim: Place | None
    card: float | None
    needed: float
    card_place: Place


class Agreed(NamedTuple):
    """Something that was agreed with a sponsor. `what`: disclosure, point, code or link.

    `said` is the segment, and the number of the sentence in it, in which it is spoken; `shown` the words on screen that
    have it. None where it is in none; `shown` is "" for what need not be shown.
    """

    what: str
    words: str
    said: tuple[str, int] | None
    shown: str | None


class Risk(NamedTuple):
    """Words that a check wants to see. `kind` says which, `words` are the author's, `hint` what stands against them."""

    kind: str
    segment: str
    place: Place
    words: str
    sentence: str
    hint: str = ""
