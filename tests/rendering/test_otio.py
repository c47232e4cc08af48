"""The timeline as OpenTimelineIO reads it."""

from __future__ import annotations

import json

import opentimelineio
import pytest

from tests.cutting import DROP, EXACT, Built, Write, at_rate
from tests.running import SMALLEST

RATES = pytest.mark.parametrize("rate", EXACT)


@RATES
def test_it_is_one_track_of_clips_at_the_exact_rate(rate: str) -> None:
    built = at_rate(rate)
    timeline = built.otio
    assert timeline.name == "Ways to train your grip"
    assert [track.kind for track in timeline.tracks] == [opentimelineio.schema.TrackKind.Video]
    times = [one.source_range.start_time for one in timeline.find_clips()] + [timeline.global_start_time]
    assert {one.rate for one in times} == {float(built.exact)}
    assert all(opentimelineio.opentime.RationalTime.is_smpte_timecode_rate(one.rate) for one in times)


@RATES
def test_its_labels_are_those_of_the_list(rate: str) -> None:
    built = at_rate(rate)
    ends = [opentimelineio.opentime.to_timecode(one.source_range.start_time, float(built.exact), rate in DROP)
            for one in built.otio.find_clips()]  # fmt: skip
    events = [line.split() for line in built.files["edl"].decode().split("\n") if line[:3].isdigit()]
    assert ends == [fields[6] for fields in events]
    assert built.otio.metadata["scriptkit"]["start_timecode"] == events[0][6]
    assert built.otio.metadata["scriptkit"]["drop_frame"] == (rate in DROP)
    assert built.otio.metadata["scriptkit"]["frames_per_second"] == "/".join(map(str, built.exact.as_integer_ratio()))


def test_each_clip_waits_for_the_media_of_its_set_up() -> None:
    built = at_rate("25")
    clips = built.otio.find_clips()
    assert [one.media_reference.name for one in clips] == ["SETA", "SETB", "SETC", "SETD", "SETE", "SETA"]
    for clip in clips:
        assert isinstance(clip.media_reference, opentimelineio.schema.MissingReference)
        whole = clip.media_reference.available_range
        assert whole == opentimelineio.opentime.TimeRange(built.otio.global_start_time, built.otio.duration())
        assert whole.start_time <= clip.source_range.start_time
        assert clip.source_range.end_time_exclusive() <= whole.end_time_exclusive()
    assert [one.metadata["scriptkit"]["shot"] for one in clips] == [1, 2, 3, 4, 5, 6]
    assert [one.metadata["scriptkit"]["segment"] for one in clips] == ["opening", "hang", "hang", "row", "row", "close"]


def test_markers_last_as_long_as_what_they_mark_and_say_what_stands_behind_it() -> None:
    built = at_rate("25")
    listed = {one.name: one for one in built.otio.tracks.markers}
    claim, card = listed["Claim: Hang time rose by a fifth."], listed["Card: Thumbs"]
    assert claim.comment == "mora-2022"
    assert card.marked_range.duration.value in {82, 83}  # 3.3 seconds, from the nearest frame to the nearest
    assert {listed[name].color for name in listed if name.startswith("Segment")} == {"BLUE"}
    assert (claim.color, card.color) == ("YELLOW", "GREEN")
    hang = listed["Segment: Bar hang"].marked_range
    assert hang.end_time_exclusive() == listed["Segment: Ring row"].marked_range.start_time


def test_the_library_can_write_a_list_of_it_with_the_same_reels() -> None:
    built = at_rate("24")
    written = opentimelineio.adapters.write_to_string(built.otio, "cmx_3600")
    reels = [line.split()[1] for line in written.split("\n") if line[:3].isdigit()]
    assert reels == ["SETA", "SETB", "SETC", "SETD", "SETE", "SETA"]


HOSTILE = {
    "a\x00\x1b[2J\x07": "[2J",
    "]]></note><x>&amp;\"'": "]]></note><x>&amp;\"'",
    "שלום \u202egnp.exe": "שלום gnp.exe",
    "👩\u200d🏫 hang": "👩\u200d🏫 hang",
    "x\n* LOC: 01:00:00:00 RED X": "x * LOC: 01:00:00:00 RED X",
    "\\x\\n %s": "\\x\\n %s",
    "FROM CLIP: a.mov": "FROM CLIP: a.mov",
    "=1+1": "=1+1",
}


@pytest.mark.parametrize(("text", "seen"), HOSTILE.items())
def test_hostile_texts_stay_texts_in_all_three_files(episode: Write, text: str, seen: str) -> None:
    quoted = json.dumps(text, ensure_ascii=False)
    outline = (
        f"title: {quoted}\nexercises: {{hang: {{name: {quoted}, shots: [{{size: CU, plane: side, of: {quoted}}}]}}}}\n"
    )
    built = Built(episode({"outline.yaml": outline}))
    assert built.in_otio() == built.in_edl() == built.in_fcpxml() != []
    names = [one.name for one in built.otio.find_clips()]
    assert [one.name for one in built.edl.find_clips()] == names
    assert [one.attrib["name"] for one in built.xml.iterfind(".//asset-clip")] == names
    marked = [one.name for one in built.otio.tracks.markers]
    assert [one.attrib["value"] for one in built.xml.iterfind(".//marker")] == marked
    assert [one.name for clip in built.edl.find_clips() for one in clip.markers] == marked
    assert any(seen in name for name in names)
    for data in built.files.values():
        assert not any(sign in data.decode() for sign in "\x00\x07\x1b\u202e")


def test_the_same_episode_gives_the_same_bytes(episode: Write) -> None:
    folder = episode({"outline.yaml": SMALLEST})
    assert Built(folder).files == Built(folder).files
