"""Marks and `shots:` to the shot list and the cards on screen, with their times."""

from __future__ import annotations

import re
from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from scriptkit import times
from scriptkit.computing.reading_time import seconds as reads
from scriptkit.model import NOWHERE, Card, PlannedShot, Segment, Shot, TimedMark, TimedSegment, Timeline

TALKING = Shot(size="MS", plane="front", of="presenter to camera")
SECONDS_A_REP = 4.0  # where no tempo is given
FAULT_STAYS = 2.0  # seconds behind its repetitions, where the outline alone spreads the shots
BACK = 2.0  # seconds that the picture behind it gets, or the fault stays
MOST_PARTS = 4  # of a tempo: down, hold, up, hold
_PART = re.compile(r"[0-9]{1,2}(?:\.[0-9]{1,2})?")
BLINK = 0.0005  # seconds; what is shorter is not seen
_LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"  # without I and O, which are read as one and nought


def cards(segments: Sequence[Segment], timeline: Timeline) -> tuple[Card, ...]:
    """The words on screen: each until the next one, the end of its segment, or for as long as it says.

    The label of a shot stands in a corner of its own, as long as the shot is seen.
    """
    made: list[Card] = []
    for segment, timed in zip(segments, timeline.segments, strict=True):
        own = [*_words(timed), *_labels(segment, timed)]
        made += sorted(own, key=lambda card: card.start)
    return tuple(made)


def _words(timed: TimedSegment) -> Iterator[Card]:
    marks = [one for one in timed.marks if one.mark.name == "screen"]
    ends = [*(one.start for one in marks[1:]), timed.start + timed.total]
    for one, until in zip(marks, ends, strict=False):
        asked, text = one.mark.seconds, one.mark.text
        end = until if asked is None else min(until, one.start + asked)
        yield Card(timed.id, one.start, max(one.start, end), text, one.mark.place, reads(text), asked=asked)


def _labels(segment: Segment, timed: TimedSegment) -> Iterator[Card]:
    shots = (*segment.shots, *(one.mark.shot for one in timed.marks if one.mark.shot))
    if not any(shot.label for shot in shots):
        return
    for shot, start, end in _pictures(segment, timed):
        if shot.label and start is not None and end is not None:
            yield Card(timed.id, start, end, str(shot.label), shot.at.of("label"), reads(shot.label), "label")


def plan(
    segments: Sequence[Segment], timeline: Timeline, words: Sequence[Card], rate: str = ""
) -> tuple[PlannedShot, ...]:
    """One row a shot in script order: marks, else `shots:` spread over the segment, else the default camera.

    `rate` is that of the film, in frames a second as it is written.
    """
    listed: list[PlannedShot] = []
    setups: dict[tuple[str, ...], str] = {}
    shown: dict[str, list[Card]] = {}
    for card in words:
        shown.setdefault(card.segment, []).append(card)
    for scene, (segment, timed) in enumerate(zip(segments, timeline.segments, strict=True), 1):
        sight = _Sight(segment, timed, shown.get(segment.id, []))
        for picture in _pictures(segment, timed):
            setup = setups.setdefault(_camera(picture.shot, segment), _setup_letter(len(setups)))
            one = _planned(len(listed) + 1, setup, segment, picture, sight)
            listed.append(_in_slow_motion(one, rate)._replace(scene=scene))
    return tuple(listed)


def talks(shot: Shot) -> bool:
    """Whether it is the default camera: nobody's shot, or one that an author asks for in its very words."""
    return shot is TALKING or shot._replace(at=TALKING.at, of=" ".join(shot.of.lower().split())) == TALKING


class _Picture(NamedTuple):
    """A shot, and when it is seen; None where it is filmed and the script does not place it."""

    shot: Shot
    start: float | None = None
    end: float | None = None


