"""The script for whoever reads it aloud: stretches of speech, and the holds and pauses between them, on the clock."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from scriptkit.model import Facts, Mark, Segment, Sentence, TimedSegment, TimedSentence
from scriptkit.rendering.rows import Row
from scriptkit.times import clock, thousandths
from scriptkit.wording import word_end

_SILENT = ("pause", "hold")


class _Part(NamedTuple):
    """Words said in one go, or a wait. `end` is where the voice ends: a sentence's own pause comes behind it."""

    kind: str
    text: str
    start: float
    end: float
    seconds: float = 0.0


def script(facts: Facts) -> list[Row]:
    """The segments in which something is said or waited for, with their paragraphs.

    A paragraph is a list of parts: `kind` is words, pause or hold, `start_s` and `end_s` are on the clock. `seconds` of
    a wait are those that are written, which a recording need not have kept.
    """
    made = []
    for segment, timed in zip(facts.segments, facts.timeline.segments, strict=True):
        paragraphs = list(_paragraphs(segment, timed, recorded=facts.clocked is not None))
        if paragraphs:
            rows = _on_the_clock(paragraphs, timed.start, timed.start + timed.total)
            made.append({"title": segment.title, "start": clock(timed.start), "paragraphs": rows})
    return made


def words_a_minute(facts: Facts) -> float:
    """The pace of the clock, its holds and pauses left out; 0 where nothing is said."""
    spoken = sum(one.spoken for one in facts.timeline.segments)
    # rounded, since sums of seconds differ in their last digits from one Python to the next
    return round(sum(one.words for one in facts.timeline.segments) * 60 / spoken, 3) if spoken else 0.0


def _paragraphs(segment: Segment, timed: TimedSegment, *, recorded: bool) -> Iterator[list[_Part]]:
    """Every mark of a segment stands on the clock, in the order of the text.

    Of a recording only sentences are measured: what is waited between two of them begins when the voice ends.
    """
    marks, sentences = iter(timed.marks), iter(timed.sentences)
    silence = timed.start
    for paragraph in segment.paragraphs:
        at = [next(marks).start for _ in paragraph.loose]
        parts = [
            _wait(mark, silence if recorded else start)
            for (_, mark), start in zip(paragraph.loose, at, strict=True)
            if mark.name in _SILENT
        ]
        for sentence in paragraph.sentences:
            said, starts = next(sentences), [next(marks).start for _ in sentence.cues]
            silence = said.start + said.spoken
            parts += _stretches(sentence, said, [silence] * len(starts) if recorded else starts, recorded=recorded)
        if parts:
            yield parts


def _wait(mark: Mark, start: float, share: float = 1.0) -> _Part:
    seconds = mark.seconds or 0.0
    return _Part(mark.name, mark.text, start, start + seconds * share, seconds)


def _stretches(sentence: Sentence, said: TimedSentence, starts: Sequence[float], *, recorded: bool) -> Iterator[_Part]:
    """A sentence in parts, cut at its holds and pauses; no word is cut in two.

    `starts` are those of its marks, which count for what stands behind its last word; what stands between its words
    comes in proportion to the letters before it.
    """
    whole = len(sentence.text)
    waits = [(*cue, start) for cue, start in zip(sentence.cues, starts, strict=True) if cue[1].name in _SILENT]
    voice = max(0.0, said.spoken - said.closing)
    inside = sum(mark.seconds or 0.0 for offset, mark, _ in waits if offset < whole)
    share = 1.0
    if recorded and inside:  # the time from the first word to the last holds the waits, however long they were
        share = min(1.0, voice / 2 / inside)
        voice -= inside * share
    done, now, waited = 0, said.start, 0.0
    for offset, mark, behind in waits:
        until = word_end(sentence.text, offset)
        ends = said.start + waited + voice * min(1.0, offset / max(1, whole))
        if sentence.text[done:until].strip():
            yield _Part("words", sentence.text[done:until].strip(), now, ends)
            done = until
        wait = _wait(mark, ends, share) if offset < whole else _wait(mark, behind)
        waited += wait.end - wait.start
        now = wait.end
        yield wait
    if sentence.text[done:].strip():
        yield _Part("words", sentence.text[done:].strip(), now, said.start + waited + voice)


def _on_the_clock(paragraphs: Sequence[Sequence[_Part]], start: float, end: float) -> list[list[Row]]:
    """Rows whose times never go back: no part lasts longer than until the next one, nor any beyond the segment."""
    starts = []
    for part in (part for paragraph in paragraphs for part in paragraph):
        start = min(end, max(start, part.start))
        starts.append(start)
    times = iter(zip(starts, [*starts[1:], end], strict=True))
    return [[_row(part, *next(times)) for part in paragraph] for paragraph in paragraphs]


def _row(part: _Part, start: float, until: float) -> Row:
    return {
        "kind": part.kind,
        "text": part.text,
        "start_s": thousandths(start),
        "end_s": thousandths(max(start, min(part.end, until))),
        "seconds": part.seconds,
    }
