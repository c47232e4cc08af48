"""Where things fall on the clock: the sponsor, the longest still picture, promises, and what takes too long."""

from __future__ import annotations

from collections.abc import Iterator
from statistics import median

from scriptkit.model import Facts, PlannedShot
from scriptkit.model.fitting import Bearings, Landing, Outweighs, PromiseTimes, Still

TIMES_MEDIAN = 2.0  # an exercise that takes longer than so many times the middle one
FEWEST = 3  # exercises; with fewer there is no middle to speak of


def find(facts: Facts) -> Bearings:
    """All of it."""
    return Bearings(tuple(_landings(facts)), _longest_still(facts), tuple(_promises(facts)), tuple(_outweighs(facts)))


def _landings(facts: Facts) -> Iterator[Landing]:
    sponsor, total = facts.episode.sponsor, facts.timeline.total
    window = sponsor.window if sponsor else None
    after = window.after.of(total) if window and window.after else None
    before = window.before.of(total) if window and window.before else None
    for one in facts.timeline.segments:
        if one.kind == "sponsor":
            yield Landing(one.id, one.start, one.start + one.total, total, after, before)


def _longest_still(facts: Facts) -> Still | None:
    """The longest stretch of one picture; words over it do not change it, nor does a segment that goes on in it."""
    longest: Still | None = None
    seen: tuple[str, str, str, str] | None = None
    now: Still | None = None
    for one in facts.shots:
        if one.start is None or one.duration is None:
            continue
        end = one.start + one.duration
        now = (
            now._replace(end=end) if now and _picture(one) == seen else Still(one.segment, one.start, end, one.shot.of)
        )
        seen = _picture(one)
        if longest is None or now.end - now.start > longest.end - longest.start + 0.0005:
            longest = now
    return longest


def _picture(one: PlannedShot) -> tuple[str, str, str, str]:
    return one.setup, one.shot.of, one.shot.form, one.shot.place


def _promises(facts: Facts) -> Iterator[PromiseTimes]:
    times: dict[tuple[str, str], list[float]] = {}
    for segment in facts.timeline.segments if facts.episode.promises else ():
        for one in segment.marks:
            for name in dict.fromkeys(one.mark.ids) if one.mark.name in ("promise", "payoff") else ():
                times.setdefault((one.mark.name, name), []).append(one.start)
    for name, text in facts.episode.promises.items():
        made, paid = (tuple(times.get((mark, str(name)), ())) for mark in ("promise", "payoff"))
        yield PromiseTimes(str(name), str(text), made, paid)


def _outweighs(facts: Facts) -> Iterator[Outweighs]:
    """An exercise of more than twice the middle one, and what grades nothing and takes longer than each exercise."""
    graded = {segment.id for segment in facts.segments if segment.exercise}
    times = [one.total for one in facts.timeline.segments if one.id in graded and one.total > 0]
    if len(times) < FEWEST:
        return
    middle, longest = median(times), max(times)
    for one in facts.timeline.segments:
        if one.id in graded and one.total > TIMES_MEDIAN * middle:
            yield Outweighs(one.id, one.total, middle, "median")
        elif one.id not in graded and one.kind != "sponsor" and one.total > longest:
            yield Outweighs(one.id, one.total, longest, "longest")
