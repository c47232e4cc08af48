"""Signs that cannot be read aloud from a prompter are found; what people read without trouble is not."""

import pytest

from scriptkit.computing.aloud.symbols import unsayable


@pytest.mark.parametrize(
    ("text", "signs"),
    [
        ("5 ± 2", ["±"]),
        ("3×10", ["×"]),
        ("~5", ["~"]),
        ("<5 and >5", ["<", ">"]),
        ("p = 0.04", ["="]),
        ("heel → toe", ["→"]),
        ("≥10, ≤3", ["≥", "≤"]),
        (">= and <=", [">=", "<="]),
        ("-> and =>", ["->", "=>"]),
        ("m^2", ["^"]),
        ("a|b", ["|"]),
        ("a\\b", ["\\"]),
        ("{so}", ["{", "}"]),
        ("so_so", ["_"]),
        ("3*5 #1", ["*", "#"]),
        ("*** go", ["***"]),
        ("80 kg @ home", ["@"]),
        ("sets & reps", ["&"]),
        ("R&D", ["&"]),
        ("+/- 5", ["+/-"]),
        ("a + b", ["+"]),
        ("and/or", ["/"]),
        ("sets / week", ["/"]),
        ("w/ bands", ["w/"]),
        ("w/o bands", ["w/o"]),
        ("go 😀", ["😀"]),
        ("👨‍👩‍👧 and 👍🏽", ["👨‍👩‍👧", "👍🏽"]),
        ("• one ▪ two", ["•", "▪"]),
        ("β-alanine, Δ", ["β", "Δ"]),
        ("10² m³", ["²", "³"]),
        ("a % of it", ["%"]),
        ("some °", ["°"]),
        ("many $ in it", ["$"]),
        ("lost \ufffd", ["\ufffd"]),
        ("so`", ["`"]),
    ],
)
def test_signs_without_a_sound_are_found(text: str, signs: list[str]) -> None:
    assert [text[start:end] for start, end, _ in unsayable(text)] == signs


@pytest.mark.parametrize(
    "text",
    [
        "Heel down, knee straight; hold: go! Now? Well... yes… “so” ‘it’ is – slow — don’t (rest).",
        "22%, 22 %, 5–10 %, 90°, 20 °C, 90 °, $40, £5.50, € 12, 40 €, ½ kg, 1/2, 24/7, -5, +5, 10+",
        "an A- and a B+ and a single-leg raise",
        "café, Łódź, Привет, 日本語, γειά",
        "https://example.org/a_b?c=d#e and example.org/hill and me_too@example.org and @quennick",
        "10.5555/calf_2021.7 and outline_two.yaml and HILL10",
        "9:30 on 2026-03-02",
        "",
    ],
)
def test_what_can_be_read_is_left_alone(text: str) -> None:
    assert unsayable(text) == []


@pytest.mark.parametrize(
    ("text", "hint"),
    [
        ("5 ± 2", "write it out: plus or minus"),
        ("sets & reps", "write it out: and"),
        ("β", "write it out: beta"),
        ("• one", "leave it out: a bullet has no sound"),
        ("\ufffd", "a letter was lost here: type it again"),
    ],
)
def test_the_hint_says_what_to_write(text: str, hint: str) -> None:
    assert unsayable(text)[0][2] == hint
