"""The fields of BibTeX entries under our names: names of people, dates, numbers, kinds of work."""

from __future__ import annotations

import pytest

from scriptkit.reading import bibtex
from tests.reading.exported import one, sources


@pytest.mark.parametrize(
    ("names", "read"),
    [
        ("Orre, Bo-Per Q. and Lind, P.", ("Orre BPQ", "Lind P")),
        ("Bo Orre and Vera von Halm", ("Orre B", "von Halm V")),
        ("von Halm, Vera and Tarn, Jr., Jan and Moor, Tam, III", ("von Halm V", "Tarn J", "Moor T")),
        (
            r"{\"O}stby, Lars and {World Body of Calves and Knees} and others",
            ("Östby L", "World Body of Calves and Knees"),
        ),
        ("Orre B", ("Orre B",)),
        ("Orre", ("Orre",)),
        ("{van der Berg}, Piet\n and\n Ruun, D.", ("van der Berg P", "Ruun D")),
    ],
)
def test_names_in_all_usual_shapes(names: str, read: tuple[str, ...]) -> None:
    assert one(bibtex, f"@article{{a, author = {{{names}}}}}").authors == read


@pytest.mark.parametrize(
    ("field", "year"),
    [
        ("year = 2021", "2021"), ("year = {c. 2021}", "2021"), ("date = {2020-05-01/2020-06}", "2020"),
        ("year = {in press}, date = {2019-02}", "2019"), ("year = {in press}", ""),
    ],
)  # fmt: skip
def test_the_year_is_found_in_year_or_date(field: str, year: str) -> None:
    assert one(bibtex, f"@article{{a, {field}}}").year == year


def test_identifiers_come_from_their_fields_from_addresses_and_from_notes() -> None:
    text = r"""@article{a, doi = {10.5555/a\_b}, isbn = {0-306-40615-2}, eprint = {123}, eprinttype = {pubmed}}
        @article{b, url = {https://doi.org/10.5555/b}, note = {PMID: 77; PMCID: PMC1234}, urldate = {2026-1-5}}"""
    a, b = sources(bibtex, text).values()
    assert (a.doi, a.isbn, a.pmid) == ("10.5555/a_b", "0-306-40615-2", "123")
    assert (b.doi, b.pmid.strip(";"), b.pmcid, b.accessed) == (
        "https://doi.org/10.5555/b",
        "77",
        "PMC1234",
        "2026-01-05",
    )


@pytest.mark.parametrize(
    ("text", "status"),
    [
        ("@article{a, journal={J}, eprint={1}, archiveprefix={shelf}}", ""),
        ("@misc{a, eprint={1}, archiveprefix={shelf}}", "preprint"),
        ("@unpublished{a, title={A}}", "preprint"),
        ("@misc{a, howpublished={Preprint}}", "preprint"),
        ("@misc{a, title={A}}", ""),
    ],
)
def test_a_preprint_is_known_by_what_the_entry_says(text: str, status: str) -> None:
    assert one(bibtex, text).status == status


def test_an_entry_takes_from_another_what_it_refers_to_it_for() -> None:
    text = "@inproceedings{a, title={A}, crossref={b}}\n@proceedings{b, title={The Talks}, year=2020, publisher={P}}"
    chapter = sources(bibtex, text)["a"]
    assert (chapter.journal, chapter.year, chapter.publisher) == ("The Talks", "2020", "P")


def test_keywords_and_subtitles_are_read_and_other_fields_do_not_matter() -> None:
    source = one(
        bibtex, "@article{a, title={A}, subtitle={B}, keywords={calf, growth; ledge}, file={x:y}, abstract={Z}}"
    )
    assert (source.title, source.keywords) == ("A: B", ("calf", "growth", "ledge"))
