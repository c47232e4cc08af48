"""The evidence register: every field of a source, several files, ids that meet."""

from __future__ import annotations

import pytest

from scriptkit import build
from tests.reading.episodes import GOOD, of_kind, one, seen

WHOLE = """
    sources:
      orre-2021:
        title: Ledge raises
        authors: [Orre B, {family: Lind, given: Per-Olof Q}, {family: Halm}]
        year: 2021
        journal: Made-up Journal
        publisher: none
        doi: 10.5555/calf.2021.7
        pmid: 0123
        pmcid: PMC1
        isbn: 978-0
        url: https://example.org
        accessed: 2026-01
        status: Published
        design: randomised trial
        comparison: within-person
        timeframe: longitudinal
        population: runners
        training: trained
        n: 38
        n_units: 76
        n_per_group: 19
        duration_weeks: 10.5
        registration: none
        funding: none declared
        invented: true
        findings:
          growth: {outcome: growth, measure: ultrasound, site: calf, result: 62 to 41, values: {ledge: 62 mL},
                   effect: 0.41, ci: [0.06, 0.76], baseline: 410 mL, absolute: 21 mL, certainty: moderate,
                   quote: Q, page: 7}
          size: muscle size
        note: free text
    """


def test_every_field_of_a_source_is_read(episode) -> None:
    folder = episode({"outline.yaml": GOOD + "evidence: evidence.yaml\n", "evidence.yaml": WHOLE})
    source = build.read(folder).register["orre-2021"]
    assert seen(folder) == []
    assert source.authors == ("Orre B", "Lind POQ", "Halm")
    assert (source.doi, source.pmid, source.status, source.n, source.duration_weeks) == (
        "10.5555/calf.2021.7", "0123", "published", 38, 10.5,
    )  # fmt: skip
    assert (source.findings["growth"].values["ledge"], source.findings["growth"].ci) == ("62 mL", (0.06, 0.76))
    assert source.findings["size"].outcome == "muscle size"


def test_sources_come_from_the_outline_and_from_several_files(episode) -> None:
    folder = episode(
        {
            "outline.yaml": GOOD + "evidence: [a.yaml, sub/b.yml, a.yaml]\nsources: {x: {title: X}}\n",
            "a.yaml": "sources: {a: {title: A}}\n",
            "sub/b.yml": "sources: {b: {title: B}}\n",
        }
    )
    assert list(build.read(folder).register) == ["x", "a", "b"]
    assert seen(folder) == []


def test_an_id_in_two_registers_is_found_at_the_second_and_the_first_counts(episode) -> None:
    folder = episode(
        {
            "outline.yaml": GOOD + "evidence: [a.yaml, b.yaml]\nsources: {x: {title: X}}\n",
            "a.yaml": "sources:\n  a: {title: A}\n  x: {title: Other}\n",
            "b.yaml": "sources: {a: {title: Again}}\n",
        }
    )
    assert seen(folder) == [("source-defined-twice", "a.yaml", 3, 3), ("source-defined-twice", "b.yaml", 1, 11)]
    assert "a.yaml, line 2" in of_kind(folder, "source-defined-twice")[1].message
    assert [source.title for source in build.read(folder).register.values()] == ["X", "A"]


def test_a_poor_copy_before_a_whole_one_is_told_once_and_costs_nothing_else(episode) -> None:
    files = {
        "outline.yaml": GOOD + "evidence: [a.yaml, b.yaml]\n",
        "a.yaml": "sources: {x: {title: X, findings: {g: {outcome: grip}}}}\n",
        "b.yaml": "sources: {x: {title: Other, n: 38, invented: true, findings: {g: grab, h: hang time}}}\n",
    }
    folder = episode(files)
    source = build.read(folder).register["x"]
    assert [name for name, *_ in seen(folder)] == ["source-defined-twice"]
    assert (source.title, source.n, source.invented) == ("X", 38, True)
    assert {name: one.outcome for name, one in source.findings.items()} == {"g": "grip", "h": "hang time"}
    assert (source.at.place.file, source.at.of("n").file) == ("a.yaml", "b.yaml")


@pytest.mark.parametrize(
    ("text", "name", "place"),
    [
        ("", "missing-value", (1, 1)),
        ("# later\n", "missing-value", (1, 1)),
        ("- a\n", "wrong-type", (1, 1)),
        ("source: {}\n", "unknown-key", (1, 1)),
        ("sources: [a]\n", "wrong-type", (1, 10)),
        ("sources: {a b: {title: A}}\n", "bad-id", (1, 11)),
        ("sources: {a: {authors: [[Orre]]}}\n", "wrong-type", (1, 25)),
        ("sources: {a: {status: publisht}}\n", "unknown-word", (1, 23)),
        ("sources: {a: {findings: {g: {ci: [0.1]}}}}\n", "wrong-type", (1, 34)),
    ],
)
def test_a_fault_of_a_register_is_found_in_its_file(episode, text: str, name: str, place) -> None:
    folder = episode({"outline.yaml": GOOD + "evidence: [evidence.yaml]\n", "evidence.yaml": text})
    assert (name, "evidence.yaml", *place) in seen(folder)
    assert build.read(folder).readable


