"""What is known of each place: who is first and how surely, by how much, and what is told of groups and ranges."""

from __future__ import annotations

import pytest

from scriptkit.computing.grading import chance, draws, ranking, scores
from scriptkit.model import Checklist, Criterion, Episode, Exercise, Standing
from tests.computing.grading import tables
from tests.computing.grading.tables import episode, ranked


def test_without_a_checklist_or_a_whole_row_there_is_nothing_to_rank() -> None:
    bare = Episode(exercises={"x": Exercise("x", "X", grade="A")}, grades={"A": 1.0})
    unrated = Episode(checklist=Checklist(criteria={"c": Criterion("c")}), exercises={"x": Exercise("x", "X")})
    for one in (bare, unrated, episode({"x": (3, None)}, (1, 1))):
        assert ranking.rank(one, scores.grades(one)) is None


@pytest.mark.parametrize(
    ("share", "word"),
    [(1.0, "clear"), (0.8, "clear"), (0.79, "ahead"), (0.5, "ahead"), (0.49, "depends"), (0, "depends")],
)
def test_how_firmly_a_first_place_may_be_said(share: float, word: str) -> None:
    assert ranking.may_say(share) == word


def test_the_word_goes_by_all_weightings_and_not_by_those_around_the_authors() -> None:
    """1 + 4w against 4 - 3w over all weightings is 4/7; around weights of 90 to 10 it is certain."""
    found = ranked(episode({"x": (5, 1), "y": (1, 4)}, (90, 10)))
    assert found.first == ("x",)
    assert found.standings["x"].first_all == pytest.approx(4 / 7, abs=found.error)
    assert found.standings["x"].first_near == pytest.approx(1, abs=found.error)
    assert found.verdict == "ahead"
    assert ranked(episode({"x": (5, 4), "y": (1, 4)}, (90, 10))).verdict == "clear"
    assert ranked(episode({"x": (5, 1), "y": (1, 5), "z": (4, 3)}, (90, 10))).verdict == "depends"


def test_a_first_place_nearer_than_the_lightest_step_is_tied() -> None:
    """3.2 against 3.0, where the lightest step is 0.4; and 3.4 against 3.0, where it is not nearer."""
    near = ranked(episode({"x": (3, 3), "y": (2, 4)}, (40, 60)))
    assert (near.verdict, near.first, near.standings["y"].tied, near.standings["x"].tied) == (
        "tied",
        ("y",),
        ("x",),
        ("y",),
    )
    assert ranked(episode({"x": (3, 3), "y": (4, 3)}, (40, 60))).verdict == "clear"


def test_equal_scores_share_a_place_and_the_next_is_left_out() -> None:
    found = ranked(episode({"low": (1, 1), "x": (4, 4), "mid": (2, 2), "y": (4, 4)}, (1, 1)))
    assert {name: one.rank for name, one in found.standings.items()} == {"low": 4, "x": 1, "mid": 3, "y": 1}
    assert found.first == ("x", "y")
    assert (found.standings["x"].first_all, found.standings["y"].first_all) == (0.5, 0.5)


@pytest.mark.parametrize("gone", ["w", "x", "y", "z"])
def test_an_exercise_taken_out_turns_no_order_of_the_rest(gone: str) -> None:
    """On a scale stretched to the list, y and z would change places without w."""
    rows = {"w": (1, 5), "x": (4.5, 2), "y": (3, 2), "z": (2, 2.5)}
    before = ranked(episode(rows, (50, 50))).standings
    after = ranked(episode({name: row for name, row in rows.items() if name != gone}, (50, 50))).standings
    assert sorted(after, key=lambda name: after[name].rank or 0) == [
        name for name in sorted(before, key=lambda name: before[name].rank or 0) if name != gone
    ]


def test_the_rival_is_the_nearest_score_above_or_below() -> None:
    found = ranked(episode({"x": (5,), "y": (4,), "z": (2,)}, (1,))).standings
    assert {name: (one.rival, one.gap) for name, one in found.items()} == {
        "x": ("y", 1),
        "y": ("x", -1),
        "z": ("y", -2),
    }
    assert ranked(episode({"x": (5,)}, (1,))).standings["x"].rival == ""


def test_swaps_and_tips_are_those_of_the_row_and_its_rival() -> None:
    one = ranked(episode({"x": (5, 1), "y": (1, 4), "z": (1, 1)}, (50, 50))).standings["x"]
    assert one.rival == "y"
    assert (one.swaps[0].kind, one.swaps[0].criterion) == ("weight", "c0")
    assert one.swaps[0].to == pytest.approx(3 / 7)
    assert [tips.criterion for tips in one.tips] == ["c0", "c1"]
    assert one.tips[0].first_low == pytest.approx(3 / 7)


