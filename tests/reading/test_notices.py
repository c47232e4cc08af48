"""Saved lists of retractions and saved records: what they say of a source, and what is wrong with them."""

from __future__ import annotations

import json

import pytest

from scriptkit import build
from scriptkit.reading.notices import nature_of, us_date
from tests.reading.episodes import GOOD, of_kind, one, seen

COLUMNS = (
    "Record ID,Title,Subject,Institution,Journal,Publisher,Country,Author,URLS,ArticleType,RetractionDate,"
    "RetractionDOI,RetractionPubMedID,OriginalPaperDate,OriginalPaperDOI,OriginalPaperPubMedID,RetractionNature,Reason,Paywalled,Notes"
)
SOURCES = "sources: {a: {title: A, doi: 10.5555/Calf.1}, b: {title: B, pmid: 77}, c: {title: C}}\n"


def row(number: int, day: str, doi: str, pmid: str, nature: str, reason: str = "+Made up;+Again;") -> str:
    return (
        f'{number},"A, title",,,,,,,,,{day},10.5555/notice.{number},0,1/1/2020 0:00,{doi},{pmid},{nature},{reason},No,'
    )


def register(episode, *rows: str, records: object = None, columns: str = COLUMNS):
    """The sources of an episode with a list of these rows, and perhaps records, and its folder."""
    files = {
        "outline.yaml": GOOD + SOURCES + "retractions: [list.csv]\n",
        "list.csv": "\n".join([columns, *rows]) + "\n",
    }
    if records is not None:
        files["outline.yaml"] += "crossref: saved.json\n"
        files["saved.json"] = json.dumps(records)
    folder = episode({name: text.encode() for name, text in files.items()})
    return build.read(folder).library, folder


def test_a_retraction_is_found_by_doi_and_by_pmid(episode) -> None:
    library, folder = register(
        episode,
        row(1, "3/15/2021 0:00", "10.5555/CALF.1", "0", "Retraction"),
        row(2, "4/1/2022 0:00", "unavailable", "77", "Expression of concern"),
        row(3, "5/1/2022 0:00", "10.5555/other", "0", "Retraction"),
    )
    a, b, c = library.sources.values()
    assert (a.status, b.status, c.status) == ("retracted", "concern", "")
    assert a.notices[0][:6] == ("Retraction", "2021-03-15", "Made up; Again", "list.csv", "1", "10.5555/notice.1")
    assert a.notices[0].at[1:] == (2, 1)
    assert library.lists[0][:3] == ("list.csv", "2022-05-01", {"a", "b"})
    assert seen(folder) == []


@pytest.mark.parametrize(
    ("events", "status"),
    [
        ([("1/1/2020", "Retraction"), ("1/1/2021", "Reinstatement")], ""),
        ([("1/1/2022", "Retraction"), ("1/1/2021", "Reinstatement")], "retracted"),
        ([("1/1/2020", "Retraction"), ("1/1/2021", "Correction")], "retracted"),
        ([("1/1/2021", "Correction"), ("1/1/2020", "Expression of concern")], "corrected"),
        ([("", "Retraction"), ("1/1/2021", "Correction")], "retracted"),
    ],
)
def test_the_latest_event_wins_and_only_a_reinstatement_undoes_a_retraction(episode, events, status: str) -> None:
    rows = [row(at, day, "10.5555/calf.1", "0", nature) for at, (day, nature) in enumerate(events)]
    library, _ = register(episode, *rows)
    assert library.sources["a"].status == status
    assert len(library.sources["a"].notices) == 2


def test_the_author_s_own_word_stands_where_it_is_worse(episode) -> None:
    sources = "sources: {a: {title: A, doi: 10.5555/calf.1, status: preprint}}\nretractions: list.csv\n"
    text = "\n".join([COLUMNS, row(1, "1/1/2021", "10.5555/calf.1", "0", "Correction")])
    folder = episode({"outline.yaml": GOOD + sources, "list.csv": text.encode()})
    assert build.read(folder).register["a"].status == "preprint"


def test_saved_records_are_read_and_an_event_that_is_in_both_counts_once(episode) -> None:
    updated = {"date-parts": [[2021, 3, 15]], "date-time": "2021-03-15T00:00:00Z"}
    event = {"DOI": "10.5555/notice.1", "type": "retraction", "source": "publisher", "updated": updated}
    twice = [event, {**event, "source": "retraction-watch", "record-id": 1}]
    record = {"DOI": "10.5555/calf.1", "updated-by": twice, "indexed": {"date-time": "2026-02-01T10:00:00Z"}}
    rows = [row(1, "3/16/2021", "10.5555/calf.1", "0", "Retraction")]
    library, folder = register(episode, *rows, records={"message": record})
    assert library.sources["a"].status == "retracted"
    assert len(library.sources["a"].notices) == 1
    assert library.lists[1][:3] == ("saved.json", "2026-02-01", {"a"})
    assert seen(folder) == []


