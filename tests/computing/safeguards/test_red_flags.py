"""Signs of illness are answered in their segment, by the line of their tier, and no exercise is advised beside them."""

from __future__ import annotations

import time

import pytest

from scriptkit.reading.words import stock_cautions
from tests.scripts import GRIP, Write, with_hang, worked_out

HELP = "Stop, and get emergency help by your local number."
KINDS = ("emergency", "clinician", "advice", "advice-in-emergency")


def kinds(episode: Write, text: str) -> list[str]:
    return [risk.kind for risk in with_hang(episode, text).risks if risk.kind in KINDS]


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("If you get chest pain, rest a minute.", ["emergency"]),
        ("Feeling faint is part of it.", ["emergency"]),
        ("A viewer asks: I get pressure in my chest, is that normal?", ["emergency"]),
        ("If you get chest pain, see a doctor some day.", ["emergency"]),
        ("If you get chest pain, you don't need an ambulance: stop and rest.", ["emergency"]),
        ("If you get chest pain, stop, and call an ambulance.", []),
        (f"If you faint, that's it for today.\n\n{HELP}", []),
        ("Should you call an ambulance for chest pain? Stop worrying.", ["emergency"]),
        ("In the trial two people fainted. [from mora-2022]", []),
        ("Nobody fainted.", []),
        ("I nearly fainted from embarrassment.", []),
        ("That squeezing feeling behind your breastbone is only your lungs.", ["emergency"]),
        ("Her speech got slurred on the third set, and a nap sorted it.", ["emergency"]),
    ],
)
def test_an_emergency_needs_stop_and_emergency_help(episode: Write, text: str, found: list[str]) -> None:
    assert kinds(episode, text) == found


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("If you have had surgery, keep it short.", ["clinician"]),
        ("If you have had surgery, ask a licensed clinician before you hang.", []),
        ("If you have had surgery, that's for a licensed clinician who can examine you.", []),
        ("Had surgery? Hang on.\n\nTalk to your own doctor first.", []),
        ("If you have had surgery, there's no need to ask a doctor.", ["clinician"]),
        ("If you have had surgery, ask a friend.", ["clinician"]),
        ("If your fingers go numb, shake them out.", ["clinician"]),
        ("I had surgery on mine once. [aside]", []),
        ("A viewer asks: I had surgery, may I?", ["clinician"]),
        ("If your hands go numb, and numbness stays, see a physio.", []),
        ("For new mothers, pregnancy is a reason to ask your midwife.", []),
        ("Pregnant and wondering? Your midwife knows you, and I don't.", []),
        ("If something pops and you can't bear weight, get a licensed clinician to look at it.", []),
        ("You lost feeling in your foot? That's the nerve waking up.", ["clinician"]),
        ("Banged your head on the bar? Finish the session.", ["clinician"]),
        ("If you see stars, have a sip of water.", ["clinician"]),
        ("A subscriber says her hands have gone numb.", ["clinician"]),
    ],
)
def test_any_other_sign_needs_a_licensed_clinician(episode: Write, text: str, found: list[str]) -> None:
    assert kinds(episode, text) == found


@pytest.mark.parametrize(
    "text",
    [
        "I cracked my head on the bar, twice.",
        "Squat until you can't feel your legs.",
        "Get each calf warm first.",
        "Is one arm bigger than the other on you as well?",
        "Not for the faint of heart.",
        "You can pass out the bands now.",
        "Chest day is on Monday.",
        "Don't let the knees collapse inward.",
        "Chase the pump until your hands are numb with joy.",
        "There was a pregnant pause.",
        "Hang as if the bar were hot.",
    ],
)
def test_other_uses_of_the_words_are_no_signs(episode: Write, text: str) -> None:
    assert kinds(episode, text) == []


@pytest.mark.parametrize(
    "text",
    [
        "If you have a herniated disc, do short hangs.",
        "Got sciatica? Try ring rows instead.",
        "For a frozen shoulder, you could start with ring rows.",
        "If you have tennis elbow, the ring row is your friend.",
        "People with osteoporosis should do this every day.",
        "If you have arthritis, ask a doctor. Until then, do short hangs.",
        "For anyone with osteoporosis: three sets of five, heavy.",
        "For those of you with a herniated disc: bar hangs, three days a week.",
    ],
)
def test_exercise_for_a_diagnosis_is_advice_to_a_patient(episode: Write, text: str) -> None:
    assert kinds(episode, text) == ["advice"]


@pytest.mark.parametrize(
    "text",
    [
        "If you have a herniated disc, leave this one out and see a licensed clinician.",
        "If you have arthritis, ask a doctor first. Do three sets of ten.",
        "If you have arthritis, do what your physio tells you.",
        "If you don't have arthritis, do three sets.",
        "If your knee aches, do fewer.",
        "Runners get shin splints. Do three sets.",
    ],
)
def test_leaving_out_and_sending_on_is_none(episode: Write, text: str) -> None:
    assert kinds(episode, text) == []


def test_advice_beside_an_emergency_is_told_once_and_in_its_tier(episode: Write) -> None:
    assert kinds(episode, "If your chest hurts, do short hangs.") == ["advice-in-emergency"]
    assert kinds(episode, "If you have had surgery, do short hangs.") == ["advice"]


def test_a_sign_is_told_at_its_words(episode: Write) -> None:
    (risk,) = (
        one for one in with_hang(episode, "Hello.\n\nWell, if you get chest pain, rest.").risks if one.kind in KINDS
    )
    assert (risk.words, risk.place.line, risk.place.column) == ("chest pain", 3, 18)


@pytest.mark.parametrize("tag", sorted(stock_cautions()))
def test_every_stock_caution_passes(episode: Write, tag: str) -> None:
    outline = f"title: One\nexercises: {{hang: {{name: Bar hang, cautions: [{tag}, high-intensity]}}}}\n"
    text = f"{{{{ cautions['{tag}'].line }}}} [caution {tag}]\n\n{{{{ cautions['high-intensity'].line }}}}\n"
    assert worked_out(episode({"outline.yaml": outline, "segments/hang.md": text})).risks == ()


def test_a_segment_full_of_signs_takes_time_by_its_length(episode: Write) -> None:
    text = "\n\n".join(["If you have had surgery or chest pain, do the bar hang now."] * 1500)
    started = time.process_time()
    with_hang(episode, text, GRIP)
    assert time.process_time() - started < 30  # on a slow machine; it takes three seconds
