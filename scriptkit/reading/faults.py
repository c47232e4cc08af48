"""The findings of the reading room. Each function is one kind: its docstring is the explanation, its result the finding."""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps

from scriptkit.findings import Finding, Kind, kind_name, make
from scriptkit.places import Place

KINDS: dict[str, Kind] = {}


def fault(severity: str, stage: str = "draft") -> Callable[[Callable[..., tuple[str, str]]], Callable[..., Finding]]:
    """A function that gives message and help becomes one that takes a place as well and gives the finding."""

    def keep(function: Callable[..., tuple[str, str]]) -> Callable[..., Finding]:
        kind = Kind(kind_name(function), severity, stage, False, function)
        KINDS[kind.name] = kind

        @wraps(function)
        def found(place: Place, *details: str) -> Finding:
            return make(kind, place, *function(*details))

        return found

    return keep


def quoted(words: object, most: int = 60) -> str:
    """The author's words in a message: on one line, cut where they are long."""
    line = " ".join(str(words).split())
    return f'"{line[: most - 1]}…"' if len(line) > most else f'"{line}"'


def near(word: str, known: object) -> str:
    """The known word nearest to `word`, or nothing. Long words and long lists are not compared: they would take too long."""
    words = (
        [str(one) for one in known][:2000]
        if isinstance(known, (list, tuple, dict, set, frozenset)) or hasattr(known, "__iter__")
        else []
    )
    if len(word) > 80:
        return ""
    lowered = word.lower().replace("_", "-")
    for one in words:
        if one.lower().replace("_", "-") == lowered:
            return one
    from difflib import get_close_matches

    found = get_close_matches(word, words, 1, 0.6)
    return found[0] if found else ""


def _perhaps(nearest: str, otherwise: str) -> str:
    return f"Did you mean {quoted(nearest)}?" if nearest else otherwise


# --- files -------------------------------------------------------------------------------------------------------------


@fault("error")
def missing_file(name: str, what: str) -> tuple[str, str]:
    """A file that is named or needed is not there.

    scriptkit looked for the file in the folder of the file that names it.

    Bad:
        title: One
        evidence: [studies.yaml]
        exercises: {hang: {name: Bar hang}}
    Good:
        title: One
        evidence: [studies.yaml]
        exercises: {hang: {name: Bar hang}}
        --- studies.yaml
        sources: {}
    """
    return f"There is no file {quoted(name)} here ({what}).", "Correct the name, or put the file there."


@fault("error")
def path_outside(name: str) -> tuple[str, str]:
    """A path leads out of the episode and channel folders.

    An outline may come from somebody else, so scriptkit reads and writes nothing outside the episode folder and the folder of channel.yaml.

    Bad:
        title: One
        evidence: [../../somewhere/evidence.yaml]
        exercises: {hang: {name: Bar hang}}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
    """
    return (
        f"The path {quoted(name)} leads out of the episode's and the channel's folder, so it was not read.",
        "Copy the file into the episode folder and give its name here.",
    )


@fault("error")
def not_utf8(what: str) -> tuple[str, str]:
    """A file is not saved as UTF-8 text.

    Text has to be saved as UTF-8, so that every letter is read as it was typed. In most editors it is a choice in "Save as".
    The bad example shows a file that holds a byte that is no UTF-8 (written here as \\xff).

    Bad:
        title: One \\xff
        exercises: {hang: {name: Bar hang}}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
    """
    return (
        f"This file is not UTF-8 text: {what}.",
        'Save it again as UTF-8 (in most editors under "Save as", "Encoding").',
    )


@fault("error")
def file_too_large(size: str, most: str) -> tuple[str, str]:
    """A file is larger than any outline, register or script can be.

    A long outline has some 200 kB, a register of two thousand studies some 2 MB. A larger file is most likely another kind of file.

    Bad:
        --- huge
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
    """
    return (
        f"This file has {size}, more than the {most} that scriptkit reads.",
        "Is it the right file? If it is, split it.",
    )


