"""Where in a mark of the author's text the word stands that a finding is about."""

from __future__ import annotations

import re

from scriptkit.model import Facts, Mark
from scriptkit.places import Place

FURTHEST = 400  # characters of a mark that are looked at


def in_mark(facts: Facts, mark: Mark, word: str) -> Place:
    """The place of a word between the brackets; of the bracket where a tag has put the word there."""
    file = facts.files.get(mark.place.file)
    if file is None or not 1 <= mark.place.line <= len(file.starts()):
        return mark.place
    start = file.starts()[mark.place.line - 1] + mark.place.column - 1
    end = file.text.find("]", start, start + FURTHEST)
    pattern = re.compile(rf"(?<![\w-]){re.escape(word)}(?![\w-])")
    found = pattern.search(file.text, start + 1 + len(mark.name), end) if end >= 0 else None
    return file.place(found.start()) if found else mark.place
