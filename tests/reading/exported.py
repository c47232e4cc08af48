"""What the tests of exports share: a text read in one format, its sources, and what is found."""

from __future__ import annotations

from types import ModuleType

from scriptkit import model
from scriptkit.places import SourceFile
from scriptkit.reading import exports


def sources(form: ModuleType, text: str) -> dict[str, model.Source]:
    """The sources of a text by id."""
    file = SourceFile("library", text)
    return exports.sources(form.read(file), file)


def one(form: ModuleType, text: str) -> model.Source:
    """The only source of a text."""
    (source,) = sources(form, text).values()
    return source


def told(form: ModuleType, text: str) -> list[tuple[str, int, int]]:
    """Name, line and column of all that is found in a text."""
    file = SourceFile("library", text)
    export = form.read(file)
    exports.sources(export, file)
    return [(found.name, found.place.line, found.place.column) for found in export.findings]


def cut_everywhere(form: ModuleType, text: str, step: int = 1) -> None:
    """Read every beginning of a text: each has a finding or is a whole text, and none stops the reading."""
    for end in range(0, len(text), step):
        file = SourceFile("library", text[:end])
        export = form.read(file)
        found = exports.sources(export, file)
        assert export.whole or export.findings
        assert all(one.at.place.line >= 1 for one in found.values())
