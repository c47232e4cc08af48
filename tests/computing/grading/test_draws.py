"""Drawn shares are held against areas that can be worked out, and against as many draws by other means."""

from __future__ import annotations

from math import prod

import numpy as np
import pytest

from scriptkit.computing.grading import draws
from scriptkit.computing.grading.draws import DRAWS, ERROR, Keep, Row, Span
from scriptkit.model import Standing
from tests.computing.grading import tables

MANY = 200_000
THEIR_ERROR = 1.96 * (0.25 / MANY) ** 0.5


def first(*rows: tuple[float, ...]) -> list[float]:
    return draws.first([Row(row) for row in rows], draws.evenly(len(rows[0])))


def ahead(mine: tuple[float, ...], theirs: tuple[float, ...]) -> float:
    """The share of all weightings that puts one row before another, by the closed form for different gaps."""
    gaps = [one - other for one, other in zip(mine, theirs, strict=True)]
    return sum(gap ** (len(gaps) - 1) / prod(gap - other for other in gaps if other != gap) for gap in gaps if gap > 0)


def test_the_stated_error_is_that_of_a_share_of_a_half() -> None:
    assert pytest.approx(1.96 * (0.25 / DRAWS) ** 0.5, abs=5e-4) == ERROR


def test_with_two_criteria_a_share_is_the_length_of_an_interval() -> None:
    # w of the first criterion: 1 + 4w against 4 - 2w against 3: level at a third (4 - 2w = 3 at a half; 1 + 4w = 3 too)
    assert first((5, 1), (2, 4), (3, 3)) == pytest.approx([0.5, 0.5, 0], abs=ERROR)
    # 1 + 4w against 4 - 3w: level at 3/7
    assert first((5, 1), (1, 4)) == pytest.approx([4 / 7, 3 / 7], abs=ERROR)
    # 1 + 4w, 4 - 3w and 3.5 flat: flat wins between 1/6 and 5/8
    assert first((5, 1), (1, 4), (3.5, 3.5)) == pytest.approx([3 / 8, 1 / 6, 5 / 8 - 1 / 6], abs=ERROR)


@pytest.mark.parametrize(
    ("mine", "theirs"), [((5, 2, 1), (1, 4, 2)), ((5, 1, 2), (3, 2, 5)), ((3, 3, 4), (2, 5, 1)), ((2, 5, 5), (4, 2, 4))]
)
def test_with_three_criteria_a_pair_has_the_areas_of_its_closed_form(
    mine: tuple[float, ...], theirs: tuple[float, ...]
) -> None:
    share = ahead(mine, theirs)
    assert 0.05 < share < 0.95
    assert first(mine, theirs) == pytest.approx([share, 1 - share], abs=ERROR)


def test_three_rows_each_best_at_one_thing_have_a_third_each() -> None:
    assert first((5, 1, 1), (1, 5, 1), (1, 1, 5)) == pytest.approx([1 / 3] * 3, abs=ERROR)


def test_a_tie_is_shared_out() -> None:
    assert first((4, 4), (4, 4), (4, 3)) == [0.5, 0.5, 0]
    assert first((5, 1), (1, 5), (1, 5)) == pytest.approx([0.5, 0.25, 0.25], abs=ERROR)


def test_a_criterion_without_weight_breaks_no_tie() -> None:
    rows = [Row((4, 5)), Row((4, 1)), Row((3, 5))]
    assert draws.first(rows, draws.around([1.0, 0.0])) == [0.5, 0.5, 0]
    assert draws.unsure(rows, draws.around([1.0, 0.0]))[0] == [0.5, 0.5, 0]


def test_the_same_seed_gives_the_same_figures_and_another_one_others() -> None:
    assert draws.evenly(3) == draws.evenly(3)
    assert draws.around([0.3, 0.7]) == draws.around([0.3, 0.7])
    assert draws.evenly(3, 5) != draws.evenly(3, 5, seed=1)
    assert draws.around([0.3, 0.7], 5) != draws.around([0.3, 0.7], 5, seed=1)


