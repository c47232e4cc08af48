"""The FCPXML breaks none of the rules that the format's reference states; its DTD is not ours to keep here."""

from __future__ import annotations

import xml.etree.ElementTree as ET

import pytest

from tests.cutting import EXACT, Built, at_rate, seconds
from tests.fcpxml_rules import broken_rules

RATES = pytest.mark.parametrize("rate", EXACT)
FRAME = {
    "23.976": "1001/24000s", "24": "1/24s", "25": "1/25s", "29.97": "1001/30000s", "29.97df": "1001/30000s",
    "30": "1/30s", "50": "1/50s", "59.94": "1001/60000s", "59.94df": "1001/60000s", "60": "1/60s",
}  # fmt: skip


def found(built: Built, path: str) -> ET.Element:
    element = built.xml.find(path)
    assert element is not None
    return element


@RATES
def test_it_breaks_no_rule(rate: str) -> None:
    assert broken_rules(at_rate(rate).files["fcpxml"]) == []


@RATES
def test_a_frame_lasts_exactly_as_long_as_it_does(rate: str) -> None:
    attributes = found(at_rate(rate), "resources/format").attrib
    assert attributes["frameDuration"] == FRAME[rate]
    names = {"23.976": "2398", "29.97": "2997", "59.94": "5994"}
    written = rate.removesuffix("df")
    assert attributes["name"] == f"FFVideoFormat1080p{names.get(written, written)}"


def test_the_first_timecode_is_a_time_of_whole_frames() -> None:
    times = {rate: found(at_rate(rate), ".//sequence").attrib["tcStart"] for rate in ("25", "29.97", "29.97df")}
    assert times == {"25": "3600s", "29.97": "18018/5s", "29.97df": "8999991/2500s"}


def test_each_set_up_is_an_asset_whose_file_is_to_come() -> None:
    built = at_rate("25")
    assets = {one.attrib["id"]: one.attrib["name"] for one in built.xml.iterfind("resources/asset")}
    assert list(assets.values()) == ["SETA", "SETB", "SETC", "SETD", "SETE"]
    files = [one.attrib["src"] for one in built.xml.iterfind("resources/asset/media-rep")]
    assert files == [f"./{name}.mov" for name in assets.values()]
    clips = list(built.xml.iterfind(".//asset-clip"))
    assert [assets[one.attrib["ref"]] for one in clips] == ["SETA", "SETB", "SETC", "SETD", "SETE", "SETA"]
    assert [one.attrib["name"] for one in clips] == [one.name for one in built.otio.find_clips()]


@RATES
def test_its_markers_are_those_of_the_other_timeline(rate: str) -> None:
    built = at_rate(rate)
    first = built.otio.global_start_time.value
    listed = [
        (seconds(one.attrib["start"]) * built.exact - first, one.attrib["value"], one.attrib["note"])
        for one in built.xml.iterfind(".//marker")
    ]
    assert listed == [(one.marked_range.start_time.value, one.name, one.comment) for one in built.otio.tracks.markers]


BREAKS = [
    ('version="1.9"', 'version="1.8"', "version of fcpxml is 1.8"),
    ("<!DOCTYPE fcpxml>", "", "the head is another"),
    (' frameDuration="1/25s"', ' frameDuration="0.04s"', "frameDuration of format is the time 0.04s"),
    ('ref="r3"', 'ref="r99"', "ref of asset-clip refers to r99"),
    ('id="r3"', 'id="r2"', "two resources have the same id"),
    ('tcFormat="NDF" audio', 'tcFormat="PAL" audio', "tcFormat of sequence is PAL"),
    ("<spine>", "<spine><note>x</note>", "spine holds"),
    (' value="Segment: Opening"', "", "marker has"),
    ('offset="3600s"', 'offset="3601s"', "does not follow"),
    ('tcStart="3600s"', 'tcStart="3599s"', "does not follow"),
    ('<marker start="3600s"', '<marker start="3599s"', "Segment: Opening is not inside"),
    ('<marker start="3600s"', '<marker start="180001/50s"', "lies between frames"),
    ('start="3600s" duration', 'start="3700s" duration', "is not inside its asset"),
]  # fmt: skip


@pytest.mark.parametrize(("old", "new", "told"), BREAKS)
def test_the_rules_see_a_file_that_breaks_one(old: str, new: str, told: str) -> None:
    text = at_rate("25").files["fcpxml"].decode()
    assert old in text
    assert any(told in one for one in broken_rules(text.replace(old, new, 1).encode()))
