"""Checks of the day of the shoot: who is called if something happens, what the hours and the cards hold, faults."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.rules import Found, check
from scriptkit.model import Dropped, Facts
from scriptkit.places import Place
from scriptkit.times import clock
from scriptkit.wording import listed, quoted

A_DAY = 86_400  # seconds
_NAMES = {"hospital": "the nearest hospital", "contacts": "the people to call", "breaks": "the breaks"}


@check("error", "record")
def call_sheet_incomplete(facts: Facts) -> Iterator[Found]:
    """The day of the shoot does not say where the nearest hospital is, whom to call, or when the breaks are.

    They are blanks on the call sheet until then. Nobody looks for a hospital while somebody is hurt. `breaks: []` says
    that there are none. An outline without `day:` is asked for nothing.

    Rule: common practice of call sheets.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        day: {call: "09:00", breaks: 45m}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        day: {call: "09:00", breaks: 45m, hospital: "Hill Road 2, gate 3", contacts: [A. B. 555 0100]}
    """
    day = facts.episode.day
    if day is None:
        return
    missing = [name for name in _NAMES if name not in day.at.keys]
    if day.until is not None and day.call is None:
        missing.append("call")
    if missing:
        yield (
            day.at.place,
            f"The call sheet has a blank for {' and for '.join(map(_named_blank, missing))}.",
            f"Write {listed(f'`{one}:`' for one in missing)} under `day:`.",
        )


@check("error", "record")
def day_too_short(facts: Facts) -> Iterator[Found]:
    """The hours of the day do not hold every shot that must be filmed.

    Set-ups, takes (half as long again for each), rests and breaks are added up in the order with the least to change.
    Shots with `priority: nice` go first, then those with `should`; a shot without a priority counts as a must.

    Rule: common practice; the prices of a change are those under `day:`.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang, shots: [{size: FS, of: hang, reps: 2}]}}
        day: {hours: 10m, breaks: [], hospital: Hill Road 2, contacts: A. B. 555 0100}
    Good:
        title: One
        exercises: {hang: {name: Bar hang, shots: [{size: FS, of: hang, reps: 2}]}}
        day: {hours: 4h, breaks: [], hospital: Hill Road 2, contacts: A. B. 555 0100}
    """
    musts = _dropped(facts, must=True)
    if musts:
        yield (
            _hours_place(facts),
            f"The day does not hold {_counted(musts)} that must be filmed: {_named(musts)}.",
            "Give it more hours, a second day, or fewer takes; or say which are not needed with `priority: should`.",
        )


@check("warning", "record")
def day_drops_shots(facts: Facts) -> Iterator[Found]:
    """The hours of the day do not hold every shot, and those that are needed least are dropped.

    The least needed go first (`priority: nice`, then `should`), of these as few as possible. The page shows what each
    would take.

    Rule: ours; what is left out is better known before the day than found out on it.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang, shots: [{size: CU, of: hand, reps: 2, takes: 90, priority: nice}]}}
        day: {hours: 40m, breaks: [], hospital: Hill Road 2, contacts: A. B. 555 0100}
    Good:
        title: One
        exercises: {hang: {name: Bar hang, shots: [{size: CU, of: hand, reps: 2, priority: nice}]}}
        day: {hours: 4h, breaks: [], hospital: Hill Road 2, contacts: A. B. 555 0100}
    """
    others = _dropped(facts, must=False)
    if others:
        yield (
            _hours_place(facts),
            f"The day does not hold {_counted(others)}, dropped as the least needed: {_named(others)}.",
            "Give the day more hours, or leave it at that.",
        )


@check("error", "record")
def cards_too_few(facts: Facts) -> Iterator[Found]:
    """The cards that are there do not hold what the day records.

    Gigabytes are megabits a second times minutes times 0.0075, a fifth more for what is recorded beside the takes;
    a card is filled to 92 percent.

    Rule: common practice.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang, shots: [{size: FS, of: hang, reps: 99, takes: 9}]}}
        day: {breaks: [], hospital: Hill Road 2, contacts: A. B. 555 0100, mbps: 400, card_gb: 64, cards: 1}
    Good:
        title: One
        exercises: {hang: {name: Bar hang, shots: [{size: FS, of: hang, reps: 99, takes: 9}]}}
        day: {breaks: [], hospital: Hill Road 2, contacts: A. B. 555 0100, mbps: 100, card_gb: 256, cards: 1}
    """
    sheet, day = facts.episode.day, facts.day
    if sheet and day and day.cards and sheet.cards and day.cards > sheet.cards:
        yield (
            sheet.at.of("cards"),
            f"The day records {day.gigabytes:.0f} GB and fills {day.cards} cards; there {_are(sheet.cards)}.",
            "Bring more cards, or copy and clear one in a break, two copies of it.",
        )


@check("error", "record")
def card_too_slow(facts: Facts) -> Iterator[Found]:
    """The cards are slower than the camera writes.

    A camera that writes so many megabits a second needs an eighth of that in megabytes a second, all the time.

    Rule: arithmetic: eight bits are a byte.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        day: {breaks: [], hospital: Hill Road 2, contacts: A. B. 555 0100, mbps: 600, card_speed: 60}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        day: {breaks: [], hospital: Hill Road 2, contacts: A. B. 555 0100, mbps: 600, card_speed: 90}
    """
    sheet = facts.episode.day
    if sheet and sheet.mbps and sheet.card_speed and sheet.mbps / 8 > sheet.card_speed:
        yield (
            sheet.at.of("card_speed"),
            f"The camera writes {sheet.mbps / 8:.10g} MB a second, and the cards keep up with {sheet.card_speed:.10g}.",
            "Bring faster cards, or set the camera to a lower rate.",
        )


@check("error", "record", protects=True)
def fault_loaded(facts: Facts) -> Iterator[Found]:
    """A fault is shown with a heavy load.

    Somebody who shows how not to do it does so empty or light. A load is heavy by its words ("working weight"), above
    20 kg (45 lb), or from 60 percent on; "empty" or "light" beside a number makes it a light one.

    Rule: common practice of coaches.

    Bad:
        title: One
        exercises: {press: {name: Press, shots: [{size: FS, plane: side, form: fault, of: back arched, load: 60 kg}]}}
    Good:
        title: One
        exercises: {press: {name: Press, shots: [{size: FS, plane: side, form: fault, of: back arched, load: empty}]}}
    """
    for one in facts.shots:
        if one.heavy and one.shot.form == "fault":
            what = f"{quoted(one.shot.of)} is" if one.shot.of else "It is"
            yield (
                one.shot.at.of("load"),
                f"{what} a fault, and it is to be shown with a heavy load: {quoted(one.shot.load)}.",
                "Show it empty or light, and write so: `load: empty bar`.",
            )


def _named_blank(key: str) -> str:
    return _NAMES.get(key, "the call, without which nobody knows how long the day is")


def _dropped(facts: Facts, *, must: bool) -> list[Dropped]:
    every = facts.day.dropped if facts.day else ()
    return [one for one in every if (str(one.shot.shot.priority) in ("", "must")) == must]


def _hours_place(facts: Facts) -> Place:
    """Where the author says how long the day is."""
    at = (facts.episode.day or facts.episode).at
    return at.of("hours") if "hours" in at.keys else at.of("until")


def _are(count: int) -> str:
    return "is 1" if count == 1 else f"are {count}"


def _counted(dropped: list[Dropped]) -> str:
    return "one shot" if len(dropped) == 1 else f"{len(dropped)} shots"


def _named(dropped: list[Dropped]) -> str:
    return listed((f"shot {one.shot.number} ({clock(one.seconds)})" for one in dropped), 6)


@check("warning", "record")
def day_unclear(facts: Facts) -> Iterator[Found]:
    """The day of the shoot says one thing twice, or a time of day that nothing can be made of.

    `hours:` and `until:` are two ways to end it. A break with a start needs a call to be counted from, and comes after
    it; so does the end.

    Rule: ours; what has no effect is no plan.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        day: {call: "09:00", hours: 8h, until: "15:00", breaks: [], hospital: Hill Road 2, contacts: A. B. 555 0100}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        day: {call: "09:00", until: "15:00", breaks: [], hospital: Hill Road 2, contacts: A. B. 555 0100}
    """
    day = facts.episode.day
    if day is None:
        return
    if day.hours is not None and day.until is not None:
        yield (
            day.at.of("until"),
            "`hours:` and `until:` both end the day, and the hours count.",
            "Leave one of them out.",
        )
    elif day.until is not None and day.until == day.call:
        yield day.at.of("until"), "The day ends when it begins.", "Give it a later `until:`."
    for one in day.breaks:
        if one.start is None:
            continue
        if day.call is None:
            yield one.at.place, "A break has a start, and the day has no `call:` to count it from.", "Write `call:`."
        elif (one.start - day.call) % A_DAY > A_DAY / 2:
            yield one.at.place, "A break starts before the call, so nobody takes it.", "Give it a later `start:`."
