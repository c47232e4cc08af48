"""What one command works on: the episode it was given, its facts and findings, and where its answer goes."""

from __future__ import annotations

import os
import sys
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

if TYPE_CHECKING:
    from scriptkit import build as building
    from scriptkit import model
    from scriptkit.findings import Finding
    from scriptkit.terminal import Ink


class Session:
    """What a command works on: the material, the facts and findings; `facts` is None where the outline cannot be read."""

    def __init__(self, episode: Path, stage: str = "record", pace: float | None = None) -> None:
        from scriptkit import build

        self.build = build
        self.name = episode.resolve().name
        self.material: building.Material = build.read(episode)
        self.facts: model.Facts | None = build.work_out(self.material, pace) if self.material.readable else None
        self.found: list[Finding] = build.check(self.facts, stage) if self.facts else build.unreadable(self.material)

    def status(self, strict: bool = False) -> int:
        """The exit status."""
        if self.facts is None:
            return 2
        counted = ("error", "warning") if strict else ("error",)
        return int(any(one.severity in counted and not one.allowed for one in self.found))

    def readable(self, fmt: str, output: Path | None) -> model.Facts:
        """The facts; where there are none, what is wrong with the outline is printed and the command ends."""
        if self.facts is None:
            self.give(self.findings(fmt), output)
            sys.exit(2)
        return self.facts

    def findings(self, fmt: str) -> bytes:
        """The findings as text or JSON."""
        if fmt != "text":
            from scriptkit.rendering import sheets

            return sheets.to_json(sheets.check_json(self.found, self.name, self.facts))
        from scriptkit import terminal
        from scriptkit.rendering import rows

        counts = rows.summary(self.found)
        return terminal.findings(self.found, self.material.folders.files, ink(), counts).encode("utf-8")

    def give(self, data: bytes, output: Path | None) -> None:
        """Print, or write into the file that was named."""
        if output is None:
            say(data)
            return
        from scriptkit import writing

        folders = self.material.folders
        guarded = [base / name for base in (folders.episode, folders.channel) for name in ("segments", "templates")]
        try:
            writing.write_file(output, data, self.build.files_read(self.material), guarded)
        except (writing.Refused, OSError) as error:
            fail(why(error, output))


def why(error: Exception, path: Path) -> str:
    if isinstance(error, OSError):
        return f"{path} cannot be written: {error.strerror or error}."
    return str(error)


def fail(message: str) -> NoReturn:
    sys.stderr.write(message.rstrip() + "\n")
    sys.exit(2)


def say(data: bytes) -> None:
    sys.stdout.flush()
    sys.stdout.buffer.write(data)
    sys.stdout.buffer.flush()


def ink() -> Ink:
    from scriptkit.terminal import Ink

    return Ink(sys.stdout.isatty() and not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb")
