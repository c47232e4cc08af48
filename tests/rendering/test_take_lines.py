"""What is written of takes is read back as it was."""

from __future__ import annotations

import pytest

from scriptkit.model.kept_takes import KeptTake
from scriptkit.places import SourceFile
from scriptkit.reading import takes
from scriptkit.rendering import take_lines


@pytest.mark.parametrize("name", ["hill-calves", "it's: a {folder}, #1", "Wade \u202e", "0123", "yes"])
def test_any_name_of_a_folder_comes_back(name: str) -> None:
    written = take_lines.written([KeptTake("one", 150), KeptTake(name, 161.5, 14.25, 900, 334.4)])
    found: list = []
    back = takes.from_text(SourceFile("takes.yaml", written.decode()), found, [])
    assert found == []
    assert [(str(one.episode), one.pace, one.letters, one.words, one.seconds) for one in back] == [
        ("one", 150, None, None, None),
        (name, 161.5, 14.25, 900, 334.4),
    ]


def test_none_is_an_empty_list() -> None:
    assert takes.from_text(SourceFile("takes.yaml", take_lines.written([]).decode()), [], []) == ()
