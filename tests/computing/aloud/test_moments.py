"""What reads like a date, a time or a year, and what does not."""

import pytest

from scriptkit.computing.aloud.moments import earlier_word, is_year, spoken_day, spoken_moment, year_range


@pytest.mark.parametrize(
    ("text", "year"),
    [
        ("In 2021, they ran.", True),
        ("a 2021 trial", True),
        ("in 1860", True),
        ("in 1100", True),
        ("in 1099", False),
        ("1900, then", True),
        ("1899, then", False),
        ("Orre 2021.", True),
        ("(2021)", True),
        ("in 2019 runners were asked", True),
        ("2021 people", False),
        ("in 1500 people", False),
        ("1500", False),
        ("about 2021", False),
        ("n = 1950", False),
        ("2021 calories", False),
        ("3021", False),
        ("0999", False),
        ("2021%", False),
    ],
)
def test_four_digits_are_a_year_where_they_read_like_one(text: str, year: bool) -> None:
    start = next(index for index, letter in enumerate(text) if letter.isdigit())
    assert is_year(text, start, start + 4) is year


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("9:30", "nine thirty"),
        ("12:30:05", "twelve thirty oh five"),
        ("10:1", "ten to one"),
        ("0:45", "zero forty-five"),
        ("2026-03", "March twenty twenty-six"),
        ("1h20", "one hour twenty minutes"),
        ("1m1s", "one minute one second"),
        ("3/12/2026", "three twelve twenty twenty-six"),
        ("8-12", None),
        ("1/2", None),
        ("5m", None),
    ],
)
def test_forms_with_marks_between_figures(text: str, said: str | None) -> None:
    end = next((index for index, letter in enumerate(text) if not letter.isdigit()), len(text))
    assert spoken_moment(text, 0, end) == (None if said is None else (said, len(text)))


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("22nd", "twenty-second"),
        ("1980s", "nineteen eighties"),
        ("2 March", "the second of March"),
        ("30s", None),
        ("7", None),
    ],
)
def test_days_and_decades(text: str, said: str | None) -> None:
    end = len(text) - len(text.lstrip("0123456789"))
    assert spoken_day(text, 0, end) == (None if said is None else (said, len(text)))


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("2019-2021", "twenty nineteen to twenty twenty-one"),
        ("2019-21", "twenty nineteen to twenty-one"),
        ("2021-2019", None),
        ("1200-1500", None),
        ("2019-12", None),
        ("2019-2021 steps", None),
    ],
)
def test_ranges_of_years(text: str, said: str | None) -> None:
    assert year_range(text, 0, 4, 5, len(text.partition(" ")[0])) == said


def test_a_stop_ends_the_reach_of_a_word() -> None:
    assert (earlier_word("since 2021", 6), earlier_word("since. 2021", 7), earlier_word("2021", 0)) == ("since", "", "")
