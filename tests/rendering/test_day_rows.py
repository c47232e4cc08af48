"""The day of the shoot as rows: each shot once, a clock, blanks where nothing is known, safety lines of the day."""

from __future__ import annotations

import pytest

from scriptkit import build
from scriptkit.model import Facts
from scriptkit.rendering import day_rows, rows
from tests.rendering.test_pages import SMALL, Page, files_of, words
from tests.scripts import Write, with_hang, worked_out

ONE = """
    title: One
    exercises:
      lift: {name: Lift, cautions: [bar-on-back], shots: [
        {size: FS, plane: side, of: lift, reps: 5, place: Rack, kit: [bar], people: [Ana], load: 60 kg,
         wear: red shirt},
        {size: CU, plane: side, of: grip, reps: 2, place: rack, kit: [Bar, box], people: [ana, Ben],
         safety: box on a mat},
        {size: CU, plane: top, of: plates, reps: 2, place: wall, priority: nice, takes: 50}]}
      hang: {name: Hang, cautions: [hanging]}
    order: [opening, lift]
    """


def made(episode: Write, day: str = "") -> Facts:
    return build.with_day(worked_out(episode({"outline.yaml": ONE + (f"day: {{{day}}}\n" if day else "")})))


def test_every_shot_of_the_list_is_there_once_with_the_same_keys_and_more(episode: Write) -> None:
    facts = made(episode, "hours: 1h20m")
    listed, filmed = rows.shots(facts), day_rows.shots(facts)
    assert sorted(one["shot"] for one in filmed) == [one["shot"] for one in listed]
    for row in filmed:
        (same,) = [one for one in listed if one["shot"] == row["shot"]]
        assert same.items() <= row.items()
    assert len({tuple(sorted(row)) for row in filmed}) == 1
    assert [row["dropped"] for row in filmed] == sorted(row["dropped"] for row in filmed)
    assert [row["position"] for row in filmed if not row["dropped"]] == list(range(1, len(filmed)))
    assert filmed[-1]["would_take_s"] > 600


def test_the_clock_is_that_of_the_day_or_counts_from_the_call(episode: Write) -> None:
    assert day_rows.shots(made(episode))[0]["day"] == "+0:15"
    assert day_rows.shots(made(episode, "call: 23:50"))[0]["day"] == "00:05"


def test_blocks_hold_set_ups_shots_rests_and_breaks_in_the_order_of_the_clock(episode: Write) -> None:
    facts = made(episode, "call: 09:00, breaks: [{start: 09:40, length: 30m}], rest: 30m")
    blocks = day_rows.blocks(facts)
    assert [one["place"] for one in blocks if not one["talking"]] == ["Rack", "wall"]
    lines = [line for block in blocks for line in block["lines"]]
    assert {line["what"] for line in lines} == {"set-up", "shot", "break"}
    assert [line["at"] for line in lines] == sorted(line["at"] for line in lines)
    assert [line["seconds"] for line in lines if line["what"] == "break"] == [1800]
    assert lines[0] == {"what": "set-up", "at": "09:00", "seconds": 900, "changed": ["place"], "told": "new place"}


def test_a_rest_names_who_rests(episode: Write) -> None:
    text = """
        title: One
        exercises: {a: {name: A, shots: [
          {size: FS, of: one, reps: 2, people: [Ana], load: 60 kg},
          {size: FS, of: two, reps: 2, people: [Ana], load: 60 kg}]}}
        order: [a]
        """
    facts = build.with_day(worked_out(episode({"outline.yaml": text})))
    rests = [line for block in day_rows.blocks(facts) for line in block["lines"] if line["what"] == "rest"]
    assert [(one["seconds"], one["people"]) for one in rests] == [(180, ["Ana"])]


def test_what_nobody_gave_is_empty_and_what_the_shots_say_is_listed_once(episode: Write) -> None:
    sheet = day_rows.sheet(made(episode))
    assert {sheet[key] for key in ("on", "call", "wrap", "address", "parking", "hospital", "emergency", "weather")} == {
        ""
    }
    assert sheet["contacts"] == []
    assert sorted(one.lower() for one in sheet["people"]) == ["ana", "ben", "presenter"]
    assert sorted(one.lower() for one in sheet["kit"]) == ["bar", "box"]
    assert sheet["wear"] == ["red shirt"]


def test_what_is_given_stands_on_the_sheet(episode: Write) -> None:
    sheet = day_rows.sheet(made(episode, "call: 09:00, hospital: Hill Road 2, contacts: [C. 555 0100], emergency: 555"))
    assert (sheet["call"], sheet["hospital"], sheet["contacts"], sheet["emergency"]) == (
        "09:00",
        "Hill Road 2",
        ["C. 555 0100"],
        "555",
    )
    assert sheet["wrap"] > "09:30"


