"""The rough cut: each shot a clip from frame to frame, and markers. Three formats are made from it."""

import re
from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import pairwise
from typing import NamedTuple

from scriptkit import timecode, times
from scriptkit.model import Facts, Judgement, PlannedShot, Sentence

REEL = "SET"  # with up to five letters of a set-up behind it; a bare BL would be read as black
COLOURS = {"Segment": "BLUE", "Claim": "YELLOW", "Card": "GREEN"}
# what XML cannot hold, what ends a line, and what turns the text around it
_UNSEEN = re.compile(
    "[\x00-\x08\x0e-\x1b\x7f-\x84\x86-\x9f\xad\u061c\u200e\u200f\u202a-\u202e\u2060-\u206f\ud800-\udfff\ufeff\ufff9-\uffff]"
)


class Clip(NamedTuple):
    """A shot from frame `start` up to frame `end`, which is the next one's, both counted from the cut's first.

    `missing` are the shots that would have stood at its start, or behind the last clip, and are shorter than a frame.
    """

    start: int
    end: int
    name: str
    reel: str
    shot: PlannedShot
    missing: tuple[PlannedShot, ...] = ()

    @property
    def remarks(self) -> tuple[str, ...]:
        """What a cutter has to know of it, in words."""
        return tuple(f"shot {one.number} (set-up {one.setup}) is shorter than a frame" for one in self.missing)


class Marker(NamedTuple):
    """A segment, a claim or a card, by the frames that it takes; one frame at least."""

    start: int
    end: int
    kind: str
    text: str
    detail: str

    @property
    def name(self) -> str:
        """Its kind and what it says."""
        return f"{self.kind}: {self.text}"


class Cut(NamedTuple):
    """Clips without a gap between them, up to the frame at which the clock ends; markers in their order.

    `rate` is written as the outline has it, `exact` is the same in frames a second; `first` is the frame that timecode
    counts as its first, `length` is in frames.
    """

    title: str
    rate: str
    exact: Fraction
    first: int
    length: int
    clips: tuple[Clip, ...]
    markers: tuple[Marker, ...]

    def timecode(self, frame: int) -> str:
        """The label of a frame counted from the first of the cut."""
        return timecode.label(self.first + frame, self.rate)

    def marked(self) -> Iterator[tuple[Clip, list[Marker]]]:
        """Each clip with the markers that stand in it."""
        at = 0
        for clip in self.clips:
            begins = at
            while at < len(self.markers) and self.markers[at].start < clip.end:
                at += 1
            yield clip, list(self.markers[begins:at])


def cut(facts: Facts) -> Cut:
    """The rough cut of an episode, by the plan or, after a take, by the recording.

    Each cut lies on the frame nearest to its time, so that nothing adds up: a clip is as long as the frames between.
    """
    rate = facts.episode.rate or times.STOCK_FRAME_RATE
    exact = times.frame_rate(rate)
    length = times.frame(facts.timeline.total, exact)
    made = Cut(
        plain(facts.episode.title) or "Untitled episode",
        rate,
        exact,
        timecode.start(facts.episode.start_timecode, rate),
        length,
        tuple(_clips(facts.shots, exact, length)),
        (),
    )
    if not made.clips:
        return made
    kinds = tuple(COLOURS)
    markers = sorted(_markers(facts, made), key=lambda one: (one.start, kinds.index(one.kind)))
    return made._replace(markers=tuple(markers))


def plain(text: str) -> str:
    """A text on one line, without the signs that nobody sees."""
    return " ".join(_UNSEEN.sub("", text).split())


def _clips(shots: Sequence[PlannedShot], exact: Fraction, length: int) -> Iterator[Clip]:
    placed = sorted(
        (min(length, times.frame(one.start, exact)), one.number, one) for one in shots if one.start is not None
    )
    if not placed or not length:
        return
    starts = [0, *(at for at, _, _ in placed[1:]), length]
    made: list[Clip] = []
    missing: list[PlannedShot] = []
    for (_, _, shot), (start, end) in zip(placed, pairwise(starts), strict=True):
        if start == end:
            missing.append(shot)
            continue
        made.append(Clip(start, end, _name(shot), REEL + shot.setup, shot, tuple(missing)))
        missing = []
    yield from made[:-1]
    yield made[-1]._replace(missing=made[-1].missing + tuple(missing))


def _name(one: PlannedShot) -> str:
    shot = one.shot
    return plain(" ".join((str(one.number), one.setup, shot.size, shot.plane, shot.form, shot.of)))


def _markers(facts: Facts, made: Cut) -> Iterator[Marker]:
    def marker(start: float, end: float, kind: str, text: str, detail: str = "") -> Marker:
        first = min(made.length - 1, times.frame(start, made.exact))
        last = max(first + 1, min(made.length, times.frame(end, made.exact)))
        return Marker(first, last, kind, plain(text), plain(detail) or f"until {made.timecode(last)}")

    for segment, timed in zip(facts.segments, facts.timeline.segments, strict=True):
        yield marker(timed.start, timed.start + timed.total, "Segment", segment.title, f"{segment.kind} {segment.id}")
        rows = zip(segment.sentences, facts.judgements[segment.id], timed.sentences, strict=True)
        for sentence, judgement, time in rows:
            if _wants_source(sentence, judgement):
                yield marker(time.start, time.end, "Claim", sentence.text, _standing(sentence))
    for one in facts.ad_libs if facts.clocked else ():
        yield marker(one.start, one.start, "Claim", one.text, "ad-lib, not in the script")
    for card in facts.graphics:
        yield marker(card.start, card.end, "Card", card.text, "source" if card.kind == "citation" else card.kind)


def _wants_source(sentence: Sentence, judgement: Judgement) -> bool:
    """Whether a sentence is a claim that stands on a source or lacks one; an editor has nothing to show at others."""
    owned = sentence.opinion or sentence.aside
    return judgement.kind == "claim" and not owned and (judgement.sure or bool(sentence.links))


def _standing(sentence: Sentence) -> str:
    """What a claim stands on, by ids."""
    links = [" ".join((link.id, link.finding, link.stance * (link.stance != "supports"))) for link in sentence.links]
    return "; ".join(links) or "no source"
