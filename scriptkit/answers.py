"""What commands answer: text for a person, JSON for a program, CSV for a spreadsheet, a folder of files."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from scriptkit.model import Facts
from scriptkit.session import Session, fail, ink, tell, why
from scriptkit.terminal import WIDEST, Ink

if TYPE_CHECKING:
    from scriptkit.returning import Taken


def claims(work: Session, facts: Facts, fmt: str, taken: Taken | None = None) -> str | bytes:
    """The claims ledger; for a program with what came of a ledger that was taken in."""
    from scriptkit.rendering import ledger, sheets

    if fmt == "csv":
        return sheets.claims_csv(facts, work.found)
    if fmt == "xlsx":
        return sheets.claims_xlsx(facts, work.found)
    rows = ledger.sentences(facts, work.found)
    gone = ledger.void(facts)
    if fmt == "json":
        news = {"verdicts_taken": taken.row()} if taken else {}
        return sheets.to_json({"episode": work.name, **news, "sentences": rows, "void_verdicts": gone})
    from scriptkit import listings

    return listings.claims(rows, ink(), gone)


def verdicts_taken(work: Session, facts: Facts, path: Path, fmt: str) -> tuple[Session, str | bytes, bool]:
    """Take in a filled-in ledger: the episode as it is then, the answer, and whether nothing has to be looked at."""
    from scriptkit import listings, returning

    taken = returning.take_in(work, facts, path)
    after = Session(work.material.folders.episode, work.stage) if taken.settled.taken else work
    after.name, after.sheet = work.name, path
    if fmt == "text":
        return after, listings.taken(taken.name, taken.settled, ink()), taken.clean
    for line in listings.taken(taken.name, taken.settled, Ink(columns=WIDEST)).splitlines():
        tell(line)
    return after, claims(after, after.readable(fmt), fmt, taken), taken.clean


def runtime(work: Session, facts: Facts, fmt: str) -> str | bytes:
    """Seconds by segment, and the whole."""
    from scriptkit.rendering import rows, sheets

    if fmt == "json":
        return sheets.to_json({"episode": work.name, **rows.runtime(facts)})
    from scriptkit import listings

    return listings.runtime(rows.runtime(facts), ink())


def shots(_work: Session, facts: Facts, fmt: str) -> str | bytes:
    """The shot list."""
    from scriptkit.rendering import rows, sheets

    if fmt == "csv":
        return sheets.shots_csv(facts)
    if fmt == "json":
        return sheets.to_json(rows.shots(facts))
    from scriptkit import listings

    return listings.shots(rows.shots(facts), ink())


def grades(work: Session, facts: Facts, fmt: str) -> str | bytes:
    """How each grade comes about, and how firm it is."""
    from scriptkit.rendering import grade_rows, sheets

    if fmt == "json":
        about = {"checklist": grade_rows.checklist(facts), "exercises": grade_rows.grades(facts)}
        more = {"firmness": grade_rows.firmness(facts), "second_rating": grade_rows.again(facts)}
        return sheets.to_json({"episode": work.name, **about, **more})
    from scriptkit import grade_listing

    return grade_listing.grades(facts, ink())


def built(work: Session, facts: Facts, folder: Path, *, crlf: bool = False) -> str:
    """Write every output into the folder; what was written, and what is open."""
    from scriptkit import writing
    from scriptkit.rendering import outputs

    asked = outputs.Asked(work.build.captioned(facts), work.found, work.stage, work.name, crlf)
    files = outputs.render(asked)
    try:
        writing.replace_folder(folder, files, work.material.folders.episode, work.kept())
    except (writing.Refused, OSError) as error:
        fail(why(error, folder))
    from scriptkit.terminal import listed, many, visible

    where, page = visible(str(folder)), visible(str(folder / "index.html"))
    told = f"Wrote {len(files)} files into {where}; open {page} in a browser.\n"
    open_ones = listed(many(work.count(severity), severity) for severity in ("error", "warning"))
    return told + (f"Open: {open_ones}. The pages show them, and so does `scriptkit check`.\n" if open_ones else "")


def started(folder: Path) -> str:
    """What `new` made, and what to do next."""
    from shlex import quote

    from scriptkit.terminal import visible

    made, again = visible(str(folder / "outline.yaml")), visible(quote(str(folder)))
    return f"Wrote {made}. Change it as you like, then run: scriptkit check {again}\n"
