"""`take`: a recording of the sample held against its script; its pace is kept for the scripts to come."""

from __future__ import annotations

import json
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from scriptkit import build
from scriptkit.shipped import shipped
from scriptkit.times import clock
from tests.recorded import recording
from tests.running import run

ROOT = Path(__file__).parents[1]


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    made = tmp_path / "channel" / "hill-calves"
    shutil.copytree(shipped("sample_episode"), made, ignore=shutil.ignore_patterns("build"))
    return made


def captions(folder: Path, to: Path, **changes: object) -> Path:
    """A recording of an episode as WebVTT, nine words a caption."""
    made, _, _ = recording(build.work_out(build.read(folder)), **changes)  # type: ignore[arg-type]
    lines = ["WEBVTT", ""]
    for at in range(0, len(made.words), 9):
        some = made.words[at : at + 9]
        lines += [f"{_time(some[0].start)} --> {_time(some[-1].end)}", " ".join(one.text for one in some), ""]
    to.write_text("\n".join(lines), encoding="utf-8")
    return to


def _time(seconds: float) -> str:
    return f"{int(seconds // 3600):02}:{int(seconds // 60) % 60:02}:{seconds % 60:06.3f}"


def test_a_recording_as_written_has_nothing_to_mend(folder: Path, tmp_path: Path) -> None:
    done = run("take", folder, captions(folder, tmp_path / "take.vtt"))
    assert (done.status, done.err) == (0, "")
    assert "Nothing has to be mended." in done.out


def test_a_number_said_otherwise_is_told_with_its_time_and_its_line(folder: Path, tmp_path: Path) -> None:
    said = ["The ledge side gained 1.9 millimetres of muscle, and the floor side 1.0."]
    done = run(
        "take", folder, captions(folder, tmp_path / "take.vtt", instead={("ledge-raise", 3): said}), "--format", "json"
    )
    assert done.status == 1
    (change,) = done.json["changes"]
    assert (change["class"], change["kind"], change["file"], change["line"]) == (
        "stop", "number", "segments/ledge-raise.md", 10,
    )  # fmt: skip
    assert change["at_s"] > 60
    assert {"episode", "pace", "segments", "changes", "pickups"} <= done.json.keys()
    assert done.json["pickups"][0]["text"].startswith("The ledge side gained 1.6")
    assert all({"id", "planned_s", "start_s", "end_s", "state"} <= one.keys() for one in done.json["segments"])


def test_the_pace_is_kept_once_an_episode_and_used_where_none_is_written(folder: Path, tmp_path: Path) -> None:
    take = captions(folder, tmp_path / "take.vtt")
    for _ in range(2):
        run("take", folder, take)
    kept = (folder / "takes.yaml").read_text(encoding="utf-8")
    assert kept.count("hill-calves") == 1
    outline = folder / "outline.yaml"
    text = outline.read_text(encoding="utf-8")
    outline.write_text(text.replace("pace: 160\npaces: {opening: 170, sponsor: 150}\n", ""), encoding="utf-8")
    runtime = run("runtime", folder, "--format", "json").json
    assert runtime["pace_from"] == "takes"
    assert f"pace: {runtime['pace']}" in kept
    assert "from the last takes" in run("runtime", folder).out


def test_beside_a_channel_it_is_kept_there_and_the_last_three_count(folder: Path, tmp_path: Path) -> None:
    channel = folder.parent
    (channel / "channel.yaml").write_text("name: Hills\n", encoding="utf-8")
    rows = "".join(f"  - {{episode: e{at}, pace: {pace}}}\n" for at, pace in enumerate((300, 150, 170, 160)))
    (channel / "takes.yaml").write_text("takes:\n" + rows, encoding="utf-8")
    outline = folder / "outline.yaml"
    text = outline.read_text(encoding="utf-8")
    outline.write_text(text.replace("pace: 160\npaces: {opening: 170, sponsor: 150}\n", ""), encoding="utf-8")
    assert run("runtime", folder, "--format", "json").json["pace"] == 160
    done = run("take", folder, captions(folder, tmp_path / "take.vtt"))
    assert done.status == 0
    assert "changed by hand" in done.err
    assert "This take's pace is" in done.err
    assert "Nothing has to be mended." in done.out
    assert (channel / "takes.yaml").read_text(encoding="utf-8") == "takes:\n" + rows
    assert not (folder / "takes.yaml").exists()


