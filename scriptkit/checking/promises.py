"""Checks of promises: each is made, and kept after it."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.placing import in_mark
from scriptkit.checking.rules import Found, check
from scriptkit.model import Facts, TimedMark
from scriptkit.places import Place, Text
from scriptkit.wording import did_you_mean, quoted


@check("error")
def unknown_promise(facts: Facts) -> Iterator[Found]:
    """A promise or payoff mark names no promise of the outline.

    Promises stand under `promises:` by id.

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
    for name, text in facts.episode.promises.items():
        made, paid = _times(facts, "promise", name), _times(facts, "payoff", name)
        if made and not any(one.start >= made[0].start for one in paid):
            late = " (its payoff comes before it)" if paid else ""
            own = files[made[0].segment]  # a promise of the stock opening stands where the outline makes it
            yield (
                in_mark(facts, made[0].mark, name) if own else _place_of(text, facts.episode.at.of("promises")),
                f"The promise {quoted(text)} is made and not kept after it{late}.",
                f"Say it, and put `[payoff {name}]` behind the sentence that does.",
            )


def _times(facts: Facts, mark: str, name: str) -> list[TimedMark]:
    """When a promise is made (or paid), in running order."""
    marks = (one for segment in facts.timeline.segments for one in segment.marks)
    return [one for one in marks if one.mark.name == mark and name in one.mark.ids]


def _place_of(words: str, otherwise: Place) -> Place:
    return words.place() if isinstance(words, Text) else otherwise


@check("warning", "record")
def promise_not_made(facts: Facts) -> Iterator[Found]:
    """A promise of the outline is made in no text.

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
    for name, text in facts.episode.promises.items():
        if not _times(facts, "promise", name):
            yield (
                _place_of(text, facts.episode.at.of("promises")),
                f"The promise {quoted(text)} is made nowhere.",
                f"Say it in the opening, and put `[promise {name}]` behind the sentence.",
            )