def test_the_safety_lines_are_those_of_what_is_filmed(episode: Write) -> None:
    facts = made(episode)
    safety = day_rows.safety(facts)
    assert [(one["names"], one["line"]) for one in safety["exercises"]] == [
        (["Lift"], str(facts.cautions["bar-on-back"].line))
    ]
    (single,) = safety["shots"]
    assert single["line"] == "box on a mat"
    assert len(single["shots"]) == len(safety["heavy"]) == 1


def test_totals_name_what_is_saved_and_what_is_recorded(episode: Write) -> None:
    facts = made(episode, "mbps: 100, card_gb: 64")
    told = day_rows.totals(facts)
    assert told["saved_s"] == told["script_order"]["seconds"] - told["changes"]["seconds"]
    assert told["gb"] == pytest.approx(told["rolled_s"] / 60 * 0.75 * 1.2, abs=0.06)
    assert told["gb_copies"] == pytest.approx(2 * told["gb"], abs=0.11)
    assert told["cards"] == 1
    nothing = day_rows.totals(made(episode))
    assert (nothing["gb"], nothing["cards"], nothing["hours_s"]) == (None, None, None)


def test_talk_is_told_apart_by_its_first_words(episode: Write) -> None:
    text = """I like this one. [opinion] [shot FS side: hang] It's cold. [aside] [shot MCU: presenter]
        Why here, of all the cold and windy places in the valley? [aside]"""
    facts = build.with_day(with_hang(episode, text, "title: One\nexercises: {hang: {name: Hang}}\norder: [hang]"))
    assert {row["shot"]: row["says"] for row in day_rows.shots(facts)} == {
        1: "I like this one.",
        2: "It's cold.",
        3: "Why here, of all the cold and windy places…",
    }


def test_a_take_in_slow_motion_is_shorter_than_it_is_seen_and_a_guess_is_called_one(episode: Write) -> None:
    shots = "{of: a, reps: 2, fps: 100}, {of: b}"
    text = "title: One\nrate: 25\nexercises: {a: {name: A, shots: [%s]}}\norder: [a]"
    facts = build.with_day(with_file(episode, text % shots))
    told = {row["of"]: row for row in day_rows.shots(facts)}
    assert told["a"]["slow_motion"] == "4× slow: film about 8 s for 32 s"
    assert (told["a"]["take_s"], told["a"]["guessed"]) == (8, False)
    assert (told["b"]["take_s"], told["b"]["guessed"], told["b"]["slow_motion"]) == (10, True, "")


def with_file(episode: Write, outline: str) -> Facts:
    """An episode whose one text places no shot of the outline."""
    return worked_out(episode({"outline.yaml": outline, "segments/a.md": "[shot FS: c] I like it. [opinion]"}))


def test_a_day_that_nobody_worked_out_has_no_shots(episode: Write) -> None:
    assert day_rows.shots(made(episode)._replace(day=None)) == []


def test_the_page_of_the_day_has_blanks_boxes_and_safety_lines(episode: Write) -> None:
    source = files_of(episode(SMALL))["shoot.html"]
    parsed = Page(source)
    labels = [str(attrs["aria-label"]) for tag, attrs in parsed.elements if tag == "input" and "aria-label" in attrs]
    assert sorted(labels) == [f"Shot {number} done" for number in range(1, len(labels) + 1)]
    text = words(source)
    for shown in ("Local emergency number to fill in", "Nearest hospital to fill in", "Anybody may stop a take"):
        assert shown in text


def test_more_than_a_day_later_is_told_as_that(episode: Write) -> None:
    facts = made(episode, "call: 09:00")
    assert [day_rows.time_of_day(facts, hours * 3600) for hours in (1, 23, 24, 50)] == [
        "10:00", "08:00", "09:00 +1 d", "11:00 +2 d",
    ]  # fmt: skip


def test_the_words_behind_a_mark_at_the_start_of_a_sentence_are_told_once(episode: Write) -> None:
    text = {"segments/talk-one.md": "[shot MS front: presenter at the table] Good morning. It is cold. [aside]"}
    outline = "title: One\nexercises: {hang: {name: Bar hang}}\norder: [talk-one]\n"
    facts = build.with_day(worked_out(episode({"outline.yaml": outline, **text})))
    assert [row["says"] for row in day_rows.shots(facts)] == ["Good morning. It is cold."]
