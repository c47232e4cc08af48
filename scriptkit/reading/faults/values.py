"""Findings about keys and values: unknown, twice, missing, of the wrong kind."""

from __future__ import annotations

import re

from scriptkit.reading.faults.kinds import Said, fault, perhaps
from scriptkit.wording import quoted


@fault("error")
def no_outline() -> Said:
    """The outline is empty or is not made of keys and values.

    An outline starts with lines such as `title: Three ways to train your grip`.

    Bad:
        - just
        - a list
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
    """
    return (
        "This file is empty or has no `key: value` lines at its top level.",
        "Start with `title:` and `exercises:`; `scriptkit new FOLDER` writes an outline to start from.",
    )


@fault("error")
def unknown_key(key: str, nearest: str, known: str) -> Said:
    """A key is none that can stand there.

    The key and what stands under it are ignored. The message offers the nearest name.

    Bad:
        titel: One
        title: One
        exercises: {hang: {name: Bar hang}}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
    """
    if key == "<<":
        return "Keys are not merged with `<<`; it is ignored.", "Write the keys out."
    return f"There is no key {quoted(key)} here; it is ignored.", perhaps(nearest, f"Known here: {known}.")


@fault("error")
def key_twice(key: str, line: str) -> Said:
    """A key is given twice in the same place.

    Only the first is read, so that nothing is replaced in silence.

    Bad:
        title: One
        title: Two
        exercises: {hang: {name: Bar hang}}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
    """
    return f"The key {quoted(key)} is given twice; the first, on line {line}, is used.", "Delete one, or rename it."


@fault("error")
def wrong_type(what: str, wanted: str, given: str) -> Said:
    """A value is of the wrong kind: a list where a text belongs, a word where a number belongs.

    The value is ignored.

    Bad:
        title: One
        pace: fast
        exercises: {hang: {name: Bar hang}}
    Good:
        title: One
        pace: 150
        exercises: {hang: {name: Bar hang}}
    """
    return f"{quoted(what)} wants {wanted}, and this is {given}.", f"Write {wanted} here."


@fault("error")
def out_of_range(what: str, given: str, wanted: str) -> Said:
    """A number is larger or smaller than it can be.

    The number is ignored.

    Bad:
        title: One
        pace: 15000
        exercises: {hang: {name: Bar hang}}
    Good:
        title: One
        pace: 150
        exercises: {hang: {name: Bar hang}}
    """
    return f"{quoted(what)} is {given} here, and it can be {wanted}.", "Correct the number."


@fault("error")
def unknown_word(what: str, given: str, nearest: str, known: str) -> Said:
    """A value is none of the words that may stand there.

    The value is ignored.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang, shots: [{size: CX, plane: side}]}}
    Good:
        title: One
        exercises: {hang: {name: Bar hang, shots: [{size: CU, plane: side}]}}
    """
    return f"{quoted(given)} is no {what}.", f"{perhaps(nearest, '')} It can be: {known}.".strip()


@fault("warning")
def comma_in_brackets(words: str, more: str) -> Said:
    """A text inside curly brackets holds a comma.

    To YAML a comma in brackets ends the text and what follows is a key. Words without a colon can be no key, so they
    are read as the rest of the text; other programs will not do so. Quotes make it plain.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        interests: [{who: Quennick Socks, what: a sponsor, paid by the month}]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        interests: [{who: Quennick Socks, what: "a sponsor, paid by the month"}]
    """
    return (
        f"A comma inside curly brackets ends the text {quoted(words)}; {quoted(more)} was read as the rest of it.",
        "Put the whole text into quotes.",
    )


@fault("error")
def missing_value(what: str) -> Said:
    """Something that cannot be left out is not given.

    Bad:
        exercises: {hang: {name: Bar hang}}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
    """
    return f"{quoted(what)} is missing here.", f"Add `{what}:` and its value."


@fault("error")
def bad_id(given: str) -> Said:
    """An id has a character or length that an id cannot have.

    Ids are letters, digits, `-` and `_`, 64 at most: they are file names and links as well.

    Bad:
        title: One
        exercises: {bar hang: {name: Bar hang}}
    Good:
        title: One
        exercises: {bar-hang: {name: Bar hang}}
    """
    rule = "Use letters without accents, digits, - and _ only, 64 at most"
    if not given.strip():
        return "An id is missing here.", f"{rule}."
    like = re.sub(r"[^A-Za-z0-9_]+", "-", given[:200]).strip("-")[:64]
    return f"{quoted(given)} cannot be an id.", f"{rule}{f': {like}' if like and like != given else ''}."
