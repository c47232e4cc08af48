"""Every noun: what the author wrote, then what was worked out. Frozen; no verbs.

Texts are `Text` (words that know their place). `at` is where a part stands and where each of its keys stands.
Seconds are floats, shares are 0 to 1, ids are strings. `None`, `""` and `()` mean: not given.
"""

from bisect import bisect_right
from collections.abc import Mapping
from types import MappingProxyType
from typing import NamedTuple

from scriptkit.findings import Finding
from scriptkit.places import Place, SourceFile, Text

EMPTY: Mapping[str, object] = MappingProxyType({})
SIZES = ("ELS", "LS", "FS", "MLS", "MS", "MCU", "CU", "BCU", "ECU", "INS", "2S", "OTS", "POV")
PLANES = ("side", "front", "back", "45", "top")
FORMS = ("correct", "fault")
STANCES = ("supports", "against", "null", "mixed")
KINDS = ("opening", "checklist", "group", "verdict", "sponsor", "caution", "recap", "close", "talk")


class Spot:
    """Where a part of the outline stands, and where the value of each of its keys stands."""

    __slots__ = ("keys", "place")

    def __init__(self, place: Place, keys: Mapping[str, Place] | None = None) -> None:
        self.place = place
        self.keys = keys or {}

    def of(self, key: str) -> Place:
        """The place of the value of `key`; of the part itself where it has no such key."""
        return self.keys.get(key, self.place)


NOWHERE = Spot(Place("outline.yaml", 1, 1))


# --- what the author wrote: the evidence register ----------------------------------------------------------------------


class StudyFinding(NamedTuple):
    """One finding of a study, in the study's own figures."""

    id: str = ""
    outcome: str = ""
    measure: str = ""
    site: str = ""
    result: str = ""
    values: Mapping[str, str] = EMPTY  # type: ignore[assignment]
    effect: float | None = None
    ci: tuple[float, ...] = ()
    baseline: str = ""
    absolute: str = ""
    certainty: str = ""
    quote: str = ""
    page: str = ""
    at: Spot = NOWHERE


class Source(NamedTuple):
    """One study, book or page that claims rest on."""

    id: str = ""
    title: str = ""
    authors: tuple[str, ...] = ()
    year: str = ""
    journal: str = ""
    publisher: str = ""
    doi: str = ""
    pmid: str = ""
    pmcid: str = ""
    isbn: str = ""
    url: str = ""
    accessed: str = ""
    status: str = ""
    design: str = ""
    comparison: str = ""
    timeframe: str = ""
    population: str = ""
    training: str = ""
    n: int | None = None
    n_units: int | None = None
    n_per_group: int | None = None
    duration_weeks: float | None = None
    registration: str = ""
    funding: str = ""
    invented: bool = False
    findings: Mapping[str, StudyFinding] = EMPTY  # type: ignore[assignment]
    note: str = ""
    at: Spot = NOWHERE


# --- what the author wrote: the outline -------------------------------------------------------------------------------


class Extent(NamedTuple):
    """A length of time, or a share of the whole runtime."""

    seconds: float | None = None
    share: float | None = None


class Runtime(NamedTuple):
    """The runtime to keep: `target` in seconds."""

    target: float | None = None
    tolerance: Extent = Extent(share=0.05)
    at: Spot = NOWHERE


class Link(NamedTuple):
    """A claim rests on a source, perhaps on one finding of it; `stance`: supports, against, null or mixed."""

    id: str = ""
    finding: str = ""
    stance: str = "supports"
    at: Spot = NOWHERE


class Claim(NamedTuple):
    """A sentence to be spoken, and what it rests on."""

    say: str = ""
    source: tuple[Link, ...] = ()
    opinion: bool = False
    sponsor_wording: bool = False
    backing: tuple[str, ...] = ()
    certainty: str = ""
    reason: str = ""
    at: Spot = NOWHERE


class Rating(NamedTuple):
    """How an exercise does on one criterion. A link with the id `opinion` owns it as the author's judgement."""

    score: float | None = None
    range: tuple[float, ...] = ()
    source: tuple[Link, ...] = ()
    at: Spot = NOWHERE


class Shot(NamedTuple):
    """A picture to film."""

    size: str = ""
    plane: str = ""
    of: str = ""
    reps: int | None = None
    place: str = ""
    kit: tuple[str, ...] = ()
    form: str = ""
    angle: str = ""
    move: str = ""
    lens: str = ""
    fps: str = ""
    tempo: str = ""
    people: tuple[str, ...] = ()
    load: str = ""
    priority: str = ""
    takes: int | None = None
    safety: str = ""
    at: Spot = NOWHERE


class Use(NamedTuple):
    """How common an exercise is: a share of 0 to 1, by which source, seen when."""

    share: float | None = None
    source: tuple[Link, ...] = ()
    seen: str = ""
    at: Spot = NOWHERE


