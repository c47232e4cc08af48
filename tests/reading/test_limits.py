"""Limits are read as they are written; a line that is no limit limits nothing."""

from __future__ import annotations

from math import inf
from pathlib import Path

import pytest

from scriptkit.model import Limits
from scriptkit.reading import limits


def test_the_shipped_file_gives_every_limit() -> None:
    assert limits.load() == Limits(
        title_characters=100,
        description_bytes=5000,
        chapters=3,
        chapter_seconds=10,
        chapter_title_characters=49,
    )


@pytest.mark.parametrize(
    ("text", "most"),
    [
        ("description_bytes = 700", 700),
        ("\ufeffdescription_bytes = 700 # so many\r\n", 700),
        ("description_bytes = -1", inf),
        ("description_bytes = true", inf),
        ("description_bytes = 'many'", inf),
        ("unknown = 3", inf),
        ("description_bytes =", inf),
        ("\xff", inf),
    ],
)
def test_what_is_no_whole_number_limits_nothing(tmp_path: Path, text: str, most: float) -> None:
    file = tmp_path / "limits.toml"
    file.write_bytes(text.encode("latin-1" if text == "\xff" else "utf-8"))
    assert limits.load(file) == Limits(description_bytes=most)


def test_a_file_that_is_not_there_limits_nothing(tmp_path: Path) -> None:
    assert limits.load(tmp_path / "limits.toml") == Limits()
