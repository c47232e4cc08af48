"""An episode is read whole: what is kept beside the outline too, and nothing that is not there is missed."""

from __future__ import annotations

from scriptkit import material
from tests.running import SMALLEST
from tests.scripts import Write

VERDICT = "verdicts:\n  - {sentence: I think it is the easiest one to do anywhere., verdict: verified}\n"


def test_what_is_kept_beside_the_outline_is_read(episode: Write) -> None:
    ratings = "ratings: {bar-hang: {steady: 4}}\n"
    read = material.read(
        episode(
            {"outline.yaml": SMALLEST, "verdicts.yaml": VERDICT, "ratings-again.yaml": ratings, "segments/x.md": "X."}
        )
    )
    assert [one.verdict for one in read.verdicts] == ["verified"]
    assert read.again is not None
    assert read.texts.keys() == {"x"}
    assert read.readable


def test_without_them_there_is_none(episode: Write) -> None:
    read = material.read(episode({"outline.yaml": SMALLEST}))
    assert (read.verdicts, read.again, dict(read.texts)) == ((), None, {})


def test_a_list_is_no_outline(episode: Write) -> None:
    read = material.read(episode({"outline.yaml": "- 1\n"}))
    assert not read.readable
    assert read.folders.findings


def test_no_file_that_is_read_may_be_written_over(episode: Write) -> None:
    read = material.read(episode({"outline.yaml": f"evidence: [more.yaml]{chr(10)}title: One\n"}))
    names = {path.name for path in material.files_read(read)}
    assert {"outline.yaml", "more.yaml", "channel.yaml", "verdicts.yaml", "ratings-again.yaml", "takes.yaml"} <= names
