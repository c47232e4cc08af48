"""Each word has its share of a piece's time, and none is longer than a line."""

from __future__ import annotations

import pytest

from scriptkit.computing.captioning import words
from scriptkit.computing.captioning.pieces import Piece


def timed(text: str, start: float = 0.0, end: float = 1.0, **more: object) -> list[words.Word]:
    return words.timed([Piece(text, start, end, **more)])  # type: ignore[arg-type]


def test_time_is_shared_by_letters() -> None:
    first, second = timed("one sixes", 10, 18)
    assert (first.start, first.end, second.start, second.end) == (10, 13, 13, 18)


def test_numbers_count_as_they_are_spoken() -> None:
    written, figures = (timed(text, 0, 10)[0].end for text in ("twenty-two goats", "22 goats"))
    assert figures == pytest.approx(written)


def test_a_comma_takes_the_time_of_some_letters() -> None:
    first, _ = timed("one, two", 0, 6 + 0.3 * 13.1)
    assert first.end == pytest.approx(3 + 0.3 * 13.1)


@pytest.mark.parametrize("text", ["👍 👍", "👍" * 40, "— — —", "…"])
def test_what_nobody_hears_is_left_out(text: str) -> None:
    assert timed(text, 0, 2) == []


def test_of_signs_inside_a_sentence_only_what_would_fill_a_line_is_left_out() -> None:
    assert [one.text for one in timed("one 👍 👍 — two")] == ["one", "👍", "👍", "—", "two"]
    assert [one.text for one in timed(f"one {'👍 ' * 21}two")] == ["one", "two"]
    assert "%" in [one.text for one in timed("one % two")]


def test_a_recordings_own_times_are_kept() -> None:
    spans = ((3.0, 3.25), (4.0, 4.5))
    assert [(one.start, one.end) for one in timed("Let go.", 3, 5, words=spans)] == list(spans)
    assert timed("Let me go.", 3, 5, words=spans)[-1].end == 5  # not as many as words: shared by letters


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("plantarflexion", ["plantarflexion"]),
        ("a" * 42, ["a" * 42]),
        ("a" * 50, ["a" * 42, "a" * 8]),
        ("well-" * 10, ["well-" * 8, "well-" * 2]),
        ("https://example.org/" + "b" * 30, ["https://example.org/" + "b" * 22, "b" * 8]),
        ("https://example.org/a-long-name/" + "b" * 30, ["https://example.org/a-long-name/", "b" * 30]),
        ("提踵訓練。", ["提", "踵", "訓", "練。"]),
        ("「提踵」", ["「提", "踵」"]),
        ("훈련합니다", ["훈련합니다"]),
        ("👩‍👩‍👧", ["👩‍👩‍👧"]),
        ("🇬🇧" * 2, ["🇬🇧🇬🇧"]),
        ("👍🏽", ["👍🏽"]),
        ("e\u0301" * 30, ["e\u0301" * 21, "e\u0301" * 9]),
        ("x" + "\u0301" * 60, ["x" + "\u0301" * 41, "\u0301" * 19]),
    ],
)
def test_a_word_falls_apart_only_where_it_may(text: str, parts: list[str]) -> None:
    assert words.parts_of(text) == parts
    assert all(words.size(part) <= 42 for part in parts)


def test_a_space_that_may_not_break_stays() -> None:
    assert [one.text for one in timed("just 10\u00a0kg\u2028now")] == ["just", "10\u00a0kg", "now"]


def test_wide_signs_take_the_room_of_two() -> None:
    assert (words.size("calf"), words.size("提踵"), words.size("é")) == (4, 4, 1)
