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


@pytest.mark.parametrize("name", ["library.bib", "library", "library.json", "library.yaml.txt"])
def test_a_register_in_another_format_is_told_where_it_is_named(episode, name: str) -> None:
    folder = episode({"outline.yaml": f"{GOOD}evidence: [{name}]\n", name: "@article{a}"})
    assert one(folder, "evidence-format") == ("outline.yaml", 3, 12)
