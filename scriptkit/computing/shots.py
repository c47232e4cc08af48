"""Marks and `shots:` to the shot list and the cards on screen, with their times."""

from __future__ import annotations

from collections.abc import Sequence

from scriptkit.model import Card, PlannedShot, Segment, Shot, TimedMark, TimedSegment, Timeline

TALKING = Shot(size="MS", plane="front", of="presenter to camera")
SECONDS_A_REP = 4.0  # where no tempo is given
_LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"  # without I and O, which are read as one and nought


def cards(timeline: Timeline) -> tuple[Card, ...]:
    """The words on screen: each until the next one, the end of its segment, or for as long as it says."""
    made: list[Card] = []
    for segment in timeline.segments:
        marks = [one for one in segment.marks if one.mark.name == "screen"]
        for number, one in enumerate(marks):
            end = marks[number + 1].start if number + 1 < len(marks) else segment.start + segment.total
            if one.mark.seconds is not None:
                end = min(one.start + one.mark.seconds, segment.start + segment.total)
            made.append(Card(segment.id, one.start, max(one.start, end), one.mark.text, one.mark.place))
    return tuple(made)


def plan(segments: Sequence[Segment], timeline: Timeline, words: Sequence[Card]) -> tuple[PlannedShot, ...]:
    """One row a shot in script order: marks, then `shots:` spread over a segment that has no marks, else the default camera."""
    listed: list[PlannedShot] = []
    setups: dict[tuple[str, ...], str] = {}
    for segment, timed in zip(segments, timeline.segments, strict=True):
        own = [card for card in words if card.segment == segment.id]
        for shot, start, end in _pictures(segment, timed):
            if end is not None and start is not None and end - start < 0.0005:
                continue
            listed.append(_planned(len(listed) + 1, segment, timed, shot, start, end, setups, own))
    return tuple(listed)


def _pictures(segment: Segment, timed: TimedSegment) -> list[tuple[Shot, float | None, float | None]]:
    end = timed.start + timed.total
    marks = [one for one in timed.marks if one.mark.shot is not None]
    if marks:
        pictures = _between(marks, timed.start, end)
        # what `shots:` asks for is filmed as well; the marks decide what is seen when
        return pictures + [(shot, None, None) for shot in segment.shots]
    if segment.shots and timed.total > 0:
        return _spread(segment.shots, timed)
    return [(TALKING, timed.start, end)] if timed.total > 0 else [(shot, None, None) for shot in segment.shots]


def _between(marks: Sequence[TimedMark], start: float, end: float) -> list[tuple[Shot, float | None, float | None]]:
    pictures: list[tuple[Shot, float | None, float | None]] = [(TALKING, start, marks[0].start)]
    for number, one in enumerate(marks):
        until = marks[number + 1].start if number + 1 < len(marks) else end
        pictures.append((one.mark.shot or TALKING, one.start, until))
    return pictures


def _spread(shots: Sequence[Shot], timed: TimedSegment) -> list[tuple[Shot, float | None, float | None]]:
    """Equal shares, each moved to the nearest start of a sentence, so that the picture changes where a thought does."""
    starts = [one.start for one in timed.sentences[1:]]
    cuts = [timed.start]
    for number in range(1, len(shots)):
        wanted = timed.start + timed.total * number / len(shots)
        later = [start for start in starts if start > cuts[-1]]
        # leave a sentence for each shot still to come, where there are enough
        left = later[: max(1, len(later) - (len(shots) - number - 1))]
        cuts.append(min(left, key=lambda start: (abs(start - wanted), start)) if left else max(wanted, cuts[-1]))
    ends = [*cuts[1:], timed.start + timed.total]
    return list(zip(shots, cuts, ends, strict=True))


def _planned(
    number: int, segment: Segment, timed: TimedSegment, shot: Shot, start: float | None, end: float | None,
    setups: dict[tuple[str, ...], str], words: Sequence[Card],
) -> PlannedShot:  # fmt: skip
    talking = shot is TALKING
    camera = (
        shot.size,
        shot.plane,
        shot.place,
        shot.angle,
        shot.move,
        shot.lens,
        shot.fps,
        "" if talking else segment.exercise,
    )
    setup = setups.setdefault(camera, _setup_letter(len(setups)))
    duration = None if start is None or end is None else end - start
    seconds = seconds_a_rep(shot.tempo)
    if duration is None and shot.reps:
        duration = shot.reps * seconds
    fit = None if talking or duration is None or not segment.exercise else int(duration / seconds + 1e-9)
    shown = sources = ()  # type: tuple[str, ...]
    if start is not None and end is not None:
        shown = tuple(card.text for card in words if card.start < end and card.end > start)
        sources = _sources(segment, timed, start, end)
    place = shot.at.place if not talking else segment.at.place
    return PlannedShot(number, setup, segment.id, start, duration, shot, talking, fit, shown, sources, place)


def seconds_a_rep(tempo: str) -> float:
    """Seconds of one repetition at a tempo such as 3-1-2; the stock figure where there is none."""
    parts = tempo.replace(" ", "").split("-")
    if tempo and all(part.replace(".", "", 1).isdigit() for part in parts):
        return sum(float(part) for part in parts) or SECONDS_A_REP
    return SECONDS_A_REP


def _sources(segment: Segment, timed: TimedSegment, start: float, end: float) -> tuple[str, ...]:
    """The sources of what is said while the shot is on."""
    found: dict[str, None] = {}
    for sentence, one in zip(segment.sentences, timed.sentences, strict=True):
        if one.start < end and one.end > start:
            found.update(dict.fromkeys(link.id for link in sentence.links))
    return tuple(found)


def _setup_letter(number: int) -> str:
    """A, B ... Z without I and O, then AA, AB ..."""
    letters = ""
    number += 1
    while number:
        number, rest = divmod(number - 1, len(_LETTERS))
        letters = _LETTERS[rest] + letters
    return letters
