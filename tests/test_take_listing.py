"""What `take` prints: what stops a release first, times, and whole lines to record again."""

from __future__ import annotations

from scriptkit import take_listing
from scriptkit.model import Pickup, Take, TakeChange, TakenSegment
from scriptkit.places import Place
from scriptkit.rendering import take_rows
from scriptkit.terminal import Ink, width

HERE = Place("segments/hang.md", 3, 1)
CHANGES = (
    TakeChange("stop", "number", "a number is another one", 64.0, "hang", HERE, "for 38 weeks", "for 83 weeks", 0),
    TakeChange("claim", "ad-lib", "a claim was added", 70.0, "hang", HERE, "", "It heals everything.", 0),
)


def printed(changes: tuple[TakeChange, ...] = CHANGES, columns: int = 80) -> str:
    segments = (
        TakenSegment("hang", "verdict", 30, 60, 95, "said", 80),
        TakenSegment("row", "verdict", 20, None, None, "missing"),
    )
    pickups = tuple(Pickup("B", "hang", HERE, "For 38 weeks.", one.what) for one in changes if one.weight == "stop")
    made = Take(95.0, 151.5, 13.0, segments, (), changes, (), pickups, 2, 1)
    return take_listing.take(take_rows.take(made), Ink(columns=columns))


def test_the_worst_comes_first_with_its_time_and_both_wordings() -> None:
    text = printed()
    assert text.index("Has to be mended: 1") < text.index("Claims and promises to look at: 1")
    assert "1:04  a number is another one (segments/hang.md, line 3)" in text
    assert "script: for 38 weeks" in text
    assert "said: for 83 weeks" in text
    assert "1 change to be mended" in text


def test_times_are_held_against_the_plan() -> None:
    lines = printed().splitlines()
    assert any(line.split() == ["1:00", "hang", "0:30", "0:35", "+0:05"] for line in lines)
    assert any(line.split() == ["row", "0:20", "missing"] for line in lines)


def test_what_to_record_again_stands_under_its_set_up() -> None:
    text = printed()
    assert text.index("set-up B") < text.index("For 38 weeks. (hang: a number is another one)")


def test_nothing_to_mend_is_said() -> None:
    assert "Nothing has to be mended." in printed(())
    assert "151.5 words a minute" in printed(())


def test_it_fits_the_terminal() -> None:
    assert max(width(line) for line in printed(columns=60).splitlines()) <= 60


def test_what_was_said_rightly_elsewhere_is_told_as_a_cut_to_make() -> None:
    text = printed((CHANGES[0]._replace(weight="cut"),), columns=120)
    assert "Said rightly elsewhere, to be cut in: 1" in text
    assert "1 change to be cut in before it goes out." in " ".join(text.split())
    assert "Nothing has to be mended." not in text


def test_of_sound_it_says_what_was_not_compared_and_never_that_all_is_well() -> None:
    made = Take(95.0, 151.5, None, (), (), (), (), (), 0, 2, worded=False, unclear=3)
    row = take_rows.take(made)
    text = " ".join(take_listing.take(row, Ink(columns=80)).split())
    assert "How it was worded was not compared" in text
    assert "Not made out, though somebody speaks in their place: 3 lines." in text
    assert "Nothing has to be mended" not in text
    assert "fillers" not in text
    assert "tried again" not in text
    assert (row["wording_compared"], row["unclear_lines"], row["fillers"], row["retakes"]) == (False, 3, None, None)
