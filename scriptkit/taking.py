"""What `take` does: reads a recording, holds it against the script, and keeps its pace for the next scripts."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from scriptkit import listening, material, model, writing
from scriptkit.model.kept_takes import KeptTake
from scriptkit.model.recording import Recording
from scriptkit.progress import Progress
from scriptkit.session import Session, fail, tell, why

HALF = 0.5  # of the script by its planned time; a recording with less of it is of something else
LEAST_PACE, MOST_PACE = 60, 400  # words a minute that takes.yaml may hold
_ABOUT = b'{\n  "about": "Written by scriptkit take'  # how take.json begins


def hold(work: Session, facts: model.Facts, files: Sequence[Path]) -> model.Take:
    """A recording held against the script; ends the command where the recording cannot be read."""
    from scriptkit.computing.hearing import claims
    from scriptkit.computing.taking import taking
    from scriptkit.reading import recordings

    found: Recording
    if listening.is_sound(files):
        with Progress("Listening") as progress:
            found = listening.hear(files, facts, progress.tell)
    else:
        found = recordings.read(files)
    if found.refused:
        fail(f"{found.refused}. Nothing was measured.")
    for trouble in found.troubles:
        tell(f"{trouble.place.file}, line {trouble.place.line}: {trouble.message}")
    words = work.material.words
    with Progress("Comparing with the script") as progress:
        return taking.hold(facts, found, words, claims.compile_cues(words), progress.tell)


def keep(work: Session, take: model.Take) -> list[Path]:
    """Keep the pace and the times of a take, in place of earlier ones of this episode; where they were kept.

    What is a recording of something else, by how little of the script is in it, is not kept, and that is told.
    """
    said = [one for one in take.segments if one.state != "added"]
    there = sum(one.planned for one in said if one.start is not None)
    if there < HALF * sum(one.planned for one in said):
        tell("Less than half of the script is in this recording, so nothing of it was kept. Is it of another episode?")
        return []
    kept = [_keep_times(work, take)]
    if take.pace is not None and LEAST_PACE <= take.pace <= MOST_PACE:
        words = sum(one.words for one in said)
        latest = KeptTake(work.name, take.pace, take.letters, words, round(60 * words / take.pace, 1))
        path = _write(work, (latest,), f" This take's pace is {take.pace:g}.")
        kept += [path] if path else []
    return kept


def forget(work: Session) -> Path | None:
    """Take this episode's pace out of what is kept; where it was, None where there was none."""
    there = any(one.episode == work.name for one in work.material.takes)
    return _write(work) if there else None


def _keep_times(work: Session, take: model.Take) -> Path:
    """Keep when each sentence was said, in place of what an earlier take kept."""
    from scriptkit.rendering import sheets, take_rows

    path = _times_file(work)
    try:
        writing.write_file(path, sheets.to_json(take_rows.kept(take)), writing.Kept())
    except (writing.Refused, OSError) as error:
        fail(why(error, path))
    return path


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


def _write(work: Session, latest: Sequence[KeptTake] = (), told: str = "") -> Path | None:
    """Put `latest` in the place of what takes.yaml has of this episode; where that is, None where it could not be.

    It is read anew, since a take of another episode may have written it meanwhile. One that was changed by hand is left
    as it is, which is told with what it should say.
    """
    from scriptkit.rendering import take_lines

    def changed(known: bytes | None) -> bytes | None:
        there = () if known is None else _takes_in(known)
        if known is not None and known != take_lines.written(there):
            return None
        return take_lines.written([*(one for one in there if one.episode != work.name), *latest])

    path = material.takes_file(work.material.folders)
    try:
        if writing.rewrite(path, changed):
            return path
        tell(f"{path} was changed by hand, so it was left as it is.{told} Write it there, or remove the file.")
    except (writing.Refused, OSError) as error:
        tell(why(error, path))
    return None


def _takes_in(known: bytes) -> Sequence[KeptTake]:
    """The takes that takes.yaml holds; none where it is no text."""
    from scriptkit.places import NO_TEXT, SourceFile
    from scriptkit.reading import takes

    text = NO_TEXT.sub(" ", known.decode(errors="replace"))
    return takes.from_text(SourceFile(material.TAKES_FILE, text), [], [])
