"""The stock segments as reading and Jinja make them, kept as code: their making would be a fifth of what `check` costs.

Each module here is made from the text of its name in segments/ by `python -m tests.house.stock --write`, and a test
holds it to what is made anew. A text that is no longer the one its module was made from is read and compiled as any
other, so a change to it is seen at once; only the speed waits for the command.
"""

from __future__ import annotations

import importlib
from functools import cache
from types import ModuleType
from zlib import crc32


@cache
def made(kind: str) -> ModuleType | None:
    """What was made of the stock text of a kind; None where nothing was."""
    try:
        return importlib.import_module(f"{__name__}.{kind}")
    except ModuleNotFoundError:
        return None


def mark(text: str) -> int:
    """What a module remembers of the text that it was made from."""
    return crc32(text.encode())
