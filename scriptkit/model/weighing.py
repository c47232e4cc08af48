"""What a statement stands on, how its words hold against that, and what people ruled of it."""

from typing import NamedTuple

from scriptkit.model.base import NOWHERE, Spot
from scriptkit.model.script import Judgement, Sentence
from scriptkit.places import Place


class Pair(NamedTuple):
    """One study behind one claim. The level of evidence belongs to the pair, not to the study.

    `level`: OCEBM 2011, 1 to 5, None where the register does not say enough. `certainty`: what this source alone gives
    the claim: high, moderate, low, very low, or "" where nothing can be said. `steps` say in words how it came about.
    """

    source: str
    finding: str
    stance: str
    level: int | None
    certainty: str
    steps: tuple[str, ...]


class Doubt(NamedTuple):
    """Something about a sentence and its sources that misleads a viewer. `kind` tells which check speaks of it.

    `said` are the words it is about, `source` the study, `has` what the register holds, in words.
    """

    kind: str
    place: Place
    said: str
    source: str
    has: str = ""


class Weight(NamedTuple):
    """What a sentence stands on: all sources that are linked to it.

    `outcome` is what it is about (growth, strength, activity, ...; "" unknown). `computed` is the certainty the tool
    works out, `certainty` what counts after the author's own judgement; "" where nothing can be said.
    """

    outcome: str
    pairs: tuple[Pair, ...]
    computed: str
    certainty: str
    steps: tuple[str, ...]
    doubts: tuple[Doubt, ...] = ()


class Worded(NamedTuple):
    """How firmly a sentence speaks of people in general.

    `step`: 4 results in, 3 probably, 2 may, 1 very uncertain, 0 it says nothing of people in general. `words`: offsets
    of the verb or hedge in the text. `report`: a past-tense report of what one study found in its own people.
    `banned`: offsets of certainty words that no evidence bears ("proves", "guaranteed"); `loose`: of words that are
    wrong mostly ("always", "significant"). `named`: the people of a report are named by then. `ready`: the sentence as
    its certainty bears it, where it is worded too firmly and that can be said safely.
    """

    step: int
    words: tuple[int, int] = (0, 0)
    negated: bool = False
    report: bool = False
    size: str = ""
    banned: tuple[tuple[int, int], ...] = ()
    loose: tuple[tuple[int, int], ...] = ()
    named: bool = True
    ready: str = ""


LADDER = {"high": 4, "moderate": 3, "low": 2, "very low": 1}  # certainty: the firmest step that it bears


class Headline(NamedTuple):
    """The title, the question or a promise, held to the same rules as a spoken sentence."""

    what: str
    text: str
    place: Place
    judgement: Judgement
    worded: Worded
    certainty: str  # of the best that is said in the script on the same matter; "" where nothing can be said
    exercise: str = ""
    backed: bool = True  # something in the script with a source speaks of the same matter


class NumberTrouble(NamedTuple):
    """A spoken number that is not the source's.

    `kind`: unknown, swapped, unit, rounding, points, finding (of another finding), converted, or unheld (the register
    has nothing to hold it against).
    """

    kind: str
    segment: str
    place: Place
    sentence: str
    said: str
    has: str  # what the source has instead, in words
    source: str


VERDICTS = ("verified", "changed", "unsupported", "no claim")


class Verdict(NamedTuple):
    """What a fact-checker ruled of a sentence: verified, changed or unsupported; or the author: no claim.

    `key` is the hash of the sentence it was ruled of, so it is void once the sentence changes.
    """

    key: str = ""
    sentence: str = ""
    segment: str = ""
    verdict: str = ""
    note: str = ""
    page: str = ""
    initials: str = ""
    date: str = ""
    at: Spot = NOWHERE


class VoidVerdict(NamedTuple):
    """A verdict on a sentence that is not in the script any more.

    `sentence` is what is said in its place now, of the segment `segment`; None where nothing like it is said.
    """

    verdict: Verdict
    segment: str
    sentence: Sentence | None