def test_a_row_that_another_beats_is_never_first() -> None:
    assert first((4, 3, 5), (4, 2, 5), (1, 5, 1))[1] == 0


def test_a_row_that_another_might_beat_but_need_not_can_be_first() -> None:
    unsure = Row((5.0, 3.0), (Span(0, 1.0, 5.0, whole=False),))
    shares, _ = draws.unsure([unsure, Row((3.0, 3.0))], draws.evenly(2))
    assert shares == pytest.approx([0.5, 0.5], abs=ERROR)


def test_an_even_draw_takes_every_weighting_alike() -> None:
    weightings = draws.evenly(3)
    weight = np.array(weightings) / np.sum(weightings, axis=1, keepdims=True)
    assert len(weightings) == DRAWS
    assert weight.mean(axis=0) == pytest.approx([1 / 3] * 3, abs=ERROR)
    assert weight.std(axis=0) == pytest.approx([(1 / 18) ** 0.5] * 3, abs=ERROR)


def test_a_draw_around_the_authors_weights_has_their_mean_and_the_stated_spread() -> None:
    weightings = draws.around([0.3, 0.7, 0.0])
    weight = np.array(weightings) / np.sum(weightings, axis=1, keepdims=True)
    assert weight.mean(axis=0) == pytest.approx([0.3, 0.7, 0], abs=0.003)
    assert weight.std(axis=0) == pytest.approx([(0.21 / 51) ** 0.5, (0.21 / 51) ** 0.5, 0], abs=0.002)


def test_a_rating_of_whole_steps_takes_each_of_them_alike() -> None:
    # 2, 3 or 4 against 3.5 on the only criterion: first with a 4; grade kept with 3 or 4
    unsure = Row((3.0,), (Span(0, 2.0, 4.0, whole=True),), Keep(2.5, 9.0), Keep(2.5, 9.0))
    shares, kept = draws.unsure([unsure, Row((3.5,))], draws.evenly(1))
    assert shares == pytest.approx([1 / 3, 2 / 3], abs=ERROR)
    assert kept == pytest.approx([2 / 3, 0], abs=ERROR)


def test_any_other_rating_takes_every_value_of_its_range_alike() -> None:
    unsure = Row((3.0,), (Span(0, 2.0, 4.0, whole=False),), Keep(2.5, 9.0), Keep(2.5, 9.0))
    shares, kept = draws.unsure([unsure, Row((3.2,))], draws.evenly(1))
    assert shares == pytest.approx([0.4, 0.6], abs=ERROR)
    assert kept == pytest.approx([0.75, 0], abs=ERROR)


def test_a_grade_is_kept_from_its_edge_on_and_not_at_the_next() -> None:
    unsure = Row((3.0,), (Span(0, 2.0, 5.0, whole=True),), Keep(3.0 - 1e-9, 5.0 - 1e-9), Keep(0, 0))
    assert draws.unsure([unsure], draws.evenly(1))[1] == pytest.approx([0.5], abs=ERROR)


def test_below_its_floor_a_row_keeps_what_the_cap_lets_it_keep() -> None:
    never, always = Keep(9.0, 9.0), Keep(0.0, 9.0)
    spans = (Span(0, 1.0, 4.0, whole=True),)
    for floor, share in ((1.0, 1.0), (2.0, 0.75), (3.0, 0.5)):
        row = Row((3.0,), spans, always, never, ((0, floor),))
        assert draws.unsure([row], draws.evenly(1))[1] == pytest.approx([share], abs=ERROR)


