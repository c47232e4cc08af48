"""The two-column script as rows: what is seen and what is heard, side by side on one clock."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable, Mapping, Sequence
from typing import NamedTuple

from scriptkit.findings import Finding
from scriptkit.model import (
    Card,
    Claim,
    Exercise,
    Facts,
    Mark,
    Paragraph,
    PlannedShot,
    Rating,
    Segment,
    Sentence,
    Shot,
    TimedMark,
    TimedSegment,
)
from scriptkit.places import Place
from scriptkit.rendering.rows import Row, findings, kind_title, owned, references, slow_motion
from scriptkit.times import clock, thousandths

_SILENT, _PROMISED = ("pause", "hold"), ("promise", "payoff")


class Columns(NamedTuple):
    """The script by segments, and the findings that stand at none of its rows."""

    segments: list[Row]
    elsewhere: list[Row]


def script(facts: Facts, found: Sequence[Finding]) -> Columns:
    """The script for the page: segments with rows; a row is a stretch of speech under one picture.

    Each finding of `found` is shown once, with its number in that list from 1.
    """
    shown = _Shown(facts, found)
    numbers = {row["id"]: row["number"] for row in references(facts)}
    shots: dict[str, list[PlannedShot]] = {}
    for shot in facts.shots:
        shots.setdefault(shot.segment, []).append(shot)
    cards: dict[str, list[Card]] = {}
    for card in facts.cards:
        cards.setdefault(card.segment, []).append(card)
    rows = [
        _rows(segment, timed, _Pictures(shots.get(segment.id, []), cards.get(segment.id, [])), numbers, shown)
        for segment, timed in zip(facts.segments, facts.timeline.segments, strict=True)
    ]
    made = []
    for segment, timed, own in zip(facts.segments, facts.timeline.segments, rows, strict=True):
        made.append(
            {
                **_head(segment, timed, facts),
                "findings": shown.at(_own_lines(segment, facts.episode.exercises.get(segment.exercise))),
                "also_filmed": [_shot(one) for one in shots.get(segment.id, []) if one.start is None],
                "rows": own,
            }
        )
    left = shown.left()
    for row, segment in zip(made, facts.segments, strict=True):
        row["findings"] += shown.at(left.get(segment.file, []))
    return Columns(made, shown.rest())


def _head(segment: Segment, timed: TimedSegment, facts: Facts) -> Row:
    return {
        "id": segment.id,
        "kind": segment.kind,
        "kind_title": kind_title(segment.kind),
        "title": segment.title,
        "drafted": segment.drafted and segment.kind != "talk",
        "file": segment.file,
        "optional": segment.optional,
        "start": clock(timed.start),
        "start_s": thousandths(timed.start),
        "total": clock(timed.total),
        "low": clock(timed.low),
        "high": clock(timed.high),
        "words": timed.words,
        "grade": facts.grades[segment.exercise].grade if segment.exercise else "",
        "target": None if segment.target is None else clock(segment.target),
    }


class _Shown:
    """Findings by the line they stand at; each is given out once."""

    def __init__(self, facts: Facts, found: Sequence[Finding]) -> None:
        self.facts = facts
        self.lines: dict[tuple[str, int], list[tuple[int, Finding]]] = {}
        for number, one in enumerate(found, 1):
            self.lines.setdefault((one.place.file, one.place.line), []).append((number, one))

    def at(self, lines: Iterable[tuple[str, int]]) -> list[Row]:
        """The findings at these lines that were not given out yet."""
        taken = [one for line in lines for one in self.lines.pop(line, [])]
        shown = findings([one for _, one in taken], self.facts)
        return [{**row, "number": number} for (number, _), row in zip(taken, shown, strict=True)]

    def left(self) -> dict[str, list[tuple[str, int]]]:
        """The lines by file whose findings were not given out yet."""
        files: dict[str, list[tuple[str, int]]] = {}
        for line in self.lines:
            files.setdefault(line[0], []).append(line)
        return files

    def rest(self) -> list[Row]:
        """What is left at all, in the order of the list."""
        return sorted(self.at(list(self.lines)), key=lambda row: row["number"])


def _own_lines(segment: Segment, exercise: Exercise | None) -> list[tuple[str, int]]:
    """The lines of the outline on which a segment and its exercise are written."""
    places: list[Place] = [segment.at.place]
    if exercise:
        grounds: list[Rating | Claim] = [*exercise.ratings.values(), *exercise.claims]
        spots = [exercise.at, *(part.at for part in grounds), *(shot.at for shot in exercise.shots)]
        spots += [exercise.use.at] if exercise.use else []
        places += [place for spot in spots for place in (spot.place, *spot.keys.values())]
        places += [link.at.place for part in grounds for link in part.source]
    return list(dict.fromkeys((place.file, place.line) for place in places))


class _Pictures:
    """What comes into the picture of a segment, by time; `numbers` finds the shot that a mark asks for."""

    def __init__(self, shots: Sequence[PlannedShot], cards: Sequence[Card]) -> None:
        self.numbers = {id(one.shot): one.number for one in shots}
        pictures = [(one.start, 0, _shot(one)) for one in shots if one.start is not None]
        words = [(card.start, 1, _card(card)) for card in cards]
        self.changes = sorted([*pictures, *words], key=lambda one: one[:2])

    def into(self, rows: list[Row]) -> None:
        """Put each change at the row during which it comes; a row that opens without a shot has what goes on."""
        starts = [row["start_s"] for row in rows]
        for at, _, change in self.changes if rows else []:
            rows[max(0, bisect_right(starts, at + 0.0006) - 1)]["picture"].append(change)
        on: Row | None = None
        for row in rows:
            own = [change for change in row["picture"] if change["kind"] == "shot"]
            row["goes_on"] = on if not own or own[0]["at"] != row["start"] else None
            on = {"number": own[-1]["number"], "setup": own[-1]["setup"]} if own else on


def _shot(one: PlannedShot) -> Row:
    at = clock(one.start or 0.0)
    return {"kind": "shot", "at": at, "number": one.number, "setup": one.setup, "talking": one.talking, **_framing(one)}


def _card(card: Card) -> Row:
    shown = thousandths(card.end - card.start)
    return {"kind": "screen", "at": clock(card.start), "seconds": shown, "text": card.text}


def _framing(one: PlannedShot) -> Row:
    shot = one.shot
    return {
        "size": shot.size,
        "plane": shot.plane,
        "form": shot.form,
        "of": shot.of,
        "reps": shot.reps,
        "reps_fit": one.reps_fit,
        "fps": shot.fps,
        "slow_motion": slow_motion(one),
        "place": shot.place,
        "shot_kit": list(shot.kit),
        "seconds": None if one.duration is None else thousandths(one.duration),
    }


def _rows(
    segment: Segment, timed: TimedSegment, pictures: _Pictures, numbers: Mapping[str, int], shown: _Shown
) -> list[Row]:
    starts = {id(one.mark): one for one in timed.marks}
    rows: list[Row] = []
    first = 0
    for paragraph in segment.paragraphs:
        clocks = timed.sentences[first : first + len(paragraph.sentences)]
        first += len(paragraph.sentences)
        marks = [mark for sentence in paragraph.sentences for _, mark in sentence.cues] + [
            mark for _, mark in paragraph.loose
        ]
        if not clocks and not any(mark.name in (*_SILENT, *_PROMISED) for mark in marks):
            continue  # a picture alone: it comes with the row that follows
        start = clocks[0].start if clocks else _earliest(paragraph, starts, timed)
        end = clocks[-1].end if clocks else start + sum(mark.seconds or 0.0 for _, mark in paragraph.loose)
        rows.append(
            {
                "start": clock(start),
                "start_s": thousandths(start),
                "length_s": thousandths(end - start),
                "optional": paragraph.optional,
                "picture": [],
                "goes_on": None,
                "sound": [
                    _spoken(sentence, numbers, pictures.numbers, opens=number == 0)
                    for number, sentence in enumerate(paragraph.sentences)
                ],
                "silences": [_cue(mark) for mark in marks if mark.name in _SILENT],
                "promises": [_cue(mark) for mark in marks if mark.name in _PROMISED],
                "findings": shown.at(_lines(paragraph, segment)),
            }
        )
    pictures.into(rows)
    return rows


def _earliest(paragraph: Paragraph, starts: Mapping[int, TimedMark], timed: TimedSegment) -> float:
    return min((starts[id(mark)].start for _, mark in paragraph.loose if id(mark) in starts), default=timed.start)


def _lines(paragraph: Paragraph, segment: Segment) -> list[tuple[str, int]]:
    """The lines a paragraph was written on; of a drafted one, the outline's lines that its sentences point at."""
    if segment.file:
        return [(segment.file, line) for line in range(paragraph.first_line, paragraph.last_line + 1)]
    return list(dict.fromkeys((sentence.place.file, sentence.place.line) for sentence in paragraph.sentences))


