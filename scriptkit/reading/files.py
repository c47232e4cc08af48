"""The files of an episode: which may be opened, and their text. Everything else a path may lead to is refused."""

from __future__ import annotations

import os
import stat
from pathlib import Path

from scriptkit.findings import Finding
from scriptkit.places import NO_TEXT, Place, SourceFile, Text
from scriptkit.reading import faults

MOST_BYTES = 4_000_000
MOST_SPOKEN_BYTES = 400_000  # some seven hours of speech
CHANNEL_LEVELS = 3  # how many folders up channel.yaml is looked for


class Folders:
    """The episode folder, the channel folder (the same where there is no channel.yaml), and what was read from them."""

    def __init__(self, episode: Path) -> None:
        self.episode = Path(os.path.realpath(episode))
        self.channel = self.episode
        self.has_channel = False
        for parent in (self.episode, *list(self.episode.parents)[:CHANNEL_LEVELS]):
            if os.path.lexists(parent / "channel.yaml"):
                self.channel, self.has_channel = parent, True
                break
        self.files: dict[str, SourceFile] = {}
        self.findings: list[Finding] = []

    def name(self, path: Path) -> str:
        """The name a file goes by in messages: relative to the episode folder, with `../` for the channel's."""
        return _printable(os.path.relpath(path, self.episode).replace(os.sep, "/"))

    def sibling(self, asked_by: SourceFile, written: str) -> Path:
        """The path that a file names, relative to that file."""
        return (self.episode / asked_by.name).parent / written

    def named(self, written: Text, what: str, most: int = MOST_BYTES) -> SourceFile | None:
        """The text of a file that another one names, or None, which is noted where it is named."""
        place = written.place()
        if "\x00" in written or not self.allowed(self.sibling(written.file, written)):
            self.findings.append(faults.path_outside(place, str(written)))
            return None
        return self.text(self.sibling(written.file, written), what, place, most)

    def text(self, path: Path, what: str, asked: Place | None = None, most: int = MOST_BYTES) -> SourceFile | None:
        """The text of a file, read once; None where it cannot be read: noted at `asked` or in the file itself."""
        name = self.name(path)
        if name in self.files:
            return self.files[name]
        place = asked or Place(name, 1, 1)
        data = self._bytes(path, name, place, what, most)
        decoded = _decode(data, name) if isinstance(data, bytes) else data
        if isinstance(decoded, Finding):
            self.findings.append(decoded)
            return None
        file = SourceFile(name, decoded)
        found = NO_TEXT.search(decoded)
        if found:
            more = len(NO_TEXT.findall(decoded, found.end()))
            self.findings.append(faults.unreadable_character(file.place(found.start()), found[0], str(more or "")))
            file = SourceFile(name, NO_TEXT.sub(" ", decoded))
        self.files[name] = file
        return file

    def allowed(self, path: Path) -> bool:
        """Whether a path stays inside the episode or channel folder, links followed."""
        try:
            real = Path(os.path.realpath(path))
        except (OSError, ValueError):
            return False
        return real.is_relative_to(self.episode) or real.is_relative_to(self.channel)

    def texts(self, folder: Path) -> list[tuple[str, Path]]:
        """Id and path of a folder's Markdown files, in order of their names; a folder that leads out is noted."""
        if not os.path.isdir(folder):  # noqa: PTH112 - a Path's own fails in a closed folder
            return []
        if not self.allowed(folder):
            self.findings.append(faults.path_outside(Place(self.name(folder), 1, 1), self.name(folder)))
            return []
        try:
            return sorted((_printable(path.stem), path) for path in folder.iterdir() if path.suffix == ".md")
        except OSError as error:
            why = error.strerror or "it cannot be opened"
            self.findings.append(faults.unreadable_file(Place(self.name(folder), 1, 1), f"it is a folder: {why}"))
            return []

    def _bytes(self, path: Path, name: str, place: Place, what: str, most: int) -> Finding | bytes:
        if "\x00" in str(path) or not self.allowed(path):
            return faults.path_outside(place, name.replace("\x00", "?"))
        try:
            about = path.stat()
            if stat.S_ISDIR(about.st_mode):
                return faults.unreadable_file(place, f"{faults.quoted(name)} is a folder")
            if not stat.S_ISREG(about.st_mode):
                return faults.unreadable_file(place, f"{faults.quoted(name)} is no ordinary file")
            with path.open("rb") as file:
                data = file.read(most + 1)
            if len(data) > most:
                size = f"{max(about.st_size, len(data)) / 1e6:.2f} MB"
                return faults.file_too_large(place, size, f"{most / 1e6:g} MB")
        except (FileNotFoundError, NotADirectoryError):
            return faults.missing_file(place, name, what, _nearest(path))
        except OSError as error:
            return faults.unreadable_file(place, f"{faults.quoted(name)}: {error.strerror or 'it cannot be opened'}")
        return data


def _printable(name: str) -> str:
    """A file name as text, whatever bytes it is made of."""
    return os.fsencode(name).decode("utf-8", errors="replace")


def _nearest(path: Path) -> str:
    """The name in a folder that is nearest to one that is not there."""
    try:
        names = sorted(_printable(one.name) for one in path.parent.iterdir())
    except OSError:
        return ""
    return faults.near(path.name, [name for name in names if not name.startswith(".")])


def _decode(data: bytes, name: str) -> str | Finding:
    """The text of a file without byte-order mark and CR, or the finding that it is none."""
    if data.startswith((b"\xff\xfe", b"\xfe\xff")) or (len(data) > 1 and data.count(0) * 3 >= len(data)):
        return faults.not_utf8(Place(name, 1, 1), "it looks like UTF-16")
    data = data.removeprefix(b"\xef\xbb\xbf")
    try:
        return _with_plain_line_ends(data.decode("utf-8"))
    except UnicodeDecodeError as error:
        before = _with_plain_line_ends(data[: error.start].decode("utf-8"))
        place = SourceFile(name, before).place(len(before))
        return faults.not_utf8(place, f"the character here is stored as the byte {data[error.start]:02x}")


def _with_plain_line_ends(text: str) -> str:
    return text.replace("\r\n", "\n").replace("\r", "\n") if "\r" in text else text
