"""Writes to disk: a folder or a file as a whole, or a file that was not there; the author's are never replaced."""

from __future__ import annotations

import hashlib
import json
import os
import stat
import sys
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from typing import NamedTuple

from scriptkit.locking import locked

MARK = ".scriptkit-build"
ABOUT = "Made by scriptkit build, which replaces this folder as a whole."
_ELSEWHERE = "Name a folder that is not there yet."


class Refused(Exception):  # noqa: N818 - nothing went wrong: it was not done, for a reason
    """What is there may not be replaced; the message says why and what to do."""


class Kept(NamedTuple):
    """What belongs to the author: `files` that are read, there or not, and `folders` that texts are read from."""

    files: Sequence[Path] = ()
    folders: Sequence[Path] = ()


def replace_folder(target: Path, files: Mapping[str, bytes], episode: Path, kept: Kept) -> None:
    """Put `files` (name to content) into the folder `target`, all of them or none.

    The new folder is made beside the old one and takes its name by renaming. A build that is killed between the two
    renames leaves the old folder under another name, and the next build puts it back before anything else.
    Raises Refused where something is that no build made, OSError where writing fails.
    """
    target = _placed(target)
    _keep_clear(target, episode, kept)
    target.parent.mkdir(parents=True, exist_ok=True)
    new, old = (target.with_name(f".{target.name}.scriptkit-{word}") for word in ("new", "old"))
    with locked(target.parent):
        _may_be_left(new, unfinished=True)
        _may_be_left(old)
        if os.path.lexists(old) and not os.path.lexists(target):
            old.rename(target)
        _may_replace(target)
        _remove(new)
        _remove(old)
        try:
            _fill(new, files)
            _swap(target, new, old)
        finally:
            _remove(new)


def _placed(path: Path) -> Path:
    """The path from the root; a link at its end is not followed."""
    if "\0" in str(path):
        raise Refused("A path cannot hold a NUL character.")
    try:
        return path.resolve() if path.name in {"", ".."} else path.parent.resolve() / path.name
    except RuntimeError as error:  # links in a circle, until Python 3.12
        raise Refused(f"{path} leads in a circle, so nothing was written. Name another place.") from error


def _keep_clear(target: Path, episode: Path, kept: Kept) -> None:
    home = episode.resolve()
    if any(_same(target, one) for one in (home, *home.parents)):
        raise Refused(f"{target} is the episode itself or a folder around it, so nothing was written. {_ELSEWHERE}")
    if _belongs(target, kept):
        raise Refused(f"{target} is a place that scriptkit reads from, so nothing was written. {_ELSEWHERE}")


def _may_be_left(folder: Path, *, unfinished: bool = False) -> None:
    """Refuse a leftover that no killed build can have left."""
    if os.path.lexists(folder):
        strange = "it is no folder" if folder.is_symlink() or not folder.is_dir() else _stranger(folder, unfinished)
        if strange:
            raise Refused(f"{folder} is in the way: {strange}. Move it elsewhere, then build again.")


def _may_replace(target: Path) -> None:
    if not os.path.lexists(target):
        return
    about = target.lstat().st_mode
    if stat.S_ISLNK(about):
        raise Refused(f"{target} is a link to somewhere else, so nothing was written. {_ELSEWHERE}")
    if not stat.S_ISDIR(about):
        raise Refused(f"{target} is there already and is no folder, so nothing was written. {_ELSEWHERE}")
    _demand_as_made(target, target)


def _demand_as_made(folder: Path, known_as: Path) -> None:
    strange = _stranger(folder)
    if strange:
        advice = "Move it elsewhere, or delete it if you do not need it." if _marked(folder) else _ELSEWHERE
        raise Refused(f"Nothing was written into {known_as}: {strange}. {advice}")


def _stranger(folder: Path, unfinished: bool = False) -> str:  # noqa: FBT001, FBT002 - the one thing it is told
    """What in a folder no build made, in words; nothing where all is as it was made, or the folder is empty.

    A build writes its files in the order of the mark, so an unfinished one may end in one that is cut short.
    """
    names = sorted(os.listdir(folder))  # noqa: PTH208 - names are wanted
    made = _marked(folder)
    if not names or (unfinished and names == [MARK] and _begun(folder / MARK)):
        return ""
    if made is None:
        return f"it holds {names[0]!r}, which no build of scriptkit made"
    whole = [name for name in made if name in names]
    cut = whole[-1] if unfinished and whole and whole == list(made)[: len(whole)] else None
    for name in names:
        if name not in {MARK, cut} and not _as_made(folder / name, made.get(name)):
            return f"{name!r} in it was " + ("changed since it was built" if name in made else "not made by a build")
    return ""


def _as_made(path: Path, digest: str | None) -> bool:
    if digest is None or not stat.S_ISREG(path.lstat().st_mode):
        return False
    return hashlib.sha256(path.read_bytes()).hexdigest() == digest


def _marked(folder: Path) -> dict[str, str] | None:
    """What the mark in a folder lists, file names and their hashes, in the order of writing; None without a mark."""
    mark = folder / MARK
    try:
        if not stat.S_ISREG(mark.lstat().st_mode):
            return None
        listed = json.loads(mark.read_bytes())["files"]
    except (OSError, ValueError, KeyError, TypeError, RecursionError):
        return None
    fits = isinstance(listed, dict) and all(isinstance(digest, str) for digest in listed.values())
    return listed if fits else None


def _mark(files: Mapping[str, bytes]) -> bytes:
    digests = {name: hashlib.sha256(data).hexdigest() for name, data in files.items()}
    return (json.dumps({"about": ABOUT, "files": digests}, indent=1) + "\n").encode()


