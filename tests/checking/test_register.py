"""Sources that are retracted, too bare to judge, or not used."""

from __future__ import annotations

import pytest

from tests.checking.registers import WHOLE, with_sources
from tests.scripts import Write, found, helps

LIST = "RetractionNature,RetractionDate,OriginalPaperDOI,OriginalPaperPubMedID\nRetraction,3/1/2022,10.5555/GRIP.22,0\n"


def test_a_source_that_is_all_there_raises_nothing(episode: Write) -> None:
    names = {name for name, _ in found(with_sources(episode, f"a: {{{WHOLE}}}"))}
    assert not names & {"source-bare", "source-unused", "source-retracted", "identifier-wrong", "doi-of-examples"}


@pytest.mark.parametrize(
    ("source", "missing"),
    [
        ("title: Hangs, year: 2022, doi: 10.5555/a", "no design and no n and no findings"),
        ("title: Hangs, year: 2022, doi: 10.5555/a, design: cohort, n: 12, findings: {a: b}", "no duration_weeks"),
        ("title: Hangs, design: survey, findings: {a: b}, journal: J", "no year"),
        ("year: 2022, url: example.org", "no title"),
        ("title: Hangs, year: 2022, design: cohort, n: 2, duration_weeks: 3, findings: {a: b}", "no doi"),
    ],
)
def test_what_a_bare_source_lacks_is_named(episode: Write, source: str, missing: str) -> None:
    ((place, message),) = found(with_sources(episode, f"a: {{{source}}}"), "source-bare")
    assert place == "outline.yaml:4:3"
    assert message.endswith(f"it has {missing}.")


@pytest.mark.parametrize(
    "source",
    [
        "title: The hanging book, year: 2020, isbn: 0-306-40615-2, publisher: Cork",
        "title: A maker's sheet, year: 2020, url: example.org/sheet",
        "title: A standard, year: 2020, kind: standard, publisher: A body",
        "title: A review, year: 2020, doi: 10.5555/a, design: systematic review, findings: {a: b}",
        "title: A tally, year: 2020, url: example.org, design: survey, findings: {a: b}",
        "title: Once, year: 2020, doi: 10.5555/a, design: crossover trial, timeframe: acute, n: 9, findings: {a: b}",
        "title: Gone, doi: 10.5555/a, status: retracted",
    ],
)
def test_a_work_that_is_no_study_is_not_asked_for_people(episode: Write, source: str) -> None:
    assert found(with_sources(episode, f"a: {{{source}}}"), "source-bare") == []


def test_a_bare_entry_of_an_export_is_told_with_what_to_write_beside_it(episode: Write) -> None:
    bib = "@article{a, title={Hangs}, year=2022, doi={10.5555/a}}"
    facts = with_sources(episode, more="evidence: library.bib", library_bib=bib)
    assert [place for place, _ in found(facts, "source-bare")] == ["library.bib:1:1"]
    assert "under `a:` in a YAML register" in helps(facts, "source-bare")[0]


def test_a_retracted_source_is_told_at_the_author_s_word_the_title_or_the_number(episode: Write) -> None:
    said = with_sources(episode, "a: {title: Hangs, status: retracted}")
    assert [place for place, _ in found(said, "source-retracted")] == ["outline.yaml:4:29"]
    titled = with_sources(episode, 'a: {title: "RETRACTED: Hangs"}')
    assert [place for place, _ in found(titled, "source-retracted")] == ["outline.yaml:4:15"]
    listed = with_sources(
        episode, "a: {title: Hangs, doi: 10.5555/grip.22}", more="retractions: list.csv", list_csv=LIST
    )
    ((place, message),) = found(listed, "source-retracted")
    assert place == "outline.yaml:5:26"
    assert "was retracted on 2022-03-01, says list.csv, line 2" in message


def test_a_shoulder_may_be_retracted_and_a_retracted_source_lie_unused(episode: Write) -> None:
    facts = with_sources(episode, "a: {title: Retracted shoulders in rows}", "b: {title: Hangs, status: retracted}")
    assert found(facts, "source-retracted") == []


def test_a_source_that_nothing_rests_on_is_noted_but_not_one_of_the_channel(episode: Write) -> None:
    facts = with_sources(episode, f"a: {{{WHOLE}}}", "b: {title: Other}")
    assert [place for place, _ in found(facts, "source-unused")] == ["outline.yaml:5:3"]
    episode({"../channel.yaml": "evidence: [ours.yaml]\n", "../ours.yaml": "sources: {c: {title: Ours}}\n"})
    assert len(found(with_sources(episode, f"a: {{{WHOLE}}}", "b: {title: Other}"), "source-unused")) == 1
