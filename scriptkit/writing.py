"""The only writing to disk: a whole folder at once, one file at once, or a file that was not there. Nothing of the author's is replaced."""

from __future__ import annotations

import contextlib
import hashlib
import json
import os
import stat
import tempfile
from collections.abc import Iterator, Mapping
from pathlib import Path

MARK = ".scriptkit-build"


class Refused(Exception):
    """What is there may not be replaced; the message says why and what to do."""


def replace_folder(target: Path, files: Mapping[str, bytes], episode: Path) -> None:
    """Put `files` into the folder `target`, whole or not at all. Raises Refused where something else is there, OSError where writing fails.

    The new folder is made beside the old one and takes its name by renaming. A build that is killed between the two renames leaves the
    old folder under another name; the next build puts it back first.
    """
    target = Path(os.path.abspath(target))
    if target.parent == target or episode.resolve().is_relative_to(target.resolve()):
        raise Refused(f"{target} is the episode itself or a folder around it. Name a folder that is not there yet.")
    target.parent.mkdir(parents=True, exist_ok=True)
    new, old = (target.with_name(f".{target.name}.scriptkit-{word}") for word in ("new", "old"))
    with _locked(target.parent):
        _recover(target, new, old)
        _may_replace(target)
        try:
            _fill(new, files)
            _swap(target, new, old)
        finally:
            if new.exists():
                _remove(new)


def _recover(target: Path, new: Path, old: Path) -> None:
    """Clear up after a build that was killed."""
    for left in (new, old):
        if left.is_symlink() or (left.exists() and not _left_by_build(left)):
            raise Refused(f"{left} is in the way and was not made by scriptkit. Move it, then build again.")
    if new.exists():
        _remove(new)
    if old.exists():
        if os.path.lexists(target):
            _remove(old)
        else:
            old.rename(target)


def _left_by_build(folder: Path) -> bool:
    """Whether a folder holds nothing but what a killed build can leave: its mark and files named there, some of them cut short."""
    if not folder.is_dir():
        return False
    names = set(os.listdir(folder))
    return names <= {MARK} or names <= {MARK, *(_marked(folder) or {})}


def _may_replace(target: Path) -> None:
    if not os.path.lexists(target):
        return
    about = target.lstat()
    if stat.S_ISLNK(about.st_mode):
        raise Refused(
            f"{target} is a link to somewhere else, so nothing was written. Name a folder that is not there yet."
        )
    if not stat.S_ISDIR(about.st_mode):
        raise Refused(
            f"{target} is there already and is no folder, so nothing was written. Name a folder that is not there yet."
        )
    names = sorted(os.listdir(target))
    if not names:
        return
    marked = _marked(target)
    if marked is None:
        raise Refused(
            f"{target} holds {names[0]!r}, which no build of scriptkit made, so nothing was written. Name a folder that is not there yet."
        )
    for name in names:
        if name != MARK and not _as_made(target / name, marked.get(name)):
            done = "was changed since it was built" if name in marked else "was not made by a build"
            raise Refused(
                f"{target / name} {done}, so nothing was written. Move it elsewhere, or delete it if you do not need it."
            )


def _as_made(path: Path, digest: str | None) -> bool:
    try:
        return (
            digest is not None
            and stat.S_ISREG(path.lstat().st_mode)
            and hashlib.sha256(path.read_bytes()).hexdigest() == digest
        )
    except OSError:
        return False


def _marked(folder: Path) -> dict[str, str] | None:
    """What the mark in a folder lists: file names and their hashes; None where there is no mark of ours."""
    mark = folder / MARK
    try:
        if not stat.S_ISREG(mark.lstat().st_mode):
            return None
        listed = json.loads(mark.read_bytes())["files"]
    except (OSError, ValueError, KeyError, TypeError, RecursionError):
        return None
    if not isinstance(listed, dict) or not all(isinstance(digest, str) for digest in listed.values()):
        return None
    return listed


def _fill(folder: Path, files: Mapping[str, bytes]) -> None:
    folder.mkdir()
    digests = {name: hashlib.sha256(data).hexdigest() for name, data in files.items()}
    listing = {"about": "Made by scriptkit build, which replaces this folder as a whole.", "files": digests}
    # the mark comes first, so that what a killed build leaves can be told from what an author put there
    (folder / MARK).write_text(json.dumps(listing, indent=1) + "\n", encoding="utf-8", newline="\n")
    for name, data in files.items():
        (folder / name).write_bytes(data)


def _swap(target: Path, new: Path, old: Path) -> None:
    if not target.exists():
        new.rename(target)
        return
    target.rename(old)
    try:
        new.rename(target)
    except OSError:
        old.rename(target)
        raise
    _remove(old)


def _remove(folder: Path) -> None:
    """Delete a folder of ours: its files, the mark last."""
    for name in sorted(os.listdir(folder), key=lambda one: one == MARK):
        (folder / name).unlink()
    folder.rmdir()


@contextlib.contextmanager
def _locked(folder: Path) -> Iterator[None]:
    """Two builds into the same place wait for each other. A lock on the folder itself leaves no file behind and ends with the process."""
    try:
        import fcntl
    except ImportError:  # not on Windows, where renaming fails cleanly instead
        yield
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        fcntl.flock(handle, fcntl.LOCK_EX)
        yield
    finally:
        os.close(handle)


def write_file(path: Path, data: bytes, sources: Iterator[Path] | list[Path], guarded: list[Path]) -> None:
    """Write one file whole. Raises Refused for a file that the tool reads (`sources`), one in a folder that authors write in (`guarded`),
    and anything that is no ordinary file.
    """
    if os.path.lexists(path) and (path.is_symlink() or not path.is_file()):
        raise Refused(f"{path} is no ordinary file, so nothing was written. Name another file.")
    real = path.resolve()
    for source in sources:
        if real == source.resolve() or (path.exists() and source.exists() and path.samefile(source)):
            raise Refused(f"{path} is part of the episode, so nothing was written. Name another file.")
    if any(real.is_relative_to(folder.resolve()) for folder in guarded):
        raise Refused(
            f"{path} lies in a folder that scriptkit reads texts from, so nothing was written. Name another file."
        )
    handle, name = tempfile.mkstemp(dir=path.parent, prefix=".scriptkit-")
    try:
        with os.fdopen(handle, "wb") as out:
            out.write(data)
        os.chmod(name, 0o666 & ~_umask())
        os.replace(name, path)
    except BaseException:
        os.unlink(name)
        raise


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask


def write_new(path: Path, data: bytes) -> bool:
    """Write a file that is not there; False, and nothing done, where anything is."""
    try:
        handle = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o666)
    except FileExistsError:
        return False
    with os.fdopen(handle, "wb") as out:
        out.write(data)
    return True
