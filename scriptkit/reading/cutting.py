"""Takes paragraphs out of a text and entries out of a running order; every other byte stays."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from scriptkit.model import Allow
from scriptkit.places import Place, SourceFile
from scriptkit.reading import nodes

Span = tuple[int, int]  # offsets in a text as it was read, without byte-order mark and CR
_BLANK = re.compile(r"(?:[ \t]*\n)*")
# behind the dash of an entry may stand a comment and a name for it
_DASH = re.compile(r"^[ \t]*-\s(?:\s|#[^\n]*\n|&\S+)*\Z", re.MULTILINE)
BEFORE = 400  # characters in which the dash is looked for
_REST_OF_LINE = re.compile(r"[ \t]*(?:#[^\n]*)?(?:\n|\Z)")


def without(data: bytes, spans: Iterable[Span]) -> bytes:
    """The bytes of a file without some spans of its text."""
    mark = b"\xef\xbb\xbf" if data.startswith(b"\xef\xbb\xbf") else b""
    raw = data.removeprefix(mark).decode("utf-8")
    # where a line ends in two characters, what was read has one
    double = [found.start() - number for number, found in enumerate(re.finditer("\r\n", raw))]
    kept, at = [], 0
    for start, end in sorted(spans):
        first, last = (offset + sum(one < offset for one in double) for offset in (start, end))
        kept.append(raw[at:first])
        at = max(at, last)
    return mark + "".join([*kept, raw[at:]]).encode()


def paragraph(file: SourceFile, lines: Span, behind: Sequence[Span], allows: Iterable[Allow]) -> list[Span]:
    """The spans of a paragraph: its lines, those of marks that cover it from behind, and allow-comments before it."""
    spans = [_lines(file, *one) for one in (lines, *behind)]
    for allow in allows:
        if allow.place.file == file.name and (allow.first, allow.last) == lines and allow.place.line < lines[0]:
            start = _offset(file, allow.place)
            end = file.text.find("-->", start) + 3
            begin = file.starts()[allow.place.line - 1]
            rest = _REST_OF_LINE.match(file.text, end)
            alone = rest is not None and not file.text[begin:start].strip()
            spans.append(_lines(file, allow.place.line, file.place(end - 1).line) if alone else (start, end))
    return spans


def _offset(file: SourceFile, place: Place) -> int:
    return file.starts()[place.line - 1] + place.column - 1


def _lines(file: SourceFile, first: int, last: int) -> Span:
    """Whole lines with the empty ones behind them."""
    starts = file.starts()
    end = starts[last] if last < len(starts) else len(file.text)
    blank = _BLANK.match(file.text, end)
    return starts[first - 1], blank.end() if blank else end


def order_entries(file: SourceFile, places: Sequence[Place]) -> list[Span] | None:
    """The spans of the entries of `order:` that stand at these places; None where one cannot be told from the rest."""
    top = nodes.read(file).top
    order = next((value for key, value in top.pairs() if key.value == "order"), None) if top else None
    if order is None or order.kind != "list":
        return None
    by_place = {file.place(one.start): one for one in order.members()}
    spans = []
    for place in places:
        entry = by_place.get(place)
        flow = file.text[order.start : order.start + 1] == "["
        span = (_in_line(file.text, entry, order) if flow else _in_lines(file.text, entry)) if entry else None
        if span is None:
            return None
        spans.append(span)
    return spans


def _in_line(text: str, entry: nodes.Node, order: nodes.Node) -> Span | None:
    """An entry between brackets, with the comma behind it, or before it where it is the last."""
    end = _last(text, entry)
    comma = re.compile(r"\s*,[ \t]*").match(text, end)
    if comma and comma.end() <= order.end:
        return entry.start, comma.end()
    before = re.search(r",\s*$", text[order.start : entry.start])
    return (order.start + before.start(), end) if before else None


def _in_lines(text: str, entry: nodes.Node) -> Span | None:
    """An entry behind a dash, with its lines."""
    begin = max(0, entry.start - BEFORE)
    dash = _DASH.search(text[begin : entry.start])
    end = _last(text, entry)
    rest = _REST_OF_LINE.match(text, end)
    if text[end - 1] == "\n":  # a text of several lines ends with the last of them
        return (begin + dash.start(), end) if dash else None
    return (begin + dash.start(), rest.end()) if dash and rest else None


def _last(text: str, entry: nodes.Node) -> int:
    """Where an entry ends; a mapping without brackets ends where its last text does."""
    if entry.kind == "text" or text[entry.start : entry.start + 1] in ("{", "["):
        return entry.end
    return max((_last(text, one) for one in entry.items), default=entry.end)
