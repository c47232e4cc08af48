"""A sponsor's terms: dates, length, place, link and the approval of the text that is really there."""

from __future__ import annotations

import pytest

from scriptkit import build
from tests.scripts import Write, found, helps, worked_out

BASE = "title: One\nexercises: {hang: {name: Bar hang}}\n"
SPONSOR = "sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid., MORE}\n"


def names(episode: Write, more: str, head: str = "", text: str = "Ad. Quennick Socks paid.") -> list[str]:
    files = {"outline.yaml": head + BASE + SPONSOR.replace("MORE", more), "segments/sponsor.md": text}
    shown = ("disclosure-not-on-screen", "not-approved")
    return [name for name, _ in found(worked_out(episode(files)), stage="publish") if name not in shown]


@pytest.mark.parametrize(
    ("publish", "valid", "told"),
    [
        ("2026-03-02", "[2026-01-01, 2026-12-31]", []),
        ("2026-01-01", "[2026-01-01, 2026-12-31]", []),
        ("2026-12-31", "[2026-01-01, 2026-12-31]", []),
        ("2026-12", "[2026-01-01, 2026-12]", []),
        ("2027-01-01", "[2026-01-01, 2026-12-31]", ["offer-out-of-date"]),
        ("2025-12-31", "[2026-01-01, 2026-12-31]", ["offer-out-of-date"]),
        ("2026-03-02", "[2026-12-31, 2026-01-01]", ["offer-out-of-date"]),
        ("", "[2026-01-01, 2026-12-31]", ["offer-date-unknown"]),
    ],
)
def test_the_offer_runs_on_the_day_of_publication(episode: Write, publish: str, valid: str, told: list[str]) -> None:
    assert names(episode, f"valid: {valid}", f"publish: {publish}\n" if publish else "") == told


@pytest.mark.parametrize(
    ("length", "told"),
    [
        ("{least: 2s}", []),
        ("{least: 30s}", ["sponsor-length"]),
        ("{most: 1s}", ["sponsor-length"]),
        ("{least: 1s, most: 60s}", []),
    ],
)
def test_the_passage_is_as_long_as_agreed(episode: Write, length: str, told: list[str]) -> None:
    assert names(episode, f"length: {length}") == told


@pytest.mark.parametrize(
    ("window", "told"),
    [("{after: 0%}", []), ("{before: 10%}", ["sponsor-window"]), ("{after: 90s}", ["sponsor-window"])],
)
def test_the_passage_stands_where_agreed(episode: Write, window: str, told: list[str]) -> None:
    assert names(episode, f"window: {window}") == told


@pytest.mark.parametrize(
    ("link", "told"),
    [
        ("https://example.org/hill", []),
        ("example.org/hill?from=show", []),
        ("http://example.org", ["sponsor-link-form"]),
        ("the link below", ["sponsor-link-form"]),
    ],
)
def test_a_link_can_be_typed(episode: Write, link: str, told: list[str]) -> None:
    assert names(episode, f"link: '{link}'") == told


def test_the_note_tells_the_hash_and_with_it_the_approval_holds_until_the_text_changes(episode: Write) -> None:
    outline, text = BASE + SPONSOR, "Ad. Quennick Socks paid. They come in grey. [sponsor says]"
    facts = worked_out(episode({"outline.yaml": outline.replace(", MORE", ""), "segments/sponsor.md": text}))
    (told,) = (one.help for one in build.check(facts, "publish") if one.name == "not-approved")
    key = told.partition("hash: ")[2].partition(",")[0]
    approved = outline.replace("MORE", f"approved: {{hash: {key}, by: Q. N., on: 2026-02-20}}")
    facts = worked_out(episode({"outline.yaml": approved}))
    assert found(facts, "approval-void") == found(facts, "not-approved", "publish") == []
    facts = worked_out(episode({"segments/sponsor.md": text.replace("grey", "blue")}))
    ((place, message),) = found(facts, "approval-void")
    assert place == "outline.yaml:3:88"
    assert facts.sponsor_hash in message
    assert "Q. N." in helps(facts, "approval-void")[0]


def test_an_approval_after_the_day_of_publication_is_told(episode: Write) -> None:
    outline = BASE + SPONSOR.replace("MORE", "approved: {hash: KEY, by: Q. N., on: 2026-04-01}")
    text = {"segments/sponsor.md": "Ad. Quennick Socks paid."}
    key = worked_out(episode({"outline.yaml": outline, **text})).sponsor_hash
    facts = worked_out(episode({"outline.yaml": "publish: 2026-03-02\n" + outline.replace("KEY", key)}))
    assert "after the day of publication" in found(facts, "not-approved", "publish")[0][1]