class Exercise(NamedTuple):
    """One exercise of the list."""

    id: str = ""
    name: str = ""
    say: str = ""
    group: str = ""
    grade: str = ""
    ratings: Mapping[str, Rating] = EMPTY  # type: ignore[assignment]
    override: str = ""
    use: Use | None = None
    cautions: tuple[str, ...] = ()
    claims: tuple[Claim, ...] = ()
    shots: tuple[Shot, ...] = ()
    at: Spot = NOWHERE


class Criterion(NamedTuple):
    """One question of the checklist. A rating below `floor` caps the grade. Anchors say what a rating means."""

    id: str = ""
    ask: str = ""
    weight: float | None = None
    anchors: Mapping[str, str] = EMPTY  # type: ignore[assignment]
    floor: float | None = None
    at: Spot = NOWHERE


class Checklist(NamedTuple):
    """What a grade stands on. `scale` is lowest and highest rating."""

    id: str = ""
    scale: tuple[float, ...] = (1.0, 5.0)
    cap: str = ""
    signs: bool = True
    criteria: Mapping[str, Criterion] = EMPTY  # type: ignore[assignment]
    at: Spot = NOWHERE


class Approval(NamedTuple):
    """The sponsor's approval of a text."""

    hash: str = ""
    by: str = ""
    on: str = ""
    at: Spot = NOWHERE


class Window(NamedTuple):
    """Where in the runtime a passage may stand."""

    after: Extent | None = None
    before: Extent | None = None
    at: Spot = NOWHERE


class Length(NamedTuple):
    """The least and most seconds of a passage."""

    least: float | None = None
    most: float | None = None
    at: Spot = NOWHERE


class Sponsor(NamedTuple):
    """Who pays, and what was agreed."""

    name: str = ""
    segment: str = "sponsor"
    disclosure: str = ""
    code: str = ""
    link: str = ""
    valid: tuple[str, ...] = ()
    must_say: tuple[str, ...] = ()
    never_say: tuple[str, ...] = ()
    length: Length | None = None
    window: Window | None = None
    approved: Approval | None = None
    claims: tuple[Claim, ...] = ()
    at: Spot = NOWHERE


class Interest(NamedTuple):
    """Something the presenter earns from, or owns."""

    who: str = ""
    what: str = ""
    at: Spot = NOWHERE


class Term(NamedTuple):
    """A trade word: a gloss for the ear, and how it is said."""

    gloss: str = ""
    say: str = ""
    at: Spot = NOWHERE


class Caution(NamedTuple):
    """A line that keeps a viewer from harm. `stock` where the outline did not write it."""

    id: str = ""
    line: str = ""
    stock: bool = False
    at: Spot = NOWHERE


class Step(NamedTuple):
    """One entry of the running order: a segment, or a group with its name."""

    segment: str = ""
    group: str = ""
    optional: int | None = None
    target: float | None = None
    kind: str = ""
    shots: tuple[Shot, ...] = ()
    at: Spot = NOWHERE


class Erratum(NamedTuple):
    """Something that was wrong in a published episode."""

    was: str = ""
    now: str = ""
    why: str = ""
    where: str = ""
    since: str = ""
    at: Spot = NOWHERE


class Episode(NamedTuple):
    """The outline, with the channel's keys joined in."""

    title: str = ""
    name: str = ""
    question: str = ""
    audience: str = ""
    markets: tuple[str, ...] = ()
    publish: str = ""
    runtime: Runtime = Runtime()
    pace: float | None = None
    paces: Mapping[str, float] = EMPTY  # type: ignore[assignment]
    evidence: tuple[Text, ...] = ()
    promises: Mapping[str, str] = EMPTY  # type: ignore[assignment]
    checklist: Checklist | None = None
    grades: Mapping[str, float] = EMPTY  # type: ignore[assignment]
    exercises: Mapping[str, Exercise] = EMPTY  # type: ignore[assignment]
    sponsor: Sponsor | None = None
    interests: tuple[Interest, ...] = ()
    terms: Mapping[str, Term] = EMPTY  # type: ignore[assignment]
    cautions: Mapping[str, Caution] = EMPTY  # type: ignore[assignment]
    rate: str = ""
    coverage: tuple[str, ...] = ()
    retractions: tuple[Text, ...] = ()
    crossref: tuple[Text, ...] = ()
    errata: tuple[Erratum, ...] = ()
    order: tuple[Step, ...] = ()
    sources: Mapping[str, Source] = EMPTY  # type: ignore[assignment]
    at: Spot = NOWHERE


# --- what the author wrote: spoken text --------------------------------------------------------------------------------


class SegmentText(NamedTuple):
    """The text of a segment before Jinja: `template` is what Jinja gets, in which codes (see `computing.codes`)
    say where paragraphs, marks and pieces of text come from. `origin`: episode, channel or stock.
    """

    id: str
    origin: str
    file: SourceFile
    template: str
    paragraphs: tuple[tuple[int, int], ...] = ()  # first and last line of each, from 1


