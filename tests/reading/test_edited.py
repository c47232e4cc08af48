"""An edit that nobody wrote is read as if it stood on the disk."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path

from scriptkit import build
from scriptkit.reading.edited import Edited
from tests.running import held

Writer = Callable[[Mapping[str, str | bytes]], Path]


def test_what_is_given_is_read_and_all_else_is_read_from_the_disk(episode: Writer) -> None:
    folder = episode({"outline.yaml": "title: One\nexercises: {a: {name: Ab}}\n", "segments/a.md": "Old words."})
    before = held(folder)
    material = build.read(Edited(folder, {"segments/a.md": b"New words."}))
    assert material.texts["a"].file.text == "New words."
    assert material.episode.title == "One"
    broken = build.read(Edited(folder, {"outline.yaml": b"\xff"}))
    assert not broken.readable
    assert held(folder) == before
