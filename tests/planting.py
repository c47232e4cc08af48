"""Reads pages of planted faults and puts them into clean episodes; tests/episodes/planted/README.md tells how."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path
from typing import NamedTuple

from scriptkit import build
from scriptkit.findings import Finding
from scriptkit.places import Place, SourceFile

TESTS = Path(__file__).parent
CLEAN = {
    "sample": TESTS.parent / "sample_episode",
    "bouldering-grip": TESTS / "episodes" / "bouldering-grip",
    "swim-pulls": TESTS / "episodes" / "swim-pulls",
}
PAGES = TESTS / "episodes" / "planted"
HERE = "»"
SIGNS = {"=", "-", "+"}
ESCAPES = ((rb"\t", b"\t"), (rb"\x07", b"\x07"), (rb"\xff", b"\xff"))
FIRST_MARK = 0xF0000  # one character of private use for each plant, while its place is looked for


class Change(NamedTuple):
    """Some text of a file, and what stands there instead; without an `old` text it is put at the end of the file."""

    file: str
    old: str
    new: str


class Plant(NamedTuple):
    """A fault of one kind, the changes that bring it into a clean episode, and other kinds that come with it."""

    name: str
    page: str
    line: int
    episode: str
    changes: tuple[Change, ...]
    brings: tuple[str, ...]
    alone: str


class Planted(NamedTuple):
    """The files of an episode with faults, and the place of each fault."""

    files: dict[str, bytes]
    places: list[Place]


def plants() -> list[Plant]:
    """The faults of all pages."""
    found: list[Plant] = []
    for page in sorted(PAGES.glob("*.txt")):
        lines = page.read_text(encoding="utf-8").split("\n")
        starts = [number for number, line in enumerate(lines) if line.startswith("## ")]
        for start, end in zip(starts, [*starts[1:], len(lines)], strict=True):
            found.append(_plant(page.name, start + 1, lines[start:end]))
    return found


def _plant(page: str, number: int, lines: Sequence[str]) -> Plant:
    """The fault that a heading and the lines under it tell of."""
    episode = file = ""
    brings: list[str] = []
    alone = ""
    hunks: list[tuple[str, list[tuple[str, str]]]] = []
    for line in lines[1:]:
        word, _, rest = line.partition(" ")
        if not word:
            hunks += [(file, [])] if file else []
        elif word in SIGNS:
            hunks[-1][1].append((word, rest))
        elif word == "brings":
            for one in rest.split():
                kind, _, times = one.partition("*")
                brings += [kind] * int(times or 1)
        elif word == "alone":
            alone = rest
        elif word in CLEAN:
            episode, file = word, rest
            hunks.append((file, []))
        elif word != "#":
            file = line
            hunks.append((file, []))
    changes = tuple(_change(file, signed) for file, signed in hunks if signed)
    return Plant(lines[0][3:].strip(), page, number, episode, changes, tuple(brings), alone)


def _change(file: str, signed: Sequence[tuple[str, str]]) -> Change:
    old = "\n".join(text.replace(HERE, "") for sign, text in signed if sign in "=-")
    return Change(file, old, "\n".join(text for sign, text in signed if sign in "=+"))


def put(episode: str, chosen: Sequence[Plant]) -> Planted:
    """A clean episode with these faults in it."""
    clean = clean_files(episode)
    cuts: dict[str, list[tuple[int, int, str]]] = {}
    for number, plant in enumerate(chosen):
        for change in plant.changes:
            new = change.new.replace(HERE, chr(FIRST_MARK + number))
            cuts.setdefault(change.file, []).append(_cut(plant, clean.get(change.file, b"").decode(), change, new))
    files = dict(clean)
    places: dict[int, Place] = {}
    for name, made in cuts.items():
        text = _cut_in(name, clean.get(name, b"").decode(), made)
        files[name], found = _without_marks(name, text)
        places.update(found)
    lost = [plant.name for number, plant in enumerate(chosen) if number not in places]
    assert not lost, f"no {HERE} shows where the finding of {lost} is"
    return Planted(files, [places[number] for number in range(len(chosen))])


def clean_files(episode: str) -> dict[str, bytes]:
    """The files of a clean episode by name."""
    folder = CLEAN[episode]
    paths = sorted(path for path in folder.rglob("*") if path.is_file())
    named = {path.relative_to(folder).as_posix(): path for path in paths}
    return {name: path.read_bytes() for name, path in named.items() if not name.startswith("build/")}


def _cut(plant: Plant, text: str, change: Change, new: str) -> tuple[int, int, str]:
    """From where to where a file is changed, and what stands there then; what stays the same is left out."""
    if not change.old:
        return len(text), len(text), new + "\n"
    told = f"{plant.page}, line {plant.line}: {change.file} of {plant.episode} has not once"
    assert text.count(change.old) == 1, f"{told} {change.old!r}"
    start = text.index(change.old)
    old = change.old
    before = _alike(old, new)
    after = _alike(old[before:][::-1], new[before:][::-1])
    return start + before, start + len(old) - after, new[before : len(new) - after]


def _alike(one: str, other: str) -> int:
    """With how many same characters two texts begin."""
    pairs = enumerate(zip(one, other, strict=False))
    return next((at for at, (mine, theirs) in pairs if mine != theirs), min(len(one), len(other)))


def _cut_in(name: str, text: str, cuts: Iterable[tuple[int, int, str]]) -> str:
    """The text with all changes made. Two of them may stand at one place, and may not cut the same words."""
    parts: list[str] = []
    at = 0
    for start, end, new in sorted(cuts, key=lambda cut: (cut[0], cut[1] > cut[0])):
        assert start >= at, f"two faults change the same words of {name}: {text[start : at or end]!r}"
        parts += [text[at:start], new]
        at = end
    return "".join([*parts, text[at:]])


def _without_marks(name: str, text: str) -> tuple[bytes, dict[int, Place]]:
    """The bytes of a text, and the place of each mark in it."""
    parts: list[str] = []
    marks: dict[int, int] = {}
    length = 0
    for sign in text:
        if ord(sign) >= FIRST_MARK:
            marks[ord(sign) - FIRST_MARK] = length
            continue
        parts.append(sign)
        length += 1
    data = "".join(parts)
    file = SourceFile(name, data)
    raw = data.encode()
    for shown, meant in ESCAPES:
        raw = raw.replace(shown, meant)
    return raw, {number: file.place(offset) for number, offset in marks.items()}


def findings(folder: Path, files: Mapping[str, bytes], stage: str = "publish") -> list[Finding]:
    """What is found in an episode of these files that no comment allows."""
    for name, data in files.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(data)
    material = build.read(folder)
    if not material.readable:
        return build.unreadable(material, stage)
    return [one for one in build.check(build.work_out(material), stage) if not one.allowed]