def test_a_row_with_a_rating_missing_has_no_standing_and_no_share() -> None:
    found = ranked(episode({"x": (3, 3), "y": (5, None)}, (1, 1)))
    assert found.standings["y"] == Standing("y")
    assert found.standings["x"].first_all == 1
    assert found.first == ("x",)


def test_a_group_has_a_first_place_of_its_own() -> None:
    rows = {"x": (5, 5), "y": (5, 1), "z": (1, 4)}
    found = ranked(episode(rows, (1, 1), groups={"x": "one", "y": "two", "z": "two"})).standings
    assert found["x"].first_in_group == 1
    assert found["y"].first_in_group == pytest.approx(4 / 7, abs=draws.ERROR)
    assert found["z"].first_in_group == pytest.approx(3 / 7, abs=draws.ERROR)
    assert (found["y"].first_all, found["y"].group) == (0, "two")


def test_no_first_place_is_told_of_no_group_or_one_that_is_everybody_or_one_not_all_rated() -> None:
    rows: dict[str, tuple[float | None, ...]] = {"x": (5, 5), "y": (5, 1), "z": (1, 4)}
    for groups in ({}, dict.fromkeys("xyz", "one")):
        found = ranked(episode(rows, (1, 1), groups=groups)).standings
        assert [one.first_in_group for one in found.values()] == [None] * 3
    found = ranked(episode({**rows, "u": (5, None)}, (1, 1), groups={"u": "two", "y": "two", "x": "one"})).standings
    assert [found[name].first_in_group for name in "xyzu"] == [1, None, None, None]


def test_without_a_range_the_ratings_add_nothing_to_what_weights_do() -> None:
    made = episode({"x": (5, 1), "y": (1, 4)}, (50, 50))
    found = ranked(made)
    assert not found.uncertain
    for name, one in found.standings.items():
        assert one.first_ratings == one.first_near
        assert one.kept_ratings == tables.grades(made)[name].firmness


def test_with_a_range_first_place_is_drawn_with_it() -> None:
    """Anything from 3 to 5 beats a 4.5 one time in four; of 3, 4 and 5 one beats a 4, and one is level with it."""
    made = episode({"x": ((4, 3, 5),), "y": (4.5,)}, (1,))
    found = ranked(made)
    assert found.uncertain
    assert [one.first_ratings for one in found.standings.values()] == pytest.approx([1 / 4, 3 / 4], abs=found.error)
    assert found.standings["x"].first_near == 0
    whole = ranked(episode({"x": ((4, 3, 5),), "y": (4,)}, (1,))).standings
    assert whole["x"].first_ratings == pytest.approx(1 / 3 + 1 / 6, abs=found.error)
    assert whole["x"].kept_ratings == pytest.approx(1 / 3, abs=found.error)
    assert whole["y"].kept_ratings == 1


def test_the_order_of_the_outline_changes_no_drawn_share() -> None:
    """The same draws go to the same rows, and of two rivals as near it is the same one."""
    rows: dict[str, tuple[tables.Cell, ...]] = {"x": ((4, 3, 5), 2), "y": (3, (3, 2, 4)), "z": ((3, 1, 4), (2, 1, 3))}
    turned = dict(reversed(rows.items()))
    assert dict(ranked(episode(rows, (50, 50))).standings) == dict(ranked(episode(turned, (50, 50))).standings)


def test_a_range_right_on_an_edge_keeps_its_grade() -> None:
    """3 and 4 are Bs where a B is from 3.0 on, 2 is not; and the A from 5.0 on is not."""
    made = episode({"x": ((3, 2, 5), 3), "y": (1, 1)}, (0, 50), grades={"A": 5, "B": 3, "C": 1}, signs=False)
    assert ranked(made).standings["x"].kept_ratings == 1
    made = episode({"x": ((3, 2, 5),)}, (7,), grades={"A": 5, "B": 3, "C": 1}, signs=False)
    assert ranked(made).standings["x"].kept_ratings == pytest.approx(0.5, abs=draws.ERROR)


@pytest.mark.parametrize(
    ("cells", "floors", "share"),
    [
        (((3, 2, 4), 5), {0: 3.0}, 2 / 3),  # an A by its score, but a C with the 2
        (((2, 2, 4), 5), {0: 3.0}, 1 / 3),  # capped at C as it is rated, an A by what else it may be
        (((3, 2, 4), 5), {0: 3.0, 1: 5.5}, 1.0),  # capped by the other rating whatever happens
        (((3, 2, 4), 5), {}, 1.0),
    ],
)
def test_a_range_across_a_floor_keeps_the_grade_where_it_breaks_the_floor_or_not(
    cells: tuple, floors: dict[int, float], share: float
) -> None:
    made = episode({"x": cells}, (1, 99), floors=floors, signs=False)
    assert ranked(made).standings["x"].kept_ratings == pytest.approx(share, abs=draws.ERROR)


