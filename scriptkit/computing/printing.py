"""What a value of the outline says where a tag puts it into a text."""

from __future__ import annotations


class PlainError(Exception):
    """A fault of a tag that is told in words of our own."""


def as_words(value: object) -> str:
    """What a value says inside another one."""
    if isinstance(value, str):
        return str(value)
    if isinstance(value, (int, float)) and not isinstance(value, bool):
        return str(int(value) if value == int(value) else value)
    return printable(value)


def printable(value: object) -> str:
    """The words of a value that is no text; raises where it has none."""
    if hasattr(value, "_undefined_name"):
        return str(value)  # a value that is not there raises, and says which name it is
    if isinstance(value, (list, tuple)) and all(isinstance(member, (str, int, float)) for member in value):
        return ", ".join(str(member) for member in value)
    if value is None:
        raise PlainError("there is nothing behind this name, so nothing can be said")
    if isinstance(value, bool):
        raise PlainError("it is a yes or no and has no words; ask it with `{% if ... %}`")
    if isinstance(value, dict):
        raise PlainError(f"it has several parts, so say which: {', '.join(str(key) for key in list(value)[:8])}")
    raise PlainError("it is several things, so say which, or go through them with `{% for ... %}`")
