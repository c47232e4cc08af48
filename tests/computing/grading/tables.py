"""Tables of ratings, as short as they can be written: one row for each exercise, one column for each criterion."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from hypothesis import strategies as st

from scriptkit.computing.grading import ranking, scale, scores
from scriptkit.computing.grading.moving import Rules, is_whole
from scriptkit.model import Checklist, Criterion, Episode, Exercise, Graded, Ranking, Rating

BANDS = {"A": 4.2, "B": 3.4, "C": 2.6, "D": 1.0}
Cell = float | tuple[float, float, float] | None  # a rating; with what it may be, low and high; none


def episode(
    rows: Mapping[str, Sequence[Cell]],
    weights: Sequence[float | None],
    *,
    grades: Mapping[str, float] = BANDS,
    span: tuple[float, float] = (1.0, 5.0),
    floors: Mapping[int, float] | None = None,
    cap: str = "",
    signs: bool = True,
    groups: Mapping[str, str] | None = None,
) -> Episode:
    """Criteria are c0, c1, ...; `floors` go by their numbers, `groups` by exercise."""
    floors, groups = floors or {}, groups or {}
    criteria = {f"c{at}": Criterion(f"c{at}", "", one, floor=floors.get(at)) for at, one in enumerate(weights)}
    exercises = {
        name: Exercise(name, name, group=groups.get(name, ""), ratings=_ratings(cells)) for name, cells in rows.items()
    }
    return Episode(checklist=Checklist("one", span, cap, signs, criteria), grades=dict(grades), exercises=exercises)


def _ratings(cells: Sequence[Cell]) -> dict[str, Rating]:
    made = {}
    for at, cell in enumerate(cells):
        if isinstance(cell, tuple):
            made[f"c{at}"] = Rating(float(cell[0]), (float(cell[1]), float(cell[2])))
        elif cell is not None:
            made[f"c{at}"] = Rating(float(cell))
    return made


def grades(made: Episode) -> dict[str, Graded]:
    """The grade of every exercise."""
    return scores.grades(made)


def ranked(made: Episode) -> Ranking:
    """How firm everything is; there has to be something rated."""
    found = ranking.rank(made, scores.grades(made))
    assert found is not None
    return found


def rules(made: Episode) -> Rules:
    """What its exercises are graded by."""
    on = scale.of(made)
    assert on is not None
    assert made.checklist is not None
    return Rules(on, made.checklist, is_whole(made.checklist, grades(made)))


class Table(NamedTuple):
    """A small table: ratings of its first row are what is moved."""

    rows: list[list[float]]
    weights: list[float]
    floors: dict[int, float]
    cap: str

    def first(self) -> tuple[Graded, Rules, list[Graded]]:
        """Its first row, what it is graded by, and all rows."""
        made = episode(
            {f"x{at}": row for at, row in enumerate(self.rows)}, self.weights, floors=self.floors, cap=self.cap
        )
        field = list(grades(made).values())
        return field[0], rules(made), field

    def shares(self) -> list[float]:
        """The share of each weight."""
        return [one / sum(self.weights) for one in self.weights]

    def with_share(self, place: int, share: float) -> list[float]:
        """One share set, the others in proportion."""
        rest = sum(self.weights) - self.weights[place]
        return [share if at == place else (1 - share) * one / rest for at, one in enumerate(self.weights)]

    def step(self, by: Rules, row: Sequence[float], shares: Sequence[float]) -> int:
        """Which grade a row earns, counted from the best."""
        broken = any(row[place] < floor for place, floor in self.floors.items())
        return by.scale.number(mean(row, shares), capped=broken)


def mean(row: Sequence[float], shares: Sequence[float]) -> float:
    """The score, worked out here."""
    return sum(rating * share for rating, share in zip(row, shares, strict=True))


@st.composite
def a_table(draw: st.DrawFn, rows: int = 1, *, whole: bool | None = None) -> Table:
    """Two or three criteria; ratings are whole, or tenths."""
    criteria = draw(st.integers(2, 3))
    steps = draw(st.booleans()) if whole is None else whole
    rating = st.integers(1, 5).map(float) if steps else st.integers(10, 50).map(lambda tenths: tenths / 10)
    row = st.lists(rating, min_size=criteria, max_size=criteria)
    floors = draw(st.dictionaries(st.integers(0, criteria - 1), st.sampled_from([2.0, 2.5, 3.0]), max_size=2))
    weights = draw(st.lists(st.sampled_from([1.0, 2, 5, 10, 30]), min_size=criteria, max_size=criteria))
    return Table(
        draw(st.lists(row, min_size=rows, max_size=rows)), weights, floors, draw(st.sampled_from(["", "B", "C-", "A"]))
    )
