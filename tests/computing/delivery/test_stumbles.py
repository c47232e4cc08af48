"""All that a listener trips over comes from one look at the script, in time that grows with its length only."""

from __future__ import annotations

from time import process_time

from scriptkit import build
from scriptkit.computing.delivery import stumbles
from scriptkit.computing.hearing import claims
from tests.scripts import GRIP, Write


def test_every_kind_is_gathered(episode: Write) -> None:
    text = (
        "Well. (Pause.) For hypertrophy and abduction. [aside] "
        "It rose by 15 percent, 22 percent and 31. [from mora-2022] Fun. [aside] Funny, funny, funny, funny. [aside]"
    )
    facts = build.work_out(build.read(episode({"outline.yaml": GRIP, "segments/hang.md": text})))
    kinds = {one.kind for one in facts.stumbles}
    assert {"cue", "trade", "word", "figures", "number", "again", "unnamed"} <= kinds


def test_a_long_script_takes_no_more_than_its_length(episode: Write) -> None:
    text = "I did 15 and 50 of abduction (pause) and hypertrophy works wonders on rainy afternoons. [aside]\n" * 3000
    material = build.read(episode({"outline.yaml": GRIP, "segments/hang.md": text}))
    facts = build.work_out(material)
    cues = claims.compile_cues(material.words)
    started = process_time()
    stumbles.find(facts.segments, facts.judgements, facts.timeline, facts.cards, facts.episode, material.words, cues)
    assert process_time() - started < 3
