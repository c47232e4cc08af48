"""Checks of how firmly grades are said against how firm they are."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.remarks import grade_doubts
from scriptkit.checking.rules import Found, check
from scriptkit.model import Facts
from scriptkit.wording import quoted

SEE = "`scriptkit grades` shows what would change it."


@check("error", "record")
def grade_too_firm(facts: Facts) -> Iterator[Found]:
    """A grade is said as if nothing could move it, and slightly other weights do.

    Rule: ours; a grade that fewer than 70 in 100 weightings around your own keep, or that its uncertain ratings put
    into another band, is not a solid one.

    Bad:
        title: One
        grades: {A: 4, B: 3, C: 1}
        checklist: {criteria: {steady: {ask: Is it steady?}, quick: {ask: Is it quick?}}}
        exercises: {hang: {name: Bar hang, ratings: {steady: 5, quick: 3}}}
        --- segments/hang.md
        For me it's a solid {{ exercise.grade | spoken }}. [opinion]
    Good:
        title: One
        grades: {A: 4, B: 3, C: 1}
        checklist: {criteria: {steady: {ask: Is it steady?}, quick: {ask: Is it quick?}}}
        exercises: {hang: {name: Bar hang, ratings: {steady: 5, quick: 5}}}
        --- segments/hang.md
        For me it's a solid {{ exercise.grade | spoken }}. [opinion]
    """
    for one in grade_doubts(facts, "solid-unsure"):
        yield (
            one.place,
            f"{quoted(one.words)} is too firm: its uncertain ratings could make it {one.other}.",
            "Say the range, or rate it more surely.",
        )
    for one in grade_doubts(facts, "solid-flips"):
        grade = facts.grades[one.exercise].grade
        yield (
            one.place,
            f"{quoted(one.words)} is too firm: {float(one.has):.0%} of the weightings around yours keep {grade}"
            + (f", most others make it {one.other}." if one.other else "."),
            f"Say that it is close, or say the range. {SEE}",
        )


@check("warning", "record")
def grade_flips(facts: Facts) -> Iterator[Found]:
    """A grade that slightly other weights would change is said without a range and without its reason.

    Rule: ours; a grade whose band fewer than 70 in 100 weightings around your own keep is close to an edge.

    Bad:
        title: One
        grades: {A: 4, B: 3, C: 1}
        checklist: {criteria: {steady: {ask: Is it steady?}, quick: {ask: Is it quick?}}}
        exercises: {hang: {name: Bar hang, ratings: {steady: 5, quick: 3}}}
        --- segments/hang.md
        I give it {{ exercise.grade | spoken | a }}. [opinion]
    Good:
        title: One
        grades: {A: 4, B: 3, C: 1}
        checklist: {criteria: {steady: {ask: Is it steady?}, quick: {ask: Is it quick?}}}
        exercises: {hang: {name: Bar hang, ratings: {steady: 5, quick: 3}}}
        --- segments/hang.md
        I give it {{ exercise.grade | spoken | a }}, and it's close: count speed for more and it's a B. [opinion]
    """
    for one in grade_doubts(facts, "flips"):
        grade = facts.grades[one.exercise].grade
        yield (
            one.place,
            (
                f"{quoted(one.words)} stands close to an edge: {float(one.has):.0%} of the weightings around yours "
                f"keep it in the band of {grade}{f', most others make it {one.other}' if one.other else ''}."
            ),
            f"Say both grades, or give the reason with it. {SEE}",
        )
