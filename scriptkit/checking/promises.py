"""Checks of promises: each is made, and kept after it."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.placing import in_mark
from scriptkit.checking.rules import Found, check
from scriptkit.model import Facts, TimedMark
from scriptkit.places import place_of
from scriptkit.times import clock
from scriptkit.wording import did_you_mean, quoted

EARLY = 15.0  # seconds from the start in which a promise should begin
TOO_SOON = 0.1  # of the runtime


@check("error")
def unknown_promise(facts: Facts) -> Iterator[Found]:
    """A promise or payoff mark names no promise of the outline.

    Promises stand under `promises:` by id.

    Rule: ours; a payoff can be held only against a promise that is known.

    Bad:
        title: One
        promises: {swap: which one to drop}
        exercises: {hang: {name: Bar hang}}
        --- segments/opening.md
        Stay with me. [promise swop]
    Good:
        title: One
        promises: {swap: which one to drop}
        exercises: {hang: {name: Bar hang}}
        --- segments/opening.md
        Stay with me. [promise swap]
    """
    known = list(facts.episode.promises)
    for segment in facts.timeline.segments:
        for one in segment.marks:
            for name in one.mark.ids if one.mark.name in ("promise", "payoff") else ():
                if name not in known:
                    yield (
                        in_mark(facts, one.mark, name),
                        f"{quoted(name)} is no promise of this outline.",
                        did_you_mean(name, known) or f"Add it under `promises:` as `{name}: ...`.",
                    )


@check("error", "record")
def promise_not_paid(facts: Facts) -> Iterator[Found]:
    """A promise is made and never paid.

    Somebody stays to the end for it. Mark the place that keeps it with `[payoff ID]`, after the promise.

    Rule: ours; to pay every promise is common practice in presenting.

    Bad:
        title: One
        promises: {swap: which one to drop}
        exercises: {hang: {name: Bar hang}}
        --- segments/opening.md
        I will tell you which one to drop. [promise swap] [aside]
    Good:
        title: One
        promises: {swap: which one to drop}
        exercises: {hang: {name: Bar hang}}
        --- segments/opening.md
        I will tell you which one to drop. [promise swap] [aside]
        --- segments/close.md
        I think you can drop the curls. [payoff swap] [opinion]
    """
    files = {segment.id: segment.file for segment in facts.segments}
    promised, kept = _times(facts, "promise"), _times(facts, "payoff")
    for name, text in facts.episode.promises.items():
        made, paid = promised.get(name, []), kept.get(name, [])
        if made and (not paid or paid[-1].start < made[0].start):
            late = " (its payoff comes before it)" if paid else ""
            own = files[made[0].segment]  # a promise of the stock opening stands where the outline makes it
            yield (
                in_mark(facts, made[0].mark, name) if own else place_of(text, facts.episode.at.of("promises")),
                f"The promise {quoted(text)} is made and not kept after it{late}.",
                f"Say it, and put `[payoff {name}]` behind the sentence that does.",
            )


def _times(facts: Facts, mark: str) -> dict[str, list[TimedMark]]:
    """When each promise is made (or paid), in running order."""
    found: dict[str, list[TimedMark]] = {}
    for segment in facts.timeline.segments if facts.episode.promises else ():
        for one in segment.marks:
            for name in dict.fromkeys(one.mark.ids) if one.mark.name == mark else ():
                found.setdefault(name, []).append(one)
    return found


@check("warning", "record")
def promise_not_made(facts: Facts) -> Iterator[Found]:
    """A promise of the outline is made in no text.

    Rule: ours; a promise of the outline is meant to be heard.

    Bad:
        title: One
        promises: {swap: which one to drop}
        exercises: {hang: {name: Bar hang}}
        --- segments/opening.md
        Hello and welcome. [aside]
    Good:
        title: One
        promises: {swap: which one to drop}
        exercises: {hang: {name: Bar hang}}
        --- segments/opening.md
        I will tell you which one to drop. [promise swap] [aside]
        --- segments/close.md
        I think you can drop the curls. [payoff swap] [opinion]
    """
    promised = _times(facts, "promise")
    for name, text in facts.episode.promises.items():
        if name not in promised:
            yield (
                place_of(text, facts.episode.at.of("promises")),
                f"The promise {quoted(text)} is made nowhere.",
                f"Say it in the opening, and put `[promise {name}]` behind the sentence.",
            )


@check("warning", "record")
def promise_made_late(facts: Facts) -> Iterator[Found]:
    """No promise is made in the first 15 seconds.

    Who does not hear soon what they will get moves on. One promise that begins in time is enough. The opening that
    the tool drafts is left alone.

    Rule: ours; to say early what a viewer gets is common practice, the 15 seconds are our choice.

    Bad:
        title: One
        promises: {swap: which one to drop}
        exercises: {hang: {name: Bar hang}}
        --- segments/opening.md
        [hold 20s: the logo] I will tell you which one to drop. [promise swap] [aside]
        --- segments/close.md
        I think you can drop the curls. [payoff swap] [opinion]
    Good:
        title: One
        promises: {swap: which one to drop}
        exercises: {hang: {name: Bar hang}}
        --- segments/opening.md
        I will tell you which one to drop. [promise swap] [aside]
        --- segments/close.md
        I think you can drop the curls. [payoff swap] [opinion]
    """
    drafted = {segment.id for segment in facts.segments if segment.drafted}
    made = [(name, marks[0]) for name, marks in _times(facts, "promise").items() if name in facts.episode.promises]
    first = min(made, key=lambda one: one[1].start, default=None)
    if first is None or first[1].segment in drafted:
        return
    begins = _begins(facts, first[1])
    if begins > EARLY:
        yield (
            in_mark(facts, first[1].mark, first[0]),
            f"The first promise begins at {clock(begins)}.",
            f"Make it, or another one, in the first {EARLY:.0f} seconds.",
        )


def _begins(facts: Facts, one: TimedMark) -> float:
    """When the sentence of a mark begins; a mark that stands alone belongs to the sentence before it."""
    segment, timed = next(
        (segment, timed)
        for segment, timed in zip(facts.segments, facts.timeline.segments, strict=True)
        if segment.id == one.segment
    )
    own = one.sentence
    if own == len(timed.sentences) or one.start <= timed.sentences[own].start:
        own -= 1
    if own < 0:
        return one.start
    cues = segment.sentences[own].cues
    silent = sum(mark.seconds or 0.0 for at, mark in cues if at == 0 and mark.name in ("pause", "hold"))
    return min(one.start, timed.sentences[own].start + silent)


@check("warning", "record")
def payoff_in_sponsor(facts: Facts) -> Iterator[Found]:
    """A promise is paid only inside the sponsor's passage.

    Who skips the advertisement misses what they stayed for, and the sponsor seems to have bought it.

    Rule: ours; to keep what was promised out of paid passages is common practice.

    Bad:
        title: One
        promises: {swap: which one to drop}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid for this part.}
        exercises: {hang: {name: Bar hang}}
        --- segments/opening.md
        I will tell you which one to drop. [promise swap] [aside]
        --- segments/sponsor.md
        Ad. Quennick Socks paid for this part. [aside]
        I think you can drop the curls. [payoff swap] [opinion]
    Good:
        title: One
        promises: {swap: which one to drop}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid for this part.}
        exercises: {hang: {name: Bar hang}}
        --- segments/opening.md
        I will tell you which one to drop. [promise swap] [aside]
        --- segments/sponsor.md
        Ad. Quennick Socks paid for this part. [aside]
        --- segments/close.md
        I think you can drop the curls. [payoff swap] [opinion]
    """
    paid_for = {segment.id for segment in facts.segments if segment.kind == "sponsor"}
    kept = _times(facts, "payoff") if paid_for else {}
    for name, text in facts.episode.promises.items():
        marks = kept.get(name, [])
        if marks and all(one.segment in paid_for for one in marks):
            yield (
                in_mark(facts, marks[0].mark, name),
                f"The promise {quoted(text)} is kept only inside the sponsor's passage.",
                "Keep it in a part that nobody pays for.",
            )


@check("note", "record")
def promise_paid_early(facts: Facts) -> Iterator[Found]:
    """A promise is paid in the first tenth of the runtime.

    What was promised as a reason to stay is then over before the episode has begun.

    Rule: ours; the tenth is our choice.

    Bad:
        title: One
        promises: {swap: which one to drop}
        exercises: {hang: {name: Bar hang}}
        --- segments/opening.md
        I will tell you which one to drop. [promise swap] [aside] I think it is the curl. [payoff swap] [opinion]
        --- segments/hang.md
        The bar hang. [aside] [hold 90s: one long hang]
    Good:
        title: One
        promises: {swap: which one to drop}
        exercises: {hang: {name: Bar hang}}
        --- segments/opening.md
        I will tell you which one to drop. [promise swap] [aside]
        --- segments/hang.md
        The bar hang. [aside] [hold 90s: one long hang]
        --- segments/close.md
        I think you can drop the curls. [payoff swap] [opinion]
    """
    kept = _times(facts, "payoff")
    for name, text in facts.episode.promises.items():
        marks = kept.get(name, [])
        if marks and marks[-1].start < TOO_SOON * facts.timeline.total:
            yield (
                in_mark(facts, marks[-1].mark, name),
                f"The promise {quoted(text)} is kept at {clock(marks[-1].start)} of {clock(facts.timeline.total)}.",
                "Keep it later, or promise something that is worth staying for.",
            )
