"""Runs a command of scriptkit inside the test's own process, and gives what it printed and how it ended."""

from __future__ import annotations

import io
import json
import sys
from pathlib import Path
from typing import Any, NamedTuple
from unittest import mock

from scriptkit import cli

SMALLEST = """
    title: Three ways to train your grip
    exercises:
      bar-hang:
        name: Bar hang
        grade: A
        claims:
          - say: In one trial of 38 climbers, hang time rose by about a fifth.
            source: mora-2022
          - say: I think it is the easiest one to do anywhere.
            opinion: true
        shots:
          - {size: FS, plane: side, of: bar hang with straight arms, reps: 1}
    sources:
      mora-2022:
        title: Six weeks of timed hangs
        year: 2022
        doi: 10.5555/grip.22
        design: randomised trial
        n: 38
        duration_weeks: 6
        findings: {hang: {outcome: hang time, result: 22 percent, values: {before: 41 s, after: 50 s}}}
        invented: true
    """


class Done(NamedTuple):
    """How a command ended."""

    status: int
    out: str
    err: str

    @property
    def json(self) -> Any:
        """What was printed, read as JSON that holds to the standard."""
        return json.loads(self.out, parse_constant=lambda _name: 1 / 0)


def run(*arguments: str | Path, encoding: str = "utf-8") -> Done:
    """Run `scriptkit ARGUMENTS` with a terminal of that encoding that is no terminal to look at."""
    out, err = (io.TextIOWrapper(io.BytesIO(), encoding=encoding, errors="backslashreplace") for _ in range(2))
    with (
        mock.patch.object(sys, "argv", ["scriptkit", *map(str, arguments)]),
        mock.patch.object(sys, "stdout", out),
        mock.patch.object(sys, "stderr", err),
    ):
        status = cli.main()
    told = []
    for stream in (out, err):
        stream.flush()
        told.append(stream.buffer.getvalue().decode(encoding))
    return Done(status, *told)


def held(folder: Path) -> dict[str, bytes | str | None]:
    """Everything below a folder by its path: the bytes of a file, where a link leads, None for a folder."""
    found: dict[str, bytes | str | None] = {}
    for path in sorted(folder.rglob("*")):
        name = path.relative_to(folder).as_posix()
        if path.is_symlink():
            found[name] = str(path.readlink())
        else:
            found[name] = path.read_bytes() if path.is_file() else None
    return found
