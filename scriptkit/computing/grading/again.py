"""A second rating held against the first: how far apart they are, and which grades come out otherwise."""

from __future__ import annotations

from collections.abc import Mapping

from scriptkit.computing.grading import scale, scores
from scriptkit.model import Checklist, Episode, Exercise, Graded, Rating, RatingsAgain, Rerating, SecondRating
from scriptkit.places import place_of


def compare(episode: Episode, graded: Mapping[str, Graded], again: RatingsAgain | None) -> SecondRating | None:
    """Every rating that both give; None where there is no second rating or no checklist."""
    checklist = episode.checklist
    if again is None or checklist is None:
        return None
    low, high = min(checklist.scale), max(checklist.scale)
    pairs: list[Rerating] = []
    unknown, off = [], []
    for name, row in again.ratings.items():
        exercise = episode.exercises.get(str(name))
        if exercise is None:
            unknown.append((str(name), "", place_of(name, again.at.of("ratings"))))
            continue
        for criterion, rating in row.items():
            if criterion not in checklist.criteria:
                unknown.append((str(name), str(criterion), place_of(criterion, rating.at.place)))
            elif rating.score is not None and not low <= rating.score <= high:
                off.append((str(name), str(criterion), rating.score, rating.at.of("score")))
            else:
                pairs += _pair(exercise, str(criterion), again, checklist)
    given = sum(rating.score is not None for one in episode.exercises.values() for rating in one.ratings.values())
    return SecondRating(
        again.by,
        again.on,
        tuple(pairs),
        sum(one.apart == 0 for one in pairs) / len(pairs) if pairs else None,
        max((one.apart for one in pairs), default=None),
        tuple(_changed(episode, graded, pairs)),
        given - len(pairs),
        tuple(unknown),
        tuple(off),
    )


def _pair(exercise: Exercise, criterion: str, again: RatingsAgain, checklist: Checklist) -> list[Rerating]:
    first, second = exercise.ratings.get(criterion), again.ratings[exercise.id][criterion]
    if first is None or first.score is None or second.score is None:
        return []
    if not min(checklist.scale) <= first.score <= max(checklist.scale):
        return []
    apart = abs(first.score - second.score) / scale.step_of(checklist)
    place = second.at.of("score")
    return [Rerating(str(exercise.id), criterion, first.score, second.score, round(apart, 9), second.answer, place)]


def _changed(episode: Episode, graded: Mapping[str, Graded], pairs: list[Rerating]) -> list[tuple[str, str, str]]:
    """The exercises whose ratings earn another grade with the second ratings in place of the first."""
    second: dict[str, dict[str, Rating]] = {}
    for one in pairs:
        second.setdefault(one.exercise, {})[one.criterion] = Rating(one.again)
    made = []
    for name, ratings in second.items():
        exercise = episode.exercises[name]
        earned = scores.grade(exercise._replace(ratings={**exercise.ratings, **ratings}), episode).earned
        was = graded[name].earned
        if was and earned and was != earned:
            made.append((name, was, earned))
    return made
