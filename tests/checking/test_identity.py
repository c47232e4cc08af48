"""Identifiers and the year in them, told where they stand."""

from __future__ import annotations

import pytest

from tests.checking.registers import with_sources
from tests.scripts import Write, found


@pytest.mark.parametrize(
    ("keys", "says"),
    [
        ("doi: 10.55/grip", 'The DOI "10.55/grip" of "a" does not have the form'),
        ("pmid: PMC12345", "belongs under `pmcid`"),
        ("pmcid: 12345678", "belongs under `pmid`"),
        ("isbn: 978-3-16-148410-1", "check digit"),
    ],
)
def test_a_wrong_identifier_is_told_at_its_value(episode: Write, keys: str, says: str) -> None:
    ((place, message),) = found(with_sources(episode, f"a: {{{keys}}}"), "identifier-wrong")
    assert place == f"outline.yaml:4:{8 + keys.index(':') + 1}"
    assert says in message


@pytest.mark.parametrize(
    "keys",
    ["doi: https://doi.org/10.5555/grip.", "pmid: 'PMID: 123'", "pmcid: pmc12345", "isbn: ISBN 978-3-16-148410-0"],
)
def test_what_stands_around_one_does_not_matter(episode: Write, keys: str) -> None:
    facts = with_sources(episode, f"a: {{{keys}}}")
    assert found(facts, "identifier-wrong") == []
    source = facts.register["a"]
    assert (source.doi or source.pmid or source.pmcid or source.isbn) in (
        "10.5555/grip", "123", "PMC12345", "9783161484100",
    )  # fmt: skip


def test_an_example_s_doi_is_a_note_and_at_last_a_warning(episode: Write) -> None:
    facts = with_sources(episode, "a: {title: Hangs, doi: 10.5555/grip}", "b: {doi: 10.5555/x}")
    assert [place for place, _ in found(facts, "doi-of-examples", "publish")] == ["outline.yaml:4:26"]
    assert found(with_sources(episode, "a: {doi: 10.5555/grip, invented: true}"), "doi-of-examples", "publish") == []


@pytest.mark.parametrize(
    ("year", "doi", "told"),
    [
        (2012, "10.5555/grip.2022.3", True), (2021, "10.5555/grip.2022.3", False),
        (2023, "10.5555/j.2022.10.014", False),
        (2016, "10.5555/s00421-016-3529", False), (2012, "10.2022/grip", False), (2012, "10.5555/grip.20221", False),
        ("in press", "10.5555/grip.2022.3", False),
    ],
)  # fmt: skip
def test_a_year_that_is_far_from_the_doi_s_is_told(episode: Write, year: object, doi: str, told: bool) -> None:
    facts = with_sources(episode, f"a: {{year: {year}, doi: {doi}}}")
    assert [place for place, _ in found(facts, "year-differs")] == (["outline.yaml:4:13"] if told else [])
