"""Checks of the checklist itself: what has to be fixed before the first rating."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations

from scriptkit.checking.rules import Found, check
from scriptkit.model import Checklist, Facts
from scriptkit.places import place_of
from scriptkit.wording import quoted

MANY = 0.5  # a criterion that weighs more outvotes all the others together
ALIKE = 0.8  # rank correlation from which on two criteria are likely to ask the same
ENOUGH_TO_TELL = 6  # exercises
MOST_CRITERIA = 8
FEWEST_GRADES, MOST_GRADES = 2, 9
OF_LIST = (
    "best of", "worst of", "of the list", "on the list", "on this list", "of all these", "than the others",
    "than the rest", "of the ten", "of the lot", "compared with the others", "in this episode",
)  # fmt: skip


@check("warning", "record")
def anchor_missing(facts: Facts) -> Iterator[Found]:
    """A criterion does not say what its lowest, its middle or its highest rating means.

    An anchor is what a rating can be held against by somebody else, or by you in a year. Without one, a four is a mood.

    Rule: ours, after good practice in weighing by criteria: the ends and the middle of a scale are described before
    anything is rated.

    Bad:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?, anchors: {1: a circus act, 5: nothing to balance}}}}
        exercises: {hang: {name: Bar hang, ratings: {steady: 4}}}
    Good:
        title: One
        checklist:
          criteria: {steady: {ask: Is it steady?, anchors: {1: a circus act, 3: a hand on the wall, 5: no balancing}}}
        exercises: {hang: {name: Bar hang, ratings: {steady: 4}}}
    """
    checklist = facts.episode.checklist
    if not checklist or not any(one.ratings for one in facts.episode.exercises.values()):
        return
    for name, criterion in checklist.criteria.items():
        known = [value for value in map(_number, criterion.anchors) if value is not None]
        lacking = [told for told, low, high in _wanted(checklist) if not any(low <= one <= high for one in known)]
        if lacking:
            *others, last = lacking
            means = f"{', '.join(others)} and {last} ratings mean" if others else f"{last} rating means"
            yield (
                criterion.at.of("anchors"),
                f"{quoted(name)} does not say what its {means}.",
                "Write it under `anchors:`, in words that somebody else could rate by.",
            )


def _number(key: str) -> float | None:
    try:
        return float(key)
    except ValueError:
        return None


def _wanted(checklist: Checklist) -> list[tuple[str, float, float]]:
    """What an anchor has to stand for, and between which ratings: both ends, and the middle third of a longer scale."""
    low, high = min(checklist.scale), max(checklist.scale)
    third = (high - low) / 3
    wanted = [("lowest", low, low), ("highest", high, high)]
    if high - low >= 2:
        wanted.insert(1, ("middle", low + third, high - third))
    return wanted


@check("warning")
def anchor_relative(facts: Facts) -> Iterator[Found]:
    """What a rating means hangs on the other exercises of the list.

    "The best of the ten" is another rating once an exercise is added or taken away, and with it the order of the rest.
    A scale that is fixed before the first rating does not move.

    Rule: ours; scaling to the list is known to turn an order round when an item is added.

    Bad:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?, anchors: {1: falls, 3: wobbles, 5: the best of the ten}}}}
        exercises: {hang: {name: Bar hang, ratings: {steady: 4}}}
    Good:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?, anchors: {1: falls, 3: wobbles, 5: nothing moves}}}}
        exercises: {hang: {name: Bar hang, ratings: {steady: 4}}}
    """
    checklist = facts.episode.checklist
    for criterion in checklist.criteria.values() if checklist else ():
        for words in (criterion.ask, *criterion.anchors.values()):
            found = next((phrase for phrase in OF_LIST if phrase in words.lower()), "")
            if found:
                yield (
                    place_of(words, criterion.at.of("anchors"), words.lower().find(found)),
                    f"{quoted(words)} measures an exercise by the others on the list.",
                    "Say what can be seen on the exercise alone, so that the rating stays when the list changes.",
                )


@check("warning", "record")
def weight_decides(facts: Facts) -> Iterator[Found]:
    """One criterion weighs more than all the others together.

    Then the others can hardly change an order, and the checklist asks one question with decorations.

    Rule: ours; no weight above a half without saying why (`# allow:` takes the reason).

    Bad:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?, weight: 70}, quick: {ask: Is it quick?, weight: 30}}}
        exercises: {hang: {name: Bar hang}}
    Good:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?, weight: 50}, quick: {ask: Is it quick?, weight: 50}}}
        exercises: {hang: {name: Bar hang}}
    """
    checklist = facts.episode.checklist
    for name, share in facts.criteria_shares.items():
        if checklist and len(checklist.criteria) > 1 and share > MANY + 1e-9:
            yield (
                checklist.criteria[name].at.of("weight"),
                f"{quoted(name)} weighs {share:.0%}, more than all the other questions together.",
                "Give it half at most, split it into two questions, or say why under `# allow:`.",
            )


@check("warning", "record")
def weight_nought(facts: Facts) -> Iterator[Found]:
    """A criterion weighs nothing, so that its ratings change no grade.

    Rule: ours; a question that counts for nothing looks to a viewer as if it counted.

    Bad:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?, weight: 0}, quick: {ask: Is it quick?, weight: 30}}}
        exercises: {hang: {name: Bar hang}}
    Good:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?, weight: 30}, quick: {ask: Is it quick?, weight: 30}}}
        exercises: {hang: {name: Bar hang}}
    """
    checklist = facts.episode.checklist
    weights = {name: one.weight for name, one in checklist.criteria.items()} if checklist else {}
    every = bool(weights) and all(weight == 0 for weight in weights.values())
    for name, weight in weights.items():
        if weight == 0 and checklist:
            yield (
                checklist.criteria[name].at.of("weight"),
                f"{quoted(name)} weighs 0, "
                + ("as all the others do: no grade can be earned." if every else "so it changes no grade."),
                "Give it a weight, or take the question out.",
            )


@check("warning", "record")
def criteria_alike(facts: Facts) -> Iterator[Found]:
    """Two criteria put the exercises in nearly the same order.

    If two questions always get the same answer, what they ask is counted twice, and the weights are not what they say.

    Rule: ours; a rank correlation above 0.8 over six exercises or more.

    Bad:
        title: One
        checklist: {criteria: {load: {ask: Can you add load?}, heavy: {ask: Can it get heavy?}}}
        exercises:
          hang: {name: Bar hang, ratings: {load: 1, heavy: 1}}
          row: {name: Ring row, ratings: {load: 2, heavy: 2}}
          dip: {name: Ring dip, ratings: {load: 3, heavy: 3}}
          pull: {name: Pull-up, ratings: {load: 4, heavy: 4}}
          curl: {name: Towel curl, ratings: {load: 5, heavy: 4}}
          pinch: {name: Plate pinch, ratings: {load: 5, heavy: 5}}
    Good:
        title: One
        checklist: {criteria: {load: {ask: Can you add load?}, quick: {ask: Is it quick?}}}
        exercises:
          hang: {name: Bar hang, ratings: {load: 1, quick: 5}}
          row: {name: Ring row, ratings: {load: 2, quick: 2}}
          dip: {name: Ring dip, ratings: {load: 3, quick: 4}}
          pull: {name: Pull-up, ratings: {load: 4, quick: 5}}
          curl: {name: Towel curl, ratings: {load: 5, quick: 1}}
          pinch: {name: Plate pinch, ratings: {load: 5, quick: 4}}
    """
    checklist = facts.episode.checklist
    for one, other in combinations(checklist.criteria, 2) if checklist else ():
        pairs = []
        for exercise in facts.episode.exercises.values():
            first, second = exercise.ratings.get(one), exercise.ratings.get(other)
            if first and second and first.score is not None and second.score is not None:
                pairs.append((first.score, second.score))
        alike = _rank_correlation(pairs) if len(pairs) >= ENOUGH_TO_TELL else 0.0
        if alike > ALIKE and checklist:
            yield (
                place_of(other, checklist.criteria[other].at.place),
                (
                    f"{quoted(one)} and {quoted(other)} put {len(pairs)} exercises in nearly the same order "
                    f"(rank correlation {alike:.2f})."
                ),
                "If they ask the same, make one question of them; if not, look at the ratings again, column by column.",
            )


def _rank_correlation(pairs: Sequence[tuple[float, float]]) -> float:
    """Spearman's: the correlation of the ranks, equal values sharing theirs; 0 where one of the two never changes."""
    first, second = (_ranks([pair[part] for pair in pairs]) for part in (0, 1))
    middle = (len(pairs) - 1) / 2
    top = sum((x - middle) * (y - middle) for x, y in zip(first, second, strict=True))
    below = sum((x - middle) ** 2 for x in first) * sum((y - middle) ** 2 for y in second)
    return top / below**0.5 if below else 0.0


