"""What a clip and the changes of a day add up to."""

from __future__ import annotations

from scriptkit.model import Changes, Clip
from tests.computing.shooting.days import planned


def test_all_changes_are_counted() -> None:
    assert Changes(places=1, sides=2, framings=3, kits=4, people=5, seconds=6).every == 15


def test_a_rest_is_what_is_waited_after_the_set_up() -> None:
    clip = Clip(planned(1), start=100, setup=60, ready=220.0001, end=300, changed=(), takes=1, rolled=80)
    assert clip.rest == 60
