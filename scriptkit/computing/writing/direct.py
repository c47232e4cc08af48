"""Tags that only put one fact in, looked up without compiling them: most tags of an author's text are such."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import lru_cache
from typing import Any

from scriptkit.computing.writing.expanding import Environment

Steps = tuple[tuple[str, str], ...]  # a name behind a dot, or one in brackets

# `{{ name.key['key'] | filter | filter }}`: one name, its steps, filters without options
_TAG = re.compile(
    r"""\{\{\s*([A-Za-z_]\w*)((?:\.[A-Za-z_]\w*|\['[^'\\]*'\]|\["[^"\\]*"\])*)((?:\s*\|\s*[A-Za-z_]\w*)*)\s*\}\}""",
    re.ASCII,
)
_STEP = re.compile(r"""\.(\w+)|\[(?:'([^']*)'|"([^"]*)")\]""", re.ASCII)


def value(tag: str, names: Mapping[str, Any], environment: Environment) -> Any:
    """What a tag puts in, as Jinja would find it; None where it does more than that, or nothing is there."""
    read = _read(tag)
    if read is None or read[0] not in names or not environment.filters.keys() >= {*read[2]}:
        return None
    found = names[read[0]]
    for attribute, item in read[1]:
        found = environment.getattr(found, attribute) if attribute else environment.getitem(found, item)
    for name in read[2]:
        found = environment.filters[name](found)
    return found


@lru_cache(1000)
def _read(tag: str) -> tuple[str, Steps, tuple[str, ...]] | None:
    """The name, the steps and the filters of a tag that has nothing else."""
    found = _TAG.fullmatch(tag)
    if not found:
        return None
    steps = tuple((name, one or other) for name, one, other in _STEP.findall(found[2]))
    return found[1], steps, tuple(name.strip() for name in found[3].split("|")[1:])
