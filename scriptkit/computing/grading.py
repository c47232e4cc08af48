"""Ratings on a checklist to scores and grades."""

from __future__ import annotations

from collections.abc import Mapping

from scriptkit.model import Checklist, Criterion, Episode, Exercise, Graded
from scriptkit.wording import grade_parts

STOCK_SHARES = (("A", 0.8), ("B", 0.6), ("C", 0.4), ("D", 0.2), ("F", 0.0))
_EDGE = 1e-9  # an exact edge earns the grade, whatever floats make of it
_SIGNS = {"+": -1, "-": 1}


def bands(episode: Episode) -> tuple[tuple[str, float], ...]:
    """Grades, best first, with the lowest score that earns each; where the outline gives none, shares of the scale."""
    if episode.grades:
        return tuple(sorted(episode.grades.items(), key=lambda band: -band[1]))
    if episode.checklist:
        low, high = min(episode.checklist.scale), max(episode.checklist.scale)
        return tuple((grade, low + share * (high - low)) for grade, share in STOCK_SHARES)
    return ()


def earnable(episode: Episode, graded: Mapping[str, Graded]) -> tuple[str, ...]:
    """The grades of the outline, else those that its ratings earn; none where there are neither."""
    rated = episode.grades or any(one.score_low is not None for one in graded.values())
    return tuple(str(name) for name, _ in bands(episode)) if rated else ()


def scale_words(episode: Episode) -> tuple[str, ...]:
    """All grades without their signs, best first; a grade of an exercise that is not on the scale comes last.

    Where there is no scale and all grades are single letters, they go by the alphabet, an S before them.
    """
    names = [str(grade) for grade, _ in bands(episode)]
    given = {unsigned(str(exercise.grade)) for exercise in episode.exercises.values() if exercise.grade}
    if not names and given and all(len(grade) == 1 and grade.isupper() for grade in given):
        return tuple(sorted(given, key=lambda grade: (grade != "S", grade)))
    for exercise in episode.exercises.values():
        base = unsigned(exercise.grade)
        if exercise.grade and base not in names and exercise.grade not in names:
            names.append(base or exercise.grade)
    return tuple(names)


def unsigned(grade: str) -> str:
    """A grade without its plus or minus."""
    return grade_parts(grade)[0]


def has_signs(episode: Episode) -> bool:
    """Whether plus and minus are thirds of a band: not where the outline says no, or lists grades with signs itself."""
    wanted = episode.checklist.signs if episode.checklist else True
    return wanted and all(unsigned(str(grade)) == grade for grade in episode.grades)


def weight(criterion: Criterion) -> float:
    """The weight of a criterion, in any unit; all weigh the same where none is given."""
    return 1.0 if criterion.weight is None else criterion.weight


def grade(exercise: Exercise, episode: Episode) -> Graded:
    """The score (weighted mean of the ratings), its range where ratings are missing or uncertain, and the grade."""
    given = str(exercise.grade) or None
    checklist = episode.checklist
    criteria = checklist.criteria if checklist else {}
    missing = tuple(name for name in criteria if _score(exercise, name) is None)
    total = sum(map(weight, criteria.values()))
    if not checklist or len(missing) == len(criteria) or total <= 0:
        return Graded(exercise.id, None, None, None, None, given, given or "", (), missing)
    mean = least = most = 0.0
    for name, criterion in criteria.items():
        share = weight(criterion) / total
        score, span = _span(exercise, name, checklist)
        mean, least, most = mean + share * score, least + share * min(span), most + share * max(span)
    capped = tuple(name for name, criterion in criteria.items() if _below_floor(exercise, name, criterion.floor))
    whole = None if missing else round(mean, 9)
    earned = None if whole is None else _earned(whole, episode, checklist, capped=bool(capped))
    return Graded(
        exercise.id, whole, round(least, 9), round(most, 9), earned, given, given or earned or "", capped, missing
    )


def grades(episode: Episode) -> dict[str, Graded]:
    """The grade of every exercise, by id."""
    return {str(name): grade(exercise, episode) for name, exercise in episode.exercises.items()}


def _score(exercise: Exercise, name: str) -> float | None:
    rating = exercise.ratings.get(name)
    return rating.score if rating else None


def _span(exercise: Exercise, name: str, checklist: Checklist) -> tuple[float, tuple[float, ...]]:
    """A rating and how low and high it may be; one that is missing may be anything."""
    rating = exercise.ratings.get(name)
    if rating is None or rating.score is None:
        return 0.0, checklist.scale
    return rating.score, (rating.score, *rating.range)


def _below_floor(exercise: Exercise, name: str, floor: float | None) -> bool:
    score = _score(exercise, name)
    return floor is not None and score is not None and score < floor


def _earned(score: float, episode: Episode, checklist: Checklist, *, capped: bool) -> str | None:
    edges = bands(episode)
    if not edges:
        return None
    names = [str(name) for name, _ in edges]
    place = next((number for number, (_, least) in enumerate(edges) if score >= least - _EDGE), len(edges) - 1)
    signs = has_signs(episode)
    sign = _sign(score, place, edges, checklist) if signs else ""
    if not capped:
        return names[place] + sign
    cap, best = _cap(str(checklist.cap), names, signs=signs)
    reached, allowed = (place, _SIGNS.get(sign, 0)), (cap, _SIGNS.get(best, 0))
    return names[place] + sign if reached >= allowed else names[cap] + best


def _cap(cap: str, names: list[str], *, signs: bool) -> tuple[int, str]:
    """The band of the cap and the best sign in it: a cap of C allows C+ and no better, one of C- no better than C-."""
    if cap in names:
        return names.index(cap), "+" if signs else ""
    if unsigned(cap) in names:
        return names.index(unsigned(cap)), cap[-1] if signs else ""
    return max(0, len(names) - 2), "+" if signs else ""


def _sign(score: float, place: int, edges: tuple[tuple[str, float], ...], checklist: Checklist) -> str:
    """Plus and minus are the upper and lower third of a band; the top band ends at the top of the scale."""
    low = edges[place][1]
    high = edges[place - 1][1] if place else max(checklist.scale)
    if high <= low:
        return ""
    share = (score - low) / (high - low)
    return "+" if share >= 2 / 3 - _EDGE else "-" if share < 1 / 3 - _EDGE else ""


def agrees(given: str, earned: str) -> bool:
    """Whether a given grade is the earned one; without a sign it agrees with its whole band."""
    return given == earned or given == unsigned(earned)


def by_grade(graded: Mapping[str, Graded], scale: tuple[str, ...]) -> list[str]:
    """Ids of exercises, best grade first; equal grades by score, then as listed; those without a grade last."""
    order = {name: number for number, name in enumerate(scale)}

    def key(name: str) -> tuple[float, ...]:
        one = graded[name]
        sign = _SIGNS.get(one.grade[-1:], 0) if one.grade not in order else 0
        rank = order.get(one.grade, order.get(unsigned(one.grade), len(order)))
        return (0 if one.grade else 1, rank, sign, -(one.score or 0))

    return sorted(graded, key=key)
