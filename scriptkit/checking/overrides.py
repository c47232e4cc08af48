"""Checks of grades against the ratings they stand on."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.remarks import grade_doubts
from scriptkit.checking.rules import Found, check
from scriptkit.model import Facts
from scriptkit.wording import quoted


def _name(facts: Facts, exercise: str) -> str:
    return quoted(facts.episode.exercises[exercise].name)


@check("error", "record")
def override_missing(facts: Facts) -> Iterator[Found]:
    """A grade is not the one that its ratings earn, and no reason is given.

    A checklist is a promise to the viewer. Where you know better than your own sums, say so and say why.

    Rule: ours; an exception to a stated rule needs a stated reason.

    Bad:
        title: One
        grades: {A: 4.2, B: 3.4, C: 1}
        checklist: {criteria: {steady: {ask: Is it steady?}}}
        exercises: {hang: {name: Bar hang, grade: A, ratings: {steady: 2}}}
    Good:
        title: One
        grades: {A: 4.2, B: 3.4, C: 1}
        checklist: {criteria: {steady: {ask: Is it steady?}}}
        exercises: {hang: {name: Bar hang, grade: A, ratings: {steady: 5}}}
    """
    for one in grade_doubts(facts, "no-override"):
        yield (
            one.place,
            f"{_name(facts, one.exercise)} has the grade {quoted(one.words)}, and its ratings earn {one.other}.",
            "Correct the ratings, or leave `grade:` out (the earned one is used), or give a reason as `override:`.",
        )


@check("error", "record")
def override_not_spoken(facts: Facts) -> Iterator[Found]:
    """The reason for a grade that the ratings do not earn is not spoken.

    Viewers saw the checklist and can add up. What they do not hear they cannot weigh.

    Rule: ours; most of the reason's words in one sentence of its segment, or the mark `[override]` behind the sentence.

    Bad:
        title: One
        grades: {A: 4.2, B: 3.4, C: 1}
        checklist: {criteria: {steady: {ask: Is it steady?}}}
        exercises:
          hang: {name: Bar hang, grade: A, ratings: {steady: 2}, override: A bar is in every park and a machine is not.}
        --- segments/hang.md
        I give it {{ exercise.grade | spoken | a }}. [opinion]
    Good:
        title: One
        grades: {A: 4.2, B: 3.4, C: 1}
        checklist: {criteria: {steady: {ask: Is it steady?}}}
        exercises:
          hang: {name: Bar hang, grade: A, ratings: {steady: 2}, override: A bar is in every park and a machine is not.}
        --- segments/hang.md
        I give it {{ exercise.grade | spoken | a }}. [opinion] There's a bar in every park, and no machine. [override]
    """
    for one in grade_doubts(facts, "unspoken-override"):
        yield (
            one.place,
            f"Nobody says why {_name(facts, one.exercise)} gets {quoted(one.words)} where it earns {one.other}.",
            "Say it in its segment: `{{ exercise.override }} [override]`, or in other words with `[override]` behind.",
        )


@check("warning", "record")
def override_not_needed(facts: Facts) -> Iterator[Found]:
    """A reason is given for a grade that the ratings earn anyway.

    Rule: ours; a reason that was needed once reads like an excuse now.

    Bad:
        title: One
        grades: {A: 4.2, B: 3.4, C: 1}
        checklist: {criteria: {steady: {ask: Is it steady?}}}
        exercises: {hang: {name: Bar hang, grade: A, ratings: {steady: 5}, override: A bar is in every park.}}
    Good:
        title: One
        grades: {A: 4.2, B: 3.4, C: 1}
        checklist: {criteria: {steady: {ask: Is it steady?}}}
        exercises: {hang: {name: Bar hang, grade: A, ratings: {steady: 5}}}
    """
    for one in grade_doubts(facts, "idle-override"):
        yield (
            one.place,
            f"{_name(facts, one.exercise)} earns {one.other}, so {quoted(one.words)} needs no reason.",
            "Take `override:` out, or look whether the grade is still the one you mean.",
        )


@check("error", "record")
def better_graded_lower(facts: Facts) -> Iterator[Found]:
    """An exercise is graded higher than one that is as good or better on every question.

    Whatever the weights, no sum can come out like that. One of the grades or one of the ratings is a mistake.

    Rule: logic (dominance).

    Bad:
        title: One
        grades: {A: 4, B: 3, C: 1}
        checklist: {criteria: {steady: {ask: Is it steady?}, quick: {ask: Is it quick?}}}
        exercises:
          hang: {name: Bar hang, grade: B, ratings: {steady: 4, quick: 4}}
          row: {name: Ring row, grade: A, ratings: {steady: 4, quick: 3}}
    Good:
        title: One
        grades: {A: 4, B: 3, C: 1}
        checklist: {criteria: {steady: {ask: Is it steady?}, quick: {ask: Is it quick?}}}
        exercises:
          hang: {name: Bar hang, grade: A, ratings: {steady: 4, quick: 4}}
          row: {name: Ring row, grade: B, ratings: {steady: 4, quick: 3}}
    """
    for one in grade_doubts(facts, "dominated"):
        better, worse = _name(facts, one.exercise), _name(facts, one.other)
        yield (
            one.place,
            (
                f"{better} is rated as good as {worse} or better on every question, and gets {quoted(one.words)} "
                f"where {worse} gets {quoted(one.has)}."
            ),
            "No weights make that so: correct a rating or a grade.",
        )


@check("note", "record")
def override_against_order(facts: Facts) -> Iterator[Found]:
    """An override puts an exercise above one that is as good or better on every question.

    It may be meant. Then the reason has to tell of something that none of the questions asks.

    Rule: ours; an override explains what the checklist does not ask, and not what it does.

    Bad:
        title: One
        grades: {A: 4, B: 3, C: 1}
        checklist: {criteria: {steady: {ask: Is it steady?}, quick: {ask: Is it quick?}}}
        exercises:
          hang: {name: Bar hang, grade: B+, ratings: {steady: 4, quick: 3}}
          row: {name: Ring row, grade: A, ratings: {steady: 3, quick: 3}, override: Rings fit into any bag.}
    Good:
        title: One
        grades: {A: 4, B: 3, C: 1}
        checklist: {criteria: {steady: {ask: Is it steady?}, quick: {ask: Is it quick?}}}
        exercises:
          hang: {name: Bar hang, grade: B+, ratings: {steady: 4, quick: 3}}
          row: {name: Ring row, grade: B+, ratings: {steady: 3, quick: 3}, override: Rings fit into any bag.}
    """
    for one in grade_doubts(facts, "overridden-order"):
        better, worse = _name(facts, one.exercise), _name(facts, one.other)
        yield (
            one.place,
            (
                f"By your own word {worse} gets {quoted(one.has)}, above {better} with {quoted(one.words)}, which is "
                "rated as good or better on every question."
            ),
            "Make sure that the reason tells of something that no question asks, or grade them alike.",
        )
