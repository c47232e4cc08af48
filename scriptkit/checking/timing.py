"""Checks of time: the runtime and the length of segments."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.rules import Found, check
from scriptkit.model import Facts
from scriptkit.times import clock
from scriptkit.wording import quoted

SEGMENT_TOLERANCE = 0.10


@check("warning", "record")
def runtime_off_target(facts: Facts) -> Iterator[Found]:
    """The script is longer or shorter than its runtime allows.

    The target stands under `runtime:`; without a tolerance it is five in a hundred.

    Rule: ours; five in a hundred is a budget commonly kept.

    Bad:
        title: One
        runtime: {target: "9:30", tolerance: 20s}
        exercises: {hang: {name: Bar hang}}
    Good:
        title: One
        runtime: {target: 30s, tolerance: 30s}
        exercises: {hang: {name: Bar hang}}
    """
    runtime, timeline = facts.episode.runtime, facts.timeline
    if runtime.target is None or not facts.segments:
        return
    over = timeline.total - runtime.target
    if abs(over) > runtime.tolerance.of(runtime.target) + 0.0005:
        way = "over" if over > 0 else "under"
        longest = max(timeline.segments, key=lambda one: one.total)
        help_ = (
            f"Cut about {clock(abs(over))}; the longest segment is {quoted(longest.id)} with {clock(longest.total)}."
            if over > 0
            else f"There is room for about {clock(abs(over))} more."
        )
        yield (
            runtime.at.of("target"),
            (
                f"The script takes {clock(timeline.total)} (between {clock(timeline.low)} and {clock(timeline.high)}), "
                f"{clock(abs(over))} {way} the target of {clock(runtime.target)}."
            ),
            help_,
        )


@check("warning", "record")
def segment_off_target(facts: Facts) -> Iterator[Found]:
    """A segment is longer or shorter than its own target.

    A tenth more or less is fine.

    Rule: ours; ten in a hundred is a budget commonly kept for a segment.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        order: [opening, {segment: hang, target: "5:00"}, close]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        order: [opening, hang, close]
    """
    for segment, timed in zip(facts.segments, facts.timeline.segments, strict=True):
        if segment.target and abs(timed.total - segment.target) > SEGMENT_TOLERANCE * segment.target:
            place = next(
                (step.at.of("target") for step in facts.episode.order if step.segment == segment.id), segment.at.place
            )
            yield (
                place,
                f"{quoted(segment.title)} takes {clock(timed.total)}, and its target is {clock(segment.target)}.",
                "Shorten or lengthen its text, or change the target.",
            )
