"""Every finding can be explained, by its name or something like it."""

from __future__ import annotations

import pytest

from scriptkit import explaining, terminal
from scriptkit.findings import SEVERITIES
from scriptkit.terminal import Ink, width


@pytest.mark.parametrize("name", explaining.kinds())
def test_every_finding_is_explained_with_a_bad_and_a_good_example(name: str) -> None:
    found = explaining.explained(name)
    assert not isinstance(found, str)
    text = terminal.explained(*found, Ink(columns=80))
    assert text.startswith(f"{name}  {found[0].severity}")
    assert text.count("Raises it:") == bool(found[1].bad.files)  # a file of megabytes is no example
    assert "Does not:" in text
    assert found[1].bad.files != found[1].good.files
    assert "\n\n\n" not in text


@pytest.mark.parametrize("name", ["Claim-Without-Source", "claim_without_source", " claim-without-source "])
def test_a_name_may_be_written_in_other_ways(name: str) -> None:
    found = explaining.explained(name)
    assert not isinstance(found, str)
    assert found[0].name == "claim-without-source"


def test_a_near_name_is_offered() -> None:
    assert explaining.explained("claim-wihout-sorce") == (
        'There is no finding called "claim-wihout-sorce". Did you mean "claim-without-source"?'
    )
    assert "lists them all" in str(explaining.explained("xyzzy"))
    assert "lists them all" in str(explaining.explained("y" * 100_000))


def test_the_list_holds_every_finding_once_most_urgent_first() -> None:
    text = terminal.all_explained(explaining.summaries(), Ink(columns=80))
    lines = text.split("\n")
    used = {kind.severity for kind in explaining.kinds().values()}
    assert [line for line in lines if line and line[0] != " "] == [f"{one}s" for one in SEVERITIES if one in used]
    assert sorted(line.split()[0] for line in lines if line[:2] == "  " and line[2] != " ") == sorted(
        explaining.kinds()
    )
    assert max(map(width, lines)) <= 80


def test_the_table_has_a_row_for_every_finding() -> None:
    rows = explaining.findings_table().rstrip("\n").split("\n")[2:]
    assert len(rows) == len(explaining.kinds())
    assert all(row.count("|") == 5 for row in rows)
    assert not any("|  |" in row for row in rows), "a finding has no summary"
