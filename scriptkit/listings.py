"""The lists that `claims` and `shots` print for a person."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import groupby

from scriptkit.model.returned import Settled
from scriptkit.rendering import ledger_tables
from scriptkit.rendering.rows import Row
from scriptkit.terminal import Ink, cut, listed, many, pad, visible, width, wrap
from scriptkit.times import clock

_UNDER = " " * 20  # what stands under a sentence
_RULED = ("verified", "changed", "unsupported", "no-claim", "void")
_KINDS = ("claim", "opinion", "instruction", "question", "other")


def table(head: Sequence[str], body: Sequence[Sequence[str]], ink: Ink, right: Sequence[int], gives: int) -> str:
    """A table with aligned columns; `right` are the columns of figures, `gives` is the one that is cut to fit."""
    cells = [[visible(cell) for cell in row] for row in [head, *body]]
    widths = [max(width(row[column]) for row in cells) for column in range(len(head))]
    too_wide = sum(widths) + 2 * (len(head) - 1) - ink.columns
    widths[gives] = max(widths[gives] - max(0, too_wide), min(widths[gives], 6))
    lines = []
    for number, row in enumerate(cells):
        row[gives] = cut(row[gives], widths[gives])
        parts = (pad(cell, widths[column], right=column in right) for column, cell in enumerate(row))
        line = "  ".join(parts).rstrip()
        lines.append(line if number else ink("bold", line))
    return "\n".join(lines) + "\n"


def shots(rows: Sequence[Row], ink: Ink) -> str:
    """The shot list by segment, what is on screen under each shot."""
    setups = max((len(one["setup"]) for one in rows), default=0)
    head = f"shot  {pad('set-up', max(6, setups))}  start   secs  size  plane  what is seen"
    lines = [ink("bold", head)]
    for segment, group in groupby(rows, key=lambda one: one["segment"]):
        lines.append(ink("note", visible(segment)))
        for one in group:
            lines += _shot(one, max(6, setups), ink)
    count = listed((many(len(rows), "shot"), many(len({one["setup"] for one in rows}), "set-up")), "No shots")
    extra = sum(one["start_s"] is None for one in rows)
    more = f"; {extra} to film as well, which no mark places." if extra else "."
    return "\n".join([*lines, "", count + more]) + "\n"


def _shot(one: Row, setups: int, ink: Ink) -> list[str]:
    start = "also" if one["start_s"] is None else clock(one["start_s"])
    seconds = "" if one["duration_s"] is None else f"{one['duration_s']:.1f}"
    fixed = f"{one['shot']:>4}  {pad(one['setup'], setups)}  {start:>5}  {seconds:>5}  "
    fixed += f"{pad(visible(one['size']), 4)}  {pad(visible(one['plane']), 5)}  "
    room = max(20, ink.columns - width(fixed))
    what = f"{one['form']}: {one['of']}" if one["form"] else one["of"]
    camera = listed((f"fps {one['fps']}" if one["fps"] else "", one["slow_motion"]))
    told = wrap(listed((what + _reps(one), camera)), room) or [""]
    screen = "on screen: " + "; ".join(one["screen"]) if one["screen"] else ""
    under = [ink("dim", line) for line in [cut(visible(screen), room)] if line]
    space = " " * width(fixed)
    return [(fixed + told[0]).rstrip(), *(space + line for line in told[1:]), *(space + line for line in under)]


def _reps(one: Row) -> str:
    """Repetitions asked for, and how many fit into the shot where that is fewer."""
    asked, fit = one["reps"], one["reps_fit"]
    if not asked:
        return ""
    return f" ×{asked}" + (
        f" ({fit or 'none'} fit{'s' if fit == 1 else ''})" if fit is not None and fit < asked else ""
    )


def claims(rows: Sequence[Row], ink: Ink, void: Sequence[Row] = ()) -> str:
    """The claims ledger: each sentence with its kind before it; under it how it stands, and what it rests on."""
    lines: list[str] = []
    for segment, group in groupby(rows, key=lambda one: one["segment"]):
        of_it = list(group)
        files = _counts(one["file"] for one in of_it)
        main = max(files, key=lambda file: files[file])
        lines += ["", f"{ink('bold', visible(segment))}  {ink('dim', visible(main))}"]
        for one in of_it:
            lines += _sentence(one, main, ink)
    lines += _void(void, ink)
    return "\n".join([*lines[1:], "", *wrap(_counted(rows), ink.columns)]) + "\n"


def _sentence(one: Row, main: str, ink: Ink) -> list[str]:
    """A sentence with its line in the segment's main file; one from elsewhere says where."""
    first, *more = wrap(one["text"], ink.columns, _UNDER) or [_UNDER]
    style = {"open": "warning", "unsupported": "error", "changed": "warning"}.get(
        one["state"], "note" if one["kind"] == "claim" else "dim"
    )
    line, elsewhere = (one["line"], "") if one["file"] == main else ("", f"{one['file']}, line {one['line']}")
    lines = [f"{line:>5}  {ink(style, pad(one['kind'], 13))}{first[20:]}", *more]
    if one["kind"] in {"claim", "opinion"} or one["state"] != "none":
        lines += [ink(style, told) for told in wrap(_stands(one), ink.columns, _UNDER)]
        lines += [ink("dim", told) for source in one["evidence"] for told in wrap(_source(source), ink.columns, _UNDER)]
        lines += [ink("dim", told) for told in wrap(_why(one), ink.columns, _UNDER)]
        lines += [line for found in one["findings"] for line in _open(found, ink)]
    details = "; ".join(part for part in (_given_away(one), elsewhere) if part)
    return lines + [ink("dim", told) for told in wrap(details, ink.columns, _UNDER)]


