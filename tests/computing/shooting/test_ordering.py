"""Shooting order has the least to change that there is, keeps talk together, and has heavy work early."""

from __future__ import annotations

from itertools import pairwise, permutations

import pytest

from scriptkit.computing.shooting import ordering
from scriptkit.computing.shooting.arranging import share_somebody
from scriptkit.model import PlannedShot
from tests.computing.shooting.days import SHEET, drawn, in_one_block, minutes_changed, planned


@pytest.mark.parametrize("seed", range(25))
def test_no_permutation_of_a_few_shots_has_less_to_change(seed: int) -> None:
    shots = drawn(seed, 3 + seed % 4 if seed % 5 else 7)
    made = ordering.ordered(shots, SHEET)
    pairs = {(one.number, other.number): minutes_changed([one, other]) for one, other in permutations(shots, 2)}
    allowed = (order for order in permutations(shots) if in_one_block(order))
    best = min(sum(pairs[one.number, other.number] for one, other in pairwise(order)) for order in allowed)
    assert made.exact
    assert sorted(one.number for one in made.shots) == [one.number for one in shots]
    assert in_one_block(made.shots)
    assert minutes_changed(made.shots) == best


@pytest.mark.parametrize("seed", range(6))
def test_with_many_shots_talk_stays_together_and_there_is_less_to_change(seed: int) -> None:
    shots = drawn(seed, 12) + [
        one._replace(number=one.number + 12, setup=f"x{one.setup}", shot=one.shot._replace(wear=f"shirt {at % 5}"))
        for at, one in enumerate(drawn(seed + 50, 60))
        if not one.talking
    ]
    made = ordering.ordered(shots, SHEET)
    assert not made.exact
    assert in_one_block(made.shots)
    assert sorted(one.number for one in made.shots) == sorted(one.number for one in shots)
    assert minutes_changed(made.shots) < minutes_changed(shots)
    assert made == ordering.ordered(shots, SHEET)


def test_a_place_is_visited_once_and_a_side_of_it_too() -> None:
    shots = [planned(n, f"{n}", place=f"place {n % 2}", plane=("side", "front")[n // 2 % 2]) for n in range(1, 9)]
    order = [(one.shot.place, one.shot.plane) for one in ordering.ordered(shots, SHEET).shots]
    assert len([one for one, other in pairwise(order) if one != other]) == 3


def test_case_and_spaces_make_no_other_place() -> None:
    shots = [planned(1, "B", place="The Rack"), planned(2, "C", place="wall"), planned(3, "D", place="the  rack ")]
    order = [one.number for one in ordering.ordered(shots, SHEET).shots]
    assert abs(order.index(1) - order.index(3)) == 1


def test_heavy_work_comes_early_where_that_costs_nothing() -> None:
    shots = [planned(n, f"{n}", place=f"place {n}", heavy=n == 4) for n in range(1, 6)]
    assert ordering.ordered(shots, SHEET).shots[0].number == 4


def test_with_many_set_ups_heavy_places_come_early_too() -> None:
    shots = [planned(n, f"{n}", place=f"place {n}", heavy=n in (17, 29)) for n in range(1, 40)]
    assert {one.number for one in ordering.ordered(shots, SHEET).shots[:2]} == {17, 29}


def test_the_sponsors_part_comes_first_in_the_talk_and_early_in_the_day() -> None:
    shots = [planned(n, f"{n}", place=f"place {n}") for n in range(1, 4)]
    shots += [planned(n, "T", talking=True, segment=name) for n, name in ((4, "opening"), (5, "ad"), (6, "close"))]
    assert [one.number for one in ordering.ordered(shots, SHEET, "ad").shots[:3]] == [5, 4, 6]


def test_shots_to_the_camera_by_name_belong_to_the_talk() -> None:
    talk = planned(4, "E", size="MCU", of="presenter at the table")._replace(reps_fit=None)
    shots = [planned(1, "A", talking=True), planned(2, "B", place="rack"), planned(3, "C", place="wall"), talk]
    order = [one.number for one in ordering.ordered(shots, SHEET).shots]
    assert abs(order.index(1) - order.index(4)) == 1


@pytest.mark.parametrize("seed", range(30))
def test_no_fault_comes_right_after_heavy_work_at_the_same_camera(seed: int) -> None:
    for before, after in pairwise(ordering.ordered(drawn(seed, 12), SHEET).shots):
        same = before.setup == after.setup and before.shot.kit == after.shot.kit
        tired = before.heavy and after.shot.form == "fault" and share_somebody(before, after)
        assert not (same and before.shot.people == after.shot.people and tired)


def test_a_light_set_up_comes_between_heavy_work_at_one_place_and_a_fault_at_another() -> None:
    shots: list[PlannedShot] = []
    for at in range(15):
        number, place = 10 * at, f"place {at}"
        shots.append(planned(number + 1, f"B{at}", place=place, heavy=True))
        shots.append(planned(number + 2, f"B{at}", place=place, form="fault"))
        shots += [planned(number + 3, f"C{at}", place=place)] if at else []
    order = ordering.ordered(shots, SHEET).shots
    assert len(order) == 44
    assert not any(before.heavy and after.shot.form == "fault" for before, after in pairwise(order))
