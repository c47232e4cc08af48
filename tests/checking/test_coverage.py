"""What is not filmed is told once an exercise, with a mark that would film it."""

from __future__ import annotations

from tests.scripts import Write, found, helps, worked_out

OUTLINE = "title: One\nexercises:\n  hang: {name: Bar hang}\n  row: {name: Ring row}\norder: [hang, row]\n"


def test_what_is_needed_is_told_for_each_exercise_at_its_entry(episode: Write) -> None:
    files = {
        "outline.yaml": OUTLINE,
        "segments/hang.md": "[shot FS front: hang] One. [aside]",
        "segments/row.md": "[shot FS front: row] Two. [aside]",
    }
    told = found(worked_out(episode(files)), "movement-not-covered")
    assert [place for place, _ in told] == ["outline.yaml:3:3", "outline.yaml:4:3"]


def test_what_most_demonstrations_have_is_one_note_for_all(episode: Write) -> None:
    files = {
        "outline.yaml": OUTLINE,
        "segments/hang.md": "[shot FS side: hang] One. [aside] [shot CU side: hand] Four. [aside]",
        "segments/row.md": "[shot FS side: row] Two. [aside] [shot FS front: row] Three. [aside]",
    }
    ((place, message),) = found(worked_out(episode(files)), "coverage-worth-filming")
    assert place == "outline.yaml:3:3"
    assert "From the front: Bar hang; from three quarters: Bar hang, Ring row; held" in message


def test_the_help_of_a_missing_twin_has_the_framing(episode: Write) -> None:
    text = "[shot MS side correct: a] One. [aside] [shot FS front fault: b; label Fault: b] Two. [aside]"
    facts = worked_out(episode({"outline.yaml": OUTLINE, "segments/hang.md": text}))
    assert any("[shot FS front correct: ...]" in one for one in helps(facts, "fault-without-twin"))
