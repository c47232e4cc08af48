"""`shots --order shoot`: by place with the clock of the day, in every format the same order, with what it saves."""

from __future__ import annotations

import csv
import io

from scriptkit import day_listing
from scriptkit.rendering import day_rows
from scriptkit.terminal import Ink
from tests.running import SMALLEST, run
from tests.scripts import Write, worked_out

ONE = """
    title: One
    exercises:
      lift: {name: Lift, shots: [
        {size: FS, plane: side, form: correct, of: lift, reps: 5, place: rack, people: [Ana], load: 60 kg},
        {size: CU, plane: side, of: grip, reps: 2, place: wall, safety: box on a mat},
        {size: MS, plane: side, of: feet, reps: 2, place: rack, people: [Ana], form: fault, label: Fault},
        {size: CU, plane: top, of: plates, reps: 2, place: wall, priority: nice, takes: 50}]}
    order: [opening, lift, close]
    """
DAY = "day: {breaks: [15m], hospital: H, contacts: C, call: 09:00, hours: %s, mbps: 100}\n"


def test_every_format_has_the_same_order(episode: Write) -> None:
    folder = episode({"outline.yaml": ONE + DAY % "95m"})
    told = run("shots", folder, "--order", "shoot", "--format", "json").json
    order = [row["shot"] for row in told]
    table = run("shots", folder, "--order", "shoot", "--format", "csv").out.removeprefix("\ufeff")
    assert [int(row["shot"]) for row in csv.DictReader(io.StringIO(table, newline=""))] == order
    lines = run("shots", folder, "--order", "shoot").out.split("\n\n")[0].splitlines()
    shown = [int(line.split()[1]) for line in lines if line[5:13].strip().isdigit()]
    assert shown == [row["shot"] for row in told if not row["dropped"]]
    assert order != sorted(order)


def test_script_order_stays_what_it_is(episode: Write) -> None:
    folder = episode({"outline.yaml": SMALLEST})
    plain, asked = run("shots", folder), run("shots", folder, "--order", "script")
    assert plain == asked
    assert [row["shot"] for row in run("shots", folder, "--format", "json").json] == [1, 2, 3, 4]


def test_a_person_reads_places_set_ups_changes_hours_cards_and_what_is_dropped(episode: Write) -> None:
    done = run("shots", episode({"outline.yaml": ONE + DAY % "95m"}), "--order", "shoot")
    told = " ".join(done.out.split())
    assert done.status == 0
    for words in (
        "Talk to camera",
        "09:00 new place: 15 min",
        "safety: box on a mat",
        "load 60 kg",
        "no order has less to change",
        "Script order has",
        "of 1 h 35 min",
        "GB for two copies",
        "Dropped, nice: shot 5 (",
    ):
        assert words in told


def test_musts_that_do_not_fit_are_told_and_the_status_is_1(episode: Write) -> None:
    done = run("shots", episode({"outline.yaml": ONE + DAY % "20m"}), "--order", "shoot")
    assert done.status == 1
    assert "The hours do not hold what must be filmed: shot " in done.out


def test_without_a_day_nothing_is_invented(episode: Write) -> None:
    told = run("shots", episode({"outline.yaml": SMALLEST}), "--order", "shoot").out
    assert "from the call." in told
    assert "___ Mbps ___ GB" in told
    assert "place: ______" in told


def test_an_episode_without_shots_says_so(episode: Write) -> None:
    nothing = day_rows.names(worked_out(episode({"outline.yaml": SMALLEST})))
    assert day_listing.day(nothing, Ink()) == "No shots.\n"
