"""What is asked of the day of the shoot, and that nothing is asked of an outline without one."""

from __future__ import annotations

import pytest

from tests.scripts import Write, found, worked_out

SHEET = "breaks: [], hospital: H, contacts: C"
ONE = """
    title: One
    exercises:
      lift: {name: Lift, grade: A, shots: [
        {size: FS, plane: side, form: correct, of: lift, reps: 5, takes: 4, place: rack, load: 60 kg%s},
        {size: FS, plane: front, form: fault, of: back arched, reps: 2, place: rack, load: %s},
        {size: CU, plane: side, of: grip, reps: 2, place: wall, priority: nice}]}
    order: [lift]
    """


def told(episode: Write, name: str, day: str, load: str = "empty", more: str = "") -> list[tuple[str, str]]:
    return found(worked_out(episode({"outline.yaml": ONE % (more, load) + (f"day: {{{day}}}\n" if day else "")})), name)


def test_an_outline_without_a_day_is_asked_for_nothing_of_it(episode: Write) -> None:
    names = {name for name, _ in found(worked_out(episode({"outline.yaml": ONE % ("", "empty")})))}
    assert names.isdisjoint(
        {"call-sheet-incomplete", "day-too-short", "day-drops-shots", "cards-too-few", "card-too-slow", "fault-loaded"}
    )


@pytest.mark.parametrize(
    ("day", "lacks"),
    [
        (SHEET, ""),
        ("breaks: 45m, hospital: H, contacts: [C, D]", ""),
        ("breaks: [], contacts: C", "hospital"),
        ("hospital: H, contacts: C", "breaks"),
        ("hospital: H, breaks: 45m", "people to call"),
        (f"{SHEET}, until: 17:00", "the call"),
        (f"{SHEET}, until: 17:00, call: 09:00", ""),
    ],
)
def test_what_a_call_sheet_has_to_have(episode: Write, day: str, lacks: str) -> None:
    messages = [message for _, message in told(episode, "call-sheet-incomplete", day)]
    assert len(messages) == bool(lacks)
    assert all(lacks in message for message in messages)


def test_hours_that_do_not_hold_the_musts_are_an_error_and_what_else_goes_is_told_apart(episode: Write) -> None:
    day = f"{SHEET}, hours: 20m"
    assert len(told(episode, "day-too-short", day)) == 1
    ((place, message),) = told(episode, "day-drops-shots", day)
    assert place.startswith("outline.yaml:8:")
    assert "shot 3" in message


@pytest.mark.parametrize(("hours", "musts", "others"), [("4h", 0, 0), ("50m", 0, 1), ("20m", 1, 1)])
def test_the_least_needed_goes_first(episode: Write, hours: str, musts: int, others: int) -> None:
    day = f"{SHEET}, hours: {hours}"
    assert len(told(episode, "day-too-short", day)) == musts
    assert len(told(episode, "day-drops-shots", day)) == others


@pytest.mark.parametrize(
    ("load", "count"), [("empty", 0), ("5 kg", 0), ("60 kg", 1), ("working weight", 1), ("light", 0)]
)
def test_a_fault_under_load_is_found_at_its_load(episode: Write, load: str, count: int) -> None:
    messages = told(episode, "fault-loaded", "", load)
    assert len(messages) == count
    assert all(place.startswith("outline.yaml:5:") and load in message for place, message in messages)


@pytest.mark.parametrize(
    ("day", "name", "count"),
    [
        (f"{SHEET}, mbps: 400, card_gb: 4, cards: 1", "cards-too-few", 1),
        (f"{SHEET}, mbps: 400, card_gb: 4", "cards-too-few", 0),
        (f"{SHEET}, mbps: 400, card_gb: 256, cards: 1", "cards-too-few", 0),
        (f"{SHEET}, mbps: 600, card_speed: 75", "card-too-slow", 0),
        (f"{SHEET}, mbps: 600, card_speed: 74.9", "card-too-slow", 1),
    ],
)
def test_cards(episode: Write, day: str, name: str, count: int) -> None:
    assert len(told(episode, name, day)) == count


@pytest.mark.parametrize(
    ("keys", "count"),
    [
        ('call: "09:00", until: "17:00"', 0),
        ('call: "22:00", until: "02:00", breaks: [{start: "00:30", length: 30m}]', 0),
        ('call: "09:00", hours: 8h, until: "17:00"', 1),
        ('call: "09:00", until: "09:00"', 1),
        ('breaks: [{start: "12:30", length: 30m}]', 1),
        ('call: "09:00", breaks: [{start: "08:30", length: 30m}]', 1),
    ],
)
def test_what_a_day_says_twice_or_to_no_effect_is_told(episode: Write, keys: str, count: int) -> None:
    outline = f"title: One\nexercises: {{hang: {{name: Bar hang}}}}\nday: {{{keys}}}\n"
    assert len(found(worked_out(episode({"outline.yaml": outline})), "day-unclear")) == count
