"""The script: what the author wrote as spoken text, the sentences it becomes, and their times."""

from bisect import bisect_right
from typing import NamedTuple

from scriptkit.model.base import Spot
from scriptkit.model.outline import Claim, Link, Shot
from scriptkit.places import Place, SourceFile, Text


class SegmentText(NamedTuple):
    """The text of a segment before Jinja.

    `template` is what Jinja gets; codes in it (see `scriptkit.codes`) say where paragraphs, marks and words come from.
    `origin`: episode, channel or stock.
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
    """One spoken sentence. `cues` are marks and where in `text` they stand; `pieces` say where its words come from."""

    text: str
    place: Place
    cues: tuple[tuple[int, Mark], ...] = ()
    links: tuple[Link, ...] = ()
    opinion: bool = False
    aside: bool = False
    sponsor_says: bool = False
    cautions: tuple[str, ...] = ()
    override: bool = False
    claim: Claim | None = None  # the claim of the outline that this sentence says
    pieces: tuple[
        tuple[int, Text | None, int], ...
    ] = ()  # offset in text; words of the outline or None; offset there or in the file
    origin: SourceFile | None = None  # the author's file, or None for stock text
    home: Place = Place("outline.yaml", 1, 1)  # where stock words are reported

    def place_of(self, offset: int) -> Place:
        """Where the character at `offset` was written: the author's file, the outline's words, or the exercise."""
        number = max(0, bisect_right(self.pieces, offset, key=lambda piece: piece[0]) - 1)
        if not self.pieces:
            return self.home
        start, words, at = self.pieces[number]
        if words is not None:
            return words.place(at + offset - start)
        return self.origin.place(at + offset - start) if self.origin is not None and at >= 0 else self.home


class Paragraph(NamedTuple):
    """A paragraph of speech. `loose` are pictures and pauses that are a paragraph by themselves."""

    sentences: tuple[Sentence, ...]
    loose: tuple[tuple[int, Mark], ...] = ()
    optional: int | None = None
    first_line: int = 0
    last_line: int = 0


class Segment(NamedTuple):
    """One segment, in running order. `file` is where its text stands; `drafted` if the stock text was used."""

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
    unsaid: tuple[Claim, ...] = ()  # claims of the outline that a text of the author's own does not say

    @property
    def sentences(self) -> tuple[Sentence, ...]:
        """All sentences of the segment."""
        return tuple(sentence for paragraph in self.paragraphs for sentence in paragraph.sentences)


class Judgement(NamedTuple):
    """What kind of sentence it is, how strongly it is worded, and the words that gave it away.

    `sure` tells the two tiers of claims apart: it needs a source or an opinion mark, or it may be a claim.
    `asserted` is false where others are reported to say it, or a benefit is denied and nothing else is stated.
    """

    kind: str
    strength: str | None
    flags: tuple[str, ...]
    triggers: tuple[str, ...]
    numbers: tuple[float, ...]
    sure: bool = True
    asserted: bool = True


class TimedSentence(NamedTuple):
    """A sentence laid on the clock. Seconds from the start of the episode; `silent` is inside start to end.

    `closing` is the ordinary pause at its end, which `spoken` holds.
    """

    start: float
    end: float
    spoken: float
    silent: float
    closing: float = 0.0


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
    """The episode on the clock. `pace` in words a minute; `pace_from`: outline, channel, takes, command or stock."""

    pace: float
    pace_from: str
    target: float | None
    total: float
    low: float
    high: float
    segments: tuple[TimedSegment, ...]
