"""Checks of ratings and grades."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from scriptkit.checking.rules import Found, check
from scriptkit.model import Facts, Graded, SpokenGrade
from scriptkit.places import place_of
from scriptkit.wording import did_you_mean, grade_parts, listed, quoted


@check("error")
def unknown_criterion(facts: Facts) -> Iterator[Found]:
    """A rating is for a question that the checklist does not ask.

    Rule: ours; a rating has to answer a question of the checklist.

    Bad:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?}}}
        exercises: {hang: {name: Bar hang, ratings: {steddy: 4}}}
    Good:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?}}}
        exercises: {hang: {name: Bar hang, ratings: {steady: 4}}}
    """
    checklist = facts.episode.checklist
    known = checklist.criteria if checklist else {}
    unread = "criteria" in checklist.at.keys if checklist else "checklist" in facts.episode.at.keys
    if not known and unread:
        return  # it is there and could not be read, which is told at its place
    for exercise in facts.episode.exercises.values():
        for name, rating in exercise.ratings.items():
            if name not in known:
                yield (
                    place_of(name, rating.at.place),
                    f"The checklist has no criterion {quoted(name)}.",
                    did_you_mean(name, known)
                    or f"Its criteria: {listed(known) or 'none, since there is no `checklist:`'}.",
                )


@check("error")
def rating_off_scale(facts: Facts) -> Iterator[Found]:
    """A rating lies outside the checklist's scale.

    Rule: ours; a scale has two ends.

    Bad:
        title: One
        checklist: {scale: [1, 5], criteria: {steady: {ask: Is it steady?}}}
        exercises: {hang: {name: Bar hang, ratings: {steady: 7}}}
    Good:
        title: One
        checklist: {scale: [1, 5], criteria: {steady: {ask: Is it steady?}}}
        exercises: {hang: {name: Bar hang, ratings: {steady: 4}}}
    """
    if not facts.episode.checklist:
        return
    low, high = min(facts.episode.checklist.scale), max(facts.episode.checklist.scale)
    for exercise in facts.episode.exercises.values():
        for name, rating in exercise.ratings.items():
            off = [value for value in (rating.score, *rating.range) if value is not None and not low <= value <= high]
            if off:
                yield (
                    rating.at.of("score"),
                    f"{quoted(exercise.name)} has {off[0]:g} for {quoted(name)}; the scale is {low:g} to {high:g}.",
                    "Correct the rating or the scale.",
                )


@check("error")
def floor_off_scale(facts: Facts) -> Iterator[Found]:
    """A floor lies outside the checklist's scale or at its lower end, so that every rating or none lies below it.

    Rule: ours; a scale has two ends.

    Bad:
        title: One
        checklist: {scale: [1, 5], criteria: {steady: {ask: Is it steady?, floor: 7}}}
        exercises: {hang: {name: Bar hang, ratings: {steady: 4}}}
    Good:
        title: One
        checklist: {scale: [1, 5], criteria: {steady: {ask: Is it steady?, floor: 2}}}
        exercises: {hang: {name: Bar hang, ratings: {steady: 4}}}
    """
    checklist = facts.episode.checklist
    low, high = (min(checklist.scale), max(checklist.scale)) if checklist else (0.0, 0.0)
    for name, criterion in checklist.criteria.items() if checklist else ():
        if criterion.floor is not None and not low < criterion.floor <= high:
            yield (
                criterion.at.of("floor"),
                f"The floor of {quoted(name)} is {criterion.floor:g}, and "
                + ("no" if criterion.floor <= low else "every")
                + f" rating is below it; the scale is {low:g} to {high:g}.",
                "Give the lowest rating that does not cap the grade, or leave `floor:` out.",
            )


@check("warning")
def range_without_rating(facts: Facts) -> Iterator[Found]:
    """The range of an uncertain rating does not hold the rating itself.

    Rule: ours; a range says how low and how high the rating could be, so the rating lies in it.

    Bad:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?}}}
        exercises: {hang: {name: Bar hang, ratings: {steady: {score: 2, range: [3, 5]}}}}
    Good:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?}}}
        exercises: {hang: {name: Bar hang, ratings: {steady: {score: 4, range: [3, 5]}}}}
    """
    for exercise in facts.episode.exercises.values():
        for name, rating in exercise.ratings.items():
            span = sorted(rating.range)
            if rating.score is not None and len(span) == 2 and not span[0] <= rating.score <= span[1]:
                yield (
                    rating.at.of("range"),
                    (
                        f"{quoted(exercise.name)} has {rating.score:g} for {quoted(name)}, and a range of "
                        f"{span[0]:g} to {span[1]:g}."
                    ),
                    "Correct the rating or its range; until then both count.",
                )


@check("warning", "record")
def missing_rating(facts: Facts) -> Iterator[Found]:
    """An exercise has no rating for a criterion of the checklist.

    A missing rating is no nought: the grade stays open between the lowest and the highest it could be.

    Rule: ours; in weighing by criteria, what is missing is common to leave open and not to count as nought.

    Bad:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?}, quick: {ask: Is it quick?}}}
        exercises: {hang: {name: Bar hang, ratings: {steady: 4}}}
    Good:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?}, quick: {ask: Is it quick?}}}
        exercises: {hang: {name: Bar hang, ratings: {steady: 4, quick: 3}}}
    """
    for name, exercise in facts.episode.exercises.items():
        missing = facts.grades[name].missing
        if missing:
            yield (
                exercise.at.of("ratings"),
                f"{quoted(exercise.name)} has no rating for {listed(quoted(one) for one in missing)}.",
                "Rate it, with a range if you are not sure: {score: 3, range: [2, 4]}.",
            )


@check("error")
def unknown_grade(facts: Facts) -> Iterator[Found]:
    """A grade is not on the scale of the outline.

    Plus and minus may stand behind a grade of the scale unless `checklist: {signs: false}`. Where there is no
    `grades:`, ratings earn A, B, C, D or F, so a given grade has to be one of these.

    Rule: ours; grades can be compared on one scale only.

    Bad:
        title: One
        grades: {A: 4, B: 3, C: 1}
        exercises: {hang: {name: Bar hang, grade: E}}
    Good:
        title: One
        grades: {A: 4, B: 3, C: 1}
        exercises: {hang: {name: Bar hang, grade: B+}}
    """
    known, checklist = facts.earnable, facts.episode.checklist
    if not known:
        return
    signs = (checklist.signs if checklist else True) and not any(grade_parts(one)[1] for one in known)
    help_ = f"Its grades: {listed(known)}{', each with + or - if you like' if signs else ''}."
    if not facts.episode.grades:
        help_ += " To grade otherwise, list your own under `grades:`, best first, each with the score that earns it."
    given = [(one.at.of("grade"), str(one.grade), signs) for one in facts.episode.exercises.values()]
    cap = (
        [(checklist.at.of("cap"), str(checklist.cap), not any(grade_parts(one)[1] for one in known))]
        if checklist
        else []
    )
    for place, grade, signed in (*given, *cap):
        if grade and grade not in known and not (signed and grade_parts(grade)[0] in known):
            yield place, f"{quoted(grade)} is no grade of this outline.", help_


@check("error")
def grades_out_of_order(facts: Facts) -> Iterator[Found]:
    """The grades do not go from best to worst.

    Each grade's lowest score has to be smaller than that of the one before it.

    Rule: ours; cut-offs that do not fall would give a better score a worse grade.

    Bad:
        title: One
        grades: {A: 3, B: 4}
        exercises: {hang: {name: Bar hang}}
    Good:
        title: One
        grades: {A: 4, B: 3}
        exercises: {hang: {name: Bar hang}}
    """
    listed_ = list(facts.episode.grades.items())
    for (before, least), (grade, lower) in pairwise(listed_):
        if lower >= least:
            yield (
                place_of(grade, facts.episode.at.of("grades")),
                f"{quoted(grade)} needs {lower:g}, which is no less than the {least:g} of {quoted(before)} above it.",
                "List the best grade first, each with the lowest score that earns it.",
            )


@check("error", "record")
def grade_spoken_otherwise(facts: Facts) -> Iterator[Found]:
    """A grade is spoken or shown otherwise than the outline has it.

    Viewers argue about grades: speech, card and outline have to agree. Written as `{{ exercise.grade | spoken }}`
    it always does.

    A grade that slightly other weights would make may be said beside it: "if you count speed for more, it's a B". So
    may the one that the ratings earn where the given one is another: "by my checklist it's a C, and I give it a B".

    Rule: ours; where outline, speech and card differ, one of them is a mistake.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang, grade: A-}}
        --- segments/hang.md
        I give it a B plus. [opinion]
    Good:
        title: One
        exercises: {hang: {name: Bar hang, grade: A-}}
        --- segments/hang.md
        I give it {{ exercise.grade | spoken | a }}. [opinion]
    """
    for said in facts.spoken_grades:
        real = [(name, facts.grades[name].grade) for name in said.exercises if name in facts.grades]
        wrong = [
            (name, grade) for name, grade in real if grade != said.grade and not _could_be(said, facts.grades[name])
        ]
        if not real or not (wrong if said.every else len(wrong) == len(real)):
            continue
        name, grade = wrong[0]
        exercise = facts.episode.exercises[name].name
        has = f"has {quoted(grade)}" if grade else "has none"
        yield (
            said.place,
            f"{quoted(said.text)} gives {quoted(exercise)} the grade {quoted(said.grade)}, and the outline {has}.",
            "Write `{{ exercise.grade | spoken }}`, in other segments `{{ exercises['"
            + name
            + "'].grade | spoken }}`, so that the grade is written once.",
        )


def _could_be(said: SpokenGrade, one: Graded) -> bool:
    """Whether a grade is said as what it could be, and slightly other weights or ratings do make it."""
    if said.summed and one.earned in (said.grade, f"{said.grade}+", f"{said.grade}-"):
        return True
    near = {one.otherwise, one.neighbour, grade_parts(one.neighbour)[0], one.earned_low, one.earned_high}
    return said.maybe and bool(said.grade) and said.grade in near