@fault("error")
def unreadable_file(why: str) -> tuple[str, str]:
    """A file is there and cannot be read.

    It is a folder or a device, or reading it is not permitted.

    Bad:
        title: One
        evidence: [studies]
        exercises: {hang: {name: Bar hang}}
        --- studies/note.txt
        This makes "studies" a folder.
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
    """
    return f"This file cannot be read: {why}.", "Put an ordinary text file there that you may read."


@fault("error")
def evidence_format(name: str) -> tuple[str, str]:
    """An evidence register is in a format that is not read yet.

    Registers are YAML files for now.

    Bad:
        title: One
        evidence: [library.bib]
        exercises: {hang: {name: Bar hang}}
        --- library.bib
        @article{a, title={A}}
    Good:
        title: One
        evidence: [library.yaml]
        exercises: {hang: {name: Bar hang}}
        --- library.yaml
        sources: {}
    """
    return (
        f"The register {quoted(name)} is not read: only YAML registers are, for now.",
        "Write its sources into a YAML register.",
    )


@fault("warning")
def segment_text_not_used(name: str, nearest: str) -> tuple[str, str]:
    """A text in segments/ belongs to no segment of the running order.

    Its name has to be the id of an exercise or of a segment in `order`.

    Bad:
        title: One
        exercises: {bar-hang: {name: Bar hang}}
        --- segments/bar-hangs.md
        I like this one. [opinion]
    Good:
        title: One
        exercises: {bar-hang: {name: Bar hang}}
        --- segments/bar-hang.md
        I like this one. [opinion]
    """
    return (
        f"The text {quoted(name)} is not spoken: the running order has no segment of that name.",
        _perhaps(nearest, "Give the file the id of an exercise or segment, or put it into `order`."),
    )


# --- YAML ----------------------------------------------------------------------------------------------------------------


@fault("error")
def yaml_syntax(problem: str, line: str) -> tuple[str, str]:
    """The YAML of a file cannot be understood.

    Most often a quote or bracket is not closed, an indent is off by one, or a text that holds a colon and a space needs quotes.
    The rest of that file is not read.

    Bad:
        title: One: two
        exercises: {hang: {name: Bar hang}}
    Good:
        title: "One: two"
        exercises: {hang: {name: Bar hang}}
    """
    return (
        f"The YAML breaks off here at {quoted(line)}: {problem}.",
        "Look at this line and the one above it: a quote or bracket left open, an indent, a colon inside a text without quotes.",
    )


@fault("error")
def tab_indent() -> tuple[str, str]:
    """A line is indented with a tab.

    YAML takes only spaces for indents. A tab elsewhere does no harm.

    Bad:
        title: One
        exercises:
        \\thang: {name: Bar hang}
    Good:
        title: One
        exercises:
          hang: {name: Bar hang}
    """
    return "This line is indented with a tab.", "Use spaces instead: most editors can turn tabs into spaces."


