"""`runtime --fit` and `--write` as an author uses them."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path

import pytest

from tests.running import held, run

Writer = Callable[[Mapping[str, str | bytes]], Path]
OUTLINE = (
    "\ufefftitle: Ways to train your grip\r\n"
    "pace: 150   # measured\r\n"
    "exercises:\r\n"
    "  hang: {name: Bar hang, grade: A-}\r\n"
    "  row: {name: Ring row, grade: B}\r\n"
    "order:\r\n"
    "  - opening\r\n"
    "  - hang\r\n"
    "  - {segment: row, optional: 2}   # if time is short\r\n"
    "  - close\r\n"
)
HANG = (
    "<!-- the first -->\n\nI like the bar. [opinion]\n\n"
    "<!-- allow: word-repeated because it is a joke -->\nI like chalk a lot,\nand more chalk. [optional 1]\n\n"
    "[opinion]\n\n[pause 1s]\n\nI like it dry. [opinion]"
)
FILES: dict[str, str | bytes] = {
    "outline.yaml": OUTLINE.encode(),
    "segments/hang.md": HANG.encode(),
    "segments/row.md": b"I like the row. [opinion]\n",
    "notes.txt": b"mine\r\n",
    "build/.scriptkit-build": b"{}",
}


def total(folder: Path) -> float:
    return float(run("runtime", folder, "--format", "json").json["total_s"])


@pytest.mark.parametrize("wanted", ["{}s", "0:{}", "0m{}s"])
def test_a_fit_is_told_to_a_program(episode: Writer, wanted: str) -> None:
    folder = episode(FILES)
    before = total(folder)
    done = run("runtime", folder, "--fit", wanted.format(int(before) - 1), "--format", "json")
    assert (done.status, done.err) == (0, "")
    about, (cut,) = done.json["fit"], done.json["cuts"]
    assert (about["before_s"], about["reached"], about["exact"]) == (before, True, True)
    assert about["after_s"] == pytest.approx(before - cut["saves_s"], abs=0.0011)
    assert about["after_s"] <= int(before) - 1
    assert (cut["segment"], cut["file"], cut["line"], cut["last_line"]) == ("hang", "segments/hang.md", 6, 7)
    assert cut["words"] == "I like chalk a lot, and more chalk."
    assert cut["breaks"] == []
    assert done.json["total_s"] == before


@pytest.mark.parametrize("less", [1, 2.9, 4.5])
def test_a_copy_without_the_cuts_is_the_episode_in_every_other_byte(episode: Writer, less: float) -> None:
    folder = episode(FILES)
    before = held(folder)
    short = folder.with_name("short")
    asked = total(folder) - less
    done = run("runtime", folder, "--fit", f"{asked:.3f}s", "--write", short, "--format", "json")
    assert done.status == 0
    assert "yours is as it was" in done.err
    assert held(folder) == before
    made = held(short)
    assert made.keys() == {"notes.txt", "outline.yaml", "segments", "segments/hang.md", "segments/row.md"}
    assert made["notes.txt"] == b"mine\r\n"
    assert made["segments/row.md"] == before["segments/row.md"]
    cuts = {(one["what"], one["segment"]) for one in done.json["cuts"]}
    without = OUTLINE.replace("  - {segment: row, optional: 2}   # if time is short\r\n", "")
    assert made["outline.yaml"] == (without if ("segment", "row") in cuts else OUTLINE).encode()
    rest = "<!-- the first -->\n\nI like the bar. [opinion]\n\n[pause 1s]\n\nI like it dry. [opinion]"
    assert made["segments/hang.md"] == (rest if ("paragraph", "hang") in cuts else HANG).encode()
    assert cuts
    assert total(short) == done.json["fit"]["after_s"] <= asked
    assert run("check", short).status == run("check", folder).status == 0


@pytest.mark.parametrize("written", ["10.05", "9.5"])
def test_a_number_with_a_point_that_may_be_minutes_is_refused_with_how_to_write_it(
    episode: Writer, written: str
) -> None:
    done = run("runtime", episode(FILES), "--fit", written)
    assert (done.status, done.out) == (2, "")
    assert f"Write {'10:05' if written == '10.05' else '9:30'} for minutes, {written}s for seconds." in done.err


def test_a_number_that_would_be_a_few_seconds_is_told_as_it_is_understood(episode: Writer) -> None:
    done = run("runtime", episode(FILES), "--fit", "10", "--format", "json")
    assert done.json["fit"]["wanted_s"] == 10
    assert done.err == "--fit 10 is 10 seconds. Write 10:00 if minutes are meant.\n"


def test_what_cannot_fit_is_told_and_not_written(episode: Writer) -> None:
    folder = episode(FILES)
    done = run("runtime", folder, "--fit", "5s", "--write", folder.with_name("short"))
    assert done.status == 1
    assert "It cannot be cut to 0:05." in done.out
    assert "words a minute" in done.out
    assert "what may be cut is not enough" in done.err
    assert not folder.with_name("short").exists()


def test_what_fits_is_copied_as_it_is(episode: Writer) -> None:
    folder = episode(FILES)
    assert run("runtime", folder, "--fit", "20:00", "--write", folder.with_name("short")).status == 0
    assert (folder.with_name("short") / "outline.yaml").read_bytes() == OUTLINE.encode()


def test_a_folder_that_is_taken_is_refused_and_untouched(episode: Writer) -> None:
    folder = episode(FILES)
    taken = folder.with_name("taken")
    taken.mkdir()
    (taken / "mine.txt").write_text("mine")
    for place in (taken, folder, folder / "short", folder.parent):
        done = run("runtime", folder, "--fit", "20:00", "--write", place)
        assert done.status == 2
        assert done.err.strip()
    assert held(taken) == {"mine.txt": b"mine"}
    assert not (folder / "short").exists()


def test_the_facts_beside_the_clock_are_told_to_a_program(episode: Writer) -> None:
    sponsor = (
        "promises: {swap: which one to drop}\n"
        "sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid for this part.}\n"
    )
    text = (
        "I tell you which one to drop. [promise swap] [aside]\n\n"
        "[hold 90s: the bar] I'd drop it. [payoff swap] [opinion]\n"
    )
    order = OUTLINE.replace("order:", f"{sponsor}order:").replace("  - close", "  - sponsor\r\n  - close")
    row = run("runtime", episode({**FILES, "outline.yaml": order, "segments/hang.md": text}), "--format", "json").json
    starts = {one["id"]: one["start_s"] for one in row["segments"]}
    assert row["cuts"] == []
    assert "fit" not in row
    assert row["sponsor"]["start_s"] == starts["sponsor"]
    assert row["sponsor"]["end_s"] == starts["close"]
    assert row["longest_still"]["segment"] == "opening"  # the bar hang goes on in the same picture
    assert row["longest_still"]["duration_s"] > 90
    (promise,) = row["promises"]
    assert promise["made_s"][-1] < promise["paid_s"][0] - 90
    assert row["out_of_proportion"] == []