def _stands(one: Row) -> str:
    """How a sentence stands, with the note of its verdict, its certainty, and what its marks say beside that."""
    status = "" if one["status"] == one["kind"] else one["status"]
    note = f": {one['ruling']['note']}" if one["ruling"]["note"] else ""
    certainty = f"certainty {one['certainty']}" if one["certainty"] else ""
    marks = [mark for mark in one["marks"] if mark != one["status"] or mark == one["kind"]]
    return "; ".join(part for part in (status + note, certainty, f"marked {', '.join(marks)}" if marks else "") if part)


def _source(one: Row) -> str:
    """A source behind a sentence: its finding, its stance, the level of evidence it is here."""
    if not one["known"]:
        return f"rests on {one['source']}, which is not in the register"
    stance = {"supports": "rests on", "against": "against:", "null": "no difference:", "mixed": "mixed:"}
    about = ", ".join(
        part
        for part in (
            f"level {one['level']}" if one["level"] is not None else "",
            f"page {one['page']}" if one["page"] else "",
        )
        if part
    )
    said = f"“{one['quote']}”" if one["quote"] else one["result"] or one["outcome"] or ledger_tables.nothing(one)
    named = ", ".join(part for part in (one["source"], one["finding"]) if part) + (f" ({about})" if about else "")
    return f"{stance.get(one['stance'], one['stance'])} {named}" + f": {said}"


def _why(one: Row) -> str:
    """How the certainty came about, step by step."""
    alone = len(one["evidence"]) == 1 and one["evidence"][0]["why"] == one["why"]
    steps = one["why"] if alone else ledger_tables.why(one)
    return f"why {one['certainty']}: {'; '.join(steps)}" if steps and one["certainty"] else ""


def _open(found: Row, ink: Ink) -> list[str]:
    """A finding of a sentence: how much it matters, in its own colour, and what it is."""
    first, *more = wrap(f"{found['severity']}: {found['message']}", ink.columns, _UNDER)
    return [ink(found["severity"], line) for line in (first, *more)]


def _given_away(one: Row) -> str:
    words = ", ".join(f'"{word}"' for word in one["triggers"])
    told = listed((one["strength"] or "", *one["flags"])) if one["kind"] in {"claim", "opinion"} else ""
    return f"{told}: {words}" if told and words else told or words


def _void(rows: Sequence[Row], ink: Ink) -> list[str]:
    """The verdicts whose sentence is gone."""
    lines = ["", ink("bold", "Void: their sentence is not in the script any more")] if rows else []
    for one in rows:
        lines += wrap(f"{one['told']}: {one['text']}", ink.columns, _UNDER[:7])
        now = f"now in {one['file']}, line {one['line']}: {one['now']}" if one["now"] else "nothing like it is said now"
        lines += [ink("dim", told) for told in wrap(now, ink.columns, _UNDER)]
    return lines


def _counted(rows: Sequence[Row]) -> str:
    kinds = _counts(one["kind"] for one in rows)
    told = listed(many(kinds.get(kind, 0), kind) if kind != "other" else "" for kind in _KINDS)
    whole = f"{many(len(rows), 'sentence') or 'No sentences'}" + (f": {told}." if told else ".")
    of_claims = [one for one in rows if one["kind"] == "claim"]
    if not of_claims:
        return whole
    bare = sum("needs a source" in one["status"] for one in of_claims)
    states = _counts(one["state"] for one in rows)
    resting = f"{bare} of the claims need{'s' if bare == 1 else ''} a source." if bare else "No claim lacks a source."
    ruled = listed(f"{states[name]} {name.replace('-', ' ')}" if name in states else "" for name in _RULED)
    left = sum(one["to_verify"] and one["state"] not in _RULED[:4] for one in of_claims)
    without = f" {left} wait{'s' if left == 1 else ''} for a verdict." if left else ""
    return f"{whole} {resting}{f' Ruled: {ruled}.' if ruled else ''}{without}"


def taken(name: str, settled: Settled, ink: Ink) -> str:
    """What came of a filled-in ledger, and each row that somebody has to look at."""
    kinds = _counts(one.verdict for one in settled.taken)
    what = listed(f"{count} {kind}" for kind, count in sorted(kinds.items()))
    new = many(len(settled.taken), "verdict")
    lines = [f"Took {new} from {name} into verdicts.yaml: {what}." if new else f"There is no new verdict in {name}."]
    if settled.already:
        lines.append(f"{settled.already} {'was' if settled.already == 1 else 'were'} there before.")
    unsigned = sum(not (one.initials and one.date) for one in settled.taken)
    if unsigned:
        lines.append(f"{unsigned} of the new ones say not who gave them, or when: fill in initials and date.")
    parts = [line for told in lines for line in wrap(told, ink.columns)]
    for style, title, rows in (
        ("note", "Later verdicts that count from now on", settled.newer),
        ("warning", "Conflicts, of which none was taken", settled.conflicts),
        ("error", "Rows that were not taken", settled.refused),
    ):
        parts += ["", ink(style, title)] if rows else []
        for one in rows:
            first, *more = wrap(one.message, ink.columns, " " * 11) or [" " * 11]
            parts += [f"{visible(f'row {one.row}'):>9}  {first[11:]}", *more]
    return "\n".join(parts) + "\n"


def _counts(kinds: Iterable[str]) -> dict[str, int]:
    counts: dict[str, int] = {}
    for kind in kinds:
        counts[kind] = counts.get(kind, 0) + 1
    return counts
