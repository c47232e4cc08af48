"""What has to be mended is known again by the words of its line, also where the line was moved."""

from __future__ import annotations

import pytest

from scriptkit import keys
from scriptkit.computing.taking import unmended
from scriptkit.model import TakeChange
from scriptkit.model.taking import KeptChange, KeptRecording
from scriptkit.places import Place
from tests.scripts import Write, worked_out

OUTLINE = "title: One\nexercises: {hang: {name: Bar hang}}\norder: [hang, talk-end]\n"
FILES = {"outline.yaml": OUTLINE, "segments/hang.md": "It held. [aside]", "segments/talk-end.md": "It held. [aside]"}


@pytest.mark.parametrize(("segment", "files"), [("hang", ["hang"]), ("talk-end", ["talk-end"]), ("gone", ["hang"])])
def test_a_line_is_looked_for_in_its_segment_first(episode: Write, segment: str, files: list[str]) -> None:
    change = KeptChange(segment, keys.of("It held."), "stop", "number", "a number is another one", 3.0, "It hold.")
    found = unmended.find(KeptRecording(changes=(change,)), worked_out(episode(FILES)).segments)
    assert [one.place.file for one in found] == [f"segments/{name}.md" for name in files]
    assert [(one.text, one.weight, one.start, one.said) for one in found] == [("It held.", "stop", 3.0, "It hold.")]


def test_a_line_of_other_words_is_another_one(episode: Write) -> None:
    change = KeptChange("hang", keys.of("It fell."), "stop", "number", "a number is another one", 3.0, "It hold.")
    assert unmended.find(KeptRecording(changes=(change,)), worked_out(episode(FILES)).segments) == ()


@pytest.mark.parametrize(("weight", "count"), [("stop", 1), ("cut", 1), ("claim", 0), ("wording", 0)])
def test_only_what_has_to_be_mended_is_kept(episode: Write, weight: str, count: int) -> None:
    change = TakeChange(weight, "number", "another", 3.0, "hang", Place("segments/hang.md", 1, 1), "38", "83", 0)
    made = unmended.kept([change, change._replace(line=-1)], worked_out(episode(FILES)).segments)
    assert [one.key for one in made] == [keys.of("It held.")] * count
