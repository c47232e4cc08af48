"""JSON with its places; behind a fault the reading goes on."""

from __future__ import annotations

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scriptkit.places import SourceFile
from scriptkit.reading.json_nodes import JsonTree, plain, read

WORDS = st.characters(
    min_codepoint=32, exclude_categories=["Cc", "Cf", "Cs", "Co", "Cn"]
)  # signs that are no text become spaces
VALUES = st.recursive(
    st.one_of(st.none(), st.text(WORDS, max_size=8)),
    lambda inner: st.one_of(
        st.lists(inner, max_size=4), st.dictionaries(st.text('ab é"\\', max_size=4), inner, max_size=4)
    ),
    max_leaves=12,
)


def tree(text: str) -> JsonTree:
    return read(SourceFile("library.json", text))


def value(text: str) -> object:
    top = tree(text).top
    assert top is not None
    return plain(top)


@given(st.one_of(st.lists(VALUES, max_size=4), st.dictionaries(st.text("abc", max_size=3), VALUES, max_size=4)))
def test_it_reads_what_the_standard_library_reads(data) -> None:
    told = tree(json.dumps(data, indent=1))
    assert (told.findings, told.whole) == ([], True)
    assert told.top is not None
    assert plain(told.top) == data


def test_numbers_are_texts_and_a_key_given_twice_counts_once() -> None:
    assert value('{"a": 2021, "b": true, "c": null, "a": 2, "d": "\\u00e9\\ud83d\\ude00"}') == {
        "a": "2021", "b": "true", "c": None, "d": "é😀",
    }  # fmt: skip


@pytest.mark.parametrize(
    ("text", "place", "whole"),
    [
        ('[{"a": 1,}]', (1, 10), True),
        ('[{"a": 1} {"b": 2}]', (1, 11), True),
        ('[{"a": 1 "b": 2}]', (1, 10), True),
        ('[{"a" 1}, {"b": 2}]', (1, 7), False),
        ('[{"a": x}, {"b": 2}]', (1, 8), False),
        ('[{"a": "x}, {"b": 2}]', (1, 15), False),
        ('[{"a": 1}', (1, 1), False),
        ('{"a": "x', (1, 7), False),
        ("nothing", (1, 1), False),
        ('{"a": 1} more', (1, 10), False),
        ("[" * 70, (1, 61), False),
    ],
)
def test_a_fault_is_told_in_its_place(text: str, place, whole: bool) -> None:
    told = tree(text)
    assert [(one.name, *one.place[1:]) for one in told.findings][:1] == [("json-syntax", *place)]
    assert told.whole == whole


def test_behind_a_fault_the_next_record_is_read() -> None:
    assert value('[{"a": x}, {"b": "2"}]') == [{}, {"b": "2"}]
    assert value('[{"a": 1 "b": 2}]') == [{"a": "1", "b": "2"}]


@pytest.mark.parametrize("piece", ["[", "{", '"', '"a\\', "[1", "{},{", '[{"a" {},{', ",", " "])
def test_a_long_run_of_one_piece_comes_to_an_end(piece: str) -> None:
    assert tree(piece * 20_000).findings or not piece.strip()
