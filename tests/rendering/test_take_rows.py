"""A take for programs has the keys that other tools rely on."""

from __future__ import annotations

from scriptkit.model import Pickup, Take, TakeChange, TakenSegment
from scriptkit.places import Place
from scriptkit.rendering import take_rows

HERE = Place("segments/hang.md", 3, 1)


def test_every_key_is_there_and_what_is_not_known_is_null() -> None:
    made = take_rows.take(
        Take(
            61.2345, None, None,
            (TakenSegment("hang", "verdict", 30, None, None, "missing"), TakenSegment("", "", 0, 4.5, 9, "added")),
            (), (TakeChange("stop", "number", "a number is another one", 4.5, "hang", HERE, "38", "83", 0),),  (),
            (Pickup("B", "hang", HERE, "For 38 weeks.", "a number is another one"),), 3, 1,
        )
    )  # fmt: skip
    assert made["pace"] is None
    assert made["length_s"] == 61.234 or made["length_s"] == 61.235
    assert made["segments"][0] == {"id": "hang", "planned_s": 30.0, "start_s": None, "end_s": None, "state": "missing"}
    assert made["changes"][0] == {
        "class": "stop", "kind": "number", "what": "a number is another one", "at_s": 4.5, "segment": "hang",
        "file": "segments/hang.md", "line": 3, "script": "38", "said": "83",
    }  # fmt: skip
    assert made["pickups"][0]["setup"] == "B"
