"""Ratings on a checklist to scores and grades."""

from __future__ import annotations

from collections.abc import Mapping

from scriptkit.model import Checklist, Episode, Exercise, Graded

STOCK_SHARES = (("A", 0.8), ("B", 0.6), ("C", 0.4), ("D", 0.2), ("F", 0.0))
_EDGE = 1e-9  # an exact edge earns the grade, whatever floats make of it


def bands(episode: Episode) -> tuple[tuple[str, float], ...]:
    """Grades, best first, with the lowest score that earns each; stock ones, as shares of the scale, where the outline gives none."""
    if episode.grades:
        return tuple(sorted(episode.grades.items(), key=lambda band: -band[1]))
    if episode.checklist:
        low, high = episode.checklist.scale
        return tuple((grade, low + share * (high - low)) for grade, share in STOCK_SHARES)
    return ()


def scale_words(episode: Episode) -> tuple[str, ...]:
    """All grades that can be said, best first, with signs where the scale has them."""
    names = [str(grade) for grade, _ in bands(episode)]
    for exercise in episode.exercises.values():
        base = unsigned(exercise.grade)
        if exercise.grade and base not in names and exercise.grade not in names:
            names.append(base or exercise.grade)
    return tuple(names)


def unsigned(grade: str) -> str:
    """A grade without its plus or minus."""
    return grade[:-1].rstrip() if len(grade) > 1 and grade[-1] in "+-−–" else grade


def grade(exercise: Exercise, episode: Episode) -> Graded:
    """The score (weighted mean of the ratings on the fixed scale), its range where ratings are missing or uncertain, and the grade."""
    given = str(exercise.grade) or None
    checklist = episode.checklist
    criteria = checklist.criteria if checklist else {}
    missing = tuple(name for name in criteria if _score(exercise, name) is None)
    total = sum(_weight(checklist, name) for name in criteria) if checklist else 0
    if not checklist or not criteria or len(missing) == len(criteria) or total <= 0:
        return Graded(exercise.id, None, None, None, None, given, given or "", (), missing)
    low, high = checklist.scale
    sums = [0.0, 0.0, 0.0]
    for name in criteria:
        share = _weight(checklist, name) / total
        score = _score(exercise, name)
        rating = exercise.ratings.get(name)
        span = (low, high) if score is None else rating.range if rating and rating.range else (score, score)
        sums = [sums[0] + share * (score or 0), sums[1] + share * min(span), sums[2] + share * max(span)]
    capped = tuple(name for name, criterion in criteria.items() if _below_floor(exercise, name, criterion.floor))
    score = None if missing else round(sums[0], 9)
    earned = None if score is None else _earned(score, bool(capped), episode)
    return Graded(
        exercise.id, score, round(sums[1], 9), round(sums[2], 9), earned, given, given or earned or "", capped, missing
    )


def grades(episode: Episode) -> dict[str, Graded]:
    """The grade of every exercise, by id."""
    return {str(name): grade(exercise, episode) for name, exercise in episode.exercises.items()}


def _weight(checklist: Checklist | None, name: str) -> float:
    criterion = checklist.criteria.get(name) if checklist else None
    return 1.0 if criterion is None or criterion.weight is None else criterion.weight


def _score(exercise: Exercise, name: str) -> float | None:
    rating = exercise.ratings.get(name)
    return rating.score if rating else None


def _below_floor(exercise: Exercise, name: str, floor: float | None) -> bool:
    score = _score(exercise, name)
    return floor is not None and score is not None and score < floor


def _earned(score: float, capped: bool, episode: Episode) -> str | None:
    checklist = episode.checklist
    edges = bands(episode)
    if not checklist or not edges:
        return None
    names = [name for name, _ in edges]
    place = next((number for number, (_, least) in enumerate(edges) if score >= least - _EDGE), len(edges) - 1)
    cap = names.index(unsigned(checklist.cap)) if unsigned(checklist.cap) in names else max(0, len(names) - 2)
    if capped and place < cap:
        return names[cap] + ("+" if checklist.signs else "")
    return names[place] + (_sign(score, place, edges, checklist) if checklist.signs else "")


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
        sign = {"+": -1, "-": 1}.get(one.grade[-1:], 0) if one.grade not in order else 0
        rank = order.get(one.grade, order.get(unsigned(one.grade), len(order)))
        return (0 if one.grade else 1, rank, sign, -(one.score or 0))

    return sorted(graded, key=key)
