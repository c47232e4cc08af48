"""CSL-JSON in the shapes that programs write."""

from __future__ import annotations

import json

import pytest

from scriptkit.reading import csl
from tests.reading.exported import cut_everywhere, one, sources, told

PAGE = """[
  {"id": "orre-2021", "type": "article-journal", "title": "Effects of <i>ledges</i>",
   "author": [{"family": "Berg", "given": "Piet B.", "non-dropping-particle": "van der"}, {"literal": "World Body"}],
   "container-title": "Made-up Journal", "issued": {"date-parts": [["2021", 3]]}, "DOI": "10.5555/A",
   "keyword": "calf; growth"},
  {"id": 7, "title": "Seven", "note": "PMID: 11\\nPMCID: PMC1234", "accessed": {"date-parts": [[2026, 1, 2]]}}
]
"""


def test_names_dates_numbers_and_notes_are_read() -> None:
    orre, seven = sources(csl, PAGE).values()
    assert (orre.title, orre.authors, orre.year) == ("Effects of ledges", ("van der Berg PB", "World Body"), "2021")
    assert (orre.kind, orre.journal, orre.doi, orre.keywords) == (
        "article", "Made-up Journal", "10.5555/A", ("calf", "growth"),
    )  # fmt: skip
    assert (seven.id, seven.pmid, seven.pmcid, seven.accessed) == ("7", "11", "PMC1234", "2026-01-02")
    assert told(csl, PAGE) == []


def test_an_entry_and_its_keys_know_their_lines() -> None:
    orre = sources(csl, PAGE)["orre-2021"]
    assert (orre.at.place[1:], orre.at.of("title")[1:], orre.at.of("doi")[1:]) == ((2, 3), (2, 60), (4, 91))


@pytest.mark.parametrize(
    ("issued", "year"),
    [
        ({"date-parts": [[2021]]}, "2021"), ({"date-parts": [["2021", "3"]]}, "2021"), ({"raw": "March 2019"}, "2019"),
        ({"literal": "c. 2018"}, "2018"), ("2017-02-03", "2017"), (2016, "2016"), ({"date-parts": [[None]]}, ""),
        ([], ""),
    ],
)  # fmt: skip
def test_dates_in_all_shapes(issued, year: str) -> None:
    assert one(csl, json.dumps([{"id": "a", "issued": issued}])).year == year


@pytest.mark.parametrize(
    ("author", "names"),
    [
        ([{"name": "World Body"}], ("World Body",)), ("Orre, B.", ("Orre B",)), (["Orre B"], ("Orre B",)),
        ([{"given": "Plato"}], ("Plato",)), ([{}], ()), ({"family": "Orre"}, ("Orre",)), ([None], ()),
    ],
)  # fmt: skip
def test_names_in_all_shapes(author, names: tuple[str, ...]) -> None:
    assert one(csl, json.dumps([{"id": "a", "author": author}])).authors == names


@pytest.mark.parametrize(
    "text", ["{ITEM}", "[{ITEM}]", '{"items": [{ITEM}]}', '{"message": {ITEM}}', '{"message": {"items": [{ITEM}]}}']
)
def test_one_record_a_list_or_a_wrapper(text: str) -> None:
    assert one(csl, text.replace("{ITEM}", '{"id": "a", "title": ["A title"]}')).title == "A title"


def test_an_address_as_id_gives_way_to_surname_and_year() -> None:
    text = json.dumps([{"id": "http://example.org/items/X", "author": [{"family": "Orre"}], "issued": "2020"}])
    assert list(sources(csl, text)) == ["orre-2020"]
    assert told(csl, text) == [("id-made", 1, 10)]


def test_a_citation_key_wins_over_the_number_of_the_data_base() -> None:
    assert one(csl, '[{"id": "9", "citation-key": "orre2020", "title": "A"}]').id == "orre2020"


@pytest.mark.parametrize(
    ("item", "status"),
    [({"type": "article"}, "preprint"), ({"type": "article", "container-title": "J"}, ""),
     ({"type": "report", "genre": "Preprint"}, "preprint"), ({"type": "article-journal"}, "")],
)  # fmt: skip
def test_a_preprint_is_known_by_its_type(item, status: str) -> None:
    assert one(csl, json.dumps([{"id": "a", **item}])).status == status


def test_a_broken_record_is_told_and_all_others_are_read() -> None:
    text = '[\n {"id": "a", "title": x},\n {"id": "b", "title": "B"}\n]'
    assert list(sources(csl, text)) == ["a", "b"]
    assert told(csl, text) == [("json-syntax", 2, 23)]


def test_a_file_cut_off_anywhere_is_read_as_far_as_it_goes() -> None:
    cut_everywhere(csl, PAGE)
    assert list(sources(csl, PAGE[: PAGE.index("PMID")])) == ["orre-2021", "7"]
