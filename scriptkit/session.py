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
    from scriptkit.writing import Kept

# each as wide as what it stands for, so that a caret stays under its word
_PLAIN = str.maketrans({"…": "~", "–": "-", "—": "-", "‘": "'", "’": "'", "“": '"', "”": '"', "×": "x", "−": "-"})


class Session:
    """What a command works on; `facts` is None where the outline cannot be read."""

    def __init__(self, episode: Path, stage: str = "record", pace: float | None = None, *, drawn: bool = False) -> None:
        from scriptkit import build

        self.build = build
        self.stage = stage
        self.no_folder = no_folder(episode)
        self.sheet: Path | None = None  # a file that was read beside the episode
        self.name = Path(os.path.realpath(episode)).name
        self.material: building.Material = build.read(episode)
        self.facts: model.Facts | None = None
        if self.material.readable:
            self.facts = build.work_out(self.material, pace, drawn=drawn)
        self.found: list[Finding] = (
            build.check(self.facts, stage) if self.facts else build.unreadable(self.material, stage)
        )

    def count(self, severity: str) -> int:
        """How many findings of that severity are open."""
        return sum(one.severity == severity and not one.allowed for one in self.found)

    def status(self, *, strict: bool = False) -> int:
        """The exit status."""
        if self.facts is None:
            return 2
        return int(self.count("error") > 0 or (strict and self.count("warning") > 0))

    def readable(self, fmt: str = "text", output: Path | None = None) -> model.Facts:
        """The facts; where there are none, what is wrong with the outline is told and the command ends.

        A program gets it where it wanted its answer; a file that a person named is left as it is.
        """
        if self.facts is None:
            self.demand_folder(fmt)
            if fmt == "json":
                self.give(self.findings(fmt), output)
            elif fmt == "text" and output is None:
                say(self.findings(fmt))
            else:
                tell("The outline cannot be read; `scriptkit check` shows why.")
            sys.exit(2)
        return self.facts

    def demand_folder(self, fmt: str) -> None:
        """Tell where there is no episode folder; a command that answers a person ends there."""
        if self.no_folder:
            tell(self.no_folder)
            if fmt != "json":
                sys.exit(2)

    def findings(self, fmt: str) -> str | bytes:
        """The findings as text or JSON."""
        if fmt == "json":
            from scriptkit.rendering import sheets

            return sheets.to_json(sheets.check_json(self.found, self.name, self.facts))
        from scriptkit import terminal

        guarded = bool(self.facts and (self.facts.passages or self.facts.cautions))
        return terminal.findings(self.found, self.material.folders.files, ink(), self.stage, guarded=guarded)

    def give(self, answer: str | bytes, output: Path | None) -> None:
        """Print, or write into the file that was named."""
        if output is None:
            say(answer)
            return
        from scriptkit import writing

        try:
            writing.write_file(output, answer.encode() if isinstance(answer, str) else answer, self.kept())
        except (writing.Refused, OSError) as error:
            fail(why(error, output))

    def kept(self) -> Kept:
        """What belongs to the author and is never written over."""
        from scriptkit import writing

        folders = self.material.folders
        texts = [base / name for base in (folders.episode, folders.channel) for name in ("segments", "templates")]
        return writing.Kept([*self.build.files_read(self.material), *([self.sheet] if self.sheet else [])], texts)

    def tell_open(self) -> None:
        """A word about open errors, where the answer does not show them."""
        errors = self.count("error")
        if errors:
            tell(f"{errors} error{'s are' if errors > 1 else ' is'} open; `scriptkit check` shows what and where.")

    def end(self, *, clean: bool = True) -> NoReturn:
        """End a command whose answer was no list of findings; `clean` is false where the answer asks for something."""
        self.tell_open()
        sys.exit(self.status() or int(not clean))


def no_folder(episode: Path) -> str:
    """Why a path is no episode folder, in a sentence; nothing where it is one."""
    # unlike a Path's own, these two also answer where a name is too long, links lead in a circle or a folder is closed
    if os.path.isdir(episode):  # noqa: PTH112
        return ""
    if os.path.isfile(episode):  # noqa: PTH113
        return f"{episode} is a file. Give the folder that holds outline.yaml: {episode.parent}"
    return f'There is no folder "{episode}". `scriptkit new FOLDER` makes one to start from.'


def why(error: Exception, path: Path) -> str:
    """What went wrong with writing, in a sentence."""
    if isinstance(error, OSError):
        return f"{path} cannot be written: {error.strerror or error}."
    return str(error)


def tell(message: str) -> None:
    """Say something beside the answer."""
    from scriptkit.terminal import visible

    if sys.stderr is not None:
        try:
            sys.stderr.write(visible(" ".join(message.split("\n"))) + "\n")
            sys.stderr.flush()
        except OSError:  # nobody can be told; the exit status still tells a program
            os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stderr.fileno())


def fail(message: str) -> NoReturn:
    """Say why a command cannot do what it was told, and end it."""
    tell(message)
    sys.exit(2)


def say(answer: str | bytes) -> None:
    """Print an answer. Text goes out in what the terminal can show, bytes as they are."""
    if sys.stdout is None:
        return
    try:
        sys.stdout.flush()
        sys.stdout.buffer.write(shown(answer, sys.stdout.encoding) if isinstance(answer, str) else answer)
        sys.stdout.buffer.flush()
    except BrokenPipeError:
        # whoever read our output has read enough; nothing more is said, not even while closing
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    except OSError as error:
        sys.exit(unprinted(error))


def unprinted(error: OSError) -> int:
    """Tell that an answer cannot be printed; nothing more goes there, not even while closing. The exit status."""
    if sys.stdout is not None:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    tell(why(error, Path("The answer")))
    return 2


def shown(text: str, encoding: str) -> bytes:
    """A text in an encoding; signs that it does not have are replaced by plain ones."""
    try:
        return text.encode(encoding)
    except UnicodeEncodeError:
        from scriptkit.terminal import width

        plain = text.translate(_PLAIN)
        return b"".join(one.encode(encoding, errors="ignore") or b"?" * width(one) for one in plain)


def ink() -> Ink:
    """Colour on a terminal that wants it, and the terminal's width."""
    from shutil import get_terminal_size

    from scriptkit.terminal import WIDTH, Ink

    terminal = sys.stdout is not None and sys.stdout.isatty()
    wanted = not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb"
    return Ink(colour=terminal and wanted, columns=get_terminal_size((WIDTH, 24)).columns)
