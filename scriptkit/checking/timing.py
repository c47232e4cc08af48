"""Checks of time: the runtime and the length of segments."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit import timecode
from scriptkit.checking.rules import Found, check
from scriptkit.model import Facts
from scriptkit.times import STOCK_FRAME_RATE, clock
from scriptkit.wording import quoted

SEGMENT_TOLERANCE = 0.10
A_DAY = 86_400  # seconds, at which timecode begins anew


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


@check("error", "draft")
def start_timecode_wrong(facts: Facts) -> Iterator[Found]:
    """The start timecode is none that a frame can have at the episode's rate.

    Hours, minutes, seconds and frames, two digits each. A semicolon before the frames says drop-frame, which a rate
    such as `29.97df` asks for; it has no frames 00 and 01 (at 59.94 none to 03 either) at the start of a minute, but
    of every tenth one. The cut begins at 01:00:00:00 then.

    Rule: SMPTE 12M.

    Bad:
        title: One
        rate: 29.97df
        start_timecode: 00:01:00;00
        exercises: {hang: {name: Bar hang}}
    Good:
        title: One
        rate: 29.97df
        start_timecode: 00:10:00;00
        exercises: {hang: {name: Bar hang}}
    """
    episode = facts.episode
    written, rate = str(episode.start_timecode), episode.rate or STOCK_FRAME_RATE
    first = timecode.frame(written, rate) if written else 0
    late = first is not None and first + facts.timeline.total * timecode.frames(rate) > A_DAY * timecode.frames(rate)
    if late:
        told = f"A cut that begins at {quoted(written)} runs past midnight, where timecode begins anew."
        yield episode.at.of("start_timecode"), told, "Let it begin earlier, at 01:00:00:00 for example."
    if first is not None:
        return
    stock = timecode.label(timecode.start("", rate), rate)
    help_ = f"Write it as {stock}, or leave it out: that is where a cut begins."
    whole = rate.removesuffix("df")
    if timecode.drops(rate) and timecode.frame(written.replace(";", ":"), whole) is not None:
        why = f"drop-frame leaves it out, and at {rate} that minute begins with a later frame"
    elif not timecode.drops(rate) and timecode.frame(written.replace(";", ":"), rate) is not None:
        why = f"the semicolon says drop-frame, and {rate} is counted without"
    else:
        why = f"a frame has hours, minutes, seconds and frames, and at {rate} a second has {timecode.frames(rate)}"
    yield episode.at.of("start_timecode"), f"{quoted(written)} is the timecode of no frame: {why}.", help_
