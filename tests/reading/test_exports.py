"""Entries of any export: names, dates, ids, and how many findings are told."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scriptkit.places import SourceFile
from scriptkit.reading import bibtex, exports, faults
from tests.reading.exported import sources


@pytest.mark.parametrize(
    ("key", "made"),
    [("Müller:2020", "Muller-2020"), ("straße+ørn", "strasse-orn"), ("a  b", "a-b"), ("::", ""), ("x" * 90, "x" * 60)],
)
def test_an_id_is_made_of_what_a_key_has(key: str, made: str) -> None:
    assert exports.as_id(key) == made


@given(st.text(max_size=80))
def test_whatever_a_key_is_made_of_it_is_an_id_and_stays_one(key: str) -> None:
    made = exports.as_id(key)
    assert re.fullmatch(r"[A-Za-z0-9_-]{0,64}", made)
    assert exports.as_id(made) == made


def test_a_made_id_takes_no_other_entry_s_key() -> None:
    found = sources(bibtex, "@misc{a:b, title={One}}\n@misc{a-b, title={Two}}\n@misc{a+b, title={Three}}")
    assert {name: source.title for name, source in found.items()} == {"a-b-2": "One", "a-b": "Two", "a-b-3": "Three"}
    assert found["a-b-2"].key == "a:b"


@pytest.mark.parametrize(
    ("written", "day"),
    [("2026-1-5", "2026-01-05"), ("2026/01/31/", "2026-01-31"), ("2026", "2026"), ("Jan 2026", "2026"), ("soon", "")],
)
def test_a_day_is_read_as_far_as_it_is_told(written: str, day: str) -> None:
    assert exports.day_in(written) == day


def test_names_without_a_comma_are_read_in_order_only_where_the_format_writes_them_so() -> None:
    assert str(exports.person("World Body of Calves")) == "World Body of Calves"
    assert str(exports.person_in_order("Vera Maria von Halm")) == "von Halm VM"
    assert exports.person("Orre B.P.") == exports.Author("Orre", "BP")


def test_of_many_findings_the_first_are_told_and_the_rest_counted() -> None:
    file = SourceFile("library.bib", "\n" * 30)
    found = [faults.id_changed(file.place(at), "a:b", "a-b") for at in range(25)]
    told = exports.fewer(found)
    assert [one.name for one in told] == ["id-changed"] * 10 + ["more-like-these"]
    assert told[-1].place.line == 11
    assert "15 times more" in told[-1].message


def test_a_preprint_is_known_by_its_word() -> None:
    assert exports.is_preprint("Pre-Print")
    assert not exports.is_preprint("printed")
    assert exports.year_in("spring 2021, no. 12345") == "2021"


def test_identifiers_in_a_note_do_not_replace_those_that_are_given() -> None:
    found = sources(bibtex, "@misc{a, pmid={5}, note={PMID: 6, DOI: 10.5555/x}}")["a"]
    assert (found.pmid, found.doi) == ("5", "10.5555/x")
