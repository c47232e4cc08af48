"""Segments to chapters: short ones join a neighbour, so that each chapter is long enough to count as one."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from scriptkit.computing.publishing.pasting import Paste, cut
from scriptkit.model import Segment, Timeline
from scriptkit.model.publishing import Chapter, Limits
from scriptkit.places import Place
from scriptkit.times import thousandths

_ANNOUNCES = ("opening", "group")  # belong to what follows
_LOOKS_BACK = ("recap", "close")  # and these to what was before
_NAMED = ("verdict", "sponsor")  # stay in the title of a chapter whatever else is in it


class _Part(NamedTuple):
    """What may become a chapter: from and to in whole seconds, and the segments in it."""

    start: int
    end: int
    segments: tuple[Segment, ...]

    @property
    def length(self) -> int:
        return self.end - self.start


def chapters(segments: Sequence[Segment], timeline: Timeline, limits: Limits, paste: Paste) -> list[Chapter]:
    """The chapters, the first at 0; so few that they would not count are given all the same.

    Times are whole seconds and never later than the segment, so that no word of it is missed.
    """
    made: list[_Part] = []
    parts = _parts(segments, timeline)
    short: _Part | None = None  # waits for what follows
    for number, one in enumerate(parts):
        part = _joined(short, one) if short else one
        short = None
        if part.length >= limits.chapter_seconds:
            made.append(part)
        elif made and _goes_back(part, made[-1], parts[number + 1 : number + 2]):
            made[-1] = _joined(made[-1], part)
        else:
            short = part
    return [_chapter(part, limits, paste) for part in made]


def _joined(one: _Part, other: _Part) -> _Part:
    return _Part(one.start, other.end, one.segments + other.segments)


def _parts(segments: Sequence[Segment], timeline: Timeline) -> list[_Part]:
    if not segments:
        return []
    starts = [_whole(one.start) for one in timeline.segments]
    ends = [*starts[1:], _whole(timeline.total)]
    parts = [
        _Part(start, max(start, end), (segment,)) for start, end, segment in zip(starts, ends, segments, strict=True)
    ]
    return [parts[0]._replace(start=0), *parts[1:]]


def _whole(seconds: float) -> int:
    """The whole seconds that are over; a sum that falls short by less than can be written has them too."""
    return int(thousandths(seconds))


def _goes_back(part: _Part, before: _Part, after: Sequence[_Part]) -> bool:
    """Whether a short part joins what was before: it belongs there, nothing follows, or what follows is longer."""
    kinds = {segment.kind for segment in part.segments}
    if not after or kinds <= set(_LOOKS_BACK):
        return True
    return not kinds <= set(_ANNOUNCES) and before.length < after[0].length


def _chapter(part: _Part, limits: Limits, paste: Paste) -> Chapter:
    whole, place = _title(part.segments, paste)
    return Chapter(part.start, cut(whole, limits.chapter_title_characters), whole, place)


def _title(segments: Sequence[Segment], paste: Paste) -> tuple[str, Place]:
    """The titles of the segments that matter most to who looks for them, and where the first of them stands."""
    ranks = [_rank(segment) for segment in segments]
    named = [segment for segment, rank in zip(segments, ranks, strict=True) if rank == min(ranks)]
    titles = dict.fromkeys(paste.words(segment.title or segment.id, segment.at.place) for segment in named)
    return ", ".join(titles), named[0].at.place


def _rank(segment: Segment) -> int:
    return 0 if segment.kind in _NAMED else 2 if segment.kind in _ANNOUNCES + _LOOKS_BACK else 1
