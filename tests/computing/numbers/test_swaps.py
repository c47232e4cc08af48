"""Numbers have to stand with their own labels, and changes have to go the right way."""

from __future__ import annotations

import pytest

from scriptkit.computing.numbers.fitting import claimed
from scriptkit.computing.numbers.holdings import Holdings
from scriptkit.computing.numbers.quantities import read, vocabulary
from scriptkit.computing.numbers.swaps import directions, swapped
from scriptkit.model import Source, StudyFinding
from scriptkit.reading.words import load

WORDS = load()
KNOWN, WAYS = vocabulary(WORDS), directions(WORDS)
SOURCE = Source(
    id="s",
    findings={
        "f": StudyFinding(id="f", values={"towel group": "16 kg", "bar group": "10 kg"}),
        "g": StudyFinding(id="g", values={"before": "40 s", "after": "50 s"}),
    },
)


def wrong(text: str, finding: str) -> str:
    held = [Holdings(SOURCE, finding, KNOWN)]
    reading = read(text, KNOWN)
    found = list(swapped(reading, claimed(reading, held, opinion=False), held, WAYS))
    return text[found[0][0].start : found[0][0].end] if found else ""


@pytest.mark.parametrize(
    "text",
    [
        "The towel group gained 16 kilos, and the bar group 10.",
        "They gained 16 kilos with the towel against 10 with the bar.",
        "Against 10 kilos for the bar, the towel group gained 16.",
        "The towel and the bar gave 16 and 10 kilos.",
        "With the towel they gained 16 kilos, and the others gained 10.",
        "The towel gained 6 kilos more than the bar.",
        "The bar gained 6 kilos less than the towel.",
        "Both gained something, 16 kilos and 10.",
    ],
)
def test_right_labels_pass(text: str) -> None:
    assert wrong(text, "f") == ""


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("The towel group gained 10 kilos, and the bar group 16.", "10 kilos"),
        ("They gained 10 kilos with the towel against 16 with the bar.", "10 kilos"),
        ("The towel group gained 10 kilos.", "10 kilos"),
        ("They gained 10 kilos with the towel.", "10 kilos"),
        ("The towel gained 6 kilos less than the bar.", "6 kilos"),
        ("The towel gained 16 kilos more than the bar.", "16 kilos"),
        ("The towel group gained 16 kilos, and the bar group 16.", "16"),
    ],
)
def test_wrong_labels_are_told(text: str, number: str) -> None:
    assert wrong(text, "f") == number


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("They went from 40 seconds to 50.", ""),
        ("They went from 50 seconds to 40.", "50 seconds"),
        ("Hang time rose by 10 seconds.", ""),
        ("Hang time fell by 10 seconds.", "10 seconds"),
        ("Hang time fell by 25 percent.", "25 percent"),
    ],
)
def test_a_change_goes_from_before_to_after(text: str, number: str) -> None:
    assert wrong(text, "g") == number


NUMBERED = Source(
    id="s",
    findings={
        "f": StudyFinding(id="f", values={"two": "6.1 kg", "three": "6.3 kg"}),
        "g": StudyFinding(id="g", values={"curl": "212 members", "all": "848 members"}),
        "h": StudyFinding(
            id="h", result="from 80 kg to 104 kg with deep squats, from 82 kg to 97 kg with shallow ones"
        ),
        "i": StudyFinding(id="i", values={"rope": "4.1 repetitions", "usual": "1.9 repetitions"}),
    },
)


@pytest.mark.parametrize(
    ("finding", "right", "swapped_over", "number"),
    [
        (
            "f",
            "Two sessions added 6.1 kilos and three 6.3.",
            "Two sessions added 6.3 kilos and three 6.1.",
            "6.3 kilos",
        ),
        ("g", "212 of 848 members curled.", "848 of 212 members curled.", "848"),
        ("h", "They went from 80 kilos to 104.", "They went from 104 kilos to 80.", "104 kilos"),
        (
            "i",
            "The rope crew gained 4.1 reps, the others 1.9.",
            "The rope crew gained 1.9 reps, the others 4.1.",
            "1.9 reps",
        ),
    ],
)
def test_a_swap_is_found_by_number_words_parts_ends_and_the_others(
    finding: str, right: str, swapped_over: str, number: str
) -> None:
    def told(text: str) -> str:
        held = [Holdings(NUMBERED, finding, KNOWN)]
        reading = read(text, KNOWN)
        found = list(swapped(reading, claimed(reading, held, opinion=False), held, WAYS))
        return text[found[0][0].start : found[0][0].end] if found else ""

    assert told(right) == ""
    assert told(swapped_over) == number
