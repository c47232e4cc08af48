"""Text is written out as it is spoken, and its letters, pauses and words are counted."""

import string

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scriptkit.computing.aloud import saying

SPOKEN = [
    # whole numbers and decimals
    ("12 weeks", "twelve weeks"),
    ("1,250 steps", "one thousand two hundred and fifty steps"),
    ("1,2,3", "one,two,three"),
    ("3.5", "three point five"),
    ("0.05", "zero point zero five"),
    (".05", "point zero five"),
    ("version 3.5.1", "version three point five point one"),
    ("0123", "zero one two three"),
    ("-5 and −5", "minus five and minus five"),
    ("+5", "plus five"),
    ("10+ reps", "ten plus reps"),
    ("a 12-week trial", "a twelve-week trial"),
    # ranges and sets
    ("8-12 reps", "eight to twelve reps"),
    ("8–12 reps", "eight to twelve reps"),
    ("8 – 12 reps", "eight to twelve reps"),
    ("3.5-4.5 kg", "three point five to four point five kilograms"),
    ("5%-10%", "five percent to ten percent"),
    ("a 3-1-2 tempo", "a three one two tempo"),
    ("3×10", "three by ten"),
    ("3 x 10", "three by ten"),
    ("3-4 x 8–12", "three to four by eight to twelve"),
    ("3x", "three times"),
    ("3x/week", "three times per week"),
    ("10× body weight", "ten times body weight"),
    ("2:1", "two to one"),
    # percents, units, one and many
    ("22 %", "twenty-two percent"),
    ("22%", "twenty-two percent"),
    ("5–10 %", "five to ten percent"),
    ("3.5 kg", "three point five kilograms"),
    ("1 kg", "one kilogram"),
    ("1 lb or 2 lbs", "one pound or two pounds"),
    ("a 10-kg plate", "a ten-kilogram plate"),
    ("a 30-s hold", "a thirty-second hold"),
    ("30s of rest", "thirty seconds of rest"),
    ("5 g, 5 mg, 5 µg", "five grams, five milligrams, five micrograms"),
    ("1 ft, 6 ft", "one foot, six feet"),
    ("90° and 20 °C", "ninety degrees and twenty degrees Celsius"),
    ("40 Nm at 60 °/s", "forty newton meters at sixty degrees per second"),
    ("72 bpm", "seventy-two beats per minute"),
    ("50 mL/kg/min", "fifty milliliters per kilogram per minute"),
    ("12/side", "twelve per side"),
    ("5 m²", "five square meters"),
    ("10 in. of lift", "ten inches. of lift"),
    ("1 in 4", "one in four"),
    ("at 3 in the morning", "at three in the morning"),
    ("3 V-ups", "three V-ups"),
    ("10 W raises", "ten W raises"),
    ("in kg", "in kilograms"),
    ("80% of 1RM", "eighty percent of one RM"),
    ("10k steps", "ten thousand steps"),
    ("a 10k race", "a ten K race"),
    # fractions
    ("1/2", "one half"),
    ("½ kg", "half a kilogram"),
    ("½ h", "half an hour"),
    ("2½ hours", "two and a half hours"),
    ("1 1/2 kg", "one and a half kilograms"),
    ("8/10", "eight out of ten"),
    ("24/7 or 50/50", "twenty-four seven or fifty fifty"),
    ("4.5/5", "four point five out of five"),
    ("20kg/44lb", "twenty kilograms slash forty-four pounds"),
    ("12\u00a0500 steps", "twelve thousand five hundred steps"),
    ("9.81 m/s²", "nine point eight one meters per second squared"),
    ("10^5", "ten to the power of five"),
    # ordinals, years, decades, dates, times
    ("1st, 2nd, 22nd", "first, second, twenty-second"),
    ("in 1999, 2005 and 2021", "in nineteen ninety-nine, two thousand five and twenty twenty-one"),
    ("since 1905", "since nineteen oh five"),
    ("2019-2021", "twenty nineteen to twenty twenty-one"),
    ("2019–21", "twenty nineteen to twenty-one"),
    ("mid-2019", "mid-twenty nineteen"),
    ("2000 steps", "two thousand steps"),
    ("1950 calories", "one thousand nine hundred and fifty calories"),
    ("about 1950", "about one thousand nine hundred and fifty"),
    ("1,999", "one thousand nine hundred and ninety-nine"),
    ("1200-1500 calories", "one thousand two hundred to one thousand five hundred calories"),
    ("at 18:00", "at eighteen hundred"),
    ("the 90's", "the nineties"),
    ("the 1990s", "the nineteen nineties"),
    ("in their 30s", "in their thirties"),
    ("2026-03-02", "March second twenty twenty-six"),
    ("March 2, 2026", "March second, twenty twenty-six"),
    ("on 2 March", "on the second of March"),
    ("May 3 sets be enough?", "May three sets be enough?"),
    ("at 9:30", "at nine thirty"),
    ("at 9:05", "at nine oh five"),
    ("at 9:00", "at nine o'clock"),
    ("at 9:00 am", "at nine am"),
    ("9m30s", "nine minutes thirty seconds"),
    ("5'10\" tall", "five foot ten tall"),
    # money
    ("$40", "forty dollars"),
    ("£5.50", "five pounds and fifty pence"),
    ("$0.99", "ninety-nine cents"),
    ("€12", "twelve euros"),
    ("40 €", "forty euros"),
    ("$1.5 million", "one point five million dollars"),
    ("$40-60", "forty to sixty dollars"),
    ("$10/month", "ten dollars per month"),
    # signs
    ("sets & reps", "sets and reps"),
    ("R&D", "R and D"),
    ("a + b = c", "a plus b equals c"),
    ("n=38", "n equals thirty-eight"),
    ("±2.5", "plus or minus two point five"),
    ("~5", "about five"),
    ("p < 0.05", "p less than zero point zero five"),
    (">5, ≥10, ≤3", "more than five, at least ten, at most three"),
    ("3 × 5 @ 80%", "three by five at eighty percent"),
    ("#3", "number three"),
    ("sets/week", "sets per week"),
    ("push/pull", "push slash pull"),
    ("and/or", "and or"),
    ("β-alanine", "beta-alanine"),
    # shortened words
    ("No. 4", "number four"),
    ("e.g. bands", "for example bands"),
    ("bands vs. chains", "bands versus chains"),
    ("approx. ten", "approximately ten"),
    ("Dr. Orre", "Doctor Orre"),
    ("Orre et al.", "Orre and colleagues."),
    ("w/ bands, w/o chains", "with bands, without chains"),
    # grades
    ("an A-", "an A minus"),
    ("B+, then C−.", "B plus, then C minus."),
    ("an A-frame, A+B", "an A-frame, A plus B"),
    # codes, links, addresses
    ("HILL10", "HILL ten"),
    ("QX7", "Q X seven"),
    ("HILL2026", "HILL twenty twenty-six"),
    ("VO2max", "V O two max"),
    ("RDL and EMG", "RDL and EMG"),
    ("https://example.org/hill.", "example dot org slash hill."),
    ("www.example.org/a-b", "example dot org slash a dash b"),
    ("example.org", "example dot org"),
    ("10.5555/grip.22", "ten dot five five five five slash grip dot twenty-two"),
    ("me@example.org, please", "me at example dot org, please"),
    ("outline.yaml", "outline dot yaml"),
    # nothing to write out
    ("A full stop.Next to it, well-made.", "A full stop.Next to it, well-made."),
    ("", ""),
]


