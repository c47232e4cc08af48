"""Checks of a second rating, in ratings-again.yaml."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.rules import Found, check
from scriptkit.model import Facts
from scriptkit.wording import did_you_mean, grade_parts, listed, quoted

TWO_STEPS = 2.0


@check("warning", "record")
def rerating_unanswered(facts: Facts) -> Iterator[Found]:
    """A second rating is two steps or more from the first, and nobody says what that means.

    Rule: ours; a gap of two steps says that the anchor can be read in two ways, and wants a written answer.

    Bad:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?}}}
        exercises: {hang: {name: Bar hang, ratings: {steady: 5}}}
        --- ratings-again.yaml
        ratings: {hang: {steady: 2}}
    Good:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?}}}
        exercises: {hang: {name: Bar hang, ratings: {steady: 5}}}
        --- ratings-again.yaml
        ratings: {hang: {steady: {score: 2, answer: "Rated with wet hands; the first one stands."}}}
    """
    for one in facts.again.pairs if facts.again else ():
        if one.apart >= TWO_STEPS - 1e-9 and not one.answer.strip():
            exercise = facts.episode.exercises[one.exercise].name
            yield (
                one.place,
                f"{quoted(exercise)} has {one.first:g} for {quoted(one.criterion)}, and {one.again:g} the second time.",
                "Write what you make of it: `{score: " + f"{one.again:g}" + ", answer: ...}`; and look at the anchors.",
            )


@check("warning", "record")
def rerating_changes_grade(facts: Facts) -> Iterator[Found]:
    """With the second ratings a grade falls into another band, and no answer says which ratings stand.

    Rule: ours; a grade that another day or another pair of eyes changes is to be said as a range, or with its reason.

    Bad:
        title: One
        grades: {A: 4, B: 3, C: 1}
        checklist: {criteria: {steady: {ask: Is it steady?}}}
        exercises: {hang: {name: Bar hang, ratings: {steady: 4}}}
        --- ratings-again.yaml
        ratings: {hang: {steady: 3}}
    Good:
        title: One
        grades: {A: 4, B: 3, C: 1}
        checklist: {criteria: {steady: {ask: Is it steady?}}}
        exercises: {hang: {name: Bar hang, ratings: {steady: 4}}}
        --- ratings-again.yaml
        ratings: {hang: {steady: 4}}
    """
    for name, was, now in facts.again.changed if facts.again else ():
        if grade_parts(was)[0] == grade_parts(now)[0]:
            continue  # a sign alone is shown on the page; a step more or less nearly always changes it
        apart = [one for one in facts.again.pairs if one.exercise == name and one.apart] if facts.again else []
        if all(one.answer.strip() for one in apart):
            continue
        exercise = facts.episode.exercises[name]
        where = listed(f"{one.criterion}: {one.first:g}, then {one.again:g}" for one in apart)
        yield (
            exercise.at.of("ratings"),
            f"{quoted(exercise.name)} earns {was} by the first ratings and {now} by the second ({where}).",
            "Write in ratings-again.yaml which ratings stand and why (`answer:`), or say both grades.",
        )


@check("error")
def rerating_of_nothing(facts: Facts) -> Iterator[Found]:
    """A second rating is of an exercise or a question that the outline does not have.

    Rule: ours; it can only be held against a first one.

    Bad:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?}}}
        exercises: {hang: {name: Bar hang, ratings: {steady: 4}}}
        --- ratings-again.yaml
        ratings: {hnag: {steady: 4}}
    Good:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?}}}
        exercises: {hang: {name: Bar hang, ratings: {steady: 4}}}
        --- ratings-again.yaml
        ratings: {hang: {steady: 4}}
    """
    checklist = facts.episode.checklist
    for exercise, criterion, place in facts.again.unknown if facts.again and checklist else ():
        known = list(checklist.criteria if criterion else facts.episode.exercises) if checklist else []
        word, kind = (criterion, "criterion") if criterion else (exercise, "exercise")
        yield (
            place,
            f"There is no {kind} {quoted(word)} to hold the second rating against.",
            did_you_mean(word, known) or f"There are: {listed(known)}.",
        )


@check("error")
def rerating_off_scale(facts: Facts) -> Iterator[Found]:
    """A second rating lies outside the checklist's scale.

    Rule: ours; both ratings are on the same scale.

    Bad:
        title: One
        checklist: {scale: [1, 5], criteria: {steady: {ask: Is it steady?}}}
        exercises: {hang: {name: Bar hang, ratings: {steady: 4}}}
        --- ratings-again.yaml
        ratings: {hang: {steady: 9}}
    Good:
        title: One
        checklist: {scale: [1, 5], criteria: {steady: {ask: Is it steady?}}}
        exercises: {hang: {name: Bar hang, ratings: {steady: 4}}}
        --- ratings-again.yaml
        ratings: {hang: {steady: 5}}
    """
    checklist = facts.episode.checklist
    for exercise, criterion, score, place in facts.again.off if facts.again and checklist else ():
        low, high = (min(checklist.scale), max(checklist.scale)) if checklist else (0.0, 0.0)
        name = facts.episode.exercises[exercise].name
        yield (
            place,
            f"{quoted(name)} has {score:g} for {quoted(criterion)} the second time; the scale is {low:g} to {high:g}.",
            "Correct the rating.",
        )
