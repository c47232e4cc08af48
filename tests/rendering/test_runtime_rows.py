"""What programs read of the clock and of a fit: seconds with three decimals, places, reasons."""

from __future__ import annotations

from scriptkit.model.fitting import Bearings, Cut, Fit, Landing, Outweighs, PromiseTimes, Still
from scriptkit.model.taking import KeptRecording
from scriptkit.places import Place
from scriptkit.rendering import runtime_rows


def test_where_things_fall() -> None:
    found = Bearings(
        (Landing("sponsor", 30.00049, 60.0, 120.0, None, 72.0), Landing("more", 90.0, 95.0, 120.0, None, None)),
        Still("hang", 1.23456, 4.0, "the bar"),
        (PromiseTimes("swap", "which one", (1.00001,), ()),),
        (Outweighs("hang", 50.0, 20.0, "median"),),
    )
    row = runtime_rows.bearings(found)
    assert row["sponsor"] == {
        "segment": "sponsor", "start_s": 30.0, "end_s": 60.0, "share": 0.25, "after_s": None, "before_s": 72.0
    }  # fmt: skip
    assert [one["segment"] for one in row["more_of_sponsor"]] == ["more"]
    assert row["longest_still"] == {
        "segment": "hang", "start_s": 1.235, "end_s": 4.0, "duration_s": 2.765, "seen": "the bar"
    }  # fmt: skip
    assert row["promises"] == [{"id": "swap", "text": "which one", "made_s": [1.0], "paid_s": []}]
    assert row["out_of_proportion"] == [{"segment": "hang", "total_s": 50.0, "against": "median", "against_s": 20.0}]


def test_nothing_is_told_as_nothing() -> None:
    row = runtime_rows.bearings(Bearings((), None, (), ()))
    assert row == {
        "sponsor": None,
        "more_of_sponsor": [],
        "longest_still": None,
        "promises": [],
        "out_of_proportion": [],
    }


def test_a_fit() -> None:
    paragraph = Cut("hang", 1, (3, 5), Place("segments/hang.md", 3, 1), "I like it.", 4.00049, "", ("a word",))
    whole = Cut("row", 2, None, Place("outline.yaml", 9, 5), "Ring row", 0.0, "it gives a caution")
    row = runtime_rows.fit(Fit(60.0, 70.0, 65.99961, (paragraph,), (whole,), reached=False, pace=170, exact=False))
    assert row["cuts"] == [
        {
            "segment": "hang", "file": "segments/hang.md", "line": 3, "last_line": 5, "what": "paragraph",
            "optional": 1, "words": "I like it.", "saves_s": 4.0, "breaks": ["a word"],
        }
    ]  # fmt: skip
    about = row["fit"]
    assert (about["wanted_s"], about["before_s"], about["after_s"]) == (60.0, 70.0, 66.0)
    assert (about["reached"], about["pace_needed"], about["exact"]) == (False, 170, False)
    assert [(one["what"], one["line"], one["why"]) for one in about["may_not_go"]] == [
        ("segment", 9, "it gives a caution")
    ]


def test_the_length_of_a_recording_is_in_thousandths_of_a_second() -> None:
    assert runtime_rows.recorded(KeptRecording(472.00049)) == 472.0
    assert runtime_rows.recorded(None) is None