def test_takes_of_four_episodes_of_a_channel_at_the_same_time_are_all_kept(folder: Path, tmp_path: Path) -> None:
    channel, take = folder.parent, captions(folder, tmp_path / "take.vtt")
    (channel / "channel.yaml").write_text("name: Hills\n", encoding="utf-8")
    folders = [folder, *(channel / f"again-{at}" for at in range(3))]
    for other in folders[1:]:
        shutil.copytree(folder, other)
    calls = [[sys.executable, "-m", "scriptkit", "take", str(one), str(take)] for one in folders]
    running = [subprocess.Popen(call, cwd=ROOT, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE) for call in calls]
    assert [(one.communicate()[1], one.returncode) for one in running] == [(b"", 0)] * len(calls)
    kept = (channel / "takes.yaml").read_text(encoding="utf-8")
    assert [kept.count(f'episode: "{one.name}"') for one in folders] == [1, 1, 1, 1]


def test_a_take_is_forgotten(folder: Path, tmp_path: Path) -> None:
    run("take", folder, captions(folder, tmp_path / "take.vtt"))
    assert "taken out" in run("take", folder, "--forget").out
    assert "hill-calves" not in (folder / "takes.yaml").read_text(encoding="utf-8")
    assert "no take to forget" in run("take", folder, "--forget").out


@pytest.mark.parametrize("name", ["missing.vtt", "film.mp4", "empty.vtt"])
def test_what_is_no_recording_is_refused_in_a_sentence_and_nothing_is_kept(
    folder: Path, tmp_path: Path, name: str
) -> None:
    if name != "missing.vtt":
        (tmp_path / name).write_bytes(b"\0\0\0\x18ftypmp42" if name == "film.mp4" else b"")
    done = run("take", folder, tmp_path / name)
    assert done.status == 2
    assert "Nothing was measured." in done.err
    assert not (folder / "takes.yaml").exists()


def test_without_a_recording_it_says_what_to_name(folder: Path) -> None:
    done = run("take", folder)
    assert done.status == 2
    assert "Name the recording" in done.err


def test_two_files_are_one_recording(folder: Path, tmp_path: Path) -> None:
    whole = captions(folder, tmp_path / "take.vtt").read_text(encoding="utf-8").split("\n\n")
    half = len(whole) // 2
    parts = []
    for name, cues in (("one.vtt", whole[1:half]), ("two.vtt", whole[half:])):
        (tmp_path / name).write_text("\n\n".join(["WEBVTT", *cues]), encoding="utf-8")
        parts.append(tmp_path / name)
    assert "Nothing has to be mended." in run("take", folder, *parts).out


def built(folder: Path, to: Path) -> dict[str, str]:
    run("build", folder, "--out", to)
    return {one.name: one.read_bytes().decode(errors="replace") for one in to.iterdir()}


def test_a_build_goes_by_the_recording_until_it_is_forgotten(folder: Path, tmp_path: Path) -> None:
    order = list(range(19))
    order.insert(12, order.pop(6))
    run("take", folder, captions(folder, tmp_path / "take.vtt", order=order))
    files = built(folder, tmp_path / "out")
    report = json.loads(files["report.json"])
    starts = [one["start_s"] for one in report["runtime"]["segments"]]
    assert starts == sorted(starts)
    assert report["runtime"]["segments"][12]["id"] == "flat-raise"
    assert report["runtime"]["pace_from"] == "take"
    shown = [one["start_s"] for one in report["shots"] if one["start_s"] is not None]
    assert shown == sorted(shown)
    assert "As it was recorded." in files["index.html"]
    run("take", folder, "--forget")
    assert not (folder / "take.json").exists()
    assert "As it was recorded." not in built(folder, tmp_path / "out")["index.html"]


def test_a_text_that_was_changed_since_and_a_segment_that_was_not_recorded_are_named(
    folder: Path, tmp_path: Path
) -> None:
    order = [at for at in range(19) if at != 13]
    run("take", folder, captions(folder, tmp_path / "take.vtt", order=order))
    text = folder / "segments" / "open-question.md"
    text.write_text(text.read_text(encoding="utf-8").replace("mark my own work down", "say so"), encoding="utf-8")
    page = built(folder, tmp_path / "out")["index.html"]
    assert "Recorded from an older text:</b> open-question" in page
    assert "Not recorded: wall-raise" in page


def test_a_sentence_that_was_added_after_the_take_is_named_by_its_segment(folder: Path, tmp_path: Path) -> None:
    run("take", folder, captions(folder, tmp_path / "take.vtt"))
    assert "Recorded from an older text" not in built(folder, tmp_path / "out")["index.html"]
    text = folder / "segments" / "open-question.md"
    text.write_text(text.read_text(encoding="utf-8") + "\nWrite and tell me. [aside]\n", encoding="utf-8")
    page = built(folder, tmp_path / "out")["index.html"]
    assert "Recorded from an older text:</b> open-question;" in page


