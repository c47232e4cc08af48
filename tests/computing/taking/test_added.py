"""What is not in the script is told apart: a filler, another try, an invention over silence, an ad-libbed claim."""

from __future__ import annotations

import pytest

from scriptkit import build
from scriptkit.computing.hearing import claims
from scriptkit.computing.taking import added, hearing_out
from scriptkit.computing.taking.added import Extra
from scriptkit.model.recording import TimedWord
from scriptkit.reading import words
from tests.scripts import GRIP, Write

SCRIPT = "I like the bar hang for being simple. [opinion]\n\nTake a bar and let your shoulders rise. [aside]"


@pytest.mark.parametrize(
    ("between", "kinds", "told"),
    [
        ("um, uh.", [], []),
        ("Well, okay.", ["filler"], []),
        ("I like the bar", ["again"], []),
        ("Thanks for watching!", ["invented"], ["invented"]),
        ("It builds more forearm muscle than any other exercise.", ["added"], ["ad-lib"]),
        ("Nice weather in here.", ["added"], ["added"]),
        ("Right there.", ["added"], []),
        ("Take a bar and, sorry, let me go again.", ["broken"], ["restart"]),
        ("Take a bar and sorry let me start over", ["broken"], ["restart"]),
        ("Take a bar. Sorry, let me do that again.", ["again", "broken"], ["restart"]),
        ("I like the bar, oops.", ["broken"], ["restart"]),
        ("Sorry, let me go again.", ["broken"], ["restart"]),
        ("It rains in here, sorry, let me go again.", ["added"], ["added"]),
        ("Let me go over all of my weather again today.", ["added"], ["added"]),
    ],
)
def test_each_addition_is_told_as_what_it_is(episode: Write, between: str, kinds: list[str], told: list[str]) -> None:
    facts = build.work_out(build.read(episode({"outline.yaml": GRIP, "segments/hang.md": SCRIPT})))
    lines = hearing_out.spoken([one for one in facts.segments if one.id == "hang"])
    said = f"I like the bar hang for being simple. {between} Take a bar and let your shoulders rise."
    recorded = hearing_out.Recorded(
        [TimedWord(word, at / 2, at / 2 + 0.4, exact=True) for at, word in enumerate(said.split())]
    )
    lists = words.load()
    extras = added.extras(lines, hearing_out.match(lines, recorded), recorded, lists)
    assert [one.kind for one in extras] == kinds
    found = added.changes(extras, lines, recorded, claims.compile_cues(lists))
    assert [one.kind for one in found] == told
    assert all(one.at == recorded.start(extras[-1].first) for one in found)


def test_what_gives_up_a_try_is_no_try_of_its_own() -> None:
    one, two, apart = Extra(0, 3, "again", 0), Extra(3, 7, "broken", 0), Extra(9, 12, "broken", 1)
    assert [added.tries(found) for found in ([], [one], [one, two], [one, two, apart])] == [0, 1, 1, 2]
