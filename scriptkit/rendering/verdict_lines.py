"""Verdicts as lines of verdicts.yaml, to stand below those that are there."""

from __future__ import annotations

import json
import re
from collections.abc import Sequence

from scriptkit.model import Verdict
from scriptkit.places import NO_TEXT

ABOUT = """\
# What a fact-checker and the author ruled of the sentences, oldest first; of two on one sentence the later date counts.
# A verdict holds while its sentence stays the same, wherever it stands, and is void once the sentence changes.
# `scriptkit claims --verdicts FILE` adds below and changes nothing above.
"""
_KEYS = ("sentence", "segment", "verdict", "note", "page", "initials", "date")
_PLAIN = re.compile(r"[A-Za-z][A-Za-z0-9 -]*[A-Za-z0-9]|\d{4}-\d\d-\d\d")
_YES_NO = frozenset("true false yes no on off null".split())
_KEY = re.compile(r"^verdicts:", re.MULTILINE)
_LIST = re.compile(r"^( *)- ", re.MULTILINE)
# line ends and signs that turn the text around them, as YAML's double quotes can write them
_ACTING = re.compile("[\x7f-\x9f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]")


def added(before: str, verdicts: Sequence[Verdict]) -> str:
    """What has to stand behind the text of the file, so that it holds these verdicts as well."""
    indent = _LIST.search(before)
    space = indent[1] if indent else "  "
    text = "" if before.endswith("\n") or not before else "\n"
    if not indent and not _KEY.search(before):
        text += "" if before.strip() else ABOUT
        text += "verdicts:\n"
    return text + "".join(line for one in verdicts for line in _lines(one, space))


def _lines(one: Verdict, space: str) -> list[str]:
    given = [(name, str(getattr(one, name))) for name in _KEYS if getattr(one, name)]
    return [
        f"{space}{'- ' if number == 0 else '  '}{name}: {_value(name, value)}\n"
        for number, (name, value) in enumerate(given)
    ]


def _value(name: str, value: str) -> str:
    """A value as YAML: plain where it is a word of ours, else in double quotes."""
    if name in ("segment", "verdict", "date") and _PLAIN.fullmatch(value) and value not in _YES_NO:
        return value
    text = json.dumps(NO_TEXT.sub(" ", value), ensure_ascii=False)
    return _ACTING.sub(lambda found: f"\\u{ord(found[0]):04x}", text)
