"""What commands answer: text for a person, JSON for a program, CSV for a spreadsheet, a folder of files."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from scriptkit.model import Facts
from scriptkit.session import Session, fail, ink, tell, why
from scriptkit.terminal import WIDEST, Ink

if TYPE_CHECKING:
    from scriptkit.model.fitting import Fit
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


def runtime(work: Session, facts: Facts, fmt: str, fitted: Fit | None = None) -> str | bytes:
    """Seconds by segment, the whole, where things fall on the clock; with what to cut, where that was asked."""
    from scriptkit.computing.fitting import bearings
    from scriptkit.rendering import rows, runtime_rows, sheets

    row = {**rows.runtime(facts), **runtime_rows.bearings(bearings.find(facts))}
    row |= runtime_rows.fit(fitted) if fitted else {}
    row["recorded_s"] = runtime_rows.recorded(work.material.recording)
    if fmt == "json":
        return sheets.to_json({"episode": work.name, **row})
    from scriptkit import runtime_listing

    text = runtime_listing.runtime(row, ink()) + runtime_listing.recorded(row) + runtime_listing.bearings(row, ink())
    return text + (runtime_listing.fit(row, ink()) if fitted else "")


def time_to_fit(written: str | None, folder: Path | None) -> float | None:
    """The seconds that `--fit` asks for, None where it does not; a wrong one ends the command."""
    if written is None:
        if folder is not None:
            fail("--write goes with --fit TIME, which says what the copy has to do without.")
        return None
    from scriptkit.terminal import visible
    from scriptkit.times import minutes_meant, seconds

    wanted = seconds(written)
    if not wanted:
        fail(f'"{visible(written)}" is no time to fit. Write it as 9:30, 570s or 9m30s.')
    meant = minutes_meant(written)
    number = written.strip()
    if meant and "." in number:
        fail(f"--fit {number} may be {number} seconds or minutes. Write {meant} for minutes, {number}s for seconds.")
    if meant:
        tell(f"--fit {number} is {number} seconds. Write {meant} if minutes are meant.")
    return wanted


def fitted(work: Session, facts: Facts, wanted: float, pace: float | None, folder: Path | None) -> Fit:
    """What to cut for a time; with a folder, an episode without it is made there and told of."""
    from scriptkit import shortening

    made = shortening.shorten(work.material, facts, wanted, pace)
    if folder is None:
        return made.fit
    from scriptkit import copying, writing

    if not made.fit.reached:
        tell(f"Nothing was written into {folder}: what may be cut is not enough.")
        return made.fit
    try:
        copying.copy(work.material.folders, folder, made.files)
    except (writing.Refused, OSError) as error:
        fail(why(error, folder))
    tell(f"Wrote the episode without what is cut into {folder}; yours is as it was.")
    return made.fit


def shots(_work: Session, facts: Facts, fmt: str) -> str | bytes:
    """The shot list."""
    from scriptkit.rendering import rows, sheets

    if fmt == "csv":
        return sheets.shots_csv(facts)
    if fmt == "xlsx":
        return sheets.shots_xlsx(facts)
    if fmt == "json":
        return sheets.to_json(rows.shots(facts))
    from scriptkit import listings

    return listings.shots(rows.shots(facts), ink())


def shoot(work: Session, facts: Facts, fmt: str) -> str | bytes:
    """The shot list in shooting order, on the clock of the day."""
    from scriptkit.rendering import day_rows, sheets

    facts = work.build.with_day(facts)
    if fmt == "csv":
        return sheets.shoot_csv(facts)
    if fmt == "xlsx":
        return sheets.shoot_xlsx(facts)
    if fmt == "json":
        return sheets.to_json(day_rows.shots(facts))
    from scriptkit import day_listing

    return day_listing.day(day_rows.names(facts), ink())


def take(work: Session, facts: Facts, files: Sequence[Path], fmt: str) -> tuple[str | bytes, bool]:
    """A recording held against the script, and whether nothing in it has to be mended; its pace is kept."""
    from scriptkit import taking
    from scriptkit.rendering import sheets, take_rows

    made = taking.hold(work, facts, files)
    row = take_rows.take(made)
    kept = taking.keep(work, made)
    clean = all(change.weight not in ("stop", "cut") for change in made.changes)
    if fmt == "json":
        return sheets.to_json({"episode": work.name, **row}), clean
    from scriptkit import take_listing
    from scriptkit.terminal import visible

    told = f"Kept: {' and '.join(visible(str(path)) for path in kept)}. The next build goes by it.\n" if kept else ""
    return take_listing.take(row, ink()) + told, clean


def take_forgotten(work: Session) -> str:
    """What was kept of this episode's take is taken out."""
    from scriptkit import taking
    from scriptkit.terminal import visible

    path, times = taking.forget(work), taking.forget_times(work)
    told = f"The pace of this episode is taken out of {visible(str(path))}.\n" if path else ""
    told += "take.json is removed: builds go by the plan again.\n" if times else ""
    return told or "There is no take to forget.\n"


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

    asked = outputs.Asked(work.build.as_built(facts, work.material.recording), work.found, work.stage, work.name, crlf)
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