def test_a_floor_of_a_criterion_without_weight_caps_though_another_row_has_no_rating_on_it() -> None:
    """The 1 caps x at C, whatever its first rating turns out to be; y was never rated on that."""
    for second in (1.0, (1.0, 1.0, 3.0)):
        made = episode({"x": ((4, 4, 5), second), "y": (3, None)}, (50, 0), floors={1: 2.0}, signs=False)
        assert tables.grades(made)["x"].earned == "C"
        assert ranked(made).standings["x"].kept_ratings == 1


def test_what_weighs_nought_and_is_not_rated_by_all_is_not_drawn() -> None:
    found = ranked(episode({"x": (4, None), "y": (3, 5)}, (50, 0))).standings
    assert [(one.first_all, one.first_near) for one in found.values()] == [(1, 1), (0, 0)]


def test_the_share_of_all_weightings_that_keeps_a_grade_is_exact() -> None:
    """1 + 4w is at least 2.6 from 0.4 on and less than 3.4 up to 0.6, whatever the author's own weights."""
    for weights in ((50, 50), (45, 55)):
        made = episode({"x": (5, 1)}, weights, signs=False)
        assert tables.grades(made)["x"].earned == "C"
        assert ranked(made).standings["x"].kept_all == pytest.approx(0.2, abs=1e-4)


def test_under_a_cap_every_better_score_keeps_the_grade() -> None:
    made = episode({"x": (5, 1)}, (50, 50), signs=False, floors={1: 2.0}, cap="C")
    assert ranked(made).standings["x"].kept_all == pytest.approx(0.6, abs=1e-4)


def test_a_grade_close_to_its_edge_is_unsettled_and_one_close_to_a_sign_only_wavers() -> None:
    """4.2 is the edge of the A band, 3.667 the edge of a B, well inside its band; the 4 everywhere can only be a B+."""
    made = episode({"edge": (5, 3.4), "sign": (4, 3.33), "sure": (4, 4)}, (50, 50))
    found, firm = ranked(made), tables.grades(made)
    assert firm["sign"].firmness < scores.KEEPS < firm["sign"].band_firmness  # type: ignore[operator]
    assert (found.unsettled, found.wavering) == (("edge",), ("sign",))


def test_the_figures_say_how_they_were_drawn() -> None:
    found = ranked(episode({"x": (5, 1), "y": (1, 4)}, (50, 50)))
    assert (found.draws, found.seed, found.error) == (draws.DRAWS, draws.SEED, draws.ERROR)
    assert len(draws.evenly(2)) == found.draws
    assert found.standings["x"].first_near == pytest.approx(chance.at_least((4, -3), (0.5, 0.5), 0), abs=found.error)


CAPPED = {"x": (1, 5), "y": (4, 4)}  # x scores higher, and below its floor no grade above C+ can be had


def test_below_a_floor_a_high_score_does_not_come_before_a_better_grade() -> None:
    made = episode(CAPPED, (10, 90), floors={0: 2.0})
    graded = tables.grades(made)
    assert (graded["x"].score, graded["x"].earned, graded["y"].earned) == (4.6, "C+", "B+")
    found = ranked(made)
    assert found.first == ("y",)
    assert [found.standings[name].rank for name in "xy"] == [2, 1]
    assert found.standings["y"].first_all == 1
    assert found.standings["x"].tips[0].first_low is None


def test_below_a_floor_it_still_comes_before_what_is_worse() -> None:
    made = episode({**CAPPED, "y": (2, 2)}, (10, 90), floors={0: 2.0})
    assert ranked(made).first == ("x",)
    # its score is over that of y from a quarter of all weight on the second criterion on
    assert ranked(made).standings["x"].first_all == pytest.approx(0.75, abs=draws.ERROR)


def test_a_drawn_rating_that_breaks_a_floor_is_held_there_too() -> None:
    made = episode({"x": ((2, 1, 2), 5), "y": (4, 4)}, (1, 99), floors={0: 2.0})
    found = ranked(made).standings["x"]
    assert found.first_near == pytest.approx(1, abs=draws.ERROR)
    assert found.first_ratings == pytest.approx(0.5, abs=draws.ERROR)