def _begun(mark: Path) -> bool:
    """Whether a file is the beginning of a mark."""
    opening = _mark({})[: len(ABOUT)]
    return stat.S_ISREG(mark.lstat().st_mode) and opening.startswith(mark.read_bytes()[: len(opening)])


def _fill(folder: Path, files: Mapping[str, bytes]) -> None:
    folder.mkdir()
    # the mark comes first, so that what a killed build leaves can be told from what an author put there
    for name, data in {MARK: _mark(files), **files}.items():
        write_new(folder / name, data)


def _swap(target: Path, new: Path, old: Path) -> None:
    if not os.path.lexists(target):
        new.rename(target)
        return
    target.rename(old)
    try:
        # an author may have saved something into it since it was looked at
        _demand_as_made(old, target)
        new.rename(target)
    except BaseException:
        if not os.path.lexists(target):
            old.rename(target)
        raise
    _remove(old)


def _remove(folder: Path) -> None:
    """Delete a folder of ours, last file first and the mark at the end, so that what a kill leaves is known as ours."""
    if not folder.is_dir():
        return
    names = os.listdir(folder)  # noqa: PTH208 - names are wanted
    for name in [*reversed(_marked(folder) or {}), MARK]:
        if name in names:
            (folder / name).unlink()
    folder.rmdir()


def write_file(path: Path, data: bytes, kept: Kept) -> None:
    """Write one file as a whole, over an ordinary file if there is one; its permissions stay.

    Raises Refused for what belongs to the author or to a build and for all that is no ordinary file, else OSError.
    """
    path = _placed(path)
    mode = path.lstat().st_mode if os.path.lexists(path) else None
    if mode is not None and not stat.S_ISREG(mode):
        thing = "a folder" if stat.S_ISDIR(mode) else "a link" if stat.S_ISLNK(mode) else "no ordinary file"
        raise Refused(f"{path} is {thing}, so nothing was written. Name another file.")
    if _belongs(path, kept):
        raise Refused(f"{path} is a place that scriptkit reads from, so nothing was written. Name another file.")
    if _marked(path.parent) is not None:
        raise Refused(f"{path.parent} was made by a build, which replaces all of it. Name a file elsewhere.")
    if mode is not None and not os.access(path, os.W_OK):
        raise Refused(f"{path} is write-protected, so nothing was written. Name another file.")
    _replace(path, data, stat.S_IMODE(mode) if mode is not None else None)


def held(path: Path, most: int = sys.maxsize) -> bytes | None:
    """What an ordinary file holds, None where nothing is; Refused for all else, and for more than `most` bytes."""
    about = path.lstat() if os.path.lexists(path) else None
    if about and not stat.S_ISREG(about.st_mode):
        raise Refused(f"{path} is no ordinary file, so nothing was written. Put an ordinary file there.")
    if about and about.st_size > most:
        raise Refused(f"{path} has more than {most / 1e6:g} MB, so nothing was written. Move it elsewhere.")
    return path.read_bytes() if about else None


def add_to(path: Path, more: bytes, known: bytes | None) -> None:
    """Write `more` behind what a file of the author's holds, all or none of it.

    `known` is what it held when it was read. Raises as `held` does, and Refused where it holds something else by now.
    """
    path = _placed(path)
    with locked(path.parent):
        if held(path) != known:
            raise Refused(f"{path} was changed meanwhile, so nothing was written. Run it again.")
        if known is not None and not os.access(path, os.W_OK):
            raise Refused(f"{path} is write-protected, so nothing was written.")
        _replace(path, (known or b"") + more, None if known is None else stat.S_IMODE(path.lstat().st_mode))


def rewrite(path: Path, change: Callable[[bytes | None], bytes | None]) -> bool:
    """Write what `change` makes of what a file of ours holds by now (None: it is not there); whether it did.

    `change` gives None where the file is to stay. No other command writes it meanwhile. Raises as `write_file` does.
    """
    with locked(path.parent):
        data = change(held(path))
        if data is not None:
            write_file(path, data, Kept())
    return data is not None


def _replace(path: Path, data: bytes, mode: int | None) -> None:
    from tempfile import mkstemp

    handle, name = mkstemp(dir=path.parent, prefix=".scriptkit-")
    made = Path(name)
    try:
        with os.fdopen(handle, "wb") as out:
            out.write(data)
            out.flush()
            os.fsync(out.fileno())  # a machine that stops may not leave a name without its content
        made.chmod(0o666 & ~_umask() if mode is None else mode)
        made.replace(path)
    except BaseException:
        made.unlink()
        raise


def _umask() -> int:
    """What is taken off the permissions of a new file; it can only be read by setting it."""
    mask = os.umask(0)
    os.umask(mask)
    return mask


def _belongs(path: Path, kept: Kept) -> bool:
    """Whether a path is a file that is read, or lies in a folder that texts are read from, by whatever spelling."""
    around = (path, *path.parents)
    return any(_same(path, one) for one in kept.files) or any(_same(up, one) for up in around for one in kept.folders)


def _same(one: Path, other: Path) -> bool:
    """Whether two paths lead to the same place: links, hard links and a file system blind to case included."""
    try:
        return one.samefile(other)
    except (OSError, ValueError):
        pass
    try:
        return one.resolve() == other.resolve()
    except (OSError, ValueError, RuntimeError):
        return False


def write_new(path: Path, data: bytes) -> bool:
    """Write a file that is not there; False, and nothing done, where anything is. None of it stays if that fails."""
    try:
        out = path.open("xb")
    except FileExistsError:
        return False
    try:
        with out:
            out.write(data)
            out.flush()
            os.fsync(out.fileno())  # as in _replace
    except BaseException:
        path.unlink()
        raise
    return True
