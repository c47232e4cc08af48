"""A shot mark is read into its parts, or told what is wrong with it."""

from __future__ import annotations

import pytest

from scriptkit.computing.writing import marks
from scriptkit.model import MOVES, Mark, Shot
from scriptkit.places import Place

HERE = Place("a.md", 3, 5)


def shot(raw: str) -> Shot:
    read = marks.read(raw, HERE)
    assert isinstance(read, Mark), read
    assert read.shot is not None
    return read.shot


def test_size_plane_form_and_phase_stand_before_the_colon_in_any_order_and_case() -> None:
    made = shot("shot fault cu START side: heel below the ledge")
    assert (made.size, made.plane, made.form, made.phase) == ("CU", "side", "fault", "start")
    assert made.of == "heel below the ledge"


def test_everything_else_stands_behind_semicolons() -> None:
    made = shot(
        "shot FS: heel; reps 3; at rack; kit step, band; tempo 3-1-2; takes 2; label Fault: heel drops; move push; "
        "lens 50; fps 120; shutter 1/240; sound mos; people Ana, Bo; wear dark shorts; load empty bar; priority must; "
        "minutes 7.5; safety pins in; note bring chalk; angle low"
    )
    assert made._replace(at=Shot().at) == Shot(
        size="FS", of="heel", reps=3, place="rack", kit=("step", "band"), tempo="3-1-2", takes=2, move="push",
        label="Fault: heel drops", lens="50", fps="120", shutter="1/240", sound="MOS", people=("Ana", "Bo"),
        wear="dark shorts", load="empty bar", priority="must", minutes=7.5, safety="pins in", note="bring chalk",
        angle="low",
    )  # fmt: skip


def test_one_part_is_enough() -> None:
    assert shot("shot FS").size == "FS"
    assert shot("shot: heel").of == "heel"


@pytest.mark.parametrize("move", MOVES)
def test_every_move_of_the_trade_s_list_is_known(move: str) -> None:
    assert shot(f"shot: a; move {move.upper()}").move == move


@pytest.mark.parametrize(
    ("raw", "trouble"),
    [
        ("shot XCU: heel", "`XCU` is no size"),
        ("shot", "it says nothing"),
        ("shot: a; reps many", "`reps many` needs a whole number"),
        ("shot: a; minutes ten", "`minutes ten` needs a number of minutes"),
        ("shot: a; colour red", "`colour red` is not understood"),
        ("shot: a; load", "`load` is not understood"),
        ("shot: a; move dolly", "`dolly` is none of static"),
        ("shot: a; priority high", "`high` is none of must"),
    ],
)
def test_what_is_wrong_is_told(raw: str, trouble: str) -> None:
    told = marks.read(raw, HERE)
    assert isinstance(told, str)
    assert told.startswith(trouble)


@pytest.mark.parametrize(
    ("word", "meant"),
    [("WS", "LS"), ("XCU", "ECU"), ("sagittal", "side"), ("frnt", "front"), ("3/4", "45"), ("MSC", "MS")],
)
def test_a_word_that_others_use_gets_the_name_we_use(word: str, meant: str) -> None:
    assert str(marks.read(f"shot {word}: heel", HERE)).endswith(f"did you mean {meant}?")


@pytest.mark.parametrize("part", ["takes 0", "takes 101", "reps 1001", "minutes 601", "kit", "people"])
def test_what_an_outline_refuses_a_mark_refuses_too(part: str) -> None:
    assert isinstance(marks.read(f"shot: a; {part}", HERE), str)


@pytest.mark.parametrize("part", ["takes 100", "reps 1000", "reps 0", "minutes 600"])
def test_what_an_outline_takes_a_mark_takes_too(part: str) -> None:
    assert shot(f"shot: a; {part}").of == "a"
