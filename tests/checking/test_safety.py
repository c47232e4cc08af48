"""What may hurt a viewer is told on its words, with a sentence that is safe to say; a clean episode is silent."""

from __future__ import annotations

import pytest

from scriptkit import build
from tests.scripts import Write, found, helps, with_hang, worked_out

NAMES = (
    *("emergency-not-answered", "red-flag-not-deferred", "advice-beside-red-flag", "cure-promised", "clinical-wording"),
    "stop-signs-not-said",
)


@pytest.mark.parametrize(
    ("text", "name", "place", "words"),
    [
        (
            "Hi.\n\nIf you get chest pain, rest.",
            "emergency-not-answered",
            "3:12",
            "your local emergency number",
        ),
        ("If you have had surgery, rest.", "red-flag-not-deferred", "1:13", "Ask a licensed clinician"),
        (
            "If you have sciatica, do short hangs.",
            "advice-beside-red-flag",
            "1:13",
            "licensed clinician who can examine",
        ),
        ("If you faint, do short hangs.", "advice-beside-red-flag", "1:8", "your local emergency number"),
        ("I say it fixes your knees.", "cure-promised", "1:10", "people with … reported"),
        ("A corrective drill.", "clinical-wording", "1:3", "exercise for"),
        ("Take every set to failure.", "stop-signs-not-said", "1:1", "high-intensity"),
    ],
)
def test_each_is_told_at_its_words_with_what_to_say(
    episode: Write, text: str, name: str, place: str, words: str
) -> None:
    facts = with_hang(episode, text)
    assert [where for where, _ in found(facts, name)] == [f"segments/hang.md:{place}"]
    assert words in helps(facts, name)[0]


def test_a_promise_of_cure_is_told_once(episode: Write) -> None:
    facts = with_hang(episode, "It fixes your knees. [opinion]")
    named = [name for name, _ in found(facts) if name in ("cure-promised", "claim-without-source")]
    assert named == ["cure-promised"]


def test_a_tag_whose_caution_is_said_is_a_note(episode: Write) -> None:
    outline = "title: One\nexercises: {jump: {name: Box jump, cautions: [plyometric]}}\n"
    facts = worked_out(episode({"outline.yaml": outline, "segments/jump.md": "{{ cautions.plyometric.line }}"}))
    told = {one.name: one.severity for one in build.check(facts, "publish") if one.name.startswith("stop-signs")}
    assert told == {"stop-signs-worth-saying": "note"}


def test_a_licence_turns_nothing_into_silence(episode: Write) -> None:
    text = "I'm a licensed physio, and this fixes your knees. It's a corrective drill."
    facts = with_hang(episode, text)
    assert len(found(facts, "cure-promised")) == len(found(facts, "clinical-wording")) == 1


def test_such_a_finding_stays_in_sight_where_it_is_allowed(episode: Write) -> None:
    facts = with_hang(episode, "It fixes your knees.\n<!-- allow: cure-promised because it rhymes -->")
    (one,) = (one for one in build.check(facts, "record") if one.name == "cure-promised")
    assert (one.allowed, one.protects) == ("it rhymes", True)


CAREFUL = """
    [shot FS side: box jump]
    Rask Boxes lent me this box for free, so you know where I stand. [aside]
    Fix your eyes on the edge, jump, stand tall, and step down.
    {{ cautions.plyometric.line }} [caution plyometric]

    If you've ever had knee surgery, this isn't the place to start: ask your own doctor first. [aside]

    Stop if you feel chest pain, if you faint, or if one leg suddenly goes weak, and get emergency help by your local
    number. [caution high-intensity]

    Will it fix your knees? [aside] I can't promise you that, and nobody honest can. [opinion]
    Don't train through pain: it isn't a badge. [opinion]
    """


def test_a_careful_episode_is_silent(episode: Write) -> None:
    outline = (
        "title: Jumps for netball\nquestion: Do jumps fix your knees?\n"
        "exercises: {jump: {name: Box jump, cautions: [plyometric, high-intensity]}}\n"
    )
    facts = worked_out(episode({"outline.yaml": outline, "segments/jump.md": CAREFUL}))
    assert [name for name, _ in found(facts, stage="publish") if name in NAMES] == []
