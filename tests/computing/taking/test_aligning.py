"""Each line is found where it was said: after restarts, in another order, twice, and not at all."""

from __future__ import annotations

import random

import pytest

from scriptkit.computing.taking.aligning import Line, align, compare

A, B, C, D = (tuple(text.split()) for text in (
    "put your heel off a step and sink slowly",
    "the ledge side gained more than the floor side",
    "i give it a b because it is steady",
    "watch the knee from the side",
))  # fmt: skip
LINES = [Line(A, 0), Line(B, 0), Line(C, 1), Line(D, 1)]


def starts(said: list[str], lines: list[Line] = LINES) -> list[int | None]:
    return [None if one is None else one.first for one in align(lines, said)]


def test_said_as_written() -> None:
    assert starts([*A, *B, *C, *D]) == [0, 9, 18, 27]


def test_a_line_begun_again_counts_from_its_last_try() -> None:
    assert starts([*A, *B[:5], *B, *C, *D]) == [0, 14, 23, 32]


def test_a_segment_said_earlier_is_found_there() -> None:
    assert starts([*C, *D, *A, *B]) == [15, 24, 0, 9]


def test_a_line_that_was_not_said_is_none_and_the_others_stay() -> None:
    assert starts([*A, *C, *D]) == [0, None, 9, 18]


def test_words_in_between_and_words_missing_do_not_lose_a_line() -> None:
    said = [*"um so put your heel well off a step and sink".split(), *B, *C[1:], *D]
    found = starts(said)
    assert None not in found
    assert found[0] == 2


def test_nothing_said_and_nothing_written() -> None:
    assert align(LINES, []) == [None] * 4
    assert align([], ["a"]) == []


def test_of_a_phrase_that_stands_often_each_line_keeps_its_own() -> None:
    often = tuple("that is my opinion and no more".split())
    lines = [Line(A, 0), Line(often, 0), Line(B, 1), Line(often, 1), Line(C, 2), Line(often, 2)]
    said = [word for line in lines for word in line.keys]
    assert starts(said, lines) == [0, 9, 16, 25, 32, 41]


def test_a_word_between_two_others_is_none_where_it_was_left_out() -> None:
    match = compare(("a", "b", "c"), ["x", "a", "c"], 0, 3)
    assert match is not None
    assert match.words == (1, -1, 2)


@pytest.mark.parametrize("seed", range(5))
def test_a_long_script_with_a_tenth_of_its_words_wrong_is_found_line_by_line(seed: int) -> None:
    chance = random.Random(seed)  # noqa: S311 - nothing secret
    words = [f"w{at}" for at in range(400)]
    lines = [Line(tuple(chance.choice(words) for _ in range(chance.randint(6, 18))), at // 10) for at in range(120)]
    said: list[str] = []
    places = []
    for line in lines:
        places.append(len(said))
        said += [key if chance.random() > 0.1 else "um" for key in line.keys]
    found = align(lines, said)
    off = [abs(match.first - place) for match, place in zip(found, places, strict=True) if match]
    assert len(off) >= 118
    assert sum(one <= 3 for one in off) >= 116


def test_many_lines_that_are_nearly_alike_each_keep_their_own_place() -> None:
    """More places than are compared at first: the right one is found beside the neighbours."""
    chance = random.Random(3)  # noqa: S311 - nothing secret
    words = [f"w{at}" for at in range(200)]
    lines, said, places = [], list[str](), []
    for segment in range(160):
        alike = f"in one trial of n{segment % 9} runners the p{chance.randint(1, 4)} grew by g{segment % 9} percent"
        for keys in (tuple(chance.choice(words) for _ in range(9)), tuple(alike.split())):
            lines.append(Line(keys, segment))
            places.append(len(said))
            said += keys
    assert starts(said, lines) == places


def test_telling_how_far_it_is_comes_to_its_end() -> None:
    told: list[tuple[int, int]] = []
    align(LINES, [*A, *B, *C, *D], lambda done, of: told.append((done, of)))
    assert told == [(step, 8) for step in range(1, 9)]
