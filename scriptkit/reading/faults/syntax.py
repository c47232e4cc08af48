"""Findings about YAML as such: where it breaks off, tabs, anchors, tags, characters that are no text."""

from __future__ import annotations

from scriptkit.reading.faults.kinds import Said, fault
from scriptkit.wording import quoted


@fault("error")
def yaml_syntax(problem: str, line: str) -> Said:
    """The YAML of a file cannot be understood.

    Most often a quote or bracket is not closed, an indent is off by one, or a text that holds a colon and a space needs
    quotes. The rest of that file is not read.

    Bad:
        title: One: two
        exercises: {hang: {name: Bar hang}}
    Good:
        title: "One: two"
        exercises: {hang: {name: Bar hang}}
    """
    where = f" at {quoted(line)}" if line else ""
    return (
        f"The YAML breaks off here{where}: {problem}.",
        "Look at this line and the one above it: a quote or bracket left open, an indent, a text that needs quotes.",
    )


@fault("error")
def tab_indent() -> Said:
    r"""A line is indented with a tab.

    YAML takes only spaces for indents. A tab elsewhere does no harm. In the example the tab is written as \t.

    Bad:
        title: One
        exercises:
        \thang: {name: Bar hang}
    Good:
        title: One
        exercises:
          hang: {name: Bar hang}
    """
    return "This line is indented with a tab.", "Use spaces instead: most editors can turn tabs into spaces."


@fault("error")
def second_document() -> Said:
    """A YAML file holds a second document.

    A line of three dashes starts a new document; only the first one of a file is read.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        ---
        title: Two
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
    """
    return (
        "A second document starts here, after a line of three dashes; it is not read.",
        "Delete the dashes, or move what follows into a file of its own.",
    )


@fault("error")
def unreadable_character(character: str, more: str) -> Said:
    r"""A file holds a character that no text should hold.

    Such control characters come from copying out of other programs. They are read as if they were spaces.
    In the example the character is written as \x07.

    Bad:
        title: One\x07
        exercises: {hang: {name: Bar hang}}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
    """
    others = f", and {more} more such characters follow in this file" if more else ""
    return (
        f"Here is a character that is no text (number {ord(character):x} in Unicode){others}.",
        "Delete it and type the word again.",
    )


@fault("error")
def endless_anchor(name: str) -> Said:
    """An anchor contains itself, or expands to far more than an outline can hold.

    Anchors (`&name`) and aliases (`*name`) repeat a piece of YAML. Repeats of repeats grow without end, so such a
    repeat is left out.

    Bad:
        title: One
        terms: &t {a: *t}
        exercises: {hang: {name: Bar hang}}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
    """
    return (
        f'The anchor "&{name}" is repeated without end, so its repeats are left out.',
        "Write the piece out where it is needed instead of `&` and `*`.",
    )


@fault("warning")
def unknown_tag(tag: str) -> Said:
    """A word with an exclamation mark before it is a tag to YAML, and is not part of the text.

    A text that starts with `!` needs quotes. Tags that ask for a type, such as `!!str`, are not needed either: each
    field is read as what it is.

    Bad:
        title: !Important news
        exercises: {hang: {name: Bar hang}}
    Good:
        title: "!Important news"
        exercises: {hang: {name: Bar hang}}
    """
    return (
        f"The word {quoted(tag)} is a tag to YAML, so it is not part of the text.",
        "Put the text into quotes, or delete the word.",
    )


@fault("error")
def too_deep() -> Said:
    """A file is nested deeper than any outline, so it is not read.

    Bad:
        title: One
        question:
          [[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[
          x
          ]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]
        exercises: {hang: {name: Bar hang}}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
    """
    return (
        "Brackets or indents are nested too deep here, so the file was not read.",
        "Close the brackets, or take indents back.",
    )
