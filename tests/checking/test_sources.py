"""How many findings about one register are told, and which sources are looked at."""

from __future__ import annotations

from scriptkit.checking.sources import in_use, is_written, looked_at, used
from tests.checking.registers import with_sources
from tests.scripts import Write, found

BIB = "".join(
    f"@article{{{name}, title={{Title {name}}}, pmid={{0}}}}\n" for name in ("a", *(f"b{at}" for at in range(30)))
)


def test_of_an_export_only_what_is_used_is_looked_at(episode: Write) -> None:
    facts = with_sources(episode, "own: {title: Own}", more="evidence: library.bib", library_bib=BIB)
    assert [one.id for one in looked_at(facts)] == ["own", "a"]
    assert [one.id for one in in_use(facts)] == ["a"]
    assert used(facts) == {"a"}
    assert [is_written(one) for one in looked_at(facts)] == [True, False]
    assert [place for place, _ in found(facts, "identifier-wrong")] == ["library.bib:1:36"]


def test_many_findings_about_one_file_are_counted(episode: Write) -> None:
    facts = with_sources(episode, more="evidence: library.bib", library_bib=BIB)
    told = found(facts, "source-unused")
    assert len(told) == 11
    assert told[-1] == ("library.bib:12:1", "Nothing rests on 20 more sources of this file.")
