"""Lets commands that write into one folder wait for each other, but never without end."""

from __future__ import annotations

import contextlib
import os
import sys
from collections.abc import Iterator
from pathlib import Path

LONGEST = 60.0  # seconds that one of them waits
_EVERY = 0.02  # seconds


@contextlib.contextmanager
def locked(folder: Path) -> Iterator[None]:
    """Hold the lock of a folder, which ends by itself with the process; a drive that knows no locks goes without.

    Raises TimeoutError where another command holds it for longer than anybody should wait.
    """
    handle = _open(folder)
    try:
        _wait(handle)
        yield
    finally:
        os.close(handle)


def _wait(handle: int) -> None:
    import time

    end = time.monotonic() + LONGEST
    while not _locks(handle):
        if time.monotonic() >= end:
            raise TimeoutError("another command has been writing there for a minute; run it again")
        time.sleep(_EVERY)


if sys.platform == "win32":
    import msvcrt

    def _open(folder: Path) -> int:
        """A folder cannot be opened there, so a file stands for it; outside, since it stays."""
        from hashlib import sha256
        from tempfile import gettempdir

        name = sha256(os.path.normcase(os.path.realpath(folder)).encode(errors="surrogatepass")).hexdigest()[:16]
        return os.open(Path(gettempdir()) / f"scriptkit-{name}.lock", os.O_CREAT | os.O_RDWR)

    def _locks(handle: int) -> bool:
        try:
            msvcrt.locking(handle, msvcrt.LK_NBLCK, 1)
        except OSError:
            return False
        return True
else:
    import fcntl

    def _open(folder: Path) -> int:
        """A lock on the folder itself leaves no file."""
        return os.open(folder, os.O_RDONLY)

    def _locks(handle: int) -> bool:
        try:
            fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            return False
        except OSError:  # some network drives know no locks
            return True
        return True
