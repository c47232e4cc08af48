"""The clock of the day: set-ups, takes half as long again, rests of one person, breaks."""

from __future__ import annotations

from itertools import pairwise

import pytest

from scriptkit.computing.shooting import clock
from scriptkit.model import Break, CallSheet
from tests.computing.shooting.days import SHEET, drawn, planned


def test_a_shot_takes_its_set_up_and_its_takes_half_as_long_again() -> None:
    laid = clock.lay([planned(1, "A", 20, takes=2), planned(2, "B", 20, place="", takes=2)], SHEET)
    first, second = laid.clips
    assert (first.start, first.ready, first.end) == (0, 900, 960)
    assert (second.start, second.ready, second.end) == (960, 960 + 240, 960 + 240 + 60)
    assert laid.end == 1260
    assert laid.changes.seconds == 1140
    assert (laid.changes.places, laid.changes.framings, laid.changes.every) == (1, 1, 2)


@pytest.mark.parametrize(
    ("seconds", "slow", "needs", "wanted"),
    [(10, 1, None, 15), (10, 5, None, 3), (10, 1, 30, 45), (None, 1, None, 15), (10, 0, None, 15)],
)
def test_how_long_one_take_is(seconds: float | None, slow: float, needs: float | None, wanted: float) -> None:
    shot = planned(1, takes=1)._replace(duration=seconds, slow=slow, needs=needs)
    takes, rolled, guessed = clock.taken(shot, SHEET)
    assert (takes, rolled, guessed) == (1, wanted, seconds is None)


def test_the_authors_minutes_stand_for_what_the_camera_takes_and_not_for_kit() -> None:
    shots = [planned(1, "A"), planned(2, "B", place="wall", kit=("box",), minutes=25.0), planned(3, "B", minutes=2.0)]
    _, second, third = clock.lay(shots[:2], SHEET).clips + clock.lay([shots[2]], SHEET).clips
    assert (second.setup, third.setup) == (25 * 60 + 300, 2 * 60)


def test_somebody_rests_between_their_heavy_sets_and_their_own_takes() -> None:
    shots = [planned(1, heavy=True, takes=2, people=("Ana",)), planned(2, heavy=True, takes=1, people=("Ana",))]
    first, second = clock.lay(shots, SHEET).clips
    assert first.end - first.ready == 30 + 180
    assert second.ready == first.end + 180
    assert second.rest == 180


def test_another_persons_heavy_set_does_not_wait() -> None:
    shots = [planned(1, heavy=True, people=("Ana",)), planned(2, heavy=True, people=("Ben",))]
    assert clock.lay(shots, CallSheet(people=0, reframe=0)).clips[1].rest == 0


def test_a_set_up_is_a_rest_and_so_is_a_break() -> None:
    heavy = [planned(1, "A", heavy=True), planned(2, "B", heavy=True)]
    assert [one.rest for one in clock.lay(heavy, SHEET).clips] == [0, 0]
    sheet = CallSheet(reframe=0, breaks=(Break(length=600),), hours=1800)
    laid = clock.lay(heavy, sheet)
    assert (len(laid.pauses), laid.clips[1].rest) == (1, 0)


@pytest.mark.parametrize("seed", range(20))
def test_on_no_day_does_anybody_lift_heavy_or_show_a_fault_before_they_have_rested(seed: int) -> None:
    ends: dict[str, float] = {}
    for clip in clock.lay(drawn(seed, 15), CallSheet(rest=420, reframe=60, kit=30, people=30)).clips:
        people = clip.shot.shot.people
        if clip.shot.heavy or clip.shot.shot.form == "fault":
            assert all(clip.ready >= ends.get(name, -1e9) + 420 for name in people)
        if clip.shot.heavy:
            ends.update(dict.fromkeys(people, clip.end))


def test_breaks_come_at_the_end_of_a_shot_near_their_time_and_nothing_is_filmed_in_them() -> None:
    sheet = CallSheet(
        call=9 * 3600.0, breaks=(Break(start=10 * 3600.0, length=1800), Break(start=12 * 3600.0, length=60))
    )
    laid = clock.lay([planned(n, f"{n}", 60, place=f"{n}") for n in range(1, 13)], sheet)
    assert [round(one.start / 3600, 1) for one in laid.pauses] == pytest.approx([1, 3], abs=0.2)
    for pause in laid.pauses:
        assert all(clip.end <= pause.start or clip.start >= pause.end for clip in laid.clips)
    for before, after in pairwise(laid.clips):
        assert after.start >= before.end


def test_a_break_without_a_time_divides_the_day_and_one_after_the_end_is_none() -> None:
    shots = [planned(n, f"{n}", 60, place=f"{n}") for n in range(1, 9)]
    (pause,) = clock.lay(shots, CallSheet(breaks=(Break(length=600),), hours=9000)).pauses
    assert pause.start == pytest.approx(4500, abs=700)
    late = CallSheet(call=9 * 3600.0, breaks=(Break(start=18 * 3600.0, length=600),))
    assert clock.lay(shots, late).pauses == ()


@pytest.mark.parametrize(
    ("sheet", "wanted"),
    [
        (CallSheet(), None),
        (CallSheet(hours=3600), 3600),
        (CallSheet(until=3600), None),
        (CallSheet(call=9 * 3600, until=17 * 3600), 8 * 3600),
        (CallSheet(call=20 * 3600, until=2 * 3600), 6 * 3600),
    ],
)
def test_the_hours_there_are(sheet: CallSheet, wanted: float | None) -> None:
    assert clock.window(sheet) == wanted
