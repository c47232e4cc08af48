"""What `take` does: reads a recording, holds it against the script, and keeps its pace for the next scripts."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from scriptkit import material, model, writing
from scriptkit.model.kept_takes import KeptTake
from scriptkit.model.recording import Recording
from scriptkit.progress import Progress
from scriptkit.session import Session, fail, tell, why

_ABOUT = b'{\n  "about": "Written by scriptkit take'  # how take.json begins


def hold(work: Session, facts: model.Facts, files: Sequence[Path]) -> model.Take:
    """A recording held against the script; ends the command where the recording cannot be read."""
    from scriptkit.computing.hearing import claims
    from scriptkit.computing.taking import taking
    from scriptkit.reading import recordings

    found: Recording = recordings.read(files)
    if found.refused:
        fail(f"{found.refused}. Nothing was measured.")
    for trouble in found.troubles:
        tell(f"{trouble.place.file}, line {trouble.place.line}: {trouble.message}")
    words = work.material.words
    with Progress("Comparing with the script") as progress:
        return taking.hold(facts, found, words, claims.compile_cues(words), progress.tell)


def keep(work: Session, take: model.Take) -> Path | None:
    """Keep the pace of this episode's take, in place of an earlier one of it; where it was kept."""
    if take.pace is None or not 60 <= take.pace <= 400:
        return None
    said = [one for one in take.segments if one.start is not None and one.state != "added"]
    words = sum(one.words for one in said)
    seconds = round(60 * words / take.pace, 1)
    others = [one for one in work.material.takes if one.episode != work.name]
    return _write(work, [*others, KeptTake(work.name, take.pace, words, seconds)])


def forget(work: Session) -> Path | None:
    """Take this episode's pace out of what is kept; where it was, None where there was none."""
    others = [one for one in work.material.takes if one.episode != work.name]
    return _write(work, others) if len(others) < len(work.material.takes) else None


def keep_times(work: Session, take: model.Take) -> None:
    """Keep when each sentence was said, in place of what an earlier take kept."""
    from scriptkit.rendering import sheets, take_rows

    path = _times_file(work)
    try:
        writing.write_file(path, sheets.to_json(take_rows.kept(take)), writing.Kept())
    except (writing.Refused, OSError) as error:
        fail(why(error, path))


def forget_times(work: Session) -> bool:
    """Remove what a take kept of the times; whether there was something."""
    path = _times_file(work)
    try:
        there = writing.held(path) is not None
        path.unlink(missing_ok=True)
    except (writing.Refused, OSError) as error:
        fail(why(error, path))
    return there


def _times_file(work: Session) -> Path:
    """take.json; one that no take wrote is left as it is, and the command ends."""
    path = work.material.folders.episode / material.TAKE_FILE
    if path.is_file() and not path.read_bytes().startswith(_ABOUT):
        fail(f"{path} was not written by a take, so it was left as it is. Move it elsewhere.")
    return path


def _write(work: Session, takes: Sequence[KeptTake]) -> Path:
    """Write takes.yaml anew. One that was changed by hand is left as it is, and the command ends."""
    from scriptkit.rendering import take_lines

    path = material.takes_file(work.material.folders)
    try:
        known = writing.held(path)
        if known is not None and known != take_lines.written(work.material.takes):
            fail(f"{path} was changed by hand, so it was left as it is. Write this pace into it, or remove it.")
        writing.write_file(path, take_lines.written(takes), writing.Kept())
    except (writing.Refused, OSError) as error:
        fail(why(error, path))
    return path
