"""Allow-comments in YAML: which line they cover, what they need, and where what looks like one is text."""

from __future__ import annotations

import time

import pytest

from scriptkit import build
from tests.reading.episodes import GOOD, findings, of_kind, one, seen

ALLOW = "# allow: unknown-key because it is meant"


def open_findings(folder) -> list[tuple[str, int]]:
    """Name and line of the findings of the reading room that nothing allows."""
    names = ("unknown-key", "allow-unused", "allow-without-reason")
    return sorted((one.name, one.place.line) for one in findings(folder) if one.name in names and not one.allowed)


@pytest.mark.parametrize(
    "text",
    [
        f"{GOOD}pase: 1 {ALLOW}\n",
        f"{GOOD}{ALLOW}\npase: 1\n",
        f"{GOOD}{ALLOW}\n\n# a note\n\npase: 1\n",
        f"{GOOD}   {ALLOW}\npase: 1\n",
        f"{GOOD}pase: 'x' {ALLOW}\n",
        f"{GOOD}pase: [1, {ALLOW}\n  2]\n",
        f"{GOOD}{ALLOW}\n{ALLOW}\npase: 1\n",
        f"{GOOD}pase: 1 #allow:unknown-key because it is\n",
        f"{GOOD}question: |\n  a\n{ALLOW}\npase: 1\n",
        f"{GOOD}question: 'a\n  b'\npase: 1 {ALLOW}\n",
    ],
)
def test_an_allow_comment_covers_its_line_or_the_next_one(episode, text: str) -> None:
    folder = episode({"outline.yaml": text})
    assert open_findings(folder) == []
    assert [found.allowed for found in of_kind(folder, "unknown-key")] != [""]


@pytest.mark.parametrize(
    "text",
    [
        f"question: |\n  {ALLOW}\npase: 1\n",
        f"question: |\n  a {ALLOW}\npase: 1\n",
        f"question: >\n  a\n\n  {ALLOW}\npase: 1\n",
        f'question: "a {ALLOW}"\npase: 1\n',
        f"question: 'a\n  {ALLOW}'\npase: 1\n",
    ],
)
def test_inside_a_text_it_is_text(episode, text: str) -> None:
    folder = episode({"outline.yaml": text + GOOD})
    assert [name for name, _ in open_findings(folder)] == ["unknown-key"]
    assert "allow: unknown-key because" in build.read(folder).episode.question


@pytest.mark.parametrize(
    "words", ["", "unknown-key", "unknown-key because", "unknown-key because -", "because x", "??? because x"]
)
def test_it_needs_a_name_and_a_reason(episode, words: str) -> None:
    folder = episode({"outline.yaml": f"{GOOD}pase: 1 # allow: {words}\n"})
    assert ("allow-without-reason", 3) in open_findings(folder)
    assert ("unknown-key", 3) in open_findings(folder)


@pytest.mark.parametrize("name", ["unknown-key", "no-such-finding"])
def test_one_that_allows_nothing_is_found(episode, name: str) -> None:
    folder = episode({"outline.yaml": f"{GOOD}pace: 150 # allow: {name} because x\n"})
    assert one(folder, "allow-unused") == ("outline.yaml", 3, 11)


def test_it_allows_no_other_line_and_no_other_finding(episode) -> None:
    folder = episode({"outline.yaml": f"{GOOD}pase: 1\n{ALLOW}\n\nrate: 25\npose: 1\n"})
    assert open_findings(folder) == [("allow-unused", 4), ("unknown-key", 3), ("unknown-key", 7)]


def test_it_works_in_registers_and_in_the_channel(episode) -> None:
    folder = episode(
        {
            "outline.yaml": GOOD + "evidence: [e.yaml]\n",
            "e.yaml": f"sources: {{}}\nx: 1 {ALLOW}\n",
            "../channel.yaml": f"{ALLOW}\nx: 1\n",
        }
    )
    assert open_findings(folder) == []
    assert len(seen(folder)) == 2


def test_many_thousands_take_no_time(episode) -> None:
    used = "".join(f"k{number}: 1 {ALLOW}\n" for number in range(20_000))
    unused = "".join(f"  k{number}: x {ALLOW}\n" for number in range(20_000))
    folder = episode({"outline.yaml": f"{GOOD}{used}terms:\n{unused}"})
    start = time.process_time()
    found = findings(folder)
    assert time.process_time() - start < 20
    assert sum(bool(one.allowed) for one in found) == sum(one.name == "allow-unused" for one in found) == 20_000