def test_a_notice_s_own_record_tells_of_the_work_it_updates(episode) -> None:
    notice = {
        "DOI": "10.5555/notice",
        "title": "N",
        "update-to": [{"DOI": "10.5555/calf.1", "type": "expression_of_concern"}],
    }
    library, _ = register(episode, records=[notice, {"DOI": "10.5555/other", "title": "Other"}])
    assert library.sources["a"].status == "concern"


def test_a_column_that_is_missing_is_told(episode) -> None:
    _, folder = register(episode, columns="RetractionNature,RetractionDate,OriginalPaperDOI,Title")
    assert one(folder, "list-not-read") == ("list.csv", 1, 1)
    assert "OriginalPaperPubMedID" in of_kind(folder, "list-not-read")[0].message
    _, folder = register(episode, columns=COLUMNS.replace(",Reason", ""))
    assert "no column Reason;" in of_kind(folder, "list-columns")[0].message


def test_a_list_of_the_four_columns_that_are_read_lacks_none(episode) -> None:
    columns = "RetractionNature,RetractionDate,OriginalPaperDOI,OriginalPaperPubMedID"
    library, folder = register(episode, "Retraction,3/15/2021,10.5555/calf.1,0", columns=columns)
    assert library.sources["a"].status == "retracted"
    assert seen(folder) == []


def test_a_list_may_begin_with_a_mark_and_end_its_lines_as_windows_does(episode) -> None:
    text = "\ufeff" + "\r\n".join([COLUMNS, row(1, "3/15/2021", "10.5555/calf.1", "0", "Retraction")])
    folder = episode({"outline.yaml": GOOD + SOURCES + "retractions: list.csv\n", "list.csv": text.encode()})
    assert build.read(folder).register["a"].status == "retracted"
    assert seen(folder) == []


@pytest.mark.parametrize(
    ("line", "says"),
    [
        (row(1, "15/3/2021", "10.5555/x", "0", "Retraction"), "month/day/year"),
        (row(1, "2/30/2021", "10.5555/x", "0", "Retraction"), "month/day/year"),
        (row(1, "3/1/2021", "10.5555/calf.1", "0", "Applause"), '"Applause"'),
        ("1,short", "too few"),
        ('1,"open', "a quote is opened"),
    ],
)
def test_a_row_that_cannot_be_read_is_told_on_its_line(episode, line: str, says: str) -> None:
    _, folder = register(episode, row(9, "3/1/2021", "10.5555/x", "0", "Retraction"), line)
    found = of_kind(folder, "list-row")
    assert found[0].place[:2] == ("list.csv", 3)
    assert any(says in told.message for told in found)


def test_many_bad_rows_are_counted(episode) -> None:
    _, folder = register(episode, *[row(at, "soon", "10.5555/x", "0", "Retraction") for at in range(50)])
    assert len(of_kind(folder, "list-row")) == 10
    assert "40 times" in of_kind(folder, "more-like-these")[0].message


def test_a_list_or_record_cut_off_anywhere_is_read_as_far_as_it_goes(episode) -> None:
    text = "\n".join([COLUMNS, row(1, "3/15/2021", "10.5555/calf.1", "0", "Retraction")])
    saved = json.dumps({"message": {"DOI": "10.5555/calf.1", "updated-by": [{"type": "retraction"}]}})
    for end in range(0, len(text), 7):
        folder = episode(
            {
                "outline.yaml": GOOD + SOURCES + "retractions: list.csv\ncrossref: saved.json\n",
                "list.csv": text[:end].encode(), "saved.json": saved[:end].encode(),
            }
        )  # fmt: skip
        assert build.read(folder).readable


def test_dates_and_natures_are_read_strictly() -> None:
    assert (us_date("3/5/2021 0:00"), us_date("13/5/2021"), us_date("2021-03-05")) == ("2021-03-05", "", "")
    assert (nature_of("expression_of_concern"), nature_of("Corrigendum"), nature_of("praise")) == (
        "Expression of concern", "Correction", "",
    )  # fmt: skip
