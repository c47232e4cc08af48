"""The day of the shoot as `shots --order shoot` prints it for a person."""

from __future__ import annotations

from scriptkit.rendering.rows import Row
from scriptkit.terminal import Ink, listed, many, visible, wrap
from scriptkit.times import length


def day(told: Row, ink: Ink) -> str:
    """The shots by place, with the clock of the day; then changes, hours, cards, and what is dropped."""
    lines = [ink("bold", " time  shot  set-up")]
    for block in told["blocks"]:
        place = block["place"] or "place: ______"
        lines.append(ink("note", visible(told["talk_title"] if block["talking"] else place)))
        for line in block["lines"]:
            lines += _shot(line, ink) if line["what"] == "shot" else [ink("dim", _between(line))]
    if not told["blocks"]:
        lines = ["No shots."]
    for paragraph in (*_figures(told), *_dropped(told)):
        lines += ["", *wrap(paragraph, ink.columns)]
    return "\n".join(lines) + "\n"


def _shot(line: Row, ink: Ink) -> list[str]:
    one = line["shot"]
    fixed = f"{line['at']:>5}  {one['shot']:>4}  {visible(one['setup']):<6}  "
    framing = listed((one["size"], one["plane"]), "").replace(", ", " ")
    what = ": ".join(part for part in (f"{framing} {one['form']}".strip(), one["of"]) if part)
    more = [f"load {one['load']}" if one["load"] else "", f"safety: {one['safety']}" if one["safety"] else ""]
    people = ", ".join(one["people"])
    speech = f"{one['segment']}, “{one['says']}”" if one["talking"] and one["says"] else ""
    more += [one["priority"], takes(one), f"fps {one['fps']}" if one["fps"] else "", one["slow_motion"], speech]
    told = listed((what + (f" ×{one['reps']}" if one["reps"] else ""), people, *more))
    first, *rest = wrap(told, ink.columns, " " * len(fixed)) or [""]
    return [fixed + first[len(fixed) :], *rest]


def takes(one: Row) -> str:
    """How often a shot is filmed, and how long one take is."""
    return f"{many(one['day_takes'], 'take')} of {one['take_s']:.0f} s" + (" (guessed)" if one["guessed"] else "")


def _between(line: Row) -> str:
    """A set-up, a rest or a break."""
    told = f"{line['told']}:" if line["what"] == "set-up" else line["what"]
    return f"{line['at']:>5}  {told} {length(line['seconds'])}"


def _figures(told: Row) -> list[str]:
    """What the day comes to."""
    one = told["day"]
    if not one["shots"]:
        return []
    changes, script = one["changes"], one["script_order"]
    order = "no order has less to change" if one["exact"] else "a good order; not every one was tried"
    saved = f"{length(one['saved_s'])} less" if one["saved_s"] >= 1 else "no less"
    filmed = f"{many(one['shots'], 'shot')}, {many(changes['all'], 'change')}, set-ups {length(changes['seconds'])}"
    held = f"Script order has {many(script['all'], 'change')}: this is {saved}."
    ends = f"The day ends at {one['end']}" + ("" if told["sheet"]["call"] else " from the call") + _of_hours(one) + "."
    return [f"{filmed} ({order}). {held}", ends, _recorded(one)]


def _recorded(one: Row) -> str:
    """What goes onto cards; a blank where the data rate is not known."""
    recorded = f"Recorded: {length(one['rolled_s'])}; at"
    if one["gb"] is None:
        return f"{recorded} ___ Mbps ___ GB (`mbps:` under `day:`)."
    cards = f", {many(one['cards'], 'card')} of {one['card_gb']:.10g} GB" if one["cards"] else ""
    filled = f"{recorded} {one['mbps']:.10g} Mbps {one['gb']:.1f} GB with a fifth to spare{cards}"
    return f"{filled}, {one['gb_copies']:.1f} GB for two copies."


def _of_hours(one: Row) -> str:
    return "" if one["hours_s"] is None else f", {length(one['end_s'])} of {length(one['hours_s'])}"


def _dropped(told: Row) -> list[str]:
    """What the hours do not hold, and what each would take."""
    made = []
    for least in ("must", "should", "nice"):
        names = [
            f"shot {one['shot']} ({length(one['would_take_s'])})"
            for one in told["dropped"]
            if (one["priority"] or "must") == least
        ]
        if names:
            word = "The hours do not hold what must be filmed" if least == "must" else f"Dropped, {least}"
            made.append(f"{word}: {listed(names)}.")
    return made
