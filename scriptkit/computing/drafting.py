"""Drafted paragraphs back to Markdown, with marks kept and names and grades as tags: what `draft` writes."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence

from scriptkit import codes
from scriptkit.computing.paragraphs import RawParagraph

_TAG = re.compile(f"{codes.TAG}([^{codes.END}]*){codes.END}")
_SPECIAL = re.compile(r"[\\`*_\[\]<]|&(?=#|\w)|\{(?=[{%#])")
_LINE_START = re.compile(r"([#>~=+-]|\d{1,9}(?=[.)]))")


def markdown(paragraphs: Sequence[RawParagraph]) -> str:
    """The paragraphs as a segment's text that says the same."""
    return "\n\n".join(_paragraph(one) for one in paragraphs) + "\n"


def _paragraph(one: RawParagraph) -> str:
    parts: list[str] = []
    at = 0
    for offset, raw, _ in one.marks:
        _add(parts, _words(one.text[at:offset]))
        _add(parts, f"[{_inside(raw)}]")
        at = offset
    _add(parts, _words(one.text[at:]))
    text = "".join(parts)
    return (
        _LINE_START.sub(lambda found: f"\\{found[0]}" if not found[0].isdigit() else f"{found[0]}\\", text, count=1)
        if _LINE_START.match(text)
        else text
    )


def _add(parts: list[str], more: str) -> None:
    """A mark has a space before it and, unless a stop follows, behind it."""
    if not more:
        return
    if parts and not parts[-1][-1].isspace():
        after_mark = parts[-1].endswith("]") and not parts[-1].endswith("\\]")
        if more[0] == "[" or (after_mark and not more[0].isspace() and more[0] not in ".,;:!?)…"):
            parts.append(" ")
    parts.append(more)


def _words(text: str) -> str:
    return _with_tags(text, lambda words: _SPECIAL.sub(_escaped, words))


def _inside(raw: str) -> str:
    """What stands between a mark's brackets: single brackets in it get a backslash."""
    balanced = raw.count("[") == raw.count("]")
    return _with_tags(
        raw, lambda words: (words if balanced else re.sub(r"[\[\]]", r"\\\g<0>", words)).replace("{{", "{{ '{{' }}")
    )


def _escaped(found: re.Match[str]) -> str:
    return "{{ '{' }}" if found[0] == "{" else "\\" + found[0]


def _with_tags(text: str, between: Callable[[str], str]) -> str:
    made: list[str] = []
    at = 0
    for found in _TAG.finditer(text):
        made.append(between(text[at : found.start()]))
        made.append("{{ " + found[1].replace("|", " | ") + " }}")
        at = found.end()
    made.append(between(text[at:]))
    return "".join(made)
