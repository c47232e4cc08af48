"""The rough cut lies on frames: the same ones in all three files, without drift and gaps, up to the clock's end."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scriptkit import timecode
from scriptkit.model import Facts, Graphic
from scriptkit.rendering import cut, edl, fcpxml, otio
from tests.cutting import DROP, EXACT, Built, Write, at_rate, seconds
from tests.fcpxml_rules import broken_rules
from tests.planned import NOWHERE, planned
from tests.running import run
from tests.scripts import GRIP, worked_out

RATES = pytest.mark.parametrize("rate", EXACT)


@RATES
def test_all_three_files_cut_at_the_frames_of_the_clock(rate: str) -> None:
    built = at_rate(rate)
    spans = list(pairwise([*built.starts, built.length]))
    assert len(spans) == 6
    assert built.length > 130 * built.exact
    assert built.in_otio() == built.in_edl() == built.in_fcpxml() == spans


@RATES
def test_all_three_files_begin_and_end_at_the_same_timecode(rate: str) -> None:
    built = at_rate(rate)
    hour = timecode.start("", rate)
    assert built.otio.global_start_time.value == hour
    clips = built.edl.find_clips()
    assert clips[0].source_range.start_time.value == hour
    assert clips[-1].source_range.end_time_exclusive().value == hour + built.length
    sequence = built.xml.find(".//sequence")
    assert sequence is not None
    assert sequence.attrib["tcFormat"] == ("DF" if rate in DROP else "NDF")
    assert seconds(sequence.attrib["tcStart"]) * built.exact == hour
    assert seconds(sequence.attrib["duration"]) * built.exact == built.otio.duration().value == built.length


@RATES
def test_markers_stand_at_the_frames_of_segments_claims_and_cards(rate: str) -> None:
    built = at_rate(rate)
    facts = built.facts
    wanted = [
        (one.start, f"Segment: {part.title}") for part, one in zip(facts.segments, facts.timeline.segments, strict=True)
    ]
    wanted += [(one.start, f"Card: {one.text}") for one in facts.graphics]
    hang = next(one for one in facts.timeline.segments if one.id == "hang")
    wanted.append((hang.sentences[0].start, "Claim: Hang time rose by a fifth."))
    listed = {(int(one.marked_range.start_time.value), one.name) for one in built.otio.tracks.markers}
    assert {(built.frame(start), name) for start, name in wanted} <= listed
    claims = {name for _, name in listed if name.startswith("Claim:")}
    assert claims == {"Claim: Hang time rose by a fifth."}
    assert len(listed) == len(built.otio.tracks.markers) == len(facts.segments) + len(facts.graphics) + len(claims)


def test_only_claims_to_be_sourced_are_marked_as_claims(episode: Write) -> None:
    text = (
        "Hang time rose. [from mora-2022] Hangs build grip. For me hangs build grip fast. [opinion] "
        "Hanging makes you taller. [aside] Here's the bar. [aside]"
    )
    facts = worked_out(episode({"outline.yaml": GRIP, "segments/hang.md": text}))
    made = cut.cut(facts)
    assert [(one.name, one.detail) for one in made.markers if one.kind == "Claim"] == [
        ("Claim: Hang time rose.", "mora-2022"),
        ("Claim: Hangs build grip.", "no source"),
    ]


@pytest.mark.parametrize("outline", ["title: One\n", "title: One\norder: []\n", "exercises: {}\n", "title: ' '\n"])
def test_an_episode_without_shots_gives_three_empty_cuts(episode: Write, outline: str) -> None:
    built = Built(episode({"outline.yaml": outline + "rate: 29.97df\n"}), "29.97df")
    assert built.length == 0 or built.in_otio()
    if not built.length:
        assert (built.in_otio(), built.in_edl(), built.in_fcpxml()) == ([], [], [])
        assert built.files["edl"].decode().split("\n")[1] == "FCM: DROP FRAME"
    assert broken_rules(built.files["fcpxml"]) == []


def test_the_cut_begins_where_the_outline_or_the_channel_says(episode: Write) -> None:
    episode({"../channel.yaml": "start_timecode: 10:00:00:00\nrate: 29.97df\n"})
    built = Built(episode({"outline.yaml": GRIP}), "29.97df")
    assert built.files["edl"].decode().split("\n")[3].split()[6] == "10:00:00;00"
    assert built.otio.global_start_time.value == 10 * 107_892
    built = Built(episode({"outline.yaml": GRIP + "start_timecode: 00:59:30;00\n"}), "29.97df")
    assert built.otio.global_start_time.value == 107_892 - 900
    assert built.in_otio() == built.in_edl() == built.in_fcpxml()


def test_after_a_take_all_three_files_go_by_the_recording(episode: Write) -> None:
    folder = episode({"outline.yaml": GRIP + "rate: 59.94df\n"})
    planned_length = Built(folder, "59.94df").length
    said = [line for line in (folder / "build" / "prompter.txt").read_text().split("\n") if line]
    vtt = "".join(
        f"\n00:{at * 9 // 60:02}:{at * 9 % 60:02}.000 --> 00:{at * 9 // 60:02}:{at * 9 % 60 + 5:02}.500\n{line}\n"
        for at, line in enumerate(said)
    )
    (folder.parent / "take.vtt").write_text(f"WEBVTT\n{vtt}")
    run("take", folder, folder.parent / "take.vtt")
    built = Built(folder, "59.94df")
    assert built.facts.clocked is not None
    assert built.length == round((len(said) * 9 - 3.5) * built.exact) != planned_length
    assert built.in_otio() == built.in_edl() == built.in_fcpxml() == list(pairwise([*built.starts, built.length]))


def placed(facts: Facts, starts: Sequence[float | None], total: float, rate: str) -> Facts:
    """Facts with shots at these times and a clock that ends at `total`."""
    shots = tuple(planned(number, start) for number, start in enumerate(starts, 1))
    timeline = facts.timeline._replace(total=total)
    return facts._replace(shots=shots, timeline=timeline, episode=facts.episode._replace(rate=rate))


@pytest.fixture(scope="module")
def facts(tmp_path_factory: pytest.TempPathFactory) -> Facts:
    folder = tmp_path_factory.mktemp("cut")
    (folder / "outline.yaml").write_text(GRIP.replace("\n    ", "\n"))
    return worked_out(folder)


def test_a_shot_shorter_than_a_frame_has_no_clip_and_is_told(facts: Facts) -> None:
    made = cut.cut(placed(facts, [0, 1, 1.001, 2, None, 2.999, 2.9995], 3, "25"))
    assert [(one.start, one.end, one.shot.number) for one in made.clips] == [(0, 25, 1), (25, 50, 3), (50, 75, 4)]
    assert made.clips[1].remarks == ("shot 2 (set-up C) is shorter than a frame",)
    assert [one.number for one in made.clips[2].missing] == [6, 7]
    assert "* NOTE: shot 2 (set-up C) is shorter than a frame" in edl.edl(made).decode().split("\n")
    assert "<note>shot 2 (set-up C) is shorter than a frame</note>" in fcpxml.fcpxml(made).decode()
    assert "shot 2 (set-up C) is shorter than a frame" in otio.otio(made).decode()


def test_what_is_filmed_and_not_placed_is_not_in_the_cut(facts: Facts) -> None:
    assert [one.shot.number for one in cut.cut(placed(facts, [None, 0, None], 3, "25")).clips] == [2]
    assert cut.cut(placed(facts, [None], 3, "25")).clips == ()


def test_a_recording_that_begins_with_silence_is_filled_by_its_first_shot(facts: Facts) -> None:
    made = cut.cut(placed(facts, [4.2, 9], 20, "25"))
    assert [(one.start, one.end) for one in made.clips] == [(0, 225), (225, 500)]


def test_a_marker_behind_the_end_stands_on_the_last_frame(facts: Facts) -> None:
    late = placed(facts, [0], 3, "25")._replace(graphics=(Graphic("card", "hang", "Late", 3.0, 3.0, 1.5, (), NOWHERE),))
    card = next(one for one in cut.cut(late).markers if one.kind == "Card")
    assert (card.start, card.end) == (74, 75)


@given(
    st.lists(st.one_of(st.none(), st.floats(0, 50_000)), max_size=30),
    st.floats(0, 50_000),
    st.sampled_from(list(EXACT)),
)
def test_frames_never_go_back_and_no_clip_is_empty(
    facts: Facts, starts: list[float | None], total: float, rate: str
) -> None:
    made = cut.cut(placed(facts, sorted(starts, key=lambda one: (one is None, one)), total, rate))
    assert all(one.start < one.end for one in made.clips)
    assert all(one.end == after.start for one, after in pairwise(made.clips))
    there = [one for one in starts if one is not None]
    assert bool(made.clips) == bool(there and made.length)
    if made.clips:
        assert (made.clips[0].start, made.clips[-1].end) == (0, made.length)
        assert len(made.clips) + sum(len(one.missing) for one in made.clips) == len(there)
    for clip, markers in made.marked():
        assert all(clip.start <= one.start < clip.end for one in markers)
    assert sum(len(markers) for _, markers in made.marked()) == len(made.markers)


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("a\x00b\x1b[31m\x7f\x9bc", "ab[31mc"), ("a\n* LOC:\r\nb\x0bc\x85d\u2028e", "a * LOC: b c d e"),
        ("a\u202eb\u2067c\u200e", "abc"), ("\ud800x\ufffe\uffff", "x"), ("👩‍🏫 שלום", "👩‍🏫 שלום"), ("", ""),
    ],
)  # fmt: skip
def test_a_text_is_one_line_of_what_is_seen(text: str, shown: str) -> None:
    assert cut.plain(text) == shown
