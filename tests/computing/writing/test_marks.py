"""Each mark of spoken text is read into its parts, or told what is wrong with it."""

from __future__ import annotations

import pytest

from scriptkit.computing.writing import marks
from scriptkit.model import Mark
from scriptkit.places import Place

HERE = Place("a.md", 3, 5)


def mark(raw: str) -> Mark:
    read = marks.read(raw, HERE)
    assert isinstance(read, Mark), read
    return read


def test_sources_have_a_finding_and_a_stance() -> None:
    links = mark("from orre-2021 growth, lind-2019 against,\n vell-2020 knee null").links
    assert [(one.id, one.finding, one.stance) for one in links] == [
        ("orre-2021", "growth", "supports"),
        ("lind-2019", "", "against"),
        ("vell-2020", "knee", "null"),
    ]


def test_a_source_may_be_called_like_a_stance() -> None:
    assert mark("from mixed").links[0].id == "mixed"


@pytest.mark.parametrize(
    ("raw", "seconds", "text"),
    [
        ("pause 1s", 1, ""),
        ("pause 0.5 s", 0.5, ""),
        ("hold 6s: three slow reps", 6, "three slow reps"),
        ("hold 1:10: reps: slow", 70, "reps: slow"),
        ("screen: Grade A-", None, "Grade A-"),
        ("screen 4s: a: b", 4, "a: b"),
        ("screen 1:10: a", 70, "a"),
        ("screen: https://example.org/hill", None, "https://example.org/hill"),
        ("SCREEN: A \\[b\\]", None, "A [b]"),
    ],
)
def test_times_and_words_are_told_apart(raw: str, seconds: float | None, text: str) -> None:
    assert (mark(raw).seconds, mark(raw).text) == (seconds, text)


@pytest.mark.parametrize(
    "raw", ["opinion", "aside", "override", "sponsor says", "caution heel", "promise swap", "payoff swap", "optional 2"]
)
def test_short_marks_are_read(raw: str) -> None:
    assert mark(raw).name == raw.removesuffix(" heel").removesuffix(" swap").removesuffix(" 2")


@pytest.mark.parametrize("raw", ["", "opnion", "a note", "fromage", "shots: heel", "sponsor", "1"])
def test_another_bracket_is_no_mark(raw: str) -> None:
    assert marks.read(raw, HERE) == ""


@pytest.mark.parametrize(
    ("raw", "trouble"),
    [
        ("from", "it names ids of sources"),
        ("from a b c d", "it names ids of sources"),
        ("from a b c", "behind the id of a source stands one"),
        ("opinion of mine", "nothing stands behind `opinion`"),
        ("caution", "it needs an id"),
        ("caution wo?", "it needs an id"),
        ("pause", "it needs a time"),
        ("pause soon", "`soon` is no time"),
        ("pause 2h", "`2h` is no time"),
        ("hold: reps", "it needs a time"),
        ("screen Grade A", "it needs a colon"),
        ("screen: ", "it needs a colon"),
        ("optional", "it needs a number"),
        ("optional 12", "it needs a number"),
    ],
)
def test_what_is_wrong_with_a_mark_is_told(raw: str, trouble: str) -> None:
    told = marks.read(raw, HERE)
    assert isinstance(told, str)
    assert told.startswith(trouble)
