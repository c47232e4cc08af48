"""Facts and findings as text for a person at a terminal."""

from __future__ import annotations

import textwrap
from collections.abc import Mapping, Sequence

from scriptkit.explaining import example
from scriptkit.findings import Explanation, Finding, Kind
from scriptkit.places import SourceFile
from scriptkit.times import clock

_COLOURS = {"error": "1;31", "warning": "33", "note": "36", "dim": "2", "bold": "1"}
WIDTH = 100


class Ink:
    """Colour, or none."""

    def __init__(self, colour: bool) -> None:
        self.colour = colour

    def __call__(self, style: str, text: str) -> str:
        """The text in a style."""
        return f"\x1b[{_COLOURS[style]}m{text}\x1b[0m" if self.colour else text


def visible(text: str) -> str:
    """A text that cannot play tricks on a terminal: control characters become visible."""
    return "".join(sign if sign.isprintable() or sign == " " else "\ufffd" for sign in text.replace("\t", " "))


def findings(found: Sequence[Finding], files: Mapping[str, SourceFile], ink: Ink, counts: Mapping[str, int]) -> str:
    """Findings with the author's line under each and a caret under the word; counts last."""
    parts = [_finding(one, files.get(one.place.file), ink) for one in found if not one.allowed]
    allowed = [one for one in found if one.allowed]
    parts += [_allowed(one, ink) for one in allowed]
    parts.append(_counts(counts, ink))
    return "\n".join(parts) + "\n"


def _finding(one: Finding, file: SourceFile | None, ink: Ink) -> str:
    place = f"{one.place.file}, line {one.place.line}, column {one.place.column}"
    lines = [f"{ink(one.severity, one.severity)}  {ink('bold', visible(place))}  {one.name}"]
    lines += _wrapped(one.message)
    if file is not None:
        lines += _source_line(file.line(one.place.line), one.place.column, ink)
    lines += _wrapped(one.help) if one.help else []
    return "\n".join(lines) + "\n"


def _source_line(line: str, column: int, ink: Ink, width: int = 86) -> list[str]:
    """The author's line with a caret, cut around the caret where it is long."""
    if not line.strip():
        return []
    line = visible(line)
    start = 0 if column <= width - 20 else column - 30
    shown = line[start : start + width]
    left, right = "… " if start else "", " …" if start + width < len(line) else ""
    return [
        "",
        f"      {left}{shown.rstrip()}{right}",
        "      " + " " * (len(left) + column - 1 - start) + ink("bold", "^"),
    ]


def _wrapped(text: str) -> list[str]:
    return (
        textwrap.wrap(visible(text), WIDTH, initial_indent="  ", subsequent_indent="  ", break_long_words=False) or []
    )


def _allowed(one: Finding, ink: Ink) -> str:
    return ink("dim", visible(f"allowed  {one.place.file}, line {one.place.line}  {one.name}: {one.allowed}"))


def _counts(counts: Mapping[str, int], ink: Ink) -> str:
    parts = [_many(counts["errors"], "error"), _many(counts["warnings"], "warning"), _many(counts["notes"], "note")]
    text = ", ".join(part for part in parts if part) or "Nothing to mend"
    style = "error" if counts["errors"] else "warning" if counts["warnings"] else "bold"
    return ink(style, text + ("." if not counts.get("allowed") else f"; {counts['allowed']} allowed."))


def _many(count: int, word: str) -> str:
    return f"{count} {word}{'' if count == 1 else 's'}" if count else ""


def table(head: Sequence[str], body: Sequence[Sequence[str]], ink: Ink, right: Sequence[int] = ()) -> str:
    """A table with aligned columns; `right` are the columns of figures."""
    cells = [[visible(str(cell)) for cell in row] for row in [head, *body]]
    widths = [max(len(row[number]) for row in cells) for number in range(len(head))]
    lines = []
    for count, row in enumerate(cells):
        parts = [
            cell.rjust(width) if number in right else cell.ljust(width)
            for number, (cell, width) in enumerate(zip(row, widths, strict=True))
        ]
        line = "  ".join(parts).rstrip()
        lines.append(ink("bold", line) if count == 0 else line)
    return "\n".join(lines) + "\n"