@pytest.mark.parametrize(("written", "spoken"), SPOKEN)
def test_is_written_out_as_spoken(written: str, spoken: str) -> None:
    assert saying.as_spoken(written) == spoken


def test_a_term_is_said_as_the_author_says() -> None:
    says = {"plantarflexion": "PLAN-tar-flek-shun", "rdl": "R D L"}
    assert saying.as_spoken("Plantarflexion and an RDL.", says) == "PLAN-tar-flek-shun and an R D L."


def test_the_longest_term_wins_even_over_a_line_end() -> None:
    says = {"calf": "cahf", "calf raise": "cahf rays"}
    assert saying.as_spoken("A Calf\nraise for the calf.", says) == "A cahf rays for the cahf."


def test_a_term_is_a_whole_word_only() -> None:
    assert saying.as_spoken("calves, calflike, calf-like", {"calf": "cahf"}) == "calves, calflike, cahf-like"


def test_what_is_said_for_a_term_is_not_written_out_again() -> None:
    assert saying.as_spoken("The T1 at 5 kg", {"t1": "T-1 &"}) == "The T-1 & at five kilograms"


def test_a_term_keeps_the_place_of_what_stands_around_it() -> None:
    assert saying.as_spoken("plantarflexion-3", {"plantarflexion": "PF"}) == "PF-three"


