"""What was worked out of an episode, and the bundle of all of it that checks and pages get."""

from collections.abc import Mapping
from typing import NamedTuple

from scriptkit.findings import Finding
from scriptkit.model.outline import Caution, Episode, Shot
from scriptkit.model.register import Source
from scriptkit.model.script import Allow, Judgement, Segment, Timeline
from scriptkit.model.weighing import Headline, NumberTrouble, Verdict, Weight, Worded
from scriptkit.places import Place, SourceFile


class Graded(NamedTuple):
    """A grade and what it stands on, on the checklist's scale. `grade` is what is said: the given, else the earned."""

    id: str
    score: float | None
    score_low: float | None
    score_high: float | None
    earned: str | None
    given: str | None
    grade: str
    capped: tuple[str, ...] = ()  # criteria whose floor caps the grade
    missing: tuple[str, ...] = ()  # criteria without a rating


class Card(NamedTuple):
    """Words or a card on screen from `start` to `end`."""

    segment: str
    start: float
    end: float
    text: str
    place: Place


class PlannedShot(NamedTuple):
    """One shot of the list. `start` is None where it is filmed and the script's marks do not place it."""

    number: int
    setup: str
    segment: str
    start: float | None
    duration: float | None
    shot: Shot
    talking: bool  # the default camera
    reps_fit: int | None
    cards: tuple[str, ...]
    sources: tuple[str, ...]
    place: Place


class SpokenGrade(NamedTuple):
    """A grade that is said or shown. It has to be the grade of one of `exercises`, or of `every` one."""

    segment: str
    place: Place
    text: str
    grade: str
    exercises: tuple[str, ...]
    every: bool


class BadMark(NamedTuple):
    """A bracket that is no mark (no `trouble`), or one that is not understood."""

    raw: str
    trouble: str
    place: Place
    segment: str


class TagTrouble(NamedTuple):
    """A Jinja tag of spoken text that could not be rendered. `kind`: syntax, name, forbidden or bound.

    `words` are those of the tag that it is about, `known` what could have stood there.
    """

    kind: str
    message: str
    words: str
    place: Place
    segment: str
    known: tuple[str, ...] = ()


class UnsayableSign(NamedTuple):
    """A sign that cannot be read aloud, and what to write instead."""

    sign: str
    hint: str
    place: Place
    sentence: str


class CautionSpoken(NamedTuple):
    """Whether a caution that an exercise calls for is spoken in its segment or before.

    `state`: said, reworded, softened or missing. `sentence` is the nearest one.
    """

    exercise: str
    caution: str
    state: str
    place: Place
    sentence: str


class Facts(NamedTuple):
    """All that is known of an episode. Checks and pages get this and nothing else."""

    episode: Episode
    register: Mapping[str, Source]
    cautions: Mapping[str, Caution]
    grades: Mapping[str, Graded]
    scale: tuple[str, ...]
    segments: tuple[Segment, ...]
    judgements: Mapping[str, tuple[Judgement, ...]]  # by segment, one a sentence
    weights: Mapping[str, tuple[Weight | None, ...]]  # by segment, one a sentence; None where no source is linked
    worded: Mapping[str, tuple[Worded, ...]]  # by segment, one a sentence
    headlines: tuple[Headline, ...]
    number_troubles: tuple[NumberTrouble, ...]
    verdicts: Mapping[str, Verdict]  # by the hash of the sentence
    heard: Mapping[str, tuple[bool, ...]]  # by segment, one a sentence: does it hold words that tell it is opinion
    timeline: Timeline
    cards: tuple[Card, ...]
    shots: tuple[PlannedShot, ...]
    spoken_grades: tuple[SpokenGrade, ...]
    spoken_cautions: tuple[CautionSpoken, ...]
    disclosed: bool | None  # whether the sponsor's passage starts with its disclosure; None where there is none
    bad_marks: tuple[BadMark, ...]
    tag_troubles: tuple[TagTrouble, ...]
    signs: tuple[UnsayableSign, ...]
    word_counts: Mapping[str, tuple[int, ...]]  # by segment, one a sentence
    texts: Mapping[str, str]  # the author's segment texts: id to file name
    found: tuple[Finding, ...]  # by the reader
    allows: tuple[Allow, ...]
    files: Mapping[str, SourceFile]
