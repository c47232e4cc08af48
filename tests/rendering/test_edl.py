"""The edit decision list as its adapter for OpenTimelineIO reads it, and as CMX 3600 has it."""

from __future__ import annotations

import re
from fractions import Fraction

import opentimelineio
import pytest

from scriptkit import timecode
from scriptkit.rendering import edl
from scriptkit.rendering.cut import REEL, Clip, Cut, Marker
from tests.cutting import DROP, EXACT, at_rate
from tests.planned import planned

RATES = pytest.mark.parametrize("rate", EXACT)
EVENT = re.compile(r"(\d{3} |\d{4}) ([A-Z]{4,8}) *V     C        (?:\d\d:\d\d:\d\d[:;]\d\d ?){4}")
LOCATOR = re.compile(r"\* LOC: (\d\d:\d\d:\d\d[:;]\d\d) (BLUE|YELLOW|GREEN) +(\S.*)")


def cut_of(clips: int, rate: str = "25", name: str = "x", markers: tuple[Marker, ...] = ()) -> Cut:
    """A cut of so many clips, a frame each."""
    made = tuple(Clip(one, one + 1, name, REEL + "A", planned(one + 1, one / 25)) for one in range(clips))
    return Cut("One", rate, EXACT[rate], timecode.start("", rate), clips, made, markers)


def read(data: bytes, rate: Fraction = Fraction(25)) -> opentimelineio.schema.Timeline:
    return opentimelineio.adapters.read_from_string(data.decode(), "cmx_3600", rate=float(rate))


@RATES
def test_the_head_says_title_rate_and_how_frames_are_counted(rate: str) -> None:
    built = at_rate(rate)
    head = built.files["edl"].decode().split("\n")[:3]
    counted = "DROP FRAME" if rate in DROP else "NON-DROP FRAME"
    assert head == [f"TITLE: Ways to train your grip ({rate.removesuffix('df')} fps)", f"FCM: {counted}", ""]
    assert built.edl.name == head[0].removeprefix("TITLE: ")


@RATES
def test_clips_have_names_and_a_reel_a_set_up(rate: str) -> None:
    clips = at_rate(rate).edl.find_clips()
    assert [one.name for one in clips] == [
        "1 A MS front presenter to camera", "2 B FS side bar hang", "3 C CU front fault thumbs off the bar",
        "4 D FS side ring row", "5 E MS back correct shoulder blades", "6 A MS front presenter to camera",
    ]  # fmt: skip
    assert [one.metadata["cmx_3600"]["reel"] for one in clips] == ["SETA", "SETB", "SETC", "SETD", "SETE", "SETA"]
    assert all(isinstance(one.media_reference, opentimelineio.schema.MissingReference) for one in clips)


@RATES
def test_every_line_is_one_of_the_format(rate: str) -> None:
    lines = at_rate(rate).files["edl"].decode().removesuffix("\n").split("\n")[3:]
    events = [line for line in lines if EVENT.fullmatch(line)]
    names = [line for line in lines if line.startswith("* FROM CLIP NAME:  ")]
    locators = [line for line in lines if LOCATOR.fullmatch(line)]
    assert len(events) == len(names) == 6
    assert len(events) + len(names) + len(locators) == len(lines)
    sign = ";" if rate in DROP else ":"
    labels = re.findall(r"\d\d:\d\d:\d\d([:;])\d\d", "\n".join(events + locators))
    assert set(labels) == {sign}


@RATES
def test_markers_stand_behind_the_clip_that_holds_their_frame(rate: str) -> None:
    built = at_rate(rate)
    wanted = sorted((int(one.marked_range.start_time.value), one.name) for one in built.otio.tracks.markers)
    found: list[tuple[int, str]] = []
    until = 0
    for line in built.files["edl"].decode().split("\n"):
        if EVENT.fullmatch(line):
            until = (timecode.frame(line.split()[-1], rate) or 0) - timecode.start("", rate)
        if one := LOCATOR.fullmatch(line):
            found.append(((timecode.frame(one[1], rate) or 0) - timecode.start("", rate), one[3]))
            assert found[-1][0] < until
    assert sorted(found) == wanted


@pytest.mark.parametrize("rate", [one for one in EXACT if one not in DROP])
def test_the_adapter_reads_markers_where_labels_are_not_dropped(rate: str) -> None:
    """It knows no semicolon in a marker, and would take a colon for a label that is not dropped: another frame."""
    built = at_rate(rate)
    first = timecode.start("", rate)
    read_back = [one for clip in built.edl.find_clips() for one in clip.markers]
    listed = [(int(one.marked_range.start_time.value) - first, one.name, one.color) for one in read_back]
    assert listed == [
        (int(one.marked_range.start_time.value), one.name, one.color) for one in built.otio.tracks.markers
    ]


def test_behind_event_999_the_numbers_go_on_with_four_digits_in_the_same_columns() -> None:
    data = edl.edl(cut_of(1_205))
    events = [line for line in data.decode().split("\n") if line[:3].isdigit()]
    assert [line.split()[0] for line in events[997:1_001]] == ["998", "999", "1000", "1001"]
    assert {line.index("SETA") for line in events} == {5}
    clips = read(data).find_clips()
    assert len(clips) == 1_205
    assert clips[-1].source_range.end_time_exclusive().value == 90_000 + 1_205


def test_a_reel_is_never_longer_than_eight_signs_and_never_one_that_means_black() -> None:
    for setup in ("A", "BL", "AX", "ZZZZZ"):
        made = cut_of(1)
        clip = made.clips[0]._replace(reel=REEL + setup)
        line = edl.edl(made._replace(clips=(clip,))).decode().split("\n")[3]
        reel = line.split()[1]
        assert len(reel) <= 8
        assert reel not in {"BL", "AX", "BLACK", "BARS"}


def test_long_texts_are_cut_short() -> None:
    marker = Marker(0, 1, "Claim", "word " * 100, "")
    data = edl.edl(cut_of(1, name="n" * 200, markers=(marker,))._replace(title="t" * 200)).decode()
    lines = data.split("\n")
    assert lines[0].endswith("... (25 fps)")
    assert len(lines[0]) == len("TITLE: ") + 70
    assert lines[4] == f"* FROM CLIP NAME:  {'n' * 77}..."
    assert lines[5].endswith(" word...")
    assert max(map(len, lines)) <= 110


def test_no_clips_are_a_head_alone() -> None:
    data = edl.edl(cut_of(0))
    assert data.decode() == "TITLE: One (25 fps)\nFCM: NON-DROP FRAME\n"
    assert read(data).find_clips() == []