@given(
    st.integers(min_value=0, max_value=10**30), st.sampled_from(["{}", "{} reps", "the {}.", "({})", "{}-{}", "{:,}"])
)
def test_no_digit_is_left_of_a_plain_number(value: int, frame: str) -> None:
    assert not any(map(str.isdigit, saying.as_spoken(frame.format(value, value))))


@given(st.text(max_size=60))
def test_any_text_can_be_written_out_and_counted(text: str) -> None:
    spoken = saying.as_spoken(text, {"a": "b", "1 x": "c"})
    assert saying.letters(spoken) + saying.commas(spoken) + saying.words(text) >= 0
    assert all(0 <= start < end <= len(text) for start, end, _ in saying.unsayable(text))


@given(st.lists(st.sampled_from([written for written, _ in SPOKEN]), max_size=6))
def test_what_is_spoken_already_stays_as_it_is(pieces: list[str]) -> None:
    once = saying.as_spoken(" and ".join(pieces))
    assert saying.as_spoken(once) == once


@given(st.text(alphabet=string.ascii_letters + " ,;:?!'\"", max_size=80))
def test_words_without_figures_are_not_touched(text: str) -> None:
    plain = " ".join(word for word in text.split() if word.islower() and len(word) > 6)
    assert saying.as_spoken(plain) == plain


def test_letters_are_counted_without_spaces_and_marks() -> None:
    assert saying.letters("It's a well-made raise, 5 é.") == len("Itsawellmaderaise5é")


@pytest.mark.parametrize(
    ("spoken", "pauses"),
    [
        ("heel down, knee straight; hold: go", 3),
        ("slow — very slow – and up", 2),
        ("slow - very slow", 1),
        ("a single-leg ledge raise", 0),
        ("slow—very slow", 1),
        ("slow -- very slow", 1),
        ("one,two", 1),
        ("9:30, or 1,000 of 8–12", 1),
        ("well...", 0),
        ("", 0),
    ],
)
def test_commas_and_their_like_are_pauses(spoken: str, pauses: int) -> None:
    assert saying.commas(spoken) == pauses


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("three slow reps", 3),
        ("8-12 reps at 9:30", 4),
        ("2019–2021", 1),
        ("22% or 22 %", 3),
        ("$40, -5, 10kg, 3×10", 4),
        ("a single-leg raise", 3),
        ("don't, it’s", 2),
        ("slow – very slow - up", 4),
        ("slow—very slow", 3),
        ("well...maybe…not", 3),
        ("e.g. the U.S.", 3),
        ("— & ± 😀 •", 0),
        ("", 0),
    ],
)
def test_a_number_is_one_word_and_a_mark_none(text: str, words: int) -> None:
    assert saying.words(text) == words


@pytest.mark.parametrize(
    ("grade", "spoken"),
    [
        ("A-", "A minus"),
        ("A−", "A minus"),
        ("B+", "B plus"),
        ("AA+", "AA plus"),
        ("S", "S"),
        ("7", "seven"),
        ("7.5", "seven point five"),
        ("8/10", "eight out of ten"),
        ("7+", "seven plus"),
        ("must-do", "must-do"),
        ("-", "-"),
        ("", ""),
    ],
)
def test_a_grade_is_said_with_its_sign(grade: str, spoken: str) -> None:
    assert saying.grade_spoken(grade) == spoken


@pytest.mark.parametrize(
    ("value", "spoken"),
    [
        (0, "zero"),
        (-5, "minus five"),
        (3.0, "three"),
        (3.5, "three point five"),
        (1e20, "one hundred quintillion"),
        (0.0000001, "zero point zero zero zero zero zero zero one"),
        ("22%", "twenty-two percent"),
        ("3.5", "three point five"),
        (float("nan"), "not a number"),
        (float("inf"), "not a number"),
    ],
)
def test_a_number_is_said_in_words(value: float | str, spoken: str) -> None:
    assert saying.number_spoken(value) == spoken


def test_a_number_of_thousands_of_digits_is_no_traceback() -> None:
    assert saying.number_spoken(10**5000) == "not a number"
