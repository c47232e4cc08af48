"""What was worked out of an episode, and the bundle of all of it that checks and pages get."""

from collections.abc import Mapping
from typing import TYPE_CHECKING, NamedTuple

from scriptkit.findings import Finding
from scriptkit.model.captions import Caption
from scriptkit.model.grades import Graded, GradeDoubt, Ranking, SecondRating
from scriptkit.model.outline import Caution, Episode, Shot, Step
from scriptkit.model.publishing import Limits, Publication
from scriptkit.model.register import Library, Source
from scriptkit.model.risks import Agreed, Passage, Risk
from scriptkit.model.script import Allow, Judgement, Segment, Timeline
from scriptkit.model.taking import AdLib, Clocked, Unmended
from scriptkit.model.weighing import Headline, NumberTrouble, Verdict, VoidVerdict, Weight, Worded
from scriptkit.places import Place, SourceFile

if TYPE_CHECKING:
    from scriptkit.model.shooting import Day


class Card(NamedTuple):
    """Words or a card on screen from `start` to `end`. `what`: card, or the label of a shot, which has its own corner.

    `reads` is how many seconds it takes to read, `asked` for how many the author wants it; None where it is until
    something else comes.
    """

    segment: str
    start: float
    end: float
    text: str
    place: Place
    reads: float
    what: str = "card"
    asked: float | None = None


class Graphic(NamedTuple):
    """Something on screen. `kind`: card, label, grade, checklist, disclosure or citation; `reads`: seconds to read."""

    kind: str
    segment: str
    text: str
    start: float
    end: float
    reads: float
    sources: tuple[str, ...]
    place: Place
    enough: bool = True


class Look(NamedTuple):
    """The colours of words on screen, and their contrast, 1 to 21."""

    text: str
    ground: str
    contrast: float


class PlannedShot(NamedTuple):
    """One shot of the list. `start` is None where it is filmed and the script's marks do not place it.

    `scene` is the number of its segment, `slow` how many times slower it is seen than it was filmed (nought
    where the capture rate cannot be read), `needs` the seconds on screen of the repetitions that are asked for.
    `heavy` where its load is no light one.
    """

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
    scene: int = 0
    slow: float = 1.0
    needs: float | None = None
    tempo_clear: bool = True  # false where a tempo is written and cannot be read
    heavy: bool = False


class Coverage(NamedTuple):
    """From where one exercise is filmed: by view, the numbers of the shots that show it so; `shots` in all.

    `needed` are the views without which it is not shown, `others` those that are asked for; both are not filmed.
    `no_twin` are the shots of a fault beside which the correct form is not filmed in the same framing.
    """

    exercise: str
    shots: int
    cells: Mapping[str, tuple[int, ...]]
    needed: tuple[str, ...]
    others: tuple[str, ...]
    no_twin: tuple[int, ...]


class SpokenGrade(NamedTuple):
    """A grade that is said or shown. It has to be the grade of one of `exercises`, or of `every` one.

    `maybe` where it is said as what the grade could be: "count speed for more, and it's a B"; `summed` where it is said
    as what the ratings come to: "by my checklist it earns a C".
    """

    segment: str
    place: Place
    text: str
    grade: str
    exercises: tuple[str, ...]
    every: bool
    maybe: bool = False
    summed: bool = False


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


class Stumble(NamedTuple):
    """What a listener trips over.

    `kind`: figures, number, word, term, trade, cue, opening, phrase, again, unnamed or late. `words` are what it is
    about, `sentence` where they stand, `hint` what would help: other words, a gloss, the figures, how often.
    """

    kind: str
    segment: str
    place: Place
    words: str
    sentence: str
    hint: str = ""


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
    library: Library  # the register, and what was read beside it
    cautions: Mapping[str, Caution]
    grades: Mapping[str, Graded]
    scale: tuple[str, ...]
    criteria_shares: Mapping[str, float]  # of all weights, by criterion; nothing where no weight counts
    bands: tuple[tuple[str, float], ...]  # grades, best first, with the lowest score that earns each
    grade_steps: tuple[tuple[str, float], ...]  # the same with plus and minus; nothing without a checklist
    grade_cap: str  # the best grade below a floor
    earnable: tuple[str, ...]  # grades that ratings can earn, without signs; none where nothing is graded by ratings
    twice: tuple[Step, ...]  # of the running order, what an earlier step has named already
    segments: tuple[Segment, ...]
    judgements: Mapping[str, tuple[Judgement, ...]]  # by segment, one a sentence
    weights: Mapping[str, tuple[Weight | None, ...]]  # by segment, one a sentence; None where no source is linked
    worded: Mapping[str, tuple[Worded, ...]]  # by segment, one a sentence
    headlines: tuple[Headline, ...]
    number_troubles: tuple[NumberTrouble, ...]
    verdicts: Mapping[str, Verdict]  # by the hash of the sentence: the latest on each, void ones too
    ruled: Mapping[str, tuple[Verdict | None, ...]]  # by segment, one a sentence; nothing where there is no verdict
    void_verdicts: tuple[VoidVerdict, ...]
    heard: Mapping[str, tuple[bool, ...]]  # by segment, one a sentence: does it hold words that tell it is opinion
    timeline: Timeline
    cards: tuple[Card, ...]
    card_look: Look
    shots: tuple[PlannedShot, ...]
    coverage: tuple[Coverage, ...]
    bare_faults: tuple[int, ...]  # numbers of the shots of a fault that no words on screen call one
    spoken_grades: tuple[SpokenGrade, ...]
    grade_doubts: tuple[GradeDoubt, ...]  # what the grades do not bear out
    ranking: Ranking | None  # how firm they are; None where nobody asked and no words claim it
    again: SecondRating | None
    spoken_cautions: tuple[CautionSpoken, ...]
    passages: tuple[Passage, ...]  # the sponsor's
    uncovered_markets: tuple[str, ...]  # of `markets:`, for which there is no list of clear words
    agreed: tuple[Agreed, ...]  # with the sponsor, and where it is kept
    sponsor_hash: str  # of what is spoken in the sponsor's passages, which an approval is held against
    risks: tuple[Risk, ...]  # words that may mislead about who pays, or may hurt a viewer
    bad_marks: tuple[BadMark, ...]
    tag_troubles: tuple[TagTrouble, ...]
    signs: tuple[UnsayableSign, ...]
    stumbles: tuple[Stumble, ...]
    word_counts: Mapping[str, tuple[int, ...]]  # by segment, one a sentence
    texts: Mapping[str, str]  # the author's segment texts: id to file name
    found: tuple[Finding, ...]  # by the reader
    allows: tuple[Allow, ...]
    files: Mapping[str, SourceFile]
    ad_libs: tuple[AdLib, ...] = ()  # claims of the recording that are not in the script
    unmended: tuple[Unmended, ...] = ()  # lines that were recorded otherwise
    clocked: Clocked | None = None  # where segments, times, shots and captions are those of a recording
    limits: Limits = Limits()
    publication: Publication = Publication()
    graphics: tuple[Graphic, ...] = ()  # the cards, and the sources of numbers that are spoken; for a build alone
    captions: tuple[Caption, ...] = ()  # worked out for a build alone
    day: "Day | None" = None  # of the shoot: for a build, the shooting order, and where the outline has a `day:`
