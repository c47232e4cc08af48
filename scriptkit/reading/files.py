"""The files of an episode: which may be opened, and their text. Everything else a path may lead to is refused."""

from __future__ import annotations

import os
import stat
from pathlib import Path

from scriptkit.findings import Finding
from scriptkit.places import Place, SourceFile
from scriptkit.reading import faults

MOST_BYTES = 4_000_000
MOST_SPOKEN_BYTES = 400_000  # some seven hours of speech
CHANNEL_LEVELS = 3  # how many folders up channel.yaml is looked for


class Folders:
    """The episode folder and the channel folder (the same where there is no channel.yaml), and all that was read from them."""

    def __init__(self, episode: Path) -> None:
        self.episode = episode.resolve()
        self.channel = self.episode
        for parent in list(self.episode.parents)[:CHANNEL_LEVELS]:
            if (parent / "channel.yaml").is_file():
                self.channel = parent
                break
        self.files: dict[str, SourceFile] = {}
        self.findings: list[Finding] = []

    def name(self, path: Path) -> str:
        """The name a file goes by in messages: relative to the episode folder, with `../` for the channel's."""
        return os.path.relpath(path, self.episode).replace(os.sep, "/")

    def sibling(self, asked_by: SourceFile, written: str) -> Path:
        """The path that a file names, relative to that file."""
        return (self.episode / asked_by.name).parent / written

    def text(self, path: Path, what: str, asked: Place | None = None, most: int = MOST_BYTES) -> SourceFile | None:
        """The text of a file, read once; None where it may not or cannot be read, which is noted at `asked` or in the file itself."""
        name = self.name(path)
        if name in self.files:
            return self.files[name]
        place = asked or Place(name, 1, 1)
        fault, data = self._bytes(path, name, place, what, most)
        if fault is None:
            decoded = _decode(data)
            if isinstance(decoded, str):
                file = SourceFile(name, decoded)
                self.files[name] = file
                return file
            at, problem = decoded
            fault = faults.not_utf8(SourceFile(name, at).place(len(at)), problem)
        self.findings.append(fault)
        return None

    def allowed(self, path: Path) -> bool:
        """Whether a path stays inside the episode or channel folder, links followed."""
        try:
            real = path.resolve()
        except (OSError, RuntimeError, ValueError):
            return False
        return real.is_relative_to(self.episode) or real.is_relative_to(self.channel)

    def _bytes(self, path: Path, name: str, place: Place, what: str, most: int) -> tuple[Finding | None, bytes]:
        if "\x00" in str(path) or not self.allowed(path):
            return faults.path_outside(place, name.replace("\x00", "?")), b""
        try:
            about = path.stat()
            if stat.S_ISDIR(about.st_mode):
                return faults.unreadable_file(place, f"{faults.quoted(name)} is a folder"), b""
            if not stat.S_ISREG(about.st_mode):
                return faults.unreadable_file(place, f"{faults.quoted(name)} is no ordinary file"), b""
            if about.st_size > most:
                sizes = [f"{count / 1e6:.1f} MB" for count in (about.st_size, most)]
                return faults.file_too_large(place, *sizes), b""
            return None, path.read_bytes()
        except (FileNotFoundError, NotADirectoryError):
            return faults.missing_file(place, name, what), b""
        except OSError as error:
            return faults.unreadable_file(
                place, f"{faults.quoted(name)}: {error.strerror or 'it cannot be opened'}"
            ), b""


def _decode(data: bytes) -> str | tuple[str, str]:
    """The text of a file without byte-order mark and CR, or the text before the first wrong byte and what is wrong."""
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        return "", "it looks like UTF-16"
    if data.startswith(b"\xef\xbb\xbf"):
        data = data[3:]
    try:
        text = data.decode("utf-8")
    except UnicodeDecodeError as error:
        before = data[: error.start].decode("utf-8").replace("\r\n", "\n").replace("\r", "\n")
        return before, f"the character here is stored as byte {data[error.start]:02x}"
    return text.replace("\r\n", "\n").replace("\r", "\n") if "\r" in text else text
