"""The times of a recording in the place of the plan's: segments in the order they were said, all on its clock."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from scriptkit import keys
from scriptkit.computing.captioning.pieces import Piece
from scriptkit.computing.timing import SENTENCE_END
from scriptkit.model import Segment, TimedMark, TimedSegment, TimedSentence, Timeline
from scriptkit.model.taking import Clocked, KeptRecording

Span = tuple[float, float]


class Clock(NamedTuple):
    """The script as it was recorded: its segments, their times, and each sentence with when it was heard."""

    segments: tuple[Segment, ...]
    timeline: Timeline
    pieces: tuple[Piece, ...]
    clocked: Clocked


def read(segments: Sequence[Segment], timeline: Timeline, kept: KeptRecording) -> Clock | None:
    """The clock of a recording; None where no sentence of the script is in it."""
    heard = {segment.id: _heard(segment, kept) for segment in segments}
    there = [segment for segment in segments if any(heard[segment.id])]
    there.sort(key=lambda segment: min(span[0] for span in heard[segment.id] if span))
    if not there:
        return None
    planned = {one.id: one for one in timeline.segments}
    starts = [min(span[0] for span in heard[segment.id] if span) for segment in there]
    ends = [*starts[1:], max(kept.length or 0.0, starts[-1])]
    timed, said = [], []
    for number, (segment, start, end) in enumerate(zip(there, starts, ends, strict=True)):
        spans = _filled(heard[segment.id], start, end)
        timed.append(_timed(planned[segment.id], spans, start, end))
        said += _pieces(segment, number, heard[segment.id])
    whole = timed[-1].start + timed[-1].total
    made = timeline._replace(total=whole, low=whole, high=whole, pace_from="take", segments=tuple(timed))
    return Clock(tuple(there), made, tuple(said), _clocked(segments, heard, kept))


def _heard(segment: Segment, kept: KeptRecording) -> list[Span | None]:
    """When each sentence of a segment was said; of two with the same words each once."""
    found: dict[str, list[Span]] = {}
    for one in kept.sentences:
        if one.segment == segment.id and one.start is not None and one.end is not None:
            found.setdefault(str(one.key), []).append((one.start, max(one.start, one.end)))
    made: list[Span | None] = []
    for sentence in segment.sentences:
        spans = found.get(keys.of(sentence.text), [])
        made.append(spans.pop(0) if spans else None)
    return made


def _filled(spans: Sequence[Span | None], start: float, end: float) -> list[Span]:
    """Times that never go back: what was not heard takes none, and what was said out of order waits for its turn."""
    made: list[Span] = []
    now = start
    for span in spans:
        first = min(end, max(now, span[0])) if span else now
        last = min(end, max(first, span[1])) if span else first
        made.append((first, last))
        now = last
    return made


def _timed(planned: TimedSegment, spans: Sequence[Span], start: float, end: float) -> TimedSegment:
    """A segment from its start to that of the next one; marks keep their place within their sentence."""
    sentences = []
    for number, (first, last) in enumerate(spans):
        until = spans[number + 1][0] if number + 1 < len(spans) else end
        spoken = min(until - first, last - first + SENTENCE_END)
        silent = max(0.0, until - first - spoken)
        sentences.append(TimedSentence(first, until, spoken, silent, max(0.0, spoken - (last - first))))
    spoken = sum(one.spoken for one in sentences)
    total = end - start
    marks = tuple(_moved(mark, planned, sentences, start, end) for mark in planned.marks)
    return planned._replace(
        start=start, spoken=spoken, silent=max(0.0, total - spoken), total=total, low=total, high=total,
        sentences=tuple(sentences), marks=marks,
    )  # fmt: skip


def _moved(
    mark: TimedMark, planned: TimedSegment, sentences: Sequence[TimedSentence], start: float, end: float
) -> TimedMark:
    if mark.sentence >= len(sentences):
        return mark._replace(start=end if sentences else start)
    was, now = planned.sentences[mark.sentence], sentences[mark.sentence]
    length = was.end - was.start
    share = min(1.0, max(0.0, (mark.start - was.start) / length)) if length > 0 else 0.0
    return mark._replace(start=now.start + share * (now.end - now.start))


def _pieces(segment: Segment, number: int, heard: Sequence[Span | None]) -> list[Piece]:
    """What captions are made of: each sentence that was heard, and when. Times never go back."""
    made: list[Piece] = []
    now, at = 0.0, 0
    for part, paragraph in enumerate(segment.paragraphs):
        for sentence in paragraph.sentences:
            span = heard[at]
            at += 1
            if span and span[1] > now:
                made.append(Piece(str(sentence.text), max(now, span[0]), span[1], (number, part)))
                now = span[1]
    return made


def _clocked(segments: Sequence[Segment], heard: Mapping[str, Sequence[Span | None]], kept: KeptRecording) -> Clocked:
    """Which segments were recorded from other words, and which not at all."""
    said: dict[str, set[str]] = {}
    for one in kept.sentences:
        said.setdefault(str(one.segment), set()).add(str(one.key))
    written = {str(one.segment): tuple(map(str, one.keys)) for one in kept.script}
    stale = []
    for segment in segments:
        now = tuple(keys.of(sentence.text) for sentence in segment.sentences)
        then = said.get(segment.id, set())
        # an earlier version kept only what was said: then a sentence that was added is not known from one left out
        changed = written[segment.id] != now if segment.id in written else not then.issubset(now)
        if then and changed:
            stale.append(segment.id)
    absent = tuple(segment.id for segment in segments if segment.sentences and not any(heard[segment.id]))
    return Clocked(tuple(stale), tuple(name for name in absent if name not in stale))
