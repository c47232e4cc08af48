"""A second rating of the same exercises, in ratings-again.yaml: by the same person later, or by somebody else."""

from __future__ import annotations

from pathlib import Path

from scriptkit import model
from scriptkit.reading import nodes
from scriptkit.reading.files import Folders
from scriptkit.reading.shapes import MISSING, Field, Mapped, Reader, Record
from scriptkit.reading.values import Day, Number, Words

RATED_AGAIN = Record(
    model.RatedAgain,
    {
        "score": Field(Number(-1e6, 1e6), "the second rating"),
        "answer": Field(Words(), "what you make of a gap of two steps or more"),
    },
    short="score",
)
RATINGS_AGAIN = Record(
    model.RatingsAgain,
    {
        "by": Field(Words(), "who rated"),
        "on": Field(Day(), "when"),
        "ratings": Field(
            Mapped(Mapped(RATED_AGAIN)), "by exercise, a rating for each criterion of the checklist", needed=True
        ),
    },
)


def read(folders: Folders, path: Path, allows: list[model.Allow]) -> model.RatingsAgain | None:
    """The second rating; what is wrong with it is a finding, and the rest is read."""
    file = folders.text(path, "the second rating")
    if file is None:
        return None
    tree = nodes.read(file)
    folders.findings.extend(tree.findings)
    allows.extend(tree.allows)
    if tree.top is None:
        return None
    found = RATINGS_AGAIN.read(tree.top, Reader(file, folders.findings), "second rating")
    return None if found is MISSING else found
