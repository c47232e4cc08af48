"""A caution nobody says, or one that is taken back, is an error; a near wording is a warning that offers the mark."""

from __future__ import annotations

from scriptkit import build
from tests.scripts import Write, found, helps, worked_out

LINE = "If the tendon above your heel hurts, ask a licensed clinician before you load it."
OUTLINE = (
    f"title: One\nexercises: {{raise: {{name: Ledge raise, cautions: [heel]}}}}\n"
    f"cautions: {{heel: {{line: '{LINE}'}}}}\n"
)


def test_a_missing_caution_is_told_at_the_exercises_list_with_its_line(episode: Write) -> None:
    facts = worked_out(episode({"outline.yaml": OUTLINE, "segments/raise.md": "Hello. [aside]"}))
    assert found(facts, "caution-not-spoken") == [
        ("outline.yaml:2:50", '"Ledge raise" calls for the caution "heel", and nobody says it by then.')
    ]
    assert LINE in helps(facts, "caution-not-spoken")[0]


def test_a_near_wording_is_a_warning_that_offers_the_mark(episode: Write) -> None:
    text = "Hello. [aside]\n\nWhen the tendon over your heel hurts, see a licensed clinician before you load it."
    facts = worked_out(episode({"outline.yaml": OUTLINE, "segments/raise.md": text}))
    assert [place for place, _ in found(facts, "caution-reworded")] == ["segments/raise.md:3:1"]
    assert "[caution heel]" in helps(facts, "caution-reworded")[0]
    assert found(facts, "caution-not-spoken") == []


def test_one_taken_back_is_an_error_mark_or_not(episode: Write) -> None:
    text = "If the tendon above your heel hurts, you can ignore that and need no licensed clinician. [caution heel]"
    facts = worked_out(episode({"outline.yaml": OUTLINE, "segments/raise.md": text}))
    (told,) = (one for one in build.check(facts, "record") if one.name == "caution-softened")
    assert (told.severity, told.place.line, told.protects) == ("error", 1, True)


def test_a_caution_waved_off_in_its_own_sentence_is_told_there_mark_or_not(episode: Write) -> None:
    text = f"{LINE[:-1]}, but honestly it never happens. [caution heel]"
    facts = worked_out(episode({"outline.yaml": OUTLINE, "segments/raise.md": text}))
    assert [place for place, _ in found(facts, "caution-softened")] == ["segments/raise.md:1:1"]
