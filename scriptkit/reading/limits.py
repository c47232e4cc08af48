"""Reads scriptkit/limits.toml: what a page that shows videos takes."""

from functools import cache
from pathlib import Path

from scriptkit.model.publishing import Limits

FILE = Path(__file__).parent.parent / "limits.toml"


@cache
def load(file: Path = FILE) -> Limits:
    """The limits of a file; what cannot be read, or is no whole number from 0 on, limits nothing."""
    import tomllib

    try:
        found = tomllib.loads(file.read_bytes().decode("utf-8-sig"))
    except (OSError, ValueError):
        return Limits()
    return Limits(**{name: found[name] for name in Limits._fields if type(found.get(name)) is int and found[name] >= 0})
