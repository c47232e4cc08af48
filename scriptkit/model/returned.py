"""A filled-in ledger that came back, row by row, and what became of it."""

from typing import NamedTuple

from scriptkit.model.weighing import Verdict


class ReturnedRow(NamedTuple):
    """One row of a filled-in ledger, cell by cell as text. `number` is the row of the sheet, from 1.

    `troubles` are cells that were filled in and cannot be read, in sentences.
    """

    number: int
    key: str
    sentence: str
    verdict: str = ""
    note: str = ""
    page: str = ""
    initials: str = ""
    date: str = ""
    troubles: tuple[str, ...] = ()


class Returned(NamedTuple):
    """A filled-in ledger. Where it cannot be read at all, `trouble` says why and there are no rows."""

    rows: tuple[ReturnedRow, ...] = ()
    trouble: str = ""


class Told(NamedTuple):
    """A row of the file that somebody has to look at, and why."""

    row: int
    message: str


class Settled(NamedTuple):
    """What becomes of a filled-in ledger: `taken` is to be kept; of every other verdict it is told why not."""

    taken: tuple[Verdict, ...]
    already: int
    newer: tuple[Told, ...]  # taken, and another verdict on the same sentence was kept before
    conflicts: tuple[Told, ...]
    refused: tuple[Told, ...]