def _pictures(segment: Segment, timed: TimedSegment) -> list[_Picture]:
    end = timed.start + timed.total
    marks = [one for one in timed.marks if one.mark.shot is not None]
    if marks:
        # what `shots:` asks for is filmed as well, unless a mark asks for the very same; marks decide what is seen when
        marked = {one.mark.shot._replace(at=NOWHERE) for one in marks if one.mark.shot}
        more = [_Picture(shot) for shot in segment.shots if shot._replace(at=NOWHERE) not in marked]
        return _between(marks, timed.start, end) + more
    if segment.shots and timed.total > 0:
        return _spread(segment.shots, timed)
    return [_Picture(TALKING, timed.start, end)] if timed.total > 0 else [_Picture(shot) for shot in segment.shots]


def _between(marks: Sequence[TimedMark], start: float, end: float) -> list[_Picture]:
    first = marks[0].start
    pictures = [_Picture(TALKING, start, first)] if first - start >= BLINK else []
    for number, one in enumerate(marks):
        until = marks[number + 1].start if number + 1 < len(marks) else end
        shot = one.mark.shot or TALKING
        # a shot that the next one replaces at once is filmed all the same
        pictures.append(_Picture(shot, one.start, until) if until - one.start >= BLINK else _Picture(shot))
    return pictures


def _spread(shots: Sequence[Shot], timed: TimedSegment) -> list[_Picture]:
    """Equal shares, each moved to the nearest start of a sentence, so that the picture changes where a thought does."""
    starts = [one.start for one in timed.sentences[1:]]
    cuts = [timed.start]
    behind = 0  # of the starts, those that are used up
    for number in range(1, len(shots)):
        wanted = timed.start + timed.total * number / len(shots)
        # leave a sentence for each shot still to come
        last = len(starts) - (len(shots) - number - 1)
        if len(starts) < len(shots) - 1:
            cuts.append(wanted)
            continue
        nearest = min(range(behind, last), key=lambda place: (abs(starts[place] - wanted), place))
        cuts.append(starts[nearest])
        behind = nearest + 1
    return _faults_cut_short(shots, cuts, timed)


def _faults_cut_short(shots: Sequence[Shot], cuts: Sequence[float], timed: TimedSegment) -> list[_Picture]:
    """The shots at their cuts, a fault no longer than it takes to be understood; what follows comes earlier.

    Behind the last one the presenter is seen, so that no grade stands on a fault.
    """
    starts = [one.start for one in timed.sentences]
    ends = [*cuts[1:], timed.start + timed.total]
    pictures: list[_Picture] = []
    start = timed.start
    for shot, end in zip(shots, ends, strict=True):
        until = end
        if shot.form == "fault" and not shot.fps:
            needs = start + (shot.reps or 1) * seconds_a_rep(shot.tempo)
            sentences = (one for one in starts if needs <= one <= needs + FAULT_STAYS)
            until = max(sentences, default=needs + FAULT_STAYS)
            until = until if until < end - BACK else end
        pictures.append(_Picture(shot, start, until))
        start = until
    return [*pictures, _Picture(TALKING, start, ends[-1])] if ends[-1] - start >= BLINK else pictures


class _Row:
    """Cards at one place on screen, one after the other."""

    def __init__(self, cards_: Sequence[Card]) -> None:
        self.cards, self.starts = cards_, [card.start for card in cards_]

    def between(self, start: float, end: float) -> list[Card]:
        """Those that are seen between two times."""
        first = max(0, bisect_right(self.starts, start) - 1)
        return [card for card in self.cards[first : bisect_left(self.starts, end)] if card.end > start]


