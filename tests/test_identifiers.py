"""Identifiers: what is taken off around one, what is wrong with one, and by what two of them are the same."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scriptkit.identifiers import NAMES, clean, same, trouble

PIECES = (
    *("10.5555/", "10.1002/", "doi:", "https://doi.org/", "abc", ".", "(", ")", "%2F", "%20", "?x", "#", " ", "<", ">"),
    *(
        "PMC123456",
        "12345678",
        "PMID: ",
        "978-3-16-148410-0",
        "0-306-40615-2",
        "ISBN ",
        "0000-0001-2345-6789",
        "X",
        ";",
    ),
)
NEARLY = st.one_of(st.lists(st.sampled_from(PIECES), max_size=7).map("".join), st.text(max_size=40))


@pytest.mark.parametrize(
    ("kind", "given_", "plain"),
    [
        ("doi", "https://doi.org/10.5555/calf.2021.7", "10.5555/calf.2021.7"),
        ("doi", "http://dx.doi.org/10.5555%2Fcalf.7?source=list", "10.5555/calf.7"),
        ("doi", "doi: 10.5555/calf.2019.10.014.", "10.5555/calf.2019.10.014"),
        ("doi", "(10.5555/calf)", "10.5555/calf"),
        ("doi", "10.5555/S0140-6736(96)00001-2", "10.5555/S0140-6736(96)00001-2"),
        ("doi", "no number", "no number"),
        ("pmid", "PMID: 12345678.", "12345678"),
        ("pmid", "https://example.org/12345/", "12345"),
        ("pmcid", "https://example.org/pmc/articles/pmc1234567/", "PMC1234567"),
        ("isbn", "ISBN-13: 978–3–16–148410–0", "9783161484100"),
        ("isbn", "0-8044-2957-x (cloth)", "080442957X"),
        ("orcid", "https://orcid.org/0000000123456789", "0000-0001-2345-6789"),
    ],
)  # fmt: skip
def test_what_stands_around_an_identifier_is_taken_off(kind: str, given_: str, plain: str) -> None:
    assert clean(kind, given_) == plain


@pytest.mark.parametrize(
    ("kind", "value"),
    [
        ("doi", "10.5555/calf.2021.7"),
        ("doi", "10.1002/(SICI)1097-4679(199811)54:7<1::AID-X>3.0.CO;2-K"),
        ("pmid", "1"), ("pmcid", "PMC12345678"), ("pmcid", "PMC1234567.1"),
        ("isbn", "9783161484100"), ("isbn", "0306406152"), ("isbn", "080442957X"), ("orcid", "0000-0001-2345-6789"),
    ],
)  # fmt: skip
def test_a_right_identifier_has_no_trouble(kind: str, value: str) -> None:
    assert trouble(kind, value) == ""


@pytest.mark.parametrize(
    ("kind", "value", "says"),
    [
        ("doi", "10.55/calf", "form of a DOI"),
        ("doi", "10.5555/calf 7", "holds a space"),
        ("doi", "10.5555/calf<7>", 'holds "<"'),
        ("pmid", "0123", "one to eight digits"),
        ("pmid", "PMC12345", "belongs under `pmcid`"),
        ("pmcid", "12345678", "belongs under `pmid`"),
        ("pmcid", "PMC1", "four to nine digits"),
        ("isbn", "9783161484101", "check digit"),
        ("isbn", "0306406153", "check digit"),
        ("isbn", "12345", "10 digits, or 13"),
        ("orcid", "0000-0001-2345-6780", "check digit"),
        ("orcid", "0000-0001", "four groups"),
    ],
)
def test_what_is_wrong_with_one_is_told(kind: str, value: str, says: str) -> None:
    assert says in trouble(kind, value)


def test_dois_are_compared_without_case_and_isbns_in_their_long_form() -> None:
    assert same("doi", "10.5555/Calf") == same("doi", "10.5555/cALF")
    assert same("isbn", "0306406152") == same("isbn", "9780306406157") == "9780306406157"
    assert same("pmid", "0123") == ""


@given(st.sampled_from(sorted(NAMES)), NEARLY)
def test_cleaning_what_is_clean_changes_nothing(kind: str, text: str) -> None:
    plain = clean(kind, text)
    assert clean(kind, plain) == plain
    assert isinstance(trouble(kind, plain), str)
