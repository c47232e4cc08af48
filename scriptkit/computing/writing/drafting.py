"""Drafted paragraphs back to Markdown, with marks kept and names and grades as tags: what `draft` writes."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence

from scriptkit import codes
from scriptkit.computing.writing import marks
from scriptkit.computing.writing.paragraphs import RawParagraph

_TAG = re.compile(f"{codes.TAG}([^{codes.END}]*){codes.END}")
# `<!` would begin a comment, which is taken out before Markdown is read, whatever stands before it
_SPECIAL = re.compile(r"<!|[\\`*_\[\]<]|&(?=#|\w)|\{(?=[{%#])")
_IN_MARK = re.compile(r"<!|[\\\[\]]|\{(?=[{%#])")
_LINE_START = re.compile(r"[#>~=+-]|\d{1,9}(?=[.)])")
_STOPS = ".,;:!?)…"


def markdown(paragraphs: Sequence[RawParagraph]) -> str:
    """The paragraphs as a segment's text that says the same."""
    return "\n\n".join(_paragraph(one) for one in paragraphs) + "\n"


def _paragraph(one: RawParagraph) -> str:
    parts: list[str] = []
    at = 0
    for offset, raw, _ in one.marks:
        _add(parts, _with_tags(one.text[at:offset], lambda words: _SPECIAL.sub(_escaped, words)))
        _add(parts, f"[{_with_tags(raw, _inside)}]")
        at = offset
    _add(parts, _with_tags(one.text[at:], lambda words: _SPECIAL.sub(_escaped, words)))
    text = "".join(parts)
    start = _LINE_START.match(text)
    if not start:
        return text
    return f"{start[0]}\\{text[start.end() :]}" if start[0].isdigit() else f"\\{text}"


def _add(parts: list[str], more: str) -> None:
    """A mark has a space before it and, unless a stop follows, behind it."""
    if not more:
        return
    if parts and not parts[-1][-1].isspace():
        after_mark = parts[-1].endswith("]") and not parts[-1].endswith("\\]")
        if more[0] == "[" or (after_mark and not more[0].isspace() and more[0] not in _STOPS):
            parts.append(" ")
        elif after_mark and more[0] == ":":
            parts.append("\\")  # a bracket and a colon would define a link
    parts.append(more)


def _inside(raw: str) -> str:
    """What stands between a mark's brackets, written so that it is read as it was."""
    return _IN_MARK.sub(_escaped, marks.unescaped(raw))


def _escaped(found: re.Match[str]) -> str:
    if found[0] == "{":
        return "{{ '{' }}"
    return "".join("\\" + sign for sign in found[0])


def _with_tags(text: str, between: Callable[[str], str]) -> str:
    made: list[str] = []
    at = 0
    for found in _TAG.finditer(text):
        made.append(between(text[at : found.start()]))
        made.append("{{ " + found[1].replace("|", " | ") + " }}")
        at = found.end()
    made.append(between(text[at:]))
    return "".join(made)
