"""A grade depends on the ratings and on the shares of the weights, and on nothing else; better is never worse."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from scriptkit.computing import grading
from scriptkit.model import Checklist, Criterion, Episode, Exercise, Graded, Rating

GRADES = [{"A": 4.2, "B": 3.4, "C": 2.6, "D": 1.0}, {}, {"A": 4.5, "A-": 4.0, "B": 2.0}, {"9": 4.0, "8": 3.0, "1": 1.0}]
ROWS = st.lists(
    st.tuples(st.floats(1, 5), st.floats(0.5, 50), st.none() | st.floats(1, 5)), min_size=1, max_size=6
)  # rating, weight, floor


def graded(
    rows: list[tuple[float, float, float | None]],
    grades: dict[str, float],
    cap: str,
    scale: float = 1.0,
    *,
    back: bool = False,
) -> Graded:
    numbered = list(enumerate(rows))[:: -1 if back else 1]
    criteria = {f"c{i}": Criterion(f"c{i}", "", weight * scale, floor=floor) for i, (_, weight, floor) in numbered}
    ratings = {f"c{i}": Rating(rating) for i, (rating, _, _) in numbered}
    episode = Episode(checklist=Checklist("one", (1.0, 5.0), cap, criteria=criteria), grades=grades)
    return grading.grade(Exercise("e", ratings=ratings), episode)


def rank(one: Graded, grades: dict[str, float]) -> tuple[int, int]:
    """Lower is better."""
    names = list(grades or dict(grading.STOCK_SHARES))
    earned = one.earned or ""
    if earned in names:
        return names.index(earned), 0
    return names.index(grading.unsigned(earned)), {"+": -1, "-": 1}[earned[-1]]


@given(ROWS, st.sampled_from(GRADES), st.sampled_from(["", "B", "C-", "A"]), st.data())
def test_a_better_rating_never_lowers_score_or_grade(rows: list, grades: dict, cap: str, data: st.DataObject) -> None:
    number = data.draw(st.integers(0, len(rows) - 1))
    rating, weight, floor = rows[number]
    better = [*rows[:number], (data.draw(st.floats(rating, 5)), weight, floor), *rows[number + 1 :]]
    before, after = graded(rows, grades, cap), graded(better, grades, cap)
    assert (after.score or 0) >= (before.score or 0)
    assert rank(after, grades) <= rank(before, grades)


@given(ROWS, st.sampled_from(GRADES), st.sampled_from(["", "C"]), st.sampled_from([0.25, 4.0, 1024.0]))
def test_the_unit_of_the_weights_and_the_order_of_the_questions_change_nothing(
    rows: list, grades: dict, cap: str, unit: float
) -> None:
    one, scaled, turned = (
        graded(rows, grades, cap),
        graded(rows, grades, cap, unit),
        graded(rows, grades, cap, back=True),
    )
    assert (scaled.score, scaled.earned) == (one.score, one.earned)
    assert (turned.score, turned.earned) == (one.score, one.earned)
    assert set(turned.capped) == set(one.capped)


@given(ROWS, st.sampled_from(GRADES))
def test_the_score_lies_between_its_low_and_high_and_on_the_scale(rows: list, grades: dict) -> None:
    one = graded(rows, grades, "")
    assert one.score is not None
    assert one.score_low is not None
    assert one.score_high is not None
    assert 1 - 1e-6 <= one.score_low <= one.score <= one.score_high <= 5 + 1e-6
