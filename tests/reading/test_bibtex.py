"""BibTeX as programs write it and as hands break it: every entry that can be read is read."""

from __future__ import annotations

import pytest

from scriptkit.reading import bibtex
from tests.reading.exported import cut_everywhere, one, sources, told

PAGE = r"""% a library
@string{mjc = "Made-up Journal of Calves"}
@comment{anything {in} braces}
@preamble{"\newcommand{\x}{y}"}
someone@example.org wrote this
@Article {orre-2021,
  Title = {{Effects of {Ledge} Height}},
  author = "Orre, B. and Lind, Per",
  journal = mjc # { and Knees}, year = 2021, month = mar,
}
@book(halm2018, title="A {"}Calf{"} Book", year={2018}) @misc{tarn, title={T}}
"""


def test_entries_in_all_shapes_are_read() -> None:
    found = sources(bibtex, PAGE)
    assert list(found) == ["orre-2021", "halm2018", "tarn"]
    orre = found["orre-2021"]
    assert (orre.title, orre.journal, orre.year) == (
        "Effects of Ledge Height", "Made-up Journal of Calves and Knees", "2021",
    )  # fmt: skip
    assert (orre.kind, found["halm2018"].kind, found["halm2018"].title) == ("article", "book", 'A "Calf" Book')
    assert told(bibtex, PAGE) == []


def test_an_entry_and_its_fields_know_their_lines() -> None:
    orre = sources(bibtex, PAGE)["orre-2021"]
    assert (orre.at.place.line, orre.at.of("title")[1:], orre.at.of("year")[1:]) == (6, (7, 12), (9, 40))


@pytest.mark.parametrize(
    ("text", "places"),
    [
        ("@article{a, title = {Open\n@misc{b, title={B}}", [("broken-entry", 1, 21)]),
        ("@article{a,\n title = {Open,\n year = 2020\n}\n@misc{b, title={B}}", [("broken-entry", 2, 10)]),
        ('@article{a, title = "Open, year = 2020}\n@misc{b, title={B}}', [("broken-entry", 1, 21)]),
        ("@article{a, title = {A} year = 2020}\n@misc{b, title={B}}", [("broken-entry", 1, 25)]),
        ("@article{a, title = , year = 2020}\n@misc{b, title={B}}", [("broken-entry", 1, 21)]),
        ("@article{a, title {A}}\n@misc{b, title={B}}", [("broken-entry", 1, 13)]),
        ("@article{a, title = {A}\n\n@misc{b, title={B}}", [("broken-entry", 1, 1)]),
    ],
)
def test_a_broken_entry_is_told_in_its_place_and_the_next_one_is_read(text: str, places) -> None:
    found = sources(bibtex, text)
    assert list(found) == ["a", "b"]
    assert found["b"].title == "B"
    assert told(bibtex, text) == places


def test_what_a_value_swallowed_is_read_as_well() -> None:
    found = sources(bibtex, "@article{a,\n title = {Open,\n year = 2020,\n doi = {10.5555/a}\n}\n@misc{b}")["a"]
    assert (found.title, found.year, found.doi) == ("Open", "2020", "10.5555/a")


def test_a_key_that_is_missing_or_no_id_is_made_and_told() -> None:
    text = "@article{orre:2021/b, title={A}}\n@article{, author={Lind, P}, year=2019}\n@book{title={B}, year=1999}"
    assert list(sources(bibtex, text)) == ["orre-2021-b", "lind-2019", "b-1999"]
    assert told(bibtex, text) == [("id-changed", 1, 10), ("id-made", 2, 1), ("id-made", 3, 1)]


def test_the_first_of_two_entries_with_one_key_counts() -> None:
    text = "@misc{a, title={A}}\n@misc{a, title={B}}"
    assert one(bibtex, text).title == "A"
    assert told(bibtex, text) == [("source-defined-twice", 2, 1)]


def test_a_file_cut_off_anywhere_is_read_as_far_as_it_goes() -> None:
    cut_everywhere(bibtex, PAGE)
    assert told(bibtex, PAGE[: PAGE.index("year = 2021")])[0][0] == "broken-entry"


@pytest.mark.parametrize(
    "piece", ["@a{", "@comment{", "@a{\n", "{", '"', "@a{b,x={y}\n", "@a{b,c=d,", "@string{a=", "#"]
)
def test_a_long_run_of_one_piece_ends_in_few_findings(piece: str) -> None:
    assert len(told(bibtex, piece * 20_000)) < 50_000
