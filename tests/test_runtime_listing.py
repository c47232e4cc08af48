"""What `runtime` tells a person: the table, where things fall on the clock, and what to cut."""

from __future__ import annotations

from typing import Any

from scriptkit import runtime_listing
from scriptkit.terminal import Ink, width

Row = dict[str, Any]
BEARINGS: Row = {
    "sponsor": {
        "segment": "sponsor",
        "start_s": 277.0,
        "end_s": 314.0,
        "share": 0.45,
        "after_s": 93.0,
        "before_s": None,
    },
    "more_of_sponsor": [],
    "longest_still": {"segment": "recap", "start_s": 567.2, "end_s": 620.0, "duration_s": 52.8, "seen": "to camera"},
    "promises": [
        {"id": "swap", "text": "which", "made_s": [11.0], "paid_s": [529.0, 540.0]},
        {"id": "grip", "text": "what", "made_s": [12.0], "paid_s": []},
        {"id": "rest", "text": "when", "made_s": [], "paid_s": []},
    ],
    "out_of_proportion": [
        {"segment": "hang", "total_s": 100.0, "against": "median", "against_s": 41.0},
        {"segment": "talk", "total_s": 120.0, "against": "longest", "against_s": 100.0},
    ],
}
CUT: Row = {
    "segment": "hang", "file": "segments/hang.md", "line": 3, "last_line": 4, "what": "paragraph", "optional": 1,
    "words": "I like chalk.", "saves_s": 12.4, "breaks": ['what follows points back: "That is all."'],
}  # fmt: skip


def about(**more: object) -> Row:
    row: Row = {"wanted_s": 570.0, "before_s": 602.0, "after_s": 568.0, "saved_s": 34.0, "reached": True, "exact": True}
    row |= {"pace_needed": None, "new_warnings": [], "may_not_go": []}
    return {**row, **more}


def test_a_recording_is_told_where_there_is_one() -> None:
    assert runtime_listing.recorded({"recorded_s": 472.0}) == "The recording took 7:52; builds go by it.\n"
    assert runtime_listing.recorded({"recorded_s": None}) == ""


def test_where_things_fall() -> None:
    assert runtime_listing.bearings(BEARINGS, Ink()).splitlines() == [
        "Sponsor: 4:37 to 5:14, from 45% on; agreed: after 1:33.",
        "Longest without a change of picture: 0:53 from 9:27, recap (to camera).",
        "Promise swap: made at 0:11, kept at 8:49, 9:00.",
        "Promise grip: made at 0:12, not kept.",
        "Promise rest: not made.",
        "Out of proportion: hang takes 1:40, more than twice the middle exercise (0:41).",
        "Out of proportion: talk takes 2:00, longer than the longest exercise (1:40).",
    ]
    nothing: Row = {
        "sponsor": None,
        "more_of_sponsor": [],
        "longest_still": None,
        "promises": [],
        "out_of_proportion": [],
    }
    assert runtime_listing.bearings(nothing, Ink()) == ""


def test_what_to_cut() -> None:
    kept = {**CUT, "line": 9, "why": "it gives a caution"}
    whole = {**CUT, "what": "segment", "file": "outline.yaml", "line": 30, "optional": 2, "breaks": []}
    told = runtime_listing.fit({"fit": about(may_not_go=[kept], new_warnings=["a: b"]), "cuts": [CUT, whole]}, Ink())
    assert told.splitlines() == [
        "",
        "To fit 9:30, cut",
        "1   0:12  segments/hang.md, line 3: “I like chalk.”",
        '          what follows points back: "That is all."',
        "2   0:12  outline.yaml, line 30: the segment hang",
        "",
        "10:02 before, 9:28 after; 2 cuts.",
        "Then new in `check`: a: b",
        "",
        "Marked optional, and has to stay",
        "  segments/hang.md, line 9: “I like chalk.”: it gives a caution.",
    ]


def test_what_is_not_enough() -> None:
    told = runtime_listing.fit({"fit": about(reached=False, after_s=590.0, pace_needed=171), "cuts": [CUT]}, Ink())
    assert "It cannot be cut to 9:30. What may go\n" in told
    assert "10:02 before, 9:50 after; 1 cut. That is 0:20 too long. At 171 words a minute the rest would fit.\n" in told
    bare = runtime_listing.fit({"fit": about(reached=False, after_s=602.0, exact=False), "cuts": []}, Ink())
    assert "nothing\n" in bare
    assert "a better one may exist" in bare
    assert "No pace up to 400" in bare


def test_what_fits() -> None:
    told = runtime_listing.fit({"fit": about(before_s=560.0, after_s=560.0), "cuts": []}, Ink())
    assert told == "\nIt fits 9:30 as it is (9:20).\n"


def test_no_line_is_wider_than_the_terminal() -> None:
    long = {**CUT, "words": "a word " * 40, "breaks": ["it is named in many places " * 9], "why": "because " * 40}
    row = {"fit": about(may_not_go=[long], new_warnings=["x " * 90]), "cuts": [long], **BEARINGS}
    told = runtime_listing.fit(row, Ink(columns=60)) + runtime_listing.bearings(row, Ink(columns=60))
    assert max(map(width, told.splitlines())) <= 60
