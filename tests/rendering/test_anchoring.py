"""A finding belongs to the sentence whose words it is about, or to the source whose entry it stands in."""

from __future__ import annotations

from scriptkit.rendering import anchoring
from scriptkit.session import Session
from tests.scripts import Write

OUTLINE = """
title: One
exercises: {hang: {name: Bar hang, grade: A}}
evidence: evidence.yaml
"""
REGISTER = """
sources:
  mora-2022:
    title: Hangs
    doi: 10.5555/grip.22
    status: retracted
    findings:
      hang: {outcome: hang time, result: 9 s}
  lind-2019:
    title: Rows
    doi: not one
"""
TEXT = "Hang time rose. [from mora-2022] It builds grip strength.\n\nRows do too. [from lind-2019]\n"


def work(episode: Write) -> Session:
    return Session(episode({"outline.yaml": OUTLINE, "evidence.yaml": REGISTER, "segments/hang.md": TEXT}))


def test_each_sentence_gets_the_findings_at_its_words(episode: Write) -> None:
    done = work(episode)
    assert done.facts is not None
    said = [sentence.text for segment in done.facts.segments for sentence in segment.sentences]
    bare = {
        said[number]
        for number, own in anchoring.by_sentence(done.facts, done.found).items()
        if any(one.name == "claim-without-source" for one in own)
    }
    assert bare == {"It builds grip strength."}


def test_each_source_gets_the_findings_in_its_entry_and_no_other_one(episode: Write) -> None:
    done = work(episode)
    assert done.facts is not None
    of_each = anchoring.by_source(done.facts, done.found)
    names = {name: {one.name for one in own} for name, own in of_each.items()}
    assert "source-retracted" in names["mora-2022"]
    assert "identifier-wrong" in names["lind-2019"]
    assert "source-retracted" not in names["lind-2019"]
    assert "identifier-wrong" not in names["mora-2022"]
    assert all(one.place.file == "evidence.yaml" for own in of_each.values() for one in own)
