"""Verdicts are written below what the file says, in lines that are read back as they were meant."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scriptkit.findings import Finding
from scriptkit.model import NOWHERE, Verdict
from scriptkit.places import NO_TEXT, SourceFile
from scriptkit.reading import verdicts
from scriptkit.rendering.verdict_lines import ABOUT, added

ONE = Verdict("", "It's so: 1 # of 2.", "hang", "verified", 'a "b"\n\\c', "7-9", "NO", "2026-03-02")


def read(text: str) -> list[Verdict]:
    findings: list[Finding] = []
    found = verdicts.from_text(SourceFile("verdicts.yaml", text), findings, [])
    assert findings == []
    return [one._replace(key="", at=NOWHERE) for one in found]


def test_a_new_file_says_what_it_is_for() -> None:
    text = added("", [ONE])
    assert text.startswith(ABOUT + "verdicts:\n  - sentence: ")
    assert read(text) == [ONE]


@pytest.mark.parametrize(
    "before",
    [
        "verdicts:\n- {sentence: A., verdict: verified}",
        "# mine\nverdicts:\n    - sentence: A.\n      verdict: verified\n    # the end\n",
        "\n\nverdicts: # here\n  - {sentence: A., verdict: verified}\n\n\n",
    ],
)
def test_what_is_there_stays_and_more_comes_below(before: str) -> None:
    text = before + added(before, [ONE, ONE])
    assert [one.sentence for one in read(text)] == ["A.", ONE.sentence, ONE.sentence]


@pytest.mark.parametrize("before", ["# only a word\n", "verdicts:\n", "# a\nverdicts: # none yet"])
def test_a_file_without_a_verdict_gets_its_first(before: str) -> None:
    assert read(before + added(before, [ONE])) == [ONE]


def test_nothing_that_was_not_given_is_written() -> None:
    text = added("", [Verdict("", "So.", "", "verified")])
    assert text.removeprefix(ABOUT) == 'verdicts:\n  - sentence: "So."\n    verdict: verified\n'


WORDS = st.text(st.characters(exclude_categories=["Cs"]), min_size=1, max_size=20).map(
    lambda text: NO_TEXT.sub(" ", text).replace("\r", " ")
)


@given(sentence=WORDS, note=WORDS, segment=st.sampled_from(["hang", "no", "null", "0123", "-", "a-b"]))
def test_every_text_is_read_back(sentence: str, note: str, segment: str) -> None:
    one = Verdict("", "x" + sentence, segment, "changed", note + "x", "", "yes", "2026-03")
    assert read(added("", [one, one])) == [one, one]