class Allow(NamedTuple):
    """`# allow: NAME because REASON`: on lines `first` to `last` of a file, findings of that name are meant."""

    name: str
    reason: str
    place: Place
    first: int
    last: int


class Words(NamedTuple):
    """The lists of `scriptkit/words/`: name of the list to its entries."""

    lists: Mapping[str, tuple[str, ...]]


# --- what was worked out -----------------------------------------------------------------------------------------------


class Graded(NamedTuple):
    """A grade and what it stands on. Scores are on the checklist's scale; `grade` is what is said: the given one, else the earned one."""

    id: str
    score: float | None
    score_low: float | None
    score_high: float | None
    earned: str | None
    given: str | None
    grade: str
    capped: tuple[str, ...] = ()  # criteria whose floor caps the grade
    missing: tuple[str, ...] = ()  # criteria without a rating


class Mark(NamedTuple):
    """A mark of spoken text. `name` is its first word; `text` is what stands behind the name or the colon."""

    name: str
    raw: str
    place: Place
    seconds: float | None = None
    ids: tuple[str, ...] = ()
    links: tuple[Link, ...] = ()
    number: int | None = None
    text: str = ""
    shot: Shot | None = None


class Sentence(NamedTuple):
    """One spoken sentence. `cues` are its marks and where in `text` they stand; `spots` finds places for words of it."""

    text: str
    place: Place
    cues: tuple[tuple[int, Mark], ...] = ()
    links: tuple[Link, ...] = ()
    opinion: bool = False
    aside: bool = False
    sponsor_says: bool = False
    cautions: tuple[str, ...] = ()
    override: bool = False
    pieces: tuple[
        tuple[int, Text | None, int], ...
    ] = ()  # offset in text; words of the outline or None; offset there or in the file
    origin: SourceFile | None = None  # the author's file, or None for stock text
    home: Place = Place("outline.yaml", 1, 1)  # where stock words are reported

    def place_of(self, offset: int) -> Place:
        """Where the character at `offset` of the text was written: the author's file, the outline's words, or the exercise."""
        number = max(0, bisect_right(self.pieces, offset, key=lambda piece: piece[0]) - 1)
        if not self.pieces:
            return self.home
        start, words, at = self.pieces[number]
        if words is not None:
            return words.place(at + offset - start)
        return self.origin.place(at + offset - start) if self.origin is not None and at >= 0 else self.home


class Paragraph(NamedTuple):
    """A paragraph of speech. `before` are marks that stand where no sentence does, with the number of the sentence they precede."""

    sentences: tuple[Sentence, ...]
    loose: tuple[tuple[int, Mark], ...] = ()
    optional: int | None = None
    first_line: int = 0
    last_line: int = 0


class Segment(NamedTuple):
    """One segment of the script, in running order. `file` is where its text stands, `drafted` where the stock text was used."""

    id: str
    kind: str
    title: str
    exercise: str
    paragraphs: tuple[Paragraph, ...]
    drafted: bool
    file: str
    at: Spot
    optional: int | None = None
    target: float | None = None
    shots: tuple[Shot, ...] = ()

    @property
    def sentences(self) -> tuple[Sentence, ...]:
        """All sentences of the segment."""
        return tuple(sentence for paragraph in self.paragraphs for sentence in paragraph.sentences)


class Judgement(NamedTuple):
    """What kind of sentence it is, how strongly it is worded, and the words that gave it away."""

    kind: str
    strength: str | None
    flags: tuple[str, ...]
    triggers: tuple[str, ...]
    numbers: tuple[float, ...]


class TimedSentence(NamedTuple):
    """A sentence laid on the clock. Seconds from the start of the episode; `silent` is inside start to end."""

    start: float
    end: float
    spoken: float
    silent: float


class TimedMark(NamedTuple):
    """A shot, card, hold or pause laid on the clock."""

    segment: str
    mark: Mark
    start: float
    sentence: int  # number of the sentence in its segment it stands in or before


class TimedSegment(NamedTuple):
    """A segment laid on the clock."""

    id: str
    kind: str
    start: float
    spoken: float
    silent: float
    total: float
    low: float
    high: float
    words: int
    sentences: tuple[TimedSentence, ...]
    marks: tuple[TimedMark, ...]


class Timeline(NamedTuple):
    """The whole episode laid on the clock. `pace` in words a minute; `pace_from`: outline, channel, command or stock."""

    pace: float
    pace_from: str
    target: float | None
    total: float
    low: float
    high: float
    segments: tuple[TimedSegment, ...]


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
    """A Jinja tag of spoken text that could not be rendered. `kind`: syntax, name, forbidden or bound."""

    kind: str
    message: str
    words: str
    place: Place
    segment: str


class UnsayableSign(NamedTuple):
    """A sign that cannot be read aloud, and what to write instead."""

    sign: str
    hint: str
    place: Place
    sentence: str


class CautionSpoken(NamedTuple):
    """Whether a caution that an exercise calls for is spoken in its segment or before. `state`: said, reworded, softened or missing.
    `sentence` is the nearest one.
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
