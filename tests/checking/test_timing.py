"""The runtime and the length of segments are held against what the outline wants."""

from __future__ import annotations

import pytest

from tests.scripts import Write, found, helps, worked_out

ONE = (
    "title: One\nruntime: {target: %s}\nexercises: {hang: {name: Bar hang}}\n"
    "order: [hang, {segment: chat, kind: talk}]\n"
)
TEXTS = {"segments/hang.md": "[hold 60s: one] Go. [aside]", "segments/chat.md": "[hold 36s: two] Go. [aside]"}  # 98.2 s


@pytest.mark.parametrize(
    ("target", "off"),
    [
        ("98s", ""),
        ("94s", ""),
        ("93s", "over"),
        ("103s", ""),
        ("104s", "under"),
        ("60s, tolerance: 40s", ""),
        ("60s, tolerance: 38s", "over"),
        ("120s, tolerance: 20%", ""),
        ("'1:38'", ""),
        ("1h", "under"),
    ],
)
def test_a_runtime_outside_target_and_tolerance_is_told(episode: Write, target: str, off: str) -> None:
    told = found(worked_out(episode({"outline.yaml": ONE % target, **TEXTS})), "runtime-off-target")
    assert [place for place, _ in told] == (["outline.yaml:2:19"] if off else [])
    assert all(off in message for _, message in told)


def test_the_help_says_how_much_to_cut_and_where_most_of_it_is(episode: Write) -> None:
    facts = worked_out(episode({"outline.yaml": ONE % "60s", **TEXTS}))
    assert helps(facts, "runtime-off-target") == ['Cut about 0:38; the longest segment is "hang" with 1:01.']


def test_a_segment_a_tenth_off_its_own_target_is_told(episode: Write) -> None:
    outline = (
        (ONE % "98s").replace("[hang", "[{segment: hang, target: 61s}").replace("kind: talk", "kind: talk, target: 30s")
    )
    facts = worked_out(episode({"outline.yaml": outline, **TEXTS}))
    assert [place for place, _ in found(facts, "segment-off-target")] == ["outline.yaml:4:75"]


@pytest.mark.parametrize(("target", "off"), [("90s", False), ("46s", False), ("45s", True), ("56s", True)])
def test_a_tenth_is_allowed_and_no_more(episode: Write, target: str, off: bool) -> None:
    seconds = {"90s": 82, "46s": 50, "45s": 50, "56s": 50}[target]  # 8.9, 8.7, 11.1 and 10.7 in a hundred off
    outline = f"title: One\nexercises: {{hang: {{name: Bar hang}}}}\norder: [{{segment: hang, target: {target}}}]\n"
    facts = worked_out(episode({"outline.yaml": outline, "segments/hang.md": f"[hold {seconds}s: logo]"}))
    assert bool(found(facts, "segment-off-target")) is off


@pytest.mark.parametrize(
    ("rate", "written", "told"),
    [
        ("29.97df", "00:01:00;00", "drop-frame leaves it out"),
        ("29.97df", "00:01:00:01", "drop-frame leaves it out"),
        ("59.94df", "09:59:00;03", "drop-frame leaves it out"),
        ("29.97", "01:00:00;00", "the semicolon says drop-frame"),
        ("25", "01:00:00:25", "at 25 a second has 25"),
        ("23.976", "01:00:00:24", "at 23.976 a second has 24"),
        ("25", "24:00:00:00", "a frame has hours"),
        ("25", "ten o'clock", "a frame has hours"),
    ],
)
def test_a_start_timecode_that_no_frame_has(episode: Write, rate: str, written: str, told: str) -> None:
    outline = f'title: One\nexercises: {{hang: {{name: Bar hang}}}}\nrate: {rate}\nstart_timecode: "{written}"\n'
    ((place, message),) = found(worked_out(episode({"outline.yaml": outline})), "start-timecode-wrong")
    assert (place, told in message) == ("outline.yaml:4:18", True)


@pytest.mark.parametrize(
    ("rate", "written"),
    [("29.97df", "00:10:00;00"), ("29.97df", "01:00:00:00"), ("29.97", "00:01:00:00"), ("60", "22:59:59:59")],
)
def test_a_start_timecode_that_a_frame_has(episode: Write, rate: str, written: str) -> None:
    outline = f"title: One\nexercises: {{hang: {{name: Bar hang}}}}\nrate: {rate}\nstart_timecode: {written}\n"
    assert found(worked_out(episode({"outline.yaml": outline})), "start-timecode-wrong") == []


@pytest.mark.parametrize(("first", "count"), [("10:00:00:00", 0), ("23:59:59:20", 1)])
def test_a_cut_does_not_run_past_midnight(episode: Write, first: str, count: int) -> None:
    outline = f"title: One\nstart_timecode: {first}\nexercises: {{hang: {{name: Bar hang}}}}\n"
    assert len(found(worked_out(episode({"outline.yaml": outline})), "start-timecode-wrong")) == count
