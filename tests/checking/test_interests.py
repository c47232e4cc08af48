"""An interest that is spoken of too early is told at its name, with what it is."""

from __future__ import annotations

from tests.scripts import Write, found, helps, worked_out

OUTLINE = """
    title: One
    exercises: {hang: {name: Bar hang, grade: A}}
    interests: [{who: Tarn Bars, what: part owner}]
    """


def test_it_is_told_at_the_name_with_a_sentence_to_say(episode: Write) -> None:
    text = "Here it is. [aside] A bar by Tarn Bars. [aside] I give it an A. [opinion]"
    facts = worked_out(episode({"outline.yaml": OUTLINE, "segments/hang.md": text}))
    assert [place for place, _ in found(facts, "interest-not-disclosed")] == ["segments/hang.md:1:30"]
    assert "part owner" in helps(facts, "interest-not-disclosed")[0]


def test_the_recap_is_a_note(episode: Write) -> None:
    text = "I own part of Tarn Bars, who made it. [aside] I give it an A. [opinion]"
    facts = worked_out(episode({"outline.yaml": OUTLINE, "segments/hang.md": text}))
    assert found(facts, "interest-not-disclosed") == []
    assert [place for place, _ in found(facts, "interest-not-in-recap")] == ["outline.yaml:3:19"]
