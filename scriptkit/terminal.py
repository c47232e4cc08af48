"""Findings and explanations as text for a terminal, and what every such text needs: ink, widths, wrapping."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from scriptkit.findings import SEVERITIES, STAGES, Explanation, Finding, Kind
from scriptkit.places import SourceFile
from scriptkit.wording import NO_ADVICE

WIDTH = 100  # where there is no terminal to ask
NARROWEST, WIDEST = 40, 110
_COLOURS = {"error": "1;31", "warning": "33", "note": "36", "dim": "2", "bold": "1"}
_JOINERS = dict.fromkeys(map(ord, "\u200d\ufe0f"))  # they join signs in ways that terminals do not agree on


class Ink:
    """What a text may use: colour, or none, and how many columns there are."""

    def __init__(self, *, colour: bool = False, columns: int = WIDTH) -> None:
        self.colour = colour
        self.columns = max(NARROWEST, min(columns, WIDEST))

    def __call__(self, style: str, text: str) -> str:
        """The text in a style."""
        return f"\x1b[{_COLOURS[style]}m{text}\x1b[0m" if self.colour and text else text


def visible(text: str) -> str:
    """A text that cannot play tricks on a terminal: control and direction characters become visible, tabs a space."""
    if text.isascii() and text.isprintable():
        return text
    text = text.replace("\t", " ").translate(_JOINERS)
    return "".join(sign if sign.isprintable() else "\ufffd" for sign in text)


def width(text: str) -> int:
    """How many columns a visible text takes: two for a wide sign, none for one that sits on the sign before it."""
    if text.isascii():
        return len(text)
    from unicodedata import category, east_asian_width

    return sum(0 if category(one) in {"Mn", "Me"} else 1 + (east_asian_width(one) in {"W", "F"}) for one in text)


def cut(text: str, columns: int) -> str:
    """The text, or as much of it as goes into `columns`, with dots at the end."""
    if width(text) <= columns:
        return text
    taken, used = [], 0
    for sign in text:
        used += width(sign)
        if used > columns - 1:
            break
        taken.append(sign)
    return "".join(taken).rstrip() + "…"


def pad(text: str, columns: int, *, right: bool = False) -> str:
    """The text with as many spaces as fill `columns`."""
    space = " " * (columns - width(text))
    return space + text if right else text + space


def wrap(text: str, columns: int, indent: str = "") -> list[str]:
    """The words of a text in lines of at most `columns`; a word that is longer stands alone."""
    lines: list[str] = []
    line, used = "", 0
    for word in visible(" ".join(text.split())).split(" "):
        wide = width(word)
        if line and used + 1 + wide > columns - len(indent):
            lines.append(indent + line)
            line, used = word, wide
        else:
            line, used = (f"{line} {word}", used + 1 + wide) if line else (word, wide)
    return [*lines, indent + line] if line else lines


def many(count: int, word: str) -> str:
    """`3 errors`, `1 error`, nothing for none."""
    return f"{count} {word}{'' if count == 1 else 's'}" if count else ""


def listed(parts: Iterable[str], otherwise: str = "") -> str:
    """The parts that say something, with commas; else `otherwise`."""
    return ", ".join(part for part in parts if part) or otherwise


def findings(
    found: Sequence[Finding], files: Mapping[str, SourceFile], ink: Ink, stage: str, *, guarded: bool = False
) -> str:
    """Findings with the author's line under each and a caret under the word; counts last.

    Where sponsor or safety was looked at (`guarded`), a last line says what that is not.
    """
    open_ones = [one for one in found if not one.allowed]
    parts = [_finding(one, files.get(one.place.file), ink, stage) for one in open_ones]
    allowed = [one for one in found if one.allowed]
    parts += [_allowed(one, ink) for one in allowed]
    parts += [""] if allowed else []
    told = [ink("dim", line) for line in wrap(NO_ADVICE, ink.columns)]
    parts += [*told, ""] if guarded or any(one.protects for one in found) else []
    return "\n".join([*parts, _counts(open_ones, len(allowed), ink, stage)]) + "\n"


def _finding(one: Finding, file: SourceFile | None, ink: Ink, stage: str) -> str:
    place = visible(f"{one.place.file}, line {one.place.line}, column {one.place.column}")
    due = f", due by {one.stage}" if STAGES.index(one.stage) > STAGES.index(stage) else ""
    lines = [f"{ink(one.severity, one.severity)}  {ink('bold', place)}  {one.name}{due}"]
    lines += wrap(one.message, ink.columns, "  ")
    if file is not None:
        lines += _source_line(file.line(one.place.line), one.place.column, ink)
    lines += wrap(one.help, ink.columns, "  ")
    return "\n".join(lines).rstrip("\n") + "\n"


def _source_line(line: str, column: int, ink: Ink) -> list[str]:
    """The author's line with a caret, cut around the caret where it is long."""
    if not line.strip():
        return []
    room = ink.columns - 8
    before = line[: column - 1]
    near = visible(before[-room:])
    short = len(before) <= room and width(near) <= room - 20
    left = near if short else "… " + _end(near, room // 3)
    shown = cut(left + visible(line[column - 1 :][:room]), room).rstrip()
    return ["", f"      {shown}", " " * (6 + width(left)) + ink("bold", "^"), ""]


def _end(text: str, columns: int) -> str:
    """As much of the end of a visible text as goes into `columns`."""
    used = 0
    for at in range(len(text) - 1, -1, -1):
        used += width(text[at])
        if used > columns:
            return text[at + 1 :]
    return text


def _allowed(one: Finding, ink: Ink) -> str:
    text = f"allowed  {one.place.file}, line {one.place.line}  {one.name}: {one.allowed}"
    return ink("dim", "\n".join(wrap(text, ink.columns)))


def _counts(found: Sequence[Finding], allowed: int, ink: Ink, stage: str) -> str:
    counts = {severity: sum(one.severity == severity for one in found) for severity in SEVERITIES}
    text = listed((many(counts[severity], severity) for severity in SEVERITIES), f"Nothing to mend at stage {stage}")
    style = next((severity for severity in ("error", "warning") if counts[severity]), "bold")
    return ink(style, text + (f"; {allowed} allowed." if allowed else "."))


def explained(kind: Kind, text: Explanation, ink: Ink) -> str:
    """A finding explained, with a bad and a good example."""
    parts = [f"{ink('bold', kind.name)}  {ink(kind.severity, kind.severity)}, from stage {kind.stage} on", ""]
    for paragraph in (text.summary, *text.text.split("\n\n")):
        parts += [*wrap(paragraph, ink.columns), ""] if paragraph.strip() else []
    for title, example in (("Raises it:", text.bad), ("Does not:", text.good)):
        parts += [ink("bold", title), "", *_example(example.files), ""] if example.files else []
    return "\n".join(parts[:-1]) + "\n"


def _example(files: Mapping[str, str]) -> list[str]:
    """An example episode: its files, each under its name where there are several."""
    lines = []
    for name, text in files.items():
        lines += [] if list(files) == ["outline.yaml"] else [f"  {name}"]
        lines += [f"    {line}".rstrip() for line in text.rstrip().split("\n")]
    return lines


def all_explained(found: Mapping[str, tuple[Kind, str]], ink: Ink) -> str:
    """Every finding with the line that says what it is, most urgent first."""
    widest = max(len(name) for name in found)
    lines = []
    for severity in SEVERITIES:
        of_it = [(kind, summary) for kind, summary in found.values() if kind.severity == severity]
        lines += ["", ink(severity, f"{severity}s")] if of_it else []
        for kind, summary in of_it:
            told = wrap(summary, ink.columns - widest - 4) or [""]
            lines.append(f"  {kind.name.ljust(widest)}  {told[0]}")
            lines += [" " * (widest + 4) + more for more in told[1:]]
    return "\n".join(lines[1:]) + "\n"
