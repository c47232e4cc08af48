"""Which segments an episode has, of which kind, in which order."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from scriptkit.model import KINDS, Episode, Segment, SegmentText, Step, TimedSegment

_ALWAYS = ("opening", "checklist")
_LAST = ("recap", "close")
_LONGEST_NAME = 58  # of a group: an id has 64 characters at most


def steps(episode: Episode) -> tuple[Step, ...]:
    """The running order as written; where there is none: opening, checklist, the exercises as listed, recap, close."""
    if episode.order:
        return episode.order
    named = [*_ALWAYS, *episode.exercises, *_LAST]
    return tuple(
        Step(segment=name, at=episode.exercises[name].at if name in episode.exercises else episode.at) for name in named
    )


def step_id(step: Step) -> str:
    """The id of a segment; a group's is `group-` and its name in kebab case, a very long one cut and numbered."""
    if step.segment:
        return str(step.segment)
    name = re.sub(r"[\W_]+", "-", step.group.lower()).strip("-")
    if len(name) > _LONGEST_NAME:
        from binascii import crc32  # only a name that long needs it

        # the number comes from the whole name, so that two names alike at their beginning stay two groups
        name = f"{name[: _LONGEST_NAME - 9].strip('-')}-{crc32(name.encode()):08x}"
    return f"group-{name or 'unnamed'}" if step.group else ""


def twice(episode: Episode) -> tuple[Step, ...]:
    """The steps whose segment an earlier one has named already; they are not spoken again."""
    seen: set[str] = set()
    again: list[Step] = []
    for step in episode.order:
        name = step_id(step)
        if name in seen:
            again.append(step)
        seen.add(name)
    return tuple(again)


def step_kind(step: Step, episode: Episode) -> str:
    """The kind of a segment: as written, else by what its id is."""
    name = step_id(step)
    if step.kind:
        return str(step.kind)
    if step.group and not step.segment:
        return "group"
    if name in episode.exercises:
        return "verdict"
    if episode.sponsor and name == episode.sponsor.segment:
        return "sponsor"
    return name if name in KINDS else "talk"


def planned(episode: Episode, texts: Mapping[str, SegmentText]) -> tuple[list[Step], bool]:
    """The steps that are spoken, each once, and whether the sponsor's passage still has to find its place."""
    kept: list[Step] = []
    seen: set[str] = set()
    for step in steps(episode):
        name = step_id(step)
        if name in seen or not name:
            continue
        if step_kind(step, episode) == "checklist" and not episode.checklist and name not in texts:
            continue
        seen.add(name)
        kept.append(step)
    sponsor = episode.sponsor
    if sponsor and not episode.order and sponsor.segment not in seen:
        return [*kept, Step(segment=str(sponsor.segment), at=sponsor.at)], True
    return kept, False


def place_sponsor(segments: Sequence[Segment], timed: Sequence[TimedSegment], episode: Episode) -> tuple[Segment, ...]:
    """Move the sponsor's passage, the last segment, behind the exercise that ends nearest the middle of its window."""
    passage, rest = segments[-1], list(segments[:-1])
    window = episode.sponsor.window if episode.sponsor else None
    total = sum(one.total for one in timed)
    after = window.after.of(total) if window and window.after else 0.0
    before = window.before.of(total) if window and window.before else total
    middle = (after + before) / 2
    ends: list[tuple[float, int]] = []
    clock = 0.0
    for number, (segment, one) in enumerate(zip(rest, timed, strict=False)):
        clock += one.total
        if segment.exercise:
            ends.append((abs(clock - middle), number + 1))
    position = min(ends)[1] if ends else len(rest)
    return (*rest[:position], passage, *rest[position:])