def _cue(mark: Mark) -> Row:
    """A pause, hold, promise or payoff."""
    return {"kind": mark.name, "seconds": mark.seconds, "text": mark.text, "ids": list(mark.ids)}


def _spoken(sentence: Sentence, numbers: Mapping[str, int], shots: Mapping[int, int], *, opens: bool) -> Row:
    """A sentence: `parts` are its words and what stands between them, `after` is what stands behind it."""
    parts: list[Row] = []
    after: list[Row] = []
    done = 0
    for offset, mark in sentence.cues:
        cue = _cue_in_speech(mark, shots)
        if cue is None or (opens and offset == 0 and cue["kind"] in ("shot", "screen")):
            continue  # the picture that a row opens with stands beside it
        if offset >= len(sentence.text):
            after.append(cue)
            continue
        parts += [{"kind": "words", "text": sentence.text[done:offset]}, cue]
        done = offset
    return {
        "text": sentence.text,
        "sources": [
            {"number": numbers.get(link.id), "id": link.id, "stance": str(link.stance)} for link in sentence.links
        ],
        "marks": owned(sentence),
        "file": sentence.place.file,
        "line": sentence.place.line,
        "parts": [
            part
            for part in [*parts, {"kind": "words", "text": sentence.text[done:]}]
            if part["text"] or part["kind"] != "words"
        ],
        "after": after,
    }


def _cue_in_speech(mark: Mark, shots: Mapping[int, int]) -> Row | None:
    """What a reader must see between the words; None for marks that are shown otherwise."""
    if isinstance(mark.shot, Shot):
        number = shots.get(id(mark.shot))
        return None if number is None else {"kind": "shot", "number": number, "text": ""}
    return _cue(mark) if mark.name in (*_SILENT, *_PROMISED, "screen") else None
