"""What a value of the outline says where a tag puts it into a text."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

from scriptkit import codes
from scriptkit.computing.aloud import saying
from scriptkit.places import Text

_FACT = re.compile(f"({codes.TAG}[^{codes.END}]*{codes.END})")


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


class Fact(str):
    """A name or grade that a draft writes back as a Jinja tag: a `str` that prints as a code with its path."""

    __slots__ = ("path",)
    path: str

    def __new__(cls, value: str, path: str) -> Fact:  # noqa: PYI034 - a `str` that knows more
        """The fact `value`, found at `path`."""
        fact = super().__new__(cls, value)
        fact.path = path
        return fact

    def __str__(self) -> str:
        return codes.code(codes.TAG, self.path)


def without_codes(words: str) -> str:
    """Words without control characters, so that no value can pass for a code; facts of a draft stay."""
    if codes.TAG not in words:
        return codes.without(words.replace("\n", " ")) if "\n" in words else codes.without(words)
    return "".join(piece if _FACT.fullmatch(piece) else codes.without(piece) for piece in _FACT.split(words))


def _spoken(value: object) -> str:
    if isinstance(value, (int, float)) and not isinstance(value, bool):
        return saying.number_spoken(value)
    return saying.grade_spoken(str.__str__(value) if isinstance(value, str) else printable(value))


def _kept(function: Callable[[Any], str], name: str) -> Callable[[Any], Any]:
    """A filter that keeps what its value is: words of the outline at their place, or a fact of a draft, a tag."""

    def kept(value: Any) -> Any:
        if isinstance(value, Fact):
            return Fact(function(str.__str__(value)), f"{value.path}|{name}")
        made = function(value if name == "spoken" or isinstance(value, str) else as_words(value))
        return value.like(made) if isinstance(value, Text) else made

    return kept


FILTERS = {
    name: _kept(function, name) for name, function in {"spoken": _spoken, "mid": saying.mid, "a": saying.a}.items()
}
