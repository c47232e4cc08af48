"""Names of exercises inside a sentence, and the article before them."""

import pytest

from scriptkit.computing.aloud.naming import a, mid


@pytest.mark.parametrize(
    ("name", "inside"),
    [
        ("Single-leg ledge raise", "single-leg ledge raise"),
        ("Farmer's walk", "farmer's walk"),
        ("Élevé hold", "élevé hold"),
        ("“Dead” hang", "“dead” hang"),
        ("Seated raise (Smith)", "seated raise (Smith)"),
        # titles
        ("Single-Leg Ledge Raise", "single-leg ledge raise"),
        ("Bulgarian Split Squat", "Bulgarian split squat"),
        ("Smith Machine Calf Raise", "Smith machine calf raise"),
        ("Standing Raise on a Step", "standing raise on a step"),
        ("T-Bar Row", "T-bar row"),
        ("EZ-Bar Curl", "EZ-bar curl"),
        # names, acronyms and letters stay
        ("Romanian deadlift", "Romanian deadlift"),
        ("Copenhagen plank", "Copenhagen plank"),
        ("Nordics", "Nordics"),
        ("Arnold's press", "Arnold's press"),
        ("RDL", "RDL"),
        ("YTWL raise", "YTWL raise"),
        ("McGill curl-up", "McGill curl-up"),
        ("JM press", "JM press"),
        ("T-bar row", "T-bar row"),
        ("Y raise", "Y raise"),
        ("V-up", "V-up"),
        ("90-degree hold", "90-degree hold"),
        ("calf raise", "calf raise"),
        ("  ", "  "),
        ("", ""),
    ],
)
def test_a_name_begins_small_unless_it_is_one(name: str, inside: str) -> None:
    assert mid(name) == inside


AN = """
    hour hourglass honest-effort heirloom incline A- A+ 8 11 18 80-kg 8-week 11-week 8:30 $8 RDL EZ-bar MRI EMG
    SLDL L-sit S-grade X-band F eccentric open-hip upright unloaded ulnar uphill uninjured unintended
    unidentified umbrella urban usher onerous AMRAP AB-wheel R.D.L.
""".split()
A = """
    one-arm once-weekly unilateral unidirectional uniform united useful used user usual uterus utility ukulele
    urine uvula European eucalyptus ewe heel hip Smith U-bend T-bar V-up YTWL B+ C 7 100 12-week 1RM HIIT NASA
    TRX year herb
""".split()


@pytest.mark.parametrize("name", AN)
def test_an_before_the_sound_of_a_vowel(name: str) -> None:
    assert a(name) == f"an {name}"


@pytest.mark.parametrize("name", A)
def test_a_before_any_other_sound(name: str) -> None:
    assert a(name) == f"a {name}"


def test_quotes_around_a_name_have_no_sound() -> None:
    assert (a("“open” hip"), a("(heavy) hold")) == ("an “open” hip", "a (heavy) hold")


def test_what_has_no_sound_has_no_article() -> None:
    assert (a(""), a("—")) == ("", "—")


def test_an_article_that_begins_a_name_is_small_inside_a_sentence() -> None:
    assert mid("A walk round the block") == "a walk round the block"
    assert mid("A raise") == "A raise"
