"""What the author wrote in the outline and in channel.yaml."""

from collections.abc import Mapping
from typing import NamedTuple

from scriptkit.model.base import EMPTY, NOWHERE, Spot
from scriptkit.model.call_sheet import CallSheet
from scriptkit.model.register import Source
from scriptkit.places import Text


class Extent(NamedTuple):
    """A length of time, or a share of the whole runtime."""

    seconds: float | None = None
    share: float | None = None

    def of(self, total: float) -> float:
        """The seconds that it is, where the whole takes `total` of them."""
        return self.seconds if self.seconds is not None else (self.share or 0.0) * total


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
    """A picture to film.

    `phase`: where the movement starts or ends, held; `label`: words on screen as long as it lasts; `minutes` to set it
    up; `wear`: what people have on; `sound`: sync, wild or MOS (without sound).
    """

    size: str = ""
    plane: str = ""
    of: str = ""
    reps: int | None = None
    place: str = ""
    kit: tuple[str, ...] = ()
    form: str = ""
    phase: str = ""
    label: str = ""
    angle: str = ""
    move: str = ""
    lens: str = ""
    fps: str = ""
    shutter: str = ""
    sound: str = ""
    tempo: str = ""
    people: tuple[str, ...] = ()
    wear: str = ""
    load: str = ""
    priority: str = ""
    takes: int | None = None
    minutes: float | None = None
    safety: str = ""
    note: str = ""
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
    title: str = ""
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


class PublicLink(NamedTuple):
    """An address for viewers; `paid` says how the presenter earns from it, "" where that is not said."""

    to: str = ""
    what: str = ""
    paid: str = ""
    at: Spot = NOWHERE


class ReferenceList(NamedTuple):
    """How references are written; `page` is the address where the whole list stands."""

    style: str = ""
    page: str = ""
    at: Spot = NOWHERE


class CardLook(NamedTuple):
    """How words on screen look, and whether a number that is spoken gets a card with its source."""

    text: str = ""
    ground: str = ""
    citations: bool | None = None
    at: Spot = NOWHERE


class Episode(NamedTuple):
    """The outline, with the channel's keys joined in."""

    title: str = ""
    name: str = ""
    question: str = ""
    answer: str = ""
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
    start_timecode: str = ""
    cards: CardLook = CardLook()
    coverage: tuple[str, ...] = ()
    retractions: tuple[Text, ...] = ()
    crossref: tuple[Text, ...] = ()
    errata: tuple[Erratum, ...] = ()
    references: ReferenceList = ReferenceList()
    links: tuple[PublicLink, ...] = ()
    credits: tuple[str, ...] = ()
    order: tuple[Step, ...] = ()
    day: CallSheet | None = None
    sources: Mapping[str, Source] = EMPTY  # type: ignore[assignment]
    at: Spot = NOWHERE
