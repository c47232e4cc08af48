"""Allow-comments, in YAML and in spoken text: which finding is meant, why, and on which lines."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Sequence

from scriptkit.findings import Finding
from scriptkit.model import Allow
from scriptkit.places import Place, SourceFile
from scriptkit.reading import faults

_WRITTEN = r"(^|\s)#[ \t]*allow:[ \t]*([^\n]*)"


def read(words: str, place: Place, first: int, last: int) -> Allow | Finding:
    """`NAME because REASON` as an Allow for those lines, or the finding that its name or reason is missing."""
    found = re.match(r"([A-Za-z0-9_-]+)(?:\s+because\b\s*(.*))?", words.strip(), re.DOTALL)
    reason = (found[2] or "").strip() if found else ""
    if not found or not re.search(r"\w", reason):
        return faults.allow_without_reason(place, words.strip())
    return Allow(found[1], reason, place, first, last)


def in_yaml(file: SourceFile, texts: Sequence[tuple[int, int]]) -> list[Allow | Finding]:
    """The allow-comments of a YAML file.

    `texts` are the spans of its texts, in order: what looks like a comment inside them is none.
    """
    if "allow:" not in file.text:
        return []
    starts = [start for start, _ in texts]
    found: list[Allow | Finding] = []
    below: list[int] = []
    for comment in re.finditer(_WRITTEN, file.text, re.MULTILINE):
        at = comment.start() + len(comment[1])
        number = bisect_right(starts, at) - 1
        if number >= 0 and at < texts[number][1]:
            continue
        place = file.place(at)
        covered = place.line
        if not file.line(place.line)[: place.column - 1].strip():
            below = below or _next_lines_with_content(file.text)
            covered = below[place.line - 1]
        found.append(read(comment[2], place, covered, covered))
    return found


def _next_lines_with_content(text: str) -> list[int]:
    """For each line the number of the next line that is neither empty nor a comment."""
    lines = text.split("\n")
    below = [len(lines)] * len(lines)
    following = len(lines)
    for number in range(len(lines), 0, -1):
        below[number - 1] = following
        content = lines[number - 1].strip()
        if content and not content.startswith("#"):
            following = number
    return below
