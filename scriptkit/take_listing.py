"""What `take` prints for a person: what stops a release first, then claims, wording, times and what to record again."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby

from scriptkit.listings import table
from scriptkit.rendering.rows import Row
from scriptkit.terminal import Ink, many, visible, wrap
from scriptkit.times import clock

_CLASSES = (
    ("stop", "error", "Has to be mended"),
    ("cut", "warning", "Said rightly elsewhere, to be cut in"),
    ("claim", "warning", "Claims and promises to look at"),
    ("wording", "note", "Worded otherwise"),
)
_SOUND = (
    "Sound tells when each line was said, in which order, and what is missing. How it was worded was not compared: "
    "name captions or a recogniser's JSON for that."
)
_UNDER = " " * 9
_MOST = 40  # changes of a class that are shown; a program gets them all


def take(row: Row, ink: Ink) -> str:
    """All of it; the last lines say the pace and what to do."""
    lines: list[str] = []
    for name, style, title in _CLASSES:
        of_class = [change for change in row["changes"] if change["class"] == name]
        lines += [ink(style, f"{title}: {len(of_class)}")] if of_class else []
        for change in of_class[:_MOST]:
            lines += _change(change, ink)
        if len(of_class) > _MOST:
            lines.append(ink("dim", f"{_UNDER}and {len(of_class) - _MOST} more; --format json has them all"))
        lines += [""] if of_class else []
    lines += _times(row, ink)
    lines += _pickups(row["pickups"], ink)
    lines += wrap(_whole(row), ink.columns)
    return "\n".join(lines) + "\n"


def _change(change: Row, ink: Ink) -> list[str]:
    at = "" if change["at_s"] is None else clock(change["at_s"])
    where = f"{change['file']}, line {change['line']}"
    first, *more = wrap(f"{change['what']} ({where})", ink.columns, _UNDER) or [_UNDER]
    lines = [f"{at:>7}  {first[len(_UNDER) :]}", *more]
    for label, text in (("script", change["script"]), ("said", change["said"])):
        if text:
            lines += [ink("dim", line) for line in wrap(f"{label}: {visible(text)}", ink.columns, _UNDER)]
    return lines


def _times(row: Row, ink: Ink) -> list[str]:
    body = []
    for one in row["segments"]:
        taken = None if one["start_s"] is None else one["end_s"] - one["start_s"]
        off = "" if taken is None or one["state"] == "added" else _off(taken - one["planned_s"])
        body.append(
            [
                "" if one["start_s"] is None else clock(one["start_s"]), one["id"] or "(not in the script)",
                "" if one["state"] == "added" else clock(one["planned_s"]), "" if taken is None else clock(taken), off,
                "" if one["state"] == "said" else one["state"],
            ]
        )  # fmt: skip
    head = ["start", "segment", "planned", "took", "off", ""]
    return [*table(head, body, ink, right=(0, 2, 3, 4), gives=1).rstrip("\n").split("\n"), ""]


def _off(seconds: float) -> str:
    whole = round(seconds)
    return "" if not whole else f"{'+' if whole > 0 else '-'}{clock(abs(whole))}"


def _pickups(rows: Sequence[Row], ink: Ink) -> list[str]:
    lines = [ink("bold", f"To record again: {many(len(rows), 'line')}")] if rows else []
    for setup, group in groupby(rows, key=lambda one: one["setup"]):
        lines.append(ink("note", f"  set-up {setup}" if setup else "  no set-up"))
        for one in group:
            lines += wrap(f"{visible(one['text'])} ({one['segment']}: {one['why']})", ink.columns, "    ")
    return [*lines, ""] if rows else []


def _whole(row: Row) -> str:
    stops, cuts = (sum(change["class"] == name for change in row["changes"]) for name in ("stop", "cut"))
    pace = f"Pace: {row['pace']:g} words a minute. " if row["pace"] else "Too little was said to tell a pace. "
    again = f"Lines or parts of lines tried again: {row['retakes']}. " if row["retakes"] else ""
    to_do = ([f"{many(stops, 'change')} to be mended"] if stops else []) + (
        [f"{many(cuts, 'change')} to be cut in"] if cuts else []
    )
    fillers = "" if row["fillers"] is None else f"{many(row['fillers'], 'filler') or 'No fillers'}. "
    done = f"{' and '.join(to_do)} before it goes out." if to_do else "Nothing has to be mended."
    told = f"{clock(row['length_s'])} recorded. {pace}{fillers}{again}"
    if row["wording_compared"]:
        return told + done
    unclear = many(row["unclear_lines"], "line")
    return (
        told
        + (f"{done} " if to_do else "")
        + (f"Not made out, though somebody speaks in their place: {unclear}. " if unclear else "")
        + _SOUND
    )
