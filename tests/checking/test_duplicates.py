"""One work under two ids, and two versions of one work."""

from __future__ import annotations

import pytest

from tests.checking.registers import with_sources
from tests.scripts import Write, found

TITLE = "title: Six weeks of timed hangs"


@pytest.mark.parametrize(
    ("first", "second", "column"),
    [
        ("doi: 10.5555/Grip", "doi: 'https://doi.org/10.5555/gRIP.'", 13),
        ("pmid: 123", "pmid: 123", 13),
        ("isbn: 0-306-40615-2", "isbn: 978-0-306-40615-7", 13),
        (f"{TITLE}, year: 2022", f"{TITLE.upper().replace('TITLE', 'title')}!, year: 2022", 14),
    ],
)
def test_the_same_work_under_two_ids_is_told_at_the_second(
    episode: Write, first: str, second: str, column: int
) -> None:
    ((place, message),) = found(with_sources(episode, f"a: {{{first}}}", f"b: {{{second}}}"), "same-work-twice")
    assert place == f"outline.yaml:5:{column}"
    assert '"a" (outline.yaml, line 4)' in message


@pytest.mark.parametrize(
    ("first", "second"),
    [
        (f"{TITLE}, year: 2022", f"{TITLE}, year: 2023"),
        ("title: Editorial, year: 2022", "title: Editorial, year: 2022"),
        (
            "isbn: 0-306-40615-2, kind: chapter, title: One chapter",
            "isbn: 0-306-40615-2, kind: chapter, title: Another",
        ),
        ("doi: 10.5555/a", "doi: 10.5555/b"),
        ("isbn: 1", "isbn: 1"),
    ],
)
def test_two_works_are_two(episode: Write, first: str, second: str) -> None:
    facts = with_sources(episode, f"a: {{{first}}}", f"b: {{{second}}}")
    assert found(facts, "same-work-twice") == found(facts, "work-in-two-versions") == []


def test_one_title_and_two_dois_may_be_a_preprint_and_its_article(episode: Write) -> None:
    facts = with_sources(episode, f"a: {{{TITLE}, doi: 10.5555/a}}", f"b: {{{TITLE}, doi: 10.5555/b}}")
    assert [place for place, _ in found(facts, "work-in-two-versions")] == ["outline.yaml:5:14"]
    assert found(facts, "same-work-twice") == []


def test_a_pair_is_told_once_and_two_unused_entries_of_an_export_are_not(episode: Write) -> None:
    facts = with_sources(
        episode, f"a: {{{TITLE}, year: 1, doi: 10.5555/a}}", f"b: {{{TITLE}, year: 1, doi: 10.5555/a}}"
    )
    assert len(found(facts, "same-work-twice")) == 1
    bib = "@misc{x, doi={10.5555/a}}\n@misc{y, doi={10.5555/a}}\n@misc{a, doi={10.5555/b}}\n@misc{z, doi={10.5555/b}}"
    facts = with_sources(episode, more="evidence: library.bib", library_bib=bib)
    assert [place for place, _ in found(facts, "same-work-twice")] == ["library.bib:4:15"]


def test_many_alike_come_to_an_end(episode: Write) -> None:
    bib = "".join(f"@misc{{a{at}, doi={{10.5555/a}}}}\n" for at in range(3000))
    facts = with_sources(episode, "a: {doi: 10.5555/a}", more="evidence: library.bib", library_bib=bib)
    assert 1 <= len(found(facts, "same-work-twice")) <= 15