class Table:
    """Twenty exercises by eight criteria, some ratings unsure, drawn by numpy."""

    def __init__(self, seed: int = 56) -> None:
        rng = np.random.default_rng(seed)
        self.ratings = rng.integers(1, 6, (20, 8)).astype(float)
        self.ratings[:6] = rng.integers(3, 6, (6, 8))  # a handful that compete
        self.shares = np.array([25, 20, 15, 12, 10, 8, 6, 4]) / 100
        self.low, self.high = self.ratings.copy(), self.ratings.copy()
        for row, place in zip(rng.integers(0, 20, 24), rng.integers(0, 8, 24), strict=True):
            self.low[row, place] = max(1, self.ratings[row, place] - 1)
            self.high[row, place] = min(5, self.ratings[row, place] + 1)
        self.floors = {0: 3.0}
        rows = {
            f"x{row:02}": [tuple(cell) if cell[1] < cell[2] else float(cell[0]) for cell in cells]
            for row, cells in enumerate(np.stack([self.ratings, self.low, self.high], axis=-1).tolist())
        }
        self.episode = tables.episode(rows, [float(100 * one) for one in self.shares], floors=self.floors, cap="C")

    def grade(self, scores: np.ndarray, ratings: np.ndarray) -> np.ndarray:
        """A number for each grade, worked out another way: all edges below a score counted, and then capped."""
        bands = [4.2, 3.4, 2.6, 1.0]
        edges = sorted(
            low + third * (high - low) / 3
            for high, low in zip([5.0, *bands], bands, strict=False)
            for third in range(3)
        )
        found = (scores[..., None] >= np.array(edges) - 1e-9).sum(axis=-1)  # 12 is A+, 6 is C+
        return np.array(np.where((ratings[..., 0] < self.floors[0]), np.minimum(found, 6), found))

    def figures(self) -> dict[str, np.ndarray]:
        rng = np.random.default_rng(1)
        evenly = rng.dirichlet(np.ones(8), MANY)
        near = rng.dirichlet(50 * self.shares, MANY)
        usual = self.grade(self.ratings @ self.shares, self.ratings)
        made = {
            name: np.zeros(20)
            for name in ("first_all", "first_near", "first_ratings", "kept_all", "firmness", "kept_ratings")
        }
        for start in range(0, MANY, 20_000):
            part = slice(start, start + 20_000)
            drawn = rng.integers(self.low.astype(int), self.high.astype(int) + 1, (20_000, 20, 8)).astype(float)
            for first, kept, ratings, scores in (
                ("first_all", "kept_all", self.ratings, evenly[part] @ self.ratings.T),
                ("first_near", "firmness", self.ratings, near[part] @ self.ratings.T),
                ("first_ratings", "kept_ratings", drawn, np.einsum("drc,dc->dr", drawn, near[part])),
            ):
                best = scores >= scores.max(axis=1, keepdims=True) - 1e-12
                made[first] += (best / best.sum(axis=1, keepdims=True)).sum(axis=0)
                made[kept] += (self.grade(scores, ratings) == usual).sum(axis=0)
        return {name: total / MANY for name, total in made.items()}


@pytest.fixture(scope="module")
def both() -> tuple[list[Standing], dict[str, float | None], dict[str, np.ndarray]]:
    table = Table()
    standings = tables.ranked(table.episode).standings
    firm = {name: one.firmness for name, one in tables.grades(table.episode).items()}
    return list(standings.values()), firm, table.figures()


@pytest.mark.parametrize("figure", ["first_all", "first_near", "first_ratings", "kept_all", "kept_ratings"])
def test_twenty_exercises_by_eight_criteria_agree_with_another_machine(figure: str, both: tuple) -> None:
    standings, _, theirs = both
    ours = np.array([getattr(one, figure) for one in standings])
    assert ((theirs[figure] > 0.05) & (theirs[figure] < 0.95)).sum() >= 3, "the table tells nothing"
    assert np.abs(ours - theirs[figure]).max() <= ERROR + THEIR_ERROR


def test_their_firmness_agrees_closer_for_it_is_not_drawn(both: tuple) -> None:
    standings, firm, theirs = both
    ours = np.array([firm[one.id] for one in standings])
    assert ((theirs["firmness"] > 0.05) & (theirs["firmness"] < 0.95)).sum() >= 3, "the table tells nothing"
    assert np.abs(ours - theirs["firmness"]).max() <= 2 * THEIR_ERROR
    exact = [number for number, one in enumerate(standings) if one.kept_ratings == firm[one.id]]
    assert exact
