"""The day of the shoot to plain rows: the schedule, the call sheet with its blanks, the safety lines, the cards."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby
from typing import Any

from scriptkit.model import CallSheet, Changes, Clip, Day, Facts, Pause
from scriptkit.rendering import rows
from scriptkit.rendering.rows import Row
from scriptkit.times import clock, thousandths

COPIES = 2
A_DAY = 86_400  # seconds
PRESENTER = "presenter"  # who speaks to the camera where a shot names nobody
FIRST_WORDS = 9
BLINK = 0.0005  # seconds; nearer times are one
CHANGED = {"place": "place", "side": "camera side", "framing": "framing", "kit": "kit", "people": "people"}
# what everybody on a set that shows lifting minds; no advice on anybody's health
SAFETY = (
    "Before each set-up somebody looks at collars, safeties, benches, bands and the floor.",
    "Nobody lifts anything heavy alone: a spotter, or safeties at the right height, and a way to bail out.",
    "Faults are shown empty or light, after a rest, and never right after heavy work.",
    "Anybody may stop a take at any time, without giving a reason.",
    "Way out, first-aid kit and phone are shown to everybody at the call.",
)
NOT_FILMED: Row = {
    **dict.fromkeys(("position", "day", "day_start_s", "day_ready_s", "day_end_s")),
    "changed": [],
    **dict.fromkeys(("setup_s", "rest_s", "day_takes", "take_s", "rolled_s")),
    "guessed": False,
    "talking": False,
    "dropped": True,
}


def time_of_day(facts: Facts, seconds: float) -> str:
    """Seconds after the call as a time of day; as hours and minutes from the call where that is not known."""
    call = facts.episode.day.call if facts.episode.day else None
    hours, minutes = divmod(int(((call or 0.0) + seconds) / 60 + 0.5), 60)
    if call is None:
        return f"+{hours}:{minutes:02}"
    later = f" +{int(seconds // A_DAY)} d" if seconds >= A_DAY else ""  # a night is no other day
    return f"{hours % 24:02}:{minutes:02}{later}"


def shots(facts: Facts) -> list[Row]:
    """The shot list in shooting order, each with its time on the day; what is dropped comes last, without one."""
    day, said = _day(facts), _said(facts)
    listed = [_clip(one, number, facts) for number, one in enumerate(day.clips, 1)]
    listed += [
        {**rows.planned(one.shot), **NOT_FILMED, "heavy": one.shot.heavy, "would_take_s": thousandths(one.seconds)}
        for one in day.dropped
    ]
    return [{**row, "says": said.get(row["shot"], "")} for row in listed]


def _said(facts: Facts) -> dict[int, str]:
    """The first words that are spoken while a shot is seen, by its number."""
    spoken: dict[str, list[tuple[float, str]]] = {}
    behind: dict[int, str] = {}  # the rest of the sentence that a mark stands inside, by its shot
    for segment, timed in zip(facts.segments, facts.timeline.segments, strict=True):
        for sentence, time in zip(segment.sentences, timed.sentences, strict=True):
            spoken.setdefault(segment.id, []).append((time.start, sentence.text))
            behind |= {id(mark.shot): sentence.text[at:] for at, mark in sentence.cues if mark.shot and at}
    found: dict[int, str] = {}
    for one in facts.shots:
        if one.start is not None and one.duration is not None:
            first, end = one.start - BLINK, one.start + one.duration - BLINK
            later = [text for start, text in spoken.get(one.segment, []) if first <= start < end]
            found[one.number] = _first([behind.get(id(one.shot), "").lstrip(" .?!"), *later])
    return found


def _first(texts: Sequence[str]) -> str:
    words = " ".join(texts).split()
    return " ".join(words[:FIRST_WORDS]) + ("…" if len(words) > FIRST_WORDS else "")


def _clip(one: Clip, number: int, facts: Facts) -> Row:
    return {
        **rows.planned(one.shot),
        "position": number,
        "day": time_of_day(facts, one.ready),
        "day_start_s": thousandths(one.start),
        "day_ready_s": thousandths(one.ready),
        "day_end_s": thousandths(one.end),
        "changed": list(one.changed),
        "setup_s": thousandths(one.setup),
        "rest_s": thousandths(one.rest),
        "day_takes": one.takes,
        "take_s": thousandths(one.length),
        "rolled_s": thousandths(one.rolled),
        "guessed": one.guessed,
        "talking": one.talking,
        "dropped": False,
        "heavy": one.shot.heavy,
        "would_take_s": None,
    }


def totals(facts: Facts) -> Row:
    """The figures of the whole day: changes against script order, its end, what is recorded."""
    day, sheet = _day(facts), facts.episode.day or CallSheet()
    whole = None if day.gigabytes is None else round(day.gigabytes, 1)
    return {
        "shots": len(day.clips),
        "exact": day.exact,
        "changes": _changes(day.changes),
        "script_order": _changes(day.script),
        "saved_changes": day.script.every - day.changes.every,
        "saved_s": thousandths(day.script.seconds - day.changes.seconds),
        "end_s": thousandths(day.end),
        "end": time_of_day(facts, day.end),
        "hours_s": None if day.window is None else thousandths(day.window),
        "breaks": [
            {"start_s": thousandths(one.start), "end_s": thousandths(one.end), "start": time_of_day(facts, one.start)}
            for one in day.pauses
        ],
        "breaks_given": sheet.at.keys.get("breaks") is not None,
        "rolled_s": thousandths(day.rolled),
        "mbps": sheet.mbps,
        "gb": whole,
        "gb_copies": None if whole is None else round(COPIES * (day.gigabytes or 0.0), 1),
        "copies": COPIES,
        "card_gb": sheet.card_gb,
        "cards": day.cards,
        "guessed": sum(one.guessed for one in day.clips),
        "dropped": len(day.dropped),
        "dropped_musts": sum(one.shot.shot.priority in ("", "must") for one in day.dropped),
    }


def _changes(one: Changes) -> Row:
    return {
        "places": one.places,
        "sides": one.sides,
        "framings": one.framings,
        "kits": one.kits,
        "people": one.people,
        "all": one.every,
        "seconds": thousandths(one.seconds),
    }


def blocks(facts: Facts) -> list[Row]:
    """The schedule by place: what is changed, who rests, the breaks, and the shots, each line with its time."""
    day = _day(facts)
    table = [row for row in shots(facts) if not row["dropped"]]
    pauses = list(day.pauses)
    made: list[Row] = []
    pairs = zip(day.clips, table, strict=True)
    for (talking, _), group in groupby(pairs, key=lambda pair: (pair[0].talking, _plain(pair[1]["place"]))):
        lines: list[Row] = []
        for clip, row in group:
            while pauses and pauses[0].end <= clip.start:
                (lines or made[-1]["lines"]).append(_break(pauses.pop(0), facts))
            lines += _before(clip, facts)
            lines.append({"what": "shot", "at": row["day"], "shot": row})
        place = next(line["shot"]["place"] for line in lines if line["what"] == "shot")
        made.append({"talking": talking, "place": place, "lines": lines})
    return made


def _break(one: Pause, facts: Facts) -> Row:
    return {"what": "break", "at": time_of_day(facts, one.start), "seconds": one.end - one.start}


def _plain(words: str) -> str:
    return " ".join(words.split()).casefold()


def _before(clip: Clip, facts: Facts) -> Iterator[Row]:
    """What comes before a shot is filmed: a set-up, a rest."""
    if clip.changed:
        told = [CHANGED[one] for one in clip.changed]
        new = ", ".join(told[:-1]) + (" and " if told[1:] else "") + told[-1]
        yield {
            "what": "set-up",
            "at": time_of_day(facts, clip.start),
            "seconds": clip.setup,
            "changed": told,
            "told": f"new {new}",
        }
    if clip.rest:
        at = time_of_day(facts, clip.start + clip.setup)
        yield {"what": "rest", "at": at, "seconds": clip.rest, "people": list(clip.shot.shot.people)}


def sheet(facts: Facts) -> Row:
    """The call sheet: what the author gives, and an empty text for each blank."""
    given = facts.episode.day or CallSheet()
    day = _day(facts)
    filmed = [one.shot.shot for one in day.clips]
    return {
        "on": str(given.on),
        "call": "" if given.call is None else time_of_day(facts, 0.0),
        "wrap": "" if given.call is None else time_of_day(facts, day.end),
        "address": str(given.address),
        "parking": str(given.parking),
        "contacts": [str(one) for one in given.contacts],
        "hospital": str(given.hospital),
        "emergency": str(given.emergency),
        "weather": str(given.weather),
        "note": str(given.note),
        "people": _each(name for one in day.clips for name in one.shot.shot.people or _nobody_named(one)),
        "wear": _each(one.wear for one in filmed),
        "kit": _each(name for one in filmed for name in one.kit),
        "rest": clock(given.rest),
        "rest_s": given.rest,
    }


def _nobody_named(one: Clip) -> tuple[str, ...]:
    """Who is in a shot that names nobody, as far as that is known."""
    return (PRESENTER,) if one.talking else ()


def _each(words: Iterator[Any]) -> list[str]:
    """Words once each, in the order in which they come; case and spaces do not count."""
    found: dict[str, str] = {}
    for one in words:
        if one:
            found.setdefault(" ".join(one.casefold().split()), str(one))
    return list(found.values())


def safety(facts: Facts) -> Row:
    """The safety lines of the day: those of every set, of the exercises that are filmed, and of single shots."""
    filmed = [one.shot for one in _day(facts).clips]
    exercises = facts.episode.exercises
    cautions: dict[str, list[str]] = {}
    for name in dict.fromkeys(one.segment for one in filmed if one.segment in exercises):
        for tag in exercises[name].cautions:
            if tag in facts.cautions:
                cautions.setdefault(str(facts.cautions[tag].line), []).append(str(exercises[name].name))
    return {
        "everybody": list(SAFETY),
        "exercises": [{"line": line, "names": names} for line, names in cautions.items()],
        "shots": _of_shots(filmed),
        "heavy": [one.number for one in filmed if one.heavy],
    }


def _of_shots(filmed: Sequence[Any]) -> list[Row]:
    lines: dict[str, list[int]] = {}
    for one in filmed:
        if one.shot.safety:
            lines.setdefault(str(one.shot.safety), []).append(one.number)
    return [{"line": line, "shots": numbers} for line, numbers in lines.items()]


def names(facts: Facts) -> Row:
    """All that the page of the day shows."""
    return {
        "day": totals(facts),
        "blocks": blocks(facts),
        "sheet": sheet(facts),
        "safety": safety(facts),
        "dropped": [row for row in shots(facts) if row["dropped"]],
        "presenter": PRESENTER,
        "talk_title": "Talk to camera",
    }


def _day(facts: Facts) -> Day:
    """The day; one without shots where nobody had it worked out."""
    return facts.day or Day((), (), (), Changes(), Changes(), exact=True, end=0.0, window=None, rolled=0.0)
