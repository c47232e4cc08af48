"""Findings about files: not there, not allowed, not text, too large."""

from __future__ import annotations

from scriptkit.reading.faults.kinds import Said, fault, perhaps
from scriptkit.wording import quoted


@fault("error")
def missing_file(name: str, what: str, nearest: str) -> Said:
    """A file that is named or needed is not there.

    The file is looked for in the folder of the file that names it.

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
    return (
        f"The file {quoted(name)}, {what}, is not there.",
        perhaps(
            nearest,
            "`scriptkit new FOLDER` writes an outline to start from."
            if what == "the outline"
            else "Correct the name, or put the file there.",
        ),
    )


@fault("error")
def path_outside(name: str) -> Said:
    """A path leads out of the episode and channel folders.

    An outline may come from somebody else, so nothing is read outside the episode folder and the folder of
    channel.yaml. A link that leads out is refused as well.

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
def not_utf8(what: str) -> Said:
    r"""A file is not saved as UTF-8 text.

    Text has to be saved as UTF-8, so that every letter is read as it was typed. In most editors it is a choice in
    "Save as". The bad example holds a byte that is no UTF-8 (written here as \xff).

    Bad:
        title: One \xff
        exercises: {hang: {name: Bar hang}}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
    """
    return (
        f"This file is not UTF-8 text: {what}.",
        'Open it in your editor and save it again as UTF-8 (often under "Save as", "Encoding").',
    )


@fault("error")
def file_too_large(size: str, most: str) -> Said:
    """A file is larger than any outline, register or script can be.

    A long outline has some 200 kB, a register of two thousand studies some 2 MB. A larger file is most likely another
    kind of file.

    Bad:
        --- outline.yaml of 4000001 bytes
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
    """
    return (
        f"This file has {size}, and {most} is the most that is read.",
        "Is it the right file? If it is, split it.",
    )


@fault("error")
def unreadable_file(why: str) -> Said:
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
