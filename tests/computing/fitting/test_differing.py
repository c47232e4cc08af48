"""What a cut changes in the rest of a script, and which findings are new."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path

from scriptkit.computing.fitting.differing import changed, heard, new_findings
from scriptkit.findings import Finding
from scriptkit.places import Place
from tests.scripts import GRIP, segment, worked_out

Writer = Callable[[Mapping[str, str | bytes]], Path]


def finding(message: str, name: str = "one", line: int = 1, allowed: str = "") -> Finding:
    return Finding(name, "error", "draft", Place("outline.yaml", line, 1), message, "", allowed)


def test_what_is_heard_hangs_on_words_and_marks_and_not_on_lines(episode: Writer) -> None:
    def of(text: str) -> object:
        return heard(segment(worked_out(episode({"outline.yaml": GRIP, "segments/hang.md": text}))))

    said = of("I like it. [opinion]\n\nAnd chalk. [pause 1s]\n")
    assert said == of("\n\n# Hang\n\nI like it.\n[opinion]\n\n\nAnd chalk. [pause 1s]\n")
    assert said != of("I like it. [opinion]\n\nAnd chalk. [pause 2s]\n")
    assert said != of("I like it. [opinion]\n\nAnd tape. [pause 1s]\n")
    assert said != of("I like it. [opinion]\n\n[shot CU side: bar]\n\nAnd chalk. [pause 1s]\n")


def test_a_drafted_recap_changes_and_an_own_text_does_not(episode: Writer) -> None:
    own = {"segments/hang.md": "I like it. [opinion]\n", "segments/row.md": "I like it. [opinion]\n"}
    both = worked_out(episode({**own, "outline.yaml": GRIP + "order: [hang, row, recap, close]\n"}))
    one = worked_out(episode({"outline.yaml": GRIP + "order: [hang, recap, close]\n"}))
    assert changed(both.segments, one.segments) >= {"recap"}
    assert "hang" not in changed(both.segments, one.segments)
    assert changed(both.segments, both.segments) == frozenset()


def test_a_finding_is_new_by_its_words_whatever_figures_it_tells() -> None:
    before = [finding("It takes 9:30."), finding("It is gone."), finding("It is gone.")]
    after = [finding("It takes 8:10.", line=7), *before[1:], finding("It is gone."), finding("It is bad.", "two")]
    assert new_findings(before, after) == after[3:]
    assert new_findings(before, [finding("It is bad.", allowed="a joke")]) == []
    assert new_findings([finding("It is bad.", allowed="a joke")], [finding("It is bad.")]) == [finding("It is bad.")]
