"""Ratings on a checklist to scores and grades."""

from __future__ import annotations

from math import inf

from scriptkit.computing.grading import chance, scale
from scriptkit.computing.grading.scale import GradeScale
from scriptkit.model import Checklist, Criterion, Episode, Exercise, Graded, Part

KEEPS = 0.70  # share of weightings around the author's under which a grade has to stay, to be said without more


def weight(criterion: Criterion) -> float:
    """The weight of a criterion, in any unit; all weigh the same where none is given."""
    return 1.0 if criterion.weight is None else criterion.weight


def shares(checklist: Checklist) -> dict[str, float]:
    """The share of each criterion of all weights, 0 to 1; nothing where there is no weight at all."""
    total = sum(map(weight, checklist.criteria.values()))
    return {str(name): weight(one) / total for name, one in checklist.criteria.items()} if total > 0 else {}


def grade(exercise: Exercise, episode: Episode, on: GradeScale | None = None) -> Graded:
    """The score (weighted mean of the ratings), its range where ratings are missing or uncertain, and the grade."""
    given = str(exercise.grade) or None
    checklist = episode.checklist
    parts = _parts(exercise, checklist) if checklist else ()
    missing = tuple(str(name) for name in (checklist.criteria if checklist else ()) if _score(exercise, name) is None)
    if all(one.rating is None for one in parts):
        return Graded(exercise.id, None, None, None, None, given, given or "", (), missing)
    capped = tuple(one.criterion for one in parts if one.below_floor)
    known = all(one.rating is not None or not one.share for one in parts)
    score = None if not known else round(sum(one.points or 0.0 for one in parts), 9)
    low, high = (round(sum(one.share * end for one, end in zip(parts, ends, strict=True)), 9) for ends in _ends(parts))
    made = Graded(exercise.id, score, low, high, None, given, given or "", capped, missing, parts)
    on = on or scale.of(episode)
    return made if on is None or checklist is None else _graded(made, on, checklist)


def grades(episode: Episode) -> dict[str, Graded]:
    """The grade of every exercise, by id."""
    on = scale.of(episode)
    return {str(name): grade(exercise, episode, on) for name, exercise in episode.exercises.items()}


def _parts(exercise: Exercise, checklist: Checklist) -> tuple[Part, ...]:
    """What each criterion adds; nothing where no criterion has a weight. A rating off the scale is as good as none."""
    low, high = min(checklist.scale), max(checklist.scale)
    parts = []
    for name, share in shares(checklist).items():
        score, floor = _score(exercise, name), checklist.criteria[name].floor
        score = score if score is not None and low <= score <= high else None
        given = exercise.ratings[name].range if name in exercise.ratings else ()
        ends = (
            (score, *given) if score is not None else given if _score(exercise, name) is None and given else (low, high)
        )
        span = [min(high, max(low, end)) for end in ends]
        below = floor is not None and score is not None and score < floor
        points = None if score is None else share * score
        parts.append(Part(name, score, min(span), max(span), share, points, below))
    return tuple(parts)


def _score(exercise: Exercise, name: str) -> float | None:
    rating = exercise.ratings.get(name)
    return rating.score if rating else None


def _ends(parts: tuple[Part, ...]) -> tuple[list[float], list[float]]:
    return [one.low for one in parts], [one.high for one in parts]


def _graded(one: Graded, on: GradeScale, checklist: Checklist) -> Graded:
    """The same with what it earns, and how firm that is."""
    low, high = (
        on.number(end or 0.0, capped=below_floor(values, one, checklist))
        for end, values in zip((one.score_low, one.score_high), _ends(one.parts), strict=True)
    )
    made = one._replace(earned_low=on.steps[low], earned_high=on.steps[high])
    allowed = on.span(one.given) if one.given else None
    if one.score is None:
        fits = allowed is None or (allowed[0] <= low and high <= allowed[1])
        return made._replace(agrees=fits)
    number = on.number(one.score, capped=bool(one.capped))
    earned = on.steps[number]
    fits = allowed is None or allowed[0] <= number <= allowed[1]
    placed = min(one.score, on.ceiling(capped=bool(one.capped)))
    return _firm(made._replace(earned=earned, grade=one.given or earned, agrees=fits, placed=placed), on, number)


def below_floor(values: list[float], one: Graded, checklist: Checklist) -> bool:
    """Whether one of these ratings, in the order of the parts, lies below its floor."""
    floors = (checklist.criteria[part.criterion].floor for part in one.parts)
    return any(floor is not None and value < floor for floor, value in zip(floors, values, strict=True))


def _firm(one: Graded, on: GradeScale, number: int) -> Graded:
    """The same with how often the grade and its band stay, and the grade and the band it would mostly have instead."""
    band = on.bands[number]
    first, last = on.bands.index(band), len(on.bands) - 1 - on.bands[::-1].index(band)
    kept, neighbour = _stays(one, on, number, number)
    most, otherwise = (kept, neighbour) if first == last else _stays(one, on, first, last)
    return one._replace(
        firmness=kept,
        neighbour="" if neighbour is None else on.steps[neighbour],
        band_firmness=most,
        spread=round(chance.spread(*rated(one)), 9),
        otherwise="" if otherwise is None else on.bands[otherwise],
    )


def _stays(one: Graded, on: GradeScale, first: int, last: int) -> tuple[float, int | None]:
    """The share of weightings that earn the steps `first` to `last`, and the step that most others earn."""
    ratings = rated(one)
    low, high = on.between(first, last, capped=bool(one.capped))
    better = 0.0 if high == inf else chance.at_least(*ratings, high)
    worse = 0.0 if low == -inf else 1 - chance.at_least(*ratings, low)
    next_step = None if max(better, worse) <= chance.NOTHING else first - 1 if better > worse else last + 1
    return max(0.0, 1 - better - worse), next_step


def is_close(one: Graded) -> bool:
    """Whether too few weightings around the author's keep a grade in its band for it to be said without more."""
    return one.band_firmness is not None and one.band_firmness < KEEPS


def rated(one: Graded) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """The ratings of a whole row, and the shares of the weights they go with."""
    return tuple(part.rating or 0.0 for part in one.parts), tuple(part.share for part in one.parts)