def runtime(row: Mapping[str, object], ink: Ink) -> str:
    """The running clock by segment, the whole with its range, and the target."""
    segments: list[dict[str, float | str]] = row["segments"]  # type: ignore[assignment]
    body = [
        [
            clock(float(one["start_s"])), str(one["id"]), str(one["kind"]), clock(float(one["total_s"])),
            f"{clock(float(one['low_s']))}-{clock(float(one['high_s']))}", clock(float(one["silent_s"])) if one["silent_s"] else "", str(one["words"]),
        ]
        for one in segments
    ]  # fmt: skip
    text = table(["start", "segment", "kind", "length", "range", "silent", "words"], body, ink, right=(0, 3, 4, 5, 6))
    total, low, high = (float(row[key]) for key in ("total_s", "low_s", "high_s"))  # type: ignore[arg-type]
    text += f"\n{ink('bold', clock(total))} in all, between {clock(low)} and {clock(high)}"
    target = row["target_s"]
    if isinstance(target, float):
        off = total - target
        text += f"; target {clock(target)}, " + (
            f"{clock(abs(off))} {'over' if off > 0 else 'under'}" if abs(off) >= 0.5 else "met"
        )
    source = {
        "stock": "the stock one: give yours as `pace:` and the range narrows",
        "outline": "from the outline",
        "channel": "from channel.yaml",
        "command": "from --pace",
    }
    return text + f".\nPace: {row['pace']} words a minute, {source[str(row['pace_from'])]}.\n"


def shots(rows: Sequence[Mapping[str, object]], ink: Ink) -> str:
    """The shot list."""
    body = [
        [
            str(one["shot"]), str(one["setup"]), clock(one["start_s"]) if isinstance(one["start_s"], float) else "extra",  # type: ignore[list-item]
            f"{one['duration_s']:.1f}" if isinstance(one["duration_s"], float) else "", str(one["segment"]), str(one["size"]), str(one["plane"]),
            textwrap.shorten(f"{one['form']}: {one['of']}" if one["form"] else str(one["of"]), 44, placeholder="…"),
            _reps(one), textwrap.shorten("; ".join(one["screen"]), 30, placeholder="…"),  # type: ignore[arg-type]
        ]
        for one in rows
    ]  # fmt: skip
    text = table(
        ["shot", "set-up", "start", "secs", "segment", "size", "plane", "what", "reps", "on screen"],
        body,
        ink,
        right=(0, 2, 3),
    )
    extra = sum(one["start_s"] is None for one in rows)
    return (
        text
        + f"\n{_many(len(rows), 'shot') or 'No shots'}, {_many(len({str(one['setup']) for one in rows}), 'set-up') or 'no set-ups'}"
        + (f"; {extra} to film as well, which no mark places.\n" if extra else ".\n")
    )


def _reps(one: Mapping[str, object]) -> str:
    if one["reps"] is None:
        return f"{one['reps_fit']} fit" if one["reps_fit"] else ""
    short = isinstance(one["reps_fit"], int) and isinstance(one["reps"], int) and one["reps_fit"] < one["reps"]
    return f"{one['reps']}" + (f" ({one['reps_fit']} fit)" if short else "")


def claims(rows: Sequence[Mapping[str, object]], ink: Ink) -> str:
    """The claims ledger: what each sentence is, what gave it away, what it rests on."""
    lines: list[str] = []
    before = ""
    for one in rows:
        if one["segment"] != before:
            before = str(one["segment"])
            lines += ["", ink("bold", before)]
        kind = str(one["kind"]) + (f", {one['strength']}" if one["strength"] else "")
        lines.append(f"  {visible(str(one['text']))}")
        details = [kind, *(str(flag) for flag in one["flags"])]  # type: ignore[attr-defined]
        if one["triggers"]:
            details.append("by " + ", ".join(f'"{word}"' for word in one["triggers"]))  # type: ignore[attr-defined]
        sources: list[str] = [*one["sources"], *one["marks"]]  # type: ignore[misc]
        details.append(
            "rests on " + ", ".join(sources) if sources else "rests on nothing" if one["kind"] == "claim" else ""
        )
        lines.append(ink("dim", "    " + visible("; ".join(detail for detail in details if detail))))
    counts = [
        _many(sum(one["kind"] == kind for one in rows), kind)
        for kind in ("claim", "opinion", "instruction", "question")
    ]
    return (
        "\n".join(lines).lstrip("\n")
        + "\n\n"
        + ", ".join(count for count in counts if count)
        + f" in {_many(len(rows), 'sentence') or 'no sentences'}.\n"
    )


def explained(kind: Kind, text: Explanation, ink: Ink) -> str:
    """A finding explained, with a bad and a good example."""
    parts = [
        f"{ink('bold', kind.name)}  {ink(kind.severity, kind.severity)}, from the stage {kind.stage} on",
        "",
        text.summary,
    ]
    for paragraph in text.text.split("\n\n"):
        parts += ["", textwrap.fill(" ".join(paragraph.split()), WIDTH)] if paragraph.strip() else []
    parts += [
        "",
        ink("bold", "Raises it:"),
        "",
        example(text.bad.files),
        "",
        ink("bold", "Does not:"),
        "",
        example(text.good.files),
    ]
    return "\n".join(parts) + "\n"
