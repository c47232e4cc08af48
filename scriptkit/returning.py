"""A ledger that was filled in and sent back: its verdicts go into verdicts.yaml, and of each other row is told why."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Any, NamedTuple

from scriptkit import model, writing
from scriptkit.findings import Finding
from scriptkit.model.returned import Settled
from scriptkit.places import NO_TEXT, SourceFile
from scriptkit.session import Session, fail, why

FILE = "verdicts.yaml"


class Taken(NamedTuple):
    """What came of a filled-in ledger; `rows` is how many rows of it had a verdict, a note or a cell to ask about."""

    name: str
    settled: Settled

    @property
    def clean(self) -> bool:
        """Whether there is nothing in it that somebody has to look at."""
        return not self.settled.conflicts and not self.settled.refused

    def row(self) -> dict[str, Any]:
        """All of it for a program."""
        told = {
            name: [one._asdict() for one in getattr(self.settled, name)] for name in ("newer", "conflicts", "refused")
        }
        return {"file": self.name, "taken": len(self.settled.taken), "already": self.settled.already, **told}


def take_in(work: Session, facts: model.Facts, path: Path) -> Taken:
    """Take in what a filled-in ledger says; ends the command where it cannot be read or nothing can be kept."""
    from scriptkit.computing import settling
    from scriptkit.reading import returned

    ledger = returned.read(path)
    if ledger.trouble:
        fail(f"{path} cannot be read as a filled-in ledger: {ledger.trouble}. Nothing was taken in.")
    settled = settling.settle(ledger.rows, facts.segments, work.material.verdicts)
    if settled.taken:
        _keep(work, settled.taken)
    return Taken(path.name, settled)


def _keep(work: Session, taken: Sequence[model.Verdict]) -> None:
    """Add verdicts to the file, once it is sure that the file will say all it said and each new verdict."""
    from scriptkit.reading.files import MOST_BYTES
    from scriptkit.rendering import verdict_lines

    path = work.material.folders.episode / FILE
    try:
        known = writing.held(path, MOST_BYTES)
        before = _text(known)
        more = verdict_lines.added(before, taken)
        if not _says(before, work.material.verdicts) or not _says(before + more, (*work.material.verdicts, *taken)):
            fail(
                f"{path} is not as `scriptkit claims --verdicts` writes it, so nothing was added to it and nothing "
                "was taken in. Each verdict stands there in lines of its own that start with `- sentence:`, below "
                "`verdicts:` at the end of the file. Mend that (`scriptkit check` shows what cannot be read), or move "
                "the file away, then run it again."
            )
        ends = b"\r\n" if known and b"\r\n" in known else b"\n"
        writing.add_to(path, more.encode().replace(b"\n", ends), known)
    except (writing.Refused, OSError) as error:
        fail(why(error, path))


def _text(data: bytes | None) -> str:
    """The text of the file as it is read."""
    text = (data or b"").decode("utf-8-sig", errors="replace")
    return NO_TEXT.sub(" ", text.replace("\r\n", "\n").replace("\r", "\n"))


def _says(text: str, verdicts: Sequence[model.Verdict]) -> bool:
    """Whether a text holds these verdicts and no other one, in their order."""
    from scriptkit.reading import verdicts as reading
    from scriptkit.reading.files import MOST_BYTES

    findings: list[Finding] = []
    found = reading.from_text(SourceFile(FILE, text), findings, [])
    broken = any(one.name in ("yaml-syntax", "second-document") for one in findings)
    plain = [one._replace(at=model.NOWHERE) for one in found]
    fits = len(text.encode()) <= MOST_BYTES
    return fits and not broken and plain == [one._replace(at=model.NOWHERE) for one in verdicts]