def _ranks(values: Sequence[float]) -> list[float]:
    return [sum(other < value for other in values) + (values.count(value) - 1) / 2 for value in values]


@check("note")
def criteria_many(facts: Facts) -> Iterator[Found]:
    """A checklist asks more questions than a viewer keeps in mind.

    Rule: ours; four to eight criteria are common in weighing by criteria.

    Bad:
        title: One
        checklist: {criteria: {a: One?, b: Two?, c: 3?, d: Four?, e: Five?, f: Six?, g: 7?, h: Eight?, i: Nine?}}
        exercises: {hang: {name: Bar hang}}
    Good:
        title: One
        checklist: {criteria: {steady: Is it steady?, quick: Is it quick?}}
        exercises: {hang: {name: Bar hang}}
    """
    checklist = facts.episode.checklist
    if checklist and len(checklist.criteria) > MOST_CRITERIA:
        yield (
            checklist.at.of("criteria"),
            f"The checklist asks {len(checklist.criteria)} questions.",
            "Four to eight are enough for most lists: join those that ask nearly the same.",
        )


@check("warning")
def grades_count(facts: Facts) -> Iterator[Found]:
    """The scale has one grade only, or more than nine.

    Rule: ours; one grade ranks nothing, and more than nine are finer than ratings by eye.

    Bad:
        title: One
        grades: {A: 4}
        exercises: {hang: {name: Bar hang}}
    Good:
        title: One
        grades: {A: 4, B: 3}
        exercises: {hang: {name: Bar hang}}
    """
    count = len(facts.episode.grades)
    if count and not FEWEST_GRADES <= count <= MOST_GRADES:
        yield (
            facts.episode.at.of("grades"),
            f"The scale has {'one grade' if count == 1 else f'{count} grades'}.",
            f"Use {FEWEST_GRADES} to {MOST_GRADES}; plus and minus come by themselves.",
        )
