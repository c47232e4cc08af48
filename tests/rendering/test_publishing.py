"""The files for publishing, as a build writes them and as other programs read them."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from citeproc import Citation, CitationItem, CitationStylesBibliography, CitationStylesStyle, formatter
from citeproc.source.json import CiteProcJSON

from scriptkit.rendering import publishing
from scriptkit.shipped import shipped
from tests.running import run
from tests.scripts import Write, worked_out

STYLE = """<?xml version="1.0" encoding="utf-8"?>
<style xmlns="http://purl.org/net/xbiblio/csl" class="in-text" version="1.0">
<info><title>All there is</title><id>all</id><updated>2026-01-01T00:00:00+00:00</updated></info>
<citation><layout><text variable="citation-number"/></layout></citation>
<bibliography><layout><group delimiter=" | ">
<names variable="author"><name initialize-with="" name-as-sort-order="all" sort-separator=" " delimiter=", "/></names>
<text variable="title"/><text variable="container-title"/><text variable="publisher"/>
<date variable="issued"><date-part name="year"/></date><text variable="DOI"/><text variable="PMID"/>
<text variable="ISBN"/><text variable="URL"/>
<date variable="accessed" form="numeric" date-parts="year-month-day"/><text variable="note"/>
</group></layout></bibliography></style>"""
NOTE = "Invented example, not a real study."
FOUR = """
    title: One
    exercises:
      hang:
        name: Bar hang
        claims:
          - {say: In one trial hang time rose., source: [book, mora, page, norm, paper]}
    sources:
      mora: {title: Timed hangs, authors: [Mora A. B., Made-up Council], year: 2022, journal: Made-up Grip,
             doi: 10.5555/grip.22, pmid: 123, invented: true, status: retracted}
      book: {title: Grip, year: 2019, publisher: Made-up Press, isbn: 9783161484100}
      page: {title: A count, url: https://example.org/tally, accessed: 2026-03-02}
      norm: {title: Bars, design: standard, year: 2020}
      paper: {title: Soon, status: preprint, year: in press}
    """


def built(folder: Path, out: Path) -> dict[str, str]:
    assert run("build", folder, "--out", out).status in (0, 1)
    return {path.name: path.read_text(encoding="utf-8") for path in out.iterdir() if path.suffix in (".txt", ".json")}


def read_by_another(items: list[dict[str, Any]], folder: Path) -> list[str]:
    """The works in the order of the file, as a CSL processor prints them."""
    (folder / "all.csl").write_text(STYLE, encoding="utf-8")
    style = CitationStylesStyle(str(folder / "all.csl"), validate=False)
    bibliography = CitationStylesBibliography(style, CiteProcJSON(items), formatter.plain)
    for item in items:
        bibliography.register(Citation([CitationItem(item["id"])]))
    return [str(one) for one in bibliography.bibliography()]


def test_csl_json_is_read_by_a_csl_processor(episode: Write, tmp_path: Path) -> None:
    items = json.loads(built(episode({"outline.yaml": FOUR}), tmp_path / "made")["references.json"])
    assert read_by_another(items, tmp_path) == [
        "Grip | Made-up Press | 2019 | 9783161484100",
        f"Mora AB, Made-up Council | Timed hangs | Made-up Grip | 2022 | 10.5555/grip.22 | 123 | {NOTE}",
        "A count | https://example.org/tally | 03/02/2026",
        "Bars | 2020",
        "Soon | in press",
    ]
    assert [one["type"] for one in items] == ["book", "article-journal", "webpage", "standard", "article"]
    assert items[1]["status"] == "retracted"
    assert items[4]["issued"] == {"literal": "in press"}


def test_csl_json_is_read_back_as_a_register(episode: Write, tmp_path: Path) -> None:
    folder = episode({"outline.yaml": FOUR})
    made = built(folder, tmp_path / "made")["references.json"]
    before = worked_out(folder).register
    outline = FOUR.partition("    sources:")[0] + "    evidence: references.json\n"
    after = worked_out(episode({"outline.yaml": outline, "references.json": made})).register
    assert after.keys() == before.keys()
    for name, source in after.items():
        for key in ("title", "journal", "publisher", "doi", "pmid", "isbn", "url", "accessed"):
            assert getattr(source, key) == getattr(before[name], key)
    assert after["mora"].authors == ("Mora AB", "Made-up Council")
    assert after["mora"].year == "2022"


def test_the_sample_is_in_one_order_in_every_file(tmp_path: Path) -> None:
    made = built(shipped("sample_episode"), tmp_path / "made")
    items = json.loads(made["references.json"])
    listed = made["references.txt"].splitlines()
    assert len(listed) == len(items) == len(read_by_another(items, tmp_path)) > 5
    for number, (line, item) in enumerate(zip(listed, items, strict=True), 1):
        assert line.startswith(f"{number}. {item['author'][0]['family']} ")
        assert "[Invented example]" in line
        assert item["note"].startswith("Invented")
    assert f"\n\nSources, numbered as spoken\n{made['references.txt']}\n" in made["description.txt"]
    assert f"\n\nChapters\n{made['chapters.txt']}\n" in made["description.txt"]
    report = json.loads(made["report.json"])
    assert [one["id"] for one in report["references"]] == [one["id"] for one in items]
    assert [one["title"] for one in report["publication"]["chapters"]] == [
        line.partition(" ")[2] for line in made["chapters.txt"].splitlines()
    ]
    assert report["publication"]["description_bytes"] == len(made["description.txt"].encode())


def test_what_is_empty_or_shortened_is_told_where_the_files_are_listed(episode: Write, tmp_path: Path) -> None:
    outline = (
        "title: One\nexercises: {hang: {name: Bar hang}}\norder: [hang]\ncredits: ["
        + ", ".join(["N. N."] * 900)
        + "]\n"
    )
    folder = episode({"outline.yaml": outline, "segments/hang.md": "Here it is. [aside] [hold 40s: hang]"})
    made = built(folder, tmp_path / "made")
    assert made["chapters.txt"] == made["references.txt"] == ""
    assert made["references.json"] == "[]\n"
    index = (tmp_path / "made" / "index.html").read_text(encoding="utf-8")
    assert "the chapters alone; empty: 1 would come about, and 3 are needed" in index
    assert "numbered as they are spoken; empty: no source is spoken" in index
    assert "to be short enough, the credits are left out" in index
    assert json.loads(made["report.json"])["publication"]["shortened"] == ["the credits are left out"]


@pytest.mark.parametrize("most", [None, 100])
def test_the_size_of_the_description_is_told_beside_it(episode: Write, most: int | None) -> None:
    facts = worked_out(episode({"outline.yaml": FOUR}))
    size = facts.publication.size
    if most:
        facts = facts._replace(limits=facts.limits._replace(description_bytes=most))
        assert f"; {size:,} bytes, more than the 100 it may have" in publishing.remarks(facts)["description.txt"]
    else:
        assert publishing.remarks(facts)["description.txt"] == f"; {size:,} bytes of 5,000"


def test_errata_reach_description_script_and_report(episode: Write, tmp_path: Path) -> None:
    outline = (
        "title: One\nexercises: {hang: {name: Bar hang}, row: {name: Row}}\norder: [opening, hang]\n"
        "errata:\n- {was: ten <weeks>, now: eight *weeks*, why: I misread it., where: hang, since: 2026-04-01}\n"
        "- {was: red, now: blue, where: row, since: 2026-04-02}\n"
    )
    folder = episode({"outline.yaml": outline})
    made = built(folder, tmp_path / "made")
    lines = made["description.txt"].splitlines()
    assert "CORRECTION, 2026-04-01, Bar hang. Wrong: “ten ‹weeks›” Right: “eight *weeks*” Why: I misread it." in lines
    assert "CORRECTION, 2026-04-02, Row. Wrong: “red” Right: “blue”" in lines
    page = (tmp_path / "made" / "script.html").read_text(encoding="utf-8")
    at_hang = page.partition('<h2 dir="auto">Bar hang</h2>')[2].partition("</tr>")[0]
    assert (
        "<b>Correction</b>, 2026-04-01: “ten &lt;weeks&gt;” was wrong. Right is: “eight *weeks*” Why: I misread it."
        in at_hang
    )
    assert page.count("ten &lt;weeks&gt;") == 1
    assert (
        "<b>Correction</b>, 2026-04-02, <bdi>Row</bdi>: “red” was wrong. Right is: “blue”"
        in page.partition("<table")[0]
    )
    script = (tmp_path / "made" / "script.md").read_text(encoding="utf-8")
    told = '**Correction, 2026-04-01:** "ten \\<weeks\\>" was wrong. Right is: "eight \\*weeks\\*" Why: I misread it.'
    assert told.replace("\\>", ">") in script.partition("Bar hang")[2]
    assert '**Correction, 2026-04-02, Row:** "red" was wrong.' in script.partition("## 0:00")[0]
    first, second = json.loads(made["report.json"])["errata"]
    assert (first["was"], first["segment"], first["since"], first["start_s"] > 0) == (
        "ten <weeks>",
        "hang",
        "2026-04-01",
        True,
    )
    assert (second["where"], second["segment"], second["title"], second["start_s"]) == ("row", "", "Row", None)