@fault("error")
def second_document() -> tuple[str, str]:
    """A YAML file holds a second document.

    A line of three dashes starts a new document; scriptkit reads one a file.

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
        "A second document starts here, after a line of three dashes.",
        "Delete the dashes, or move what follows into a file of its own.",
    )


@fault("error")
def unreadable_character(character: str) -> tuple[str, str]:
    """A file holds a character that no text should hold.

    Such control characters come from copying out of other programs. In YAML they end the reading of the file; in spoken text they are left out.
    In the example the character is written as \\x07.

    Bad:
        title: One\\x07
        exercises: {hang: {name: Bar hang}}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
    """
    return (
        f"Here is a character that is no text (code {ord(character) if character else 0}).",
        "Delete it and type the word again.",
    )


@fault("error")
def endless_anchor() -> tuple[str, str]:
    """An anchor contains itself, or expands to far more than an outline can hold.

    Anchors (`&name`) and aliases (`*name`) repeat a piece of YAML. Repeats of repeats grow without end.

    Bad:
        title: One
        terms: &t {a: *t}
        exercises: {hang: {name: Bar hang}}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
    """
    return (
        "The anchor here expands without end, so the file was not read.",
        "Write the piece out where it is needed instead of `&` and `*`.",
    )


@fault("error")
def too_deep() -> tuple[str, str]:
    """A file is nested deeper than any outline.

    Bad:
        title: One
        question: [[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[x]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]
        exercises: {hang: {name: Bar hang}}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
    """
    return (
        "Brackets or indents are nested too deep here, so the file was not read.",
        "Close the brackets, or take indents back.",
    )


# --- keys and values -----------------------------------------------------------------------------------------------------


@fault("error")
def no_outline() -> tuple[str, str]:
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
def unknown_key(key: str, nearest: str, known: str) -> tuple[str, str]:
    """A key is none that scriptkit knows.

    The key and what stands under it are ignored. The message offers the nearest name.

    Bad:
        titel: One
        title: One
        exercises: {hang: {name: Bar hang}}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
    """
    return f"There is no key {quoted(key)} here; it is ignored.", _perhaps(nearest, f"Known here: {known}.")


@fault("error")
def key_twice(key: str, line: str) -> tuple[str, str]:
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
def wrong_type(what: str, wanted: str, given: str) -> tuple[str, str]:
    """A value is of the wrong kind: a list where a text belongs, a word where a number belongs.

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
def out_of_range(what: str, given: str, wanted: str) -> tuple[str, str]:
    """A number is larger or smaller than it can be.

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
def unknown_word(what: str, given: str, nearest: str, known: str) -> tuple[str, str]:
    """A value is none of the words that may stand there.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang, shots: [{size: CX, plane: side}]}}
    Good:
        title: One
        exercises: {hang: {name: Bar hang, shots: [{size: CU, plane: side}]}}
    """
    return f"{quoted(given)} is no {what}.", _perhaps(nearest, "") + (" " if nearest else "") + f"It can be: {known}."


@fault("error")
def missing_value(what: str) -> tuple[str, str]:
    """Something that cannot be left out is not given.

    Bad:
        exercises: {hang: {name: Bar hang}}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
    """
    return f"{quoted(what)} is missing or empty here.", f"Add `{what}:` and its value."


@fault("error")
def bad_id(given: str) -> tuple[str, str]:
    """An id has a character or length that an id cannot have.

    Ids are letters, digits, `-` and `_`, 64 at most: they are file names and links as well.

    Bad:
        title: One
        exercises: {bar hang: {name: Bar hang}}
    Good:
        title: One
        exercises: {bar-hang: {name: Bar hang}}
    """
    return f"{quoted(given)} cannot be an id.", "Use letters, digits, - and _ only, 64 at most."


# --- spoken text ---------------------------------------------------------------------------------------------------------


@fault("error")
def not_spoken(what: str, words: str) -> tuple[str, str]:
    """A table, code or HTML stands in spoken text.

    None of them can be read aloud, so they are left out of the script.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        I like it. [opinion]

        | a | b |
        | - | - |
        | 1 | 2 |
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        I like it. [opinion]
    """
    return (
        f"Here is {what} ({quoted(words, 40)}), which cannot be spoken and is left out.",
        "Write it as sentences; for words on screen use `[screen: ...]`.",
    )


@fault("warning")
def mark_out_of_place(words: str) -> tuple[str, str]:
    """A mark stands in a heading, which is not spoken.

    Headings are for the author's eye. A mark in one would be lost.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        # Hang [shot FS side: bar hang]

        I like it. [opinion]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        # Hang

        [shot FS side: bar hang] I like it. [opinion]
    """
    return (
        f"The bracket {quoted(words)} stands in a heading, where it does nothing.",
        "Move it into the paragraph below.",
    )


@fault("error")
def allow_without_reason(words: str) -> tuple[str, str]:
    """An allow-comment has no name or no reason.

    `# allow: NAME because REASON` says that a finding is meant; in spoken text it is `<!-- allow: NAME because REASON -->`.
    Whoever reads the outline next has to know why.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}} # allow: exercise-not-shown
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
    """
    return (
        f"This allow-comment gives no name or no reason ({quoted(words)}), so it allows nothing.",
        "Write `allow: NAME because REASON`.",
    )