def test_a_file_of_that_name_that_no_take_wrote_is_left(folder: Path, tmp_path: Path) -> None:
    (folder / "take.json").write_text("{}\n", encoding="utf-8")
    done = run("take", folder, captions(folder, tmp_path / "take.vtt"))
    assert done.status == 2
    assert "was not written by a take" in done.err
    assert (folder / "take.json").read_text(encoding="utf-8") == "{}\n"


def test_a_recording_of_another_episode_is_told_and_not_kept(folder: Path, tmp_path: Path) -> None:
    other = Path(__file__).parent / "episodes" / "bouldering-grip"
    done = run("take", folder, captions(other, tmp_path / "take.vtt"))
    assert done.status == 1
    assert "Is it of another episode?" in done.err
    assert not (folder / "take.json").exists()
    assert not (folder / "takes.yaml").exists()


def test_every_line_said_twice_adds_no_claim(folder: Path, tmp_path: Path) -> None:
    facts = build.work_out(build.read(folder))
    twice = {
        (segment.id, at): [str(one.text)] * 2 for segment in facts.segments for at, one in enumerate(segment.sentences)
    }
    done = run("take", folder, captions(folder, tmp_path / "take.vtt", instead=twice), "--format", "json")
    assert done.json["changes"] == []


def test_a_line_put_right_at_the_end_is_no_clean_recording_and_nothing_to_record_again(
    folder: Path, tmp_path: Path
) -> None:
    facts = build.work_out(build.read(folder))
    last, ledge = facts.segments[-1], next(one for one in facts.segments if one.id == "ledge-raise")
    end = len(last.sentences) - 1
    said = {
        ("ledge-raise", 3): ["The ledge side gained 1.9 millimetres of muscle, and the floor side 1.0."],
        (last.id, end): [str(last.sentences[end].text), str(ledge.sentences[3].text)],
    }
    done = run("take", folder, captions(folder, tmp_path / "take.vtt", instead=said), "--format", "json")
    assert done.status == 1
    assert [one["class"] for one in done.json["changes"]] == ["cut"]
    assert done.json["pickups"] == []


def test_a_claim_that_was_ad_libbed_stands_in_the_ledger_without_a_source(folder: Path, tmp_path: Path) -> None:
    facts = build.work_out(build.read(folder))
    ledge = next(one for one in facts.segments if one.id == "ledge-raise")
    claim = "Standing on a step builds more muscle than any machine."
    take = captions(folder, tmp_path / "take.vtt", instead={("ledge-raise", 3): [str(ledge.sentences[3].text), claim]})
    run("take", folder, take)
    rows = run("claims", folder, "--format", "json").json["sentences"]
    at = next(number for number, row in enumerate(rows) if row["ad_lib"])
    assert rows[at]["text"] == claim
    assert rows[at]["status"] == "ad-lib, needs a source"
    assert rows[at - 1]["text"] == str(ledge.sentences[3].text)
    page = built(folder, tmp_path / "out")["claims.html"]
    assert claim in page
    assert "ad-lib, needs a source" in page


def test_after_a_take_no_page_gives_a_range(folder: Path, tmp_path: Path) -> None:
    planned = built(folder, tmp_path / "out")
    run("take", folder, captions(folder, tmp_path / "take.vtt"))
    recorded = built(folder, tmp_path / "out")
    for name in ("script.html", "script.md", "runtime.svg"):
        assert " as written, between " in planned[name]
        assert re.search(r"\(\d+:\d\d to \d+:\d\d\)", planned[name])
        assert re.search(r"\d:\d\d as recorded[.;,]", " ".join(recorded[name].split()))
        assert "as written" not in recorded[name]
        assert not re.search(r"\d:\d\d to \d+:\d\d", recorded[name])
    ranges = ["Line: low to high" in planned["runtime.svg"], "Line: low to high" in recorded["runtime.svg"]]
    assert ranges == [True, False]
    assert '<path class="rt-range"' not in recorded["runtime.svg"]


def test_runtime_tells_how_long_the_recording_is_beside_the_plan(folder: Path, tmp_path: Path) -> None:
    before = run("runtime", folder, "--format", "json").json
    assert "The recording took" not in run("runtime", folder).out
    run("take", folder, captions(folder, tmp_path / "take.vtt"))
    after = run("runtime", folder, "--format", "json").json
    assert (before["recorded_s"], after["total_s"]) == (None, before["total_s"])
    assert after["recorded_s"] == json.loads((folder / "take.json").read_text(encoding="utf-8"))["length"]
    assert f"The recording took {clock(after['recorded_s'])}; builds go by it." in run("runtime", folder).out
