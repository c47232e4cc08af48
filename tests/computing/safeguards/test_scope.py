"""Words that cure, protect or diagnose are found where the presenter says them of a body, and nowhere else."""

from __future__ import annotations

import pytest

from tests.scripts import Write, with_hang, worked_out


def kinds(episode: Write, text: str) -> list[str]:
    return [risk.kind for risk in with_hang(episode, text).risks if risk.kind in ("cure", "clinical")]


@pytest.mark.parametrize(
    "text",
    [
        "It cures arthritis.",
        "I think it fixes your knees. [opinion]",
        "It may prevent back pain.",
        "These will bulletproof your shoulders.",
        "It realigns your pelvis.",
        "It helps tendons heal.",
        "It treats sciatica.",
        "It detoxes you.",
        "It's safe for everyone.",
        "There is no risk at all.",
        "Push through the pain.",
        "Doctors don't want you to know it.",
        "It doesn't just fix your back, it feels good.",
        "You don't need a physio.",
        "It's not magic and it fixes your back.",
        "It rebuilds cartilage.",
        "This puts your pelvis back where it belongs.",
        "Nobody has ever been hurt doing this.",
        "You can throw away your painkillers.",
        "Then stop taking your blood pressure pills.",
        "Lose ten kilos in two weeks.",
    ],
)
def test_a_promise_is_found_whatever_its_mark(episode: Write, text: str) -> None:
    assert kinds(episode, text) == ["cure"]


@pytest.mark.parametrize(
    "text",
    [
        "Fix the camera.",
        "Fix your stance.",
        "Fix your elbows against your ribs.",
        "Fix your eyes on the wall.",
        "Put your heel down.",
        "Treat yourself to a rest.",
        "Treat your feet like hands.",
        "Clips prevent the bar from rolling.",
        "A bulletproof plan.",
        "It won't fix your knees.",
        "Nobody can prevent injuries for you.",
        "It has never, in the history of bars, fixed a posture.",
        "Does it fix your knees?",
        "People say it heals tendons.",
        "It cures nothing: that's marketing.",
        "Your physio can treat back pain, and I can't.",
        "Don't push through pain.",
        "You don't need a physio to tell you that.",
        "There is no risk of boredom.",
        "The safeties protect you from a fall.",
        "Without a doctor's word, leave this one out.",
        "If you don't see a clinician, don't load it.",
        "Some adverts say it realigns your spine.",
        "Strongmen sold courses that promised to cure nerves.",
        "Anyone who tells you it repairs a bad back is selling something.",
        "Put the box back in place.",
        "No one got hurt, and the mirror broke.",
    ],
)
def test_other_things_denials_questions_and_beliefs_of_others_are_silent(episode: Write, text: str) -> None:
    assert kinds(episode, text) == []


@pytest.mark.parametrize(
    "text",
    [
        "It's a corrective drill.",
        "You have a muscle imbalance.",
        "Deep squats wreck your knees.",
        "It's great for sciatica.",
        "If your knee clicks, you have patellofemoral pain.",
        "If it hurts at the front, that's tendinitis.",
        "I'm no doctor, and that sounds like sciatica to me.",
        "Your spine is fragile.",
        "Take twenty grams of creatine a day.",
        "Teenagers should max out every Friday.",
    ],
)
def test_clinical_and_frightening_words_are_told_apart(episode: Write, text: str) -> None:
    assert kinds(episode, text) == ["clinical"]


@pytest.mark.parametrize(
    "text",
    [
        "Nobody can tell from a video that you have a meniscus tear.",
        "If you have tendinitis, it's for your physio.",
        "Kids shouldn't max out.",
        "If the hips are out of line, move your feet.",
        "This one destroys your calves.",
        "Deep squats wreck knees and floors.",
        "Balance the load left and right.",
    ],
)
def test_a_tired_muscle_and_a_floor_are_no_patients(episode: Write, text: str) -> None:
    assert kinds(episode, text) == []


@pytest.mark.parametrize(
    ("outline", "found"),
    [
        ("title: Fix your knees in ten days", [("cure", 1, 8)]),
        ("title: Can ten rows fix your knees?", []),
        ("title: One\nquestion: Which row cures back pain?", [("cure", 2, 21)]),
        ("title: One\npromises: {swap: how to bulletproof your back}", [("cure", 2, 25)]),
    ],
)
def test_title_question_and_promises_count(episode: Write, outline: str, found: list[tuple[str, int, int]]) -> None:
    facts = worked_out(
        episode({"outline.yaml": f"{outline}\nexercises: {{hang: {{name: Bar hang}}}}\norder: [hang]\n"})
    )
    assert [(one.kind, one.place.line, one.place.column) for one in facts.risks] == found


def test_a_card_counts(episode: Write) -> None:
    assert kinds(episode, "[screen: Fix your knees] Hello. [aside]") == ["cure"]


def test_a_sponsor_is_not_excused_by_saying_who_says_so(episode: Write) -> None:
    outline = (
        "title: One\nexercises: {hang: {name: Bar hang}}\nsponsor: {name: Quennick Socks, disclosure: Ad. They paid.}\n"
    )
    text = "Ad. They paid. They say it heals tendons. [sponsor says]"
    facts = worked_out(episode({"outline.yaml": outline, "segments/sponsor.md": text}))
    assert "cure" in [one.kind for one in facts.risks]
