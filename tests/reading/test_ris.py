"""RIS as programs write it and as hands break it."""

from __future__ import annotations

import pytest

from scriptkit.reading import ris
from tests.reading.exported import cut_everywhere, one, sources, told

PAGE = """TY  - JOUR
ID  - orre-2021
AU  - Orre, Bo-Per
AU  - Lind, P.
A1  - World Body of Calves
TI  - Effects of ledges
 on calves
T2  - Made-up Journal
JO  - Made J
PY  - 2021/03/02/
DO  - doi:10.5555/calf.7
SN  - 1234-5678
AB  - A long
abstract
KW  - calf
KW  - growth
ER  -

TY  - BOOK
LB  - halm2018
T1  - Calves
ED  - Halm, Vera
SN  - 978-3-16-148410-0
PB  - Cork
Y1  - 2018///
ER  - \n"""


def test_repeated_tags_continued_lines_and_stand_in_tags_are_read() -> None:
    orre, halm = sources(ris, PAGE).values()
    assert orre.authors == ("Orre BP", "Lind P", "World Body of Calves")
    assert (orre.title, orre.journal, orre.year, orre.doi, orre.isbn, orre.keywords) == (
        "Effects of ledges on calves", "Made-up Journal", "2021", "doi:10.5555/calf.7", "", ("calf", "growth"),
    )  # fmt: skip
    assert (halm.id, halm.kind, halm.authors, halm.isbn, halm.publisher, halm.year) == (
        "halm2018", "book", ("Halm V",), "978-3-16-148410-0", "Cork", "2018",
    )  # fmt: skip
    assert told(ris, PAGE) == []


def test_an_entry_and_its_tags_know_their_lines() -> None:
    orre = sources(ris, PAGE)["orre-2021"]
    assert (orre.at.place[1:], orre.at.of("title")[1:], orre.at.of("doi")[1:]) == ((1, 1), (6, 7), (11, 7))


def test_an_entry_without_a_key_gets_one_of_surname_and_year() -> None:
    text = "TY  - JOUR\nAU  - Östby, Lars\nPY  - 2020\nER  - \n" * 2
    assert list(sources(ris, text)) == ["ostby-2020", "ostby-2020-2"]
    assert told(ris, text) == [("id-made", 1, 1), ("id-made", 5, 1)]


@pytest.mark.parametrize(
    ("text", "places", "ids"),
    [
        ("TY  - JOUR\nID  - a\n\nTY  - JOUR\nID  - b\nER  - \n", [("broken-entry", 1, 1)], ["a", "b"]),
        ("TY  - JOUR\nID  - a\n", [("broken-entry", 1, 1)], ["a"]),
        ("  words\nmore\nTY  - JOUR\nID  - a\nER  - \n", [("broken-entry", 1, 3)], ["a"]),
        ("AU  - Orre, B\nER  - \nTY  - JOUR\nID  - a\nER  - \n", [("broken-entry", 1, 1)], ["a"]),
        ("", [("no-entries", 1, 1)], []),
    ],
)
def test_a_broken_entry_is_told_and_all_others_are_read(text: str, places, ids) -> None:
    assert told(ris, text) == places
    assert list(sources(ris, text)) == ids


def test_a_number_of_a_data_base_is_a_pmid_where_the_data_base_is_named() -> None:
    source = one(ris, "TY  - JOUR\nID  - a\nAN  - 123\nDP  - PubMed\nC2  - PMC1234\nER  - \n")
    assert (source.pmid, source.pmcid) == ("123", "PMC1234")
    assert one(ris, "TY  - JOUR\nID  - a\nAN  - 123\nER  - \n").pmid == ""


def test_a_preprint_and_the_day_a_page_was_read() -> None:
    assert one(ris, "TY  - UNPB\nID  - a\nER  - \n").status == "preprint"
    assert one(ris, "TY  - JOUR\nID  - a\nM3  - Preprint\nER  - \n").status == "preprint"
    assert one(ris, "TY  - ELEC\nID  - a\nY2  - 2026/01/31/\nER  - \n").accessed == "2026-01-31"


def test_a_file_cut_off_anywhere_is_read_as_far_as_it_goes() -> None:
    cut_everywhere(ris, PAGE)
