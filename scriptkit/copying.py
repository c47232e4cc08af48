"""Makes a copy of an episode in which some files are other; the episode is only read, and nothing is replaced."""

from __future__ import annotations

import os
import shutil
import stat
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from secrets import token_hex

from scriptkit.reading.files import Folders
from scriptkit.writing import MARK, Refused, write_new

_NOT_COPIED = (".git", ".hg", ".svn")  # a copy is no second home of a history


def copy(folders: Folders, target: Path, files: Mapping[str, bytes]) -> None:
    """Make `target`, a copy of the episode with `files` in the place of its own; what a build made stays behind.

    A new folder is made beside its place and takes its name when it is whole, so that a kill leaves no half of one.
    Raises Refused where something is there or the copy would be another episode, else OSError; then nothing is left.
    """
    if target.is_symlink() and not target.exists():
        raise Refused(f"{target} is a link to a place that is not there, so nothing was written. Name a new folder.")
    target = Path(os.path.realpath(target))
    _may_make(folders, target)
    new = target if target.is_dir() else target.with_name(f".scriptkit-copy-{token_hex(4)}")
    made: list[Path] = []
    try:
        for folder in (*reversed(target.parents), new):
            if not folder.is_dir():
                folder.mkdir()
                made.append(folder)
        for path in _below(folders.episode):
            name = path.relative_to(folders.episode)
            made.append(new / name)
            if path.is_dir() and not path.is_symlink():
                (new / name).mkdir()
            elif name.as_posix() in files:
                write_new(new / name, files[name.as_posix()])
            else:
                _copy_file(path, new / name)
        _demand_same(folders, target, new)
        if new != target:
            new.rename(target)
    except BaseException:
        _take_back(made)
        raise


def _take_back(made: Sequence[Path]) -> None:
    for path in reversed(made):
        if path.is_dir() and not path.is_symlink():
            path.rmdir()
        else:
            path.unlink(missing_ok=True)


def _may_make(folders: Folders, target: Path) -> None:
    if os.path.lexists(target) and not target.is_dir():
        raise Refused(f"{target} is there already and is no folder, so nothing was written. Name a new folder.")
    if target.is_dir() and any(target.iterdir()):
        raise Refused(f"{target} is there already and is not empty, so nothing was written. Name a new folder.")
    if target.is_relative_to(folders.episode):
        raise Refused(f"{target} lies in the episode itself, so nothing was written. Name a folder beside it.")
    read_from = [folders.channel / name for name in ("segments", "templates")]
    if any(target.is_relative_to(os.path.realpath(one)) for one in read_from):
        raise Refused(f"{target} is a place that scriptkit reads from, so nothing was written. Name another folder.")


def _below(folder: Path) -> Iterator[Path]:
    """What the episode holds, folders before what is in them; links to folders are not followed."""
    for path in sorted(folder.iterdir()):
        if path.name in _NOT_COPIED or (path.is_dir() and (path / MARK).is_file()):
            continue
        yield path
        if path.is_dir() and not path.is_symlink():
            yield from _below(path)


def _copy_file(path: Path, target: Path) -> None:
    """A file byte by byte, whatever it is reached by; a link to a folder stays one."""
    if path.is_symlink() and (path.is_dir() or not path.exists()):
        target.symlink_to(path.readlink())
        return
    if not stat.S_ISREG(path.stat().st_mode):
        raise Refused(f"{path} is no ordinary file and cannot be copied, so nothing was written. Move it elsewhere.")
    with path.open("rb") as source, target.open("xb") as out:
        shutil.copyfileobj(source, out)
    shutil.copymode(path, target)


def _demand_same(folders: Folders, target: Path, made: Path) -> None:
    """Refuse a copy that would be read with another channel, or without files that lie beside the episode.

    It is `made` already, in its place or beside that.
    """
    copied = Folders(made)
    beside = folders.episode.with_name(f"{folders.episode.name}-short")
    own = folders.channel == folders.episode
    if folders.has_channel and not own and copied.channel != folders.channel:
        raise Refused(
            f"{target} is out of reach of {folders.channel / 'channel.yaml'}, which the episode needs, so nothing was "
            f"written. Name a folder beside the episode, such as {beside}."
        )
    if copied.has_channel and not folders.has_channel:
        raise Refused(
            f"{copied.channel / 'channel.yaml'} would be read with a copy in {target}, so nothing was written. Name a "
            f"folder beside the episode, such as {beside}."
        )
    named = [name for name in folders.files if name.startswith("../")]
    missing = [name for name in named if not (made / name).is_file()]
    if missing:
        raise Refused(
            f"The episode is read with {missing[0]}, which a copy in {target} would not find, so nothing was written. "
            f"Name a folder beside the episode, such as {beside}."
        )
