"""All that is published goes by one clock and one running order: the plan's, or the recording's."""

from __future__ import annotations

from scriptkit import build, keys
from scriptkit.model import Facts
from scriptkit.model.taking import KeptRecording, KeptSentence
from tests.scripts import GRIP, Write, worked_out

OUTLINE = (
    GRIP
    + """
    order: [opening, hang, row]
    errata: [{was: a minute, now: two minutes, where: row, since: 2026-04-01}]
    """
)
TEXTS = {
    "segments/opening.md": "Hello, everybody. [aside] [hold 15s: hello]",
    "segments/hang.md": "One trial timed hangs. [from mora-2022] [hold 15s: hang]",
    "segments/row.md": "Another one did it again. [from lind-2019] [hold 15s: row]",
}


def recorded(facts: Facts, *starts: float) -> KeptRecording:
    said = zip(facts.segments, starts, strict=True)
    kept = [KeptSentence(part.id, keys.of(part.sentences[0].text), start, start + 2) for part, start in said]
    return KeptRecording(100.0, tuple(kept))


def test_after_a_take_chapters_references_and_corrections_are_those_of_the_recording(episode: Write) -> None:
    plan = worked_out(episode({"outline.yaml": OUTLINE, **TEXTS}))
    assert [one.title for one in plan.publication.chapters] == ["Opening", "Bar hang", "Ring row"]
    assert [one.id for one in plan.publication.references] == ["mora-2022", "lind-2019"]
    made = build.as_built(plan, recorded(plan, 3.0, 65.25, 30.5)).publication
    assert [one.line for one in made.chapters] == ["0:00 Opening", "0:30 Ring row", "1:05 Bar hang"]
    assert [one.id for one in made.references] == ["lind-2019", "mora-2022"]
    assert made.corrections[0].start == 30.5
    assert "0:30 Ring row\n1:05 Bar hang" in made.description


def test_too_few_chapters_are_none(episode: Write) -> None:
    made = worked_out(episode({"outline.yaml": OUTLINE.replace("opening, ", ""), **TEXTS})).publication
    assert (made.chapters, made.parts) == ((), 2)
    assert "Chapters" not in made.description
