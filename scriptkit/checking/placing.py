"""Where in a mark of the author's text the word stands that a finding is about."""

from __future__ import annotations

import re

from scriptkit.model import Facts, Mark
from scriptkit.places import Place

FURTHEST = 400  # characters of a mark that are looked at


def in_mark(facts: Facts, mark: Mark, word: str, after: str = "") -> Place:
    """The place of a word between the brackets, of one right behind the word `after` where that is given.

    It is that of the bracket where a tag has put the word there.
    """
    file = facts.files.get(mark.place.file)
    if file is None or not 1 <= mark.place.line <= len(file.starts()):
        return mark.place
    start = file.starts()[mark.place.line - 1] + mark.place.column - 1
    end = file.text.find("]", start, start + FURTHEST)
    before = rf"(?<![\w-]){re.escape(after)}\s+(?:>\s*)?" if after else r"(?<![\w-])"
    pattern = re.compile(rf"{before}({re.escape(word)})(?![\w-])")
    found = pattern.search(file.text, start + 1 + len(mark.name), end) if end >= 0 else None
    return file.place(found.start(1)) if found else mark.place
