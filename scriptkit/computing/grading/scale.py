"""The scale of grades: which score earns which, what a cap allows, and which of two grades is better."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise
from typing import NamedTuple

from scriptkit.model import Checklist, Episode, Graded
from scriptkit.wording import grade_parts

STOCK_SHARES = (("A", 0.8), ("B", 0.6), ("C", 0.4), ("D", 0.2), ("F", 0.0))
EDGE = 1e-9  # an exact edge earns the grade, whatever floats make of it
_SIGNS = {"+": -1, "-": 1}
_BOTTOMLESS = float("-inf")


class GradeScale(NamedTuple):
    """All grades that can be earned, best first, each with the lowest score that earns it; the last one has no bottom.

    `bands` is the band of each of them, `cap` the number of the best one that is allowed below a floor.
    """

    steps: tuple[str, ...]
    least: tuple[float, ...]
    bands: tuple[str, ...]
    cap: int

    def number(self, score: float, *, capped: bool = False) -> int:
        """Which step a score earns, counted from the best."""
        found = next(number for number, least in enumerate(self.least) if score >= least - EDGE)
        return max(found, self.cap) if capped else found

    def ceiling(self, *, capped: bool) -> float:
        """The score from which on a capped exercise counts no more: the edge of the grade above the cap."""
        return self.least[self.cap - 1] - 2 * EDGE if capped and self.cap else float("inf")

    def span(self, grade: str) -> tuple[int, int] | None:
        """The first and last step that a grade means: itself, or its whole band where it has no sign."""
        numbers = [number for number, band in enumerate(self.bands) if band == grade]
        if not numbers:
            numbers = [number for number, step in enumerate(self.steps) if step == grade]
        return (numbers[0], numbers[-1]) if numbers else None

    def between(self, first: int, last: int, *, capped: bool = False) -> tuple[float, float]:
        """The scores that earn the steps `first` to `last`: at least this, and less than that."""
        most = float("inf") if not first or (capped and first <= self.cap) else self.least[first - 1]
        return self.least[last], most


def bands(episode: Episode) -> tuple[tuple[str, float], ...]:
    """Grades, best first, with the lowest score that earns each; where the outline gives none, shares of the scale."""
    if episode.grades:
        return tuple(sorted(episode.grades.items(), key=lambda band: -band[1]))
    if episode.checklist:
        low, high = min(episode.checklist.scale), max(episode.checklist.scale)
        return tuple((grade, low + share * (high - low)) for grade, share in STOCK_SHARES)
    return ()


def is_in_order(episode: Episode) -> bool:
    """Whether each grade needs less than the one before it; one that does not is told, and nothing is held to it."""
    return all(lower < higher for higher, lower in pairwise(episode.grades.values()))


def of(episode: Episode) -> GradeScale | None:
    """The scale of an episode; None where there is nothing to earn a grade by.

    Plus and minus are the upper and lower third of a band; the top band ends at the top of the checklist's scale.
    """
    edges, checklist = bands(episode), episode.checklist
    if not edges or not checklist:
        return None
    signs, high = has_signs(episode), max(checklist.scale)
    steps: list[tuple[str, float, str]] = []
    for name, low in ((str(name), least) for name, least in edges):
        third = (high - low) / 3 if signs else 0.0
        if third > 0:
            steps += [(f"{name}+", low + 2 * third, name), (name, low + third, name), (f"{name}-", low, name)]
        else:
            steps.append((name, low, name))
        high = low
    names, least, owners = zip(*steps, strict=True)
    return GradeScale(names, (*least[:-1], _BOTTOMLESS), owners, _cap(str(checklist.cap), names, owners))


def steps(episode: Episode) -> tuple[tuple[str, float], ...]:
    """All grades with their signs, best first, with the lowest score that earns each; nothing without a checklist."""
    on, lowest = of(episode), min((least for _, least in bands(episode)), default=0.0)
    return tuple((step, max(least, lowest)) for step, least in zip(on.steps, on.least, strict=True)) if on else ()


def best_below_floor(episode: Episode) -> str:
    """The best grade of an exercise with a rating below its floor; "" without a checklist."""
    on = of(episode)
    return on.steps[on.cap] if on else ""


def _cap(cap: str, names: tuple[str, ...], owners: tuple[str, ...]) -> int:
    """The best step below a floor: a cap of C allows C+ and no better, one of C- no better than C-."""
    if cap in owners:
        return owners.index(cap)
    if cap in names:
        return names.index(cap)
    if unsigned(cap) in owners:
        return owners.index(unsigned(cap))
    bands_ = list(dict.fromkeys(owners))
    return owners.index(bands_[max(0, len(bands_) - 2)])


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


def step_of(checklist: Checklist) -> float:
    """One step of the checklist's scale: 1, or a quarter of a scale that is shorter than two."""
    length = max(checklist.scale) - min(checklist.scale)
    return 1.0 if length >= 2 else length / 4


def by_grade(graded: Mapping[str, Graded], scale: tuple[str, ...]) -> list[str]:
    """Ids of exercises, best grade first; equal grades by score, then as listed; those without a grade last."""
    order = {name: number for number, name in enumerate(scale)}

    def key(name: str) -> tuple[float, ...]:
        one = graded[name]
        sign = _SIGNS.get(one.grade[-1:], 0) if one.grade not in order else 0
        rank = order.get(one.grade, order.get(unsigned(one.grade), len(order)))
        return (0 if one.grade else 1, rank, sign, -(one.score or 0))

    return sorted(graded, key=key)
