"""From where each exercise is filmed, and what is still to be filmed."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from scriptkit.computing.writing.likeness import plain
from scriptkit.model import COVERAGE, PLANES, Card, Coverage, PlannedShot, Segment, Shot

CLOSE = frozenset(("CU", "BCU", "ECU", "INS"))
UNSEEN = 0.2  # seconds
NEEDED = ("side", "correct")  # without them a movement is not shown
USUAL = tuple(one for one in COVERAGE if one not in ("back", "top"))  # what is asked for where nobody says otherwise


def find(segments: Sequence[Segment], shots: Sequence[PlannedShot], wanted: Sequence[str]) -> tuple[Coverage, ...]:
    """The coverage of each exercise for which the author has planned a shot, in the order in which it is spoken."""
    exercises = {segment.id: str(segment.exercise) for segment in segments if segment.shots or not segment.drafted}
    own: dict[str, list[PlannedShot]] = {}
    for one in shots:
        if not one.talking and exercises.get(one.segment):
            own.setdefault(exercises[one.segment], []).append(one)
    asked = tuple(wanted) or USUAL
    return tuple(_coverage(name, planned, asked) for name, planned in own.items())


def _coverage(exercise: str, planned: Sequence[PlannedShot], asked: Sequence[str]) -> Coverage:
    beside_fault = any(one.shot.form == "fault" for one in planned)
    seen: dict[str, list[int]] = {view: [] for view in asked}
    for one in planned:
        for view in views(one.shot, beside_fault=beside_fault):
            if view in seen:
                seen[view].append(one.number)
    cells = {view: tuple(numbers) for view, numbers in seen.items()}
    empty = [view for view, numbers in cells.items() if not numbers]
    needed, others = (tuple(view for view in empty if (view in NEEDED) is which) for which in (True, False))
    return Coverage(exercise, len(planned), cells, needed, others, tuple(_without_twin(planned)))


def views(shot: Shot, *, beside_fault: bool) -> Iterator[str]:
    """Which of the views a shot is. One whose form is not said is correct where no fault is filmed beside it."""
    if shot.plane in PLANES:
        yield str(shot.plane)
    if shot.phase:
        yield str(shot.phase)
    if shot.size in CLOSE:
        yield "close-up"
    if shot.form:
        yield str(shot.form)
    elif not beside_fault:
        yield "correct"


def _without_twin(planned: Sequence[PlannedShot]) -> Iterator[int]:
    """The faults that nobody can hold against the correct form: same size, side and lens, so that only that differs."""
    correct = {_framing(one.shot) for one in planned if one.shot.form == "correct"}
    for one in planned:
        if one.shot.form == "fault" and _framing(one.shot) not in correct:
            yield one.number


def _framing(shot: Shot) -> tuple[str, str, str]:
    return str(shot.size), str(shot.plane), str(shot.lens)


def unlabelled(shots: Sequence[PlannedShot], cards: Sequence[Card], labels: Sequence[str]) -> tuple[int, ...]:
    """The numbers of the faults that are seen and not called one on screen for all the time that they are seen.

    `labels` are words that say so; a label that the author gave the shot itself does too.
    """
    telling: dict[str, list[Card]] = {}
    for card in cards:
        if card.what == "card" and any(f" {word} " in f" {plain(card.text)} " for word in labels):
            telling.setdefault(card.segment, []).append(card)
    bare = []
    for one in shots:
        if one.shot.form == "fault" and one.start is not None and not one.shot.label:
            end = one.start + (one.duration or 0.0)
            if not _covered(one.start, end, telling.get(one.segment, ())):
                bare.append(one.number)
    return tuple(bare)


def _covered(start: float, end: float, cards: Sequence[Card]) -> bool:
    """Whether the cards, in the order of their starts, leave no stretch that is long enough to be seen."""
    now = start
    for card in cards:
        if card.start <= now + UNSEEN:
            now = max(now, card.end)
    return now >= end - UNSEEN