@pytest.mark.parametrize("name", ["library.docx", "library", "library.xml", "library.yaml.txt"])
def test_a_register_in_another_format_is_told_where_it_is_named(episode, name: str) -> None:
    folder = episode({"outline.yaml": f"{GOOD}evidence: [{name}]\n", name: "@article{a}"})
    assert one(folder, "evidence-format") == ("outline.yaml", 3, 12)


FOUR = {
    "outline.yaml": GOOD + "evidence: [fields.yaml, library.bib, export.ris, csl.json]\n",
    "fields.yaml": "sources:\n  orre:\n    n: 38\n    year: 2020\n  own: {title: Own}\n",
    "library.bib": "@article{orre, title = {Ledges}, year = 2021, doi = {https://doi.org/10.5555/Calf.7.}}\n",
    "export.ris": "TY  - JOUR\nID  - lind\nTI  - Floors\nER  - \n",
    "csl.json": '[{"id": "halm", "title": "Steps"}]\n',
}


def test_yaml_and_what_three_kinds_of_export_hold_make_one_register(episode) -> None:
    folder = episode(FOUR)
    assert [source.title for source in build.read(folder).register.values()] == ["Ledges", "Own", "Floors", "Steps"]
    assert seen(folder) == []


def test_an_exported_source_takes_what_a_yaml_register_adds_and_yaml_wins(episode) -> None:
    orre = build.read(episode(FOUR)).register["orre"]
    assert (orre.title, orre.n, orre.year, orre.doi) == ("Ledges", 38, "2020", "10.5555/Calf.7")
    assert (orre.at.place[:2], orre.at.of("year"), orre.at.of("title")[:2]) == (
        ("fields.yaml", 2), ("fields.yaml", 4, 11), ("library.bib", 1),
    )  # fmt: skip


def test_the_outline_s_own_sources_join_an_export_as_well(episode) -> None:
    outline = GOOD + "evidence: library.bib\nsources: {orre: {design: cohort}}\n"
    orre = build.read(episode({"outline.yaml": outline, "library.bib": FOUR["library.bib"]})).register["orre"]
    assert (orre.title, orre.design) == ("Ledges", "cohort")


def test_one_id_in_two_exports_is_told_and_the_first_counts(episode) -> None:
    folder = episode({**FOUR, "export.ris": "TY  - JOUR\nID  - orre\nTI  - Floors\nER  - \n"})
    assert one(folder, "source-defined-twice") == ("export.ris", 1, 1)
    assert build.read(folder).register["orre"].title == "Ledges"


@pytest.mark.parametrize("name", ["library.bib", "export.ris", "csl.json"])
def test_an_export_in_latin_1_empty_or_too_large_is_told(episode, name: str) -> None:
    for data, kind in ((b"caf\xe9", "not-utf8"), (b"", "no-entries"), (b"a" * 20_000_001, "file-too-large")):
        folder = episode({**FOUR, name: data})
        assert kind in {found[0] for found in seen(folder)}


@pytest.mark.parametrize("name", ["library.bib", "export.ris", "csl.json"])
def test_a_mark_of_byte_order_and_windows_line_ends_do_not_matter(episode, name: str) -> None:
    folder = episode({**FOUR, name: b"\xef\xbb\xbf" + FOUR[name].replace("\n", "\r\n").encode()})
    assert seen(folder) == []
    assert len(build.read(folder).register) == 4


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("fields.yaml", "sources: {"), ("library.bib", "@article{orre, title = {Led"), ("export.ris", "TY  - JOUR\n"),
        ("csl.json", '[{"id": "halm'), ("library.bib", b"\xff"),
    ],
)  # fmt: skip
def test_while_a_register_cannot_be_read_whole_its_sources_are_not_called_unknown(episode, name: str, text) -> None:
    outline = FOUR["outline.yaml"].replace("Bar hang", "Bar hang, claims: [{say: It grew., source: far}]")
    assert len(of_kind(episode({**FOUR, "outline.yaml": outline}), "unknown-source")) == 1
    folder = episode({**FOUR, "outline.yaml": outline, name: text})
    assert of_kind(folder, "unknown-source") == []
    assert build.read(folder).library.unread == (name,)


def test_an_orcid_is_checked_where_an_author_has_one(episode) -> None:
    authors = "sources: {a: {title: A, authors: [{family: Orre, orcid: 0000-0001-2345-6780}]}}\n"
    assert one(episode({"outline.yaml": GOOD + authors}), "orcid-wrong") == ("outline.yaml", 3, 57)


def test_findings_of_an_export_do_not_fill_the_screen(episode) -> None:
    entries = "".join(f"@misc{{a:{number}, title={{A}}}}\n" for number in range(300))
    folder = episode({"outline.yaml": GOOD + "evidence: library.bib\n", "library.bib": entries})
    assert len(seen(folder)) == 11
    assert len(build.read(folder).register) == 300
