"""Checks of overused and underused: both need a figure."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.remarks import grade_doubts
from scriptkit.checking.rules import Found, check
from scriptkit.model import Facts
from scriptkit.wording import quoted


def _name(facts: Facts, exercise: str) -> str:
    return quoted(facts.episode.exercises[exercise].name)


@check("error", "record")
def use_without_figure(facts: Facts) -> Iterator[Found]:
    """An exercise is called overused or underused, and nothing says how many people do it.

    Rule: ours; how often something is done is a number, and how good it is another. Without the first it is opinion.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang, grade: C}}
        --- segments/hang.md
        The bar hang is overused. [aside]
    Good:
        title: One
        exercises: {hang: {name: Bar hang, grade: C}}
        --- segments/hang.md
        To me the bar hang is overused. [opinion]
    """
    for one in grade_doubts(facts, "no-use"):
        yield (
            one.place,
            f"{quoted(one.words)} is said of {_name(facts, one.exercise)}, and there is no figure of how many do it.",
            "Give one: `use: {share: 0.4, source: ID, seen: 2026-01}`; or own it as opinion with `[opinion]`.",
        )


@check("warning", "record")
def use_unsourced(facts: Facts) -> Iterator[Found]:
    """The figure behind overused or underused has no source or no date.

    Rule: ours; what people do changes, so a figure of use says who counted and when.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang, grade: C, use: {share: 0.6, source: tally}}}
        sources: {tally: {title: A count, year: 2026, invented: true}}
        --- segments/hang.md
        To me the bar hang is overused. [opinion]
    Good:
        title: One
        exercises: {hang: {name: Bar hang, grade: C, use: {share: 0.6, source: tally, seen: 2026-01}}}
        sources: {tally: {title: A count, year: 2026, invented: true}}
        --- segments/hang.md
        To me the bar hang is overused. [opinion]
    """
    for one in grade_doubts(facts, "bare-use"):
        yield (
            one.place,
            f"The figure behind {quoted(one.words)} of {_name(facts, one.exercise)} has no {one.has}.",
            "Add `source:` with who counted, and `seen:` with when.",
        )


@check("error", "record")
def use_against_figure(facts: Facts) -> Iterator[Found]:
    """An exercise is called overused or underused, and its own figure says the opposite.

    With eight figures or more, use is fitted on merit; with three to seven, the two places are compared; with fewer,
    the share of people who do it is held against the share of the list that it scores above.

    Rule: ours; overused is more common than good, underused better than common, and the sign has to agree.

    Bad:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?}}}
        exercises:
          hang: {name: Bar hang, ratings: {steady: 5}, use: {share: 0.1, source: tally, seen: 2026-01}}
          row: {name: Ring row, ratings: {steady: 2}}
        sources: {tally: {title: A count, year: 2026, invented: true}}
        --- segments/hang.md
        To me the bar hang is overused. [opinion]
    Good:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?}}}
        exercises:
          hang: {name: Bar hang, ratings: {steady: 5}, use: {share: 0.1, source: tally, seen: 2026-01}}
          row: {name: Ring row, ratings: {steady: 2}}
        sources: {tally: {title: A count, year: 2026, invented: true}}
        --- segments/hang.md
        To me the bar hang is underused. [opinion]
    """
    for one in grade_doubts(facts, "use-against"):
        yield (
            one.place,
            f"{quoted(one.words)}: {one.has} do {_name(facts, one.exercise)}, which beside its score is the opposite.",
            "Look at the figure and at the ratings, or take the word back.",
        )


@check("note", "record")
def use_hardly_off(facts: Facts) -> Iterator[Found]:
    """An exercise is called overused or underused, and its figure leans that way only a little.

    Rule: ours; plain is one standard deviation off the fit, or three tenths of the list.

    Bad:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?}}}
        exercises:
          hang: {name: Bar hang, ratings: {steady: 4}, use: {share: 0.6, source: tally, seen: 2026-01}}
          row: {name: Ring row, ratings: {steady: 2}}
          dip: {name: Ring dip, ratings: {steady: 5}}
        sources: {tally: {title: A count, year: 2026, invented: true}}
        --- segments/hang.md
        In that count 60 percent did it, so it's overused. [from tally]
    Good:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?}}}
        exercises:
          hang: {name: Bar hang, ratings: {steady: 1}, use: {share: 0.6, source: tally, seen: 2026-01}}
          row: {name: Ring row, ratings: {steady: 2}}
          dip: {name: Ring dip, ratings: {steady: 5}}
        sources: {tally: {title: A count, year: 2026, invented: true}}
        --- segments/hang.md
        In that count 60 percent did it, so it's overused. [from tally]
    """
    for one in grade_doubts(facts, "use-slight"):
        yield (
            one.place,
            f"{quoted(one.words)}: {one.has} do {_name(facts, one.exercise)}, which is only a little off its score.",
            "Say how little, or leave the word out.",
        )