class _Sight:
    """What is said and shown in one segment, by time."""

    def __init__(self, segment: Segment, timed: TimedSegment, cards_: Sequence[Card]) -> None:
        self.sentences, self.clocks = segment.sentences, timed.sentences
        self.cards = {what: _Row([card for card in cards_ if card.what == what]) for what in ("card", "label")}
        self.starts = [one.start for one in timed.sentences]

    def words(self, start: float, end: float) -> tuple[str, ...]:
        """The words on screen between two times."""
        seen = [card for own in self.cards.values() for card in own.between(start, end)]
        return tuple(card.text for card in sorted(seen, key=lambda card: card.start))

    def sources(self, start: float, end: float) -> tuple[str, ...]:
        """The sources of what is said between two times."""
        found: dict[str, None] = {}
        first = max(0, bisect_right(self.starts, start) - 1)
        for number in range(first, bisect_left(self.starts, end)):
            if self.clocks[number].end > start:
                found.update(dict.fromkeys(link.id for link in self.sentences[number].links))
        return tuple(found)


def _camera(shot: Shot, segment: Segment) -> tuple[str, ...]:
    """What a set-up is: the same camera at the same place on the same exercise."""
    exercise = "" if talks(shot) else segment.exercise
    return (shot.size, shot.plane, shot.place, shot.angle, shot.move, shot.lens, shot.fps, exercise)


def _planned(number: int, setup: str, segment: Segment, picture: _Picture, sight: _Sight) -> PlannedShot:
    shot, start, end = picture
    talking = talks(shot)
    duration = None
    shown = sources = ()  # type: tuple[str, ...]
    if start is not None and end is not None:
        duration = end - start
        shown, sources = sight.words(start, end), sight.sources(start, end)
    # a number that is worked out once the tempo and the speed of the film are known
    fit = None if talking or not segment.exercise else 0
    place = segment.at.place if shot is TALKING else shot.at.place
    return PlannedShot(number, setup, segment.id, start, duration, shot, talking, fit, shown, sources, place)


def _in_slow_motion(one: PlannedShot, rate: str) -> PlannedShot:
    """A shot with how much slower it is seen than it was filmed, and how many repetitions fit then."""
    shot = one.shot
    slow = slow_motion(shot.fps, rate)
    seconds = seconds_a_rep(shot.tempo) * (slow or 1.0)
    needs = shot.reps * seconds if shot.reps else None
    duration = needs if one.start is None else one.duration
    fit = None if one.reps_fit is None or duration is None else int(duration / seconds + 1e-9)
    clear = not shot.tempo or tempo_seconds(shot.tempo) is not None
    return one._replace(slow=slow, needs=needs, duration=duration, reps_fit=fit, tempo_clear=clear)


def slow_motion(fps: str, rate: str) -> float:
    """How many times slower a shot is seen that was filmed at `fps`, at least once; 0 where that cannot be read."""
    if not fps:
        return 1.0
    filmed = frames_a_second(fps)
    return max(1.0, filmed / float(times.frame_rate(rate))) if filmed else 0.0


def frames_a_second(fps: str) -> float | None:
    """The number in `120` or `120 fps`; None where there is none. What is filmed at 119.88 is meant as 120 of 29.97."""
    found = re.fullmatch(r"(\d{1,4}(?:\.\d{1,3})?)\s*(?:fps|p|frames a second)?", fps.strip().lower())
    return float(found[1]) if found and float(found[1]) > 0 else None


def seconds_a_rep(tempo: str) -> float:
    """Seconds of one repetition at a tempo such as 3-1-2; the stock figure where there is none."""
    return tempo_seconds(tempo) or SECONDS_A_REP


def tempo_seconds(tempo: str) -> float | None:
    """The seconds that the parts of a tempo come to: two to four numbers, `3-1-2`, `3/1/2` or `3 1 2`; else None."""
    parts = re.split(r"\s*[-–—/:]\s*|\s+", tempo.strip())
    if not 2 <= len(parts) <= MOST_PARTS or not all(_PART.fullmatch(part) for part in parts):
        return None
    return sum(map(float, parts))


def _setup_letter(number: int) -> str:
    """A, B ... Z without I and O, then AA, AB ..."""
    letters = ""
    number += 1
    while number:
        number, rest = divmod(number - 1, len(_LETTERS))
        letters = _LETTERS[rest] + letters
    return letters
