"""An interest is disclosed before the grade of what it touches, and again in the recap."""

from __future__ import annotations

import pytest

from tests.scripts import Write, worked_out

OUTLINE = """
    title: One
    exercises: {hang: {name: Bar hang, grade: A}, row: {name: Row, grade: B}}
    sponsor: {name: Quennick Socks Ltd, disclosure: Ad. Quennick Socks paid.}
    interests: [{who: Tarn Bars, what: part owner}]
    order: ORDER
    """


def kinds(episode: Write, hang: str, order: str = "[opening, hang, row]", **texts: str) -> list[str]:
    files = {f"segments/{name}.md": text for name, text in texts.items()}
    facts = worked_out(episode({"outline.yaml": OUTLINE.replace("ORDER", order), "segments/hang.md": hang, **files}))
    return [risk.kind for risk in facts.risks if risk.kind in ("interest", "not-in-recap")]


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("A bar by Tarn Bars. [aside] I give it an A. [opinion]", ["interest"]),
        ("Tarn Bars’ best. [aside] It's steel. [aside]", ["interest"]),
        ("I own part of Tarn Bars. [aside] I give it an A. [opinion]", []),
        ("A bar by Tarn Bars. [aside] You should know that I own shares in them. [aside] An A. [opinion]", []),
        ("A bar by Halm Bars. [aside]", []),
        ("Get these Quennick Socks on. [aside]", ["interest"]),
    ],
)
def test_it_is_disclosed_beside_the_name(episode: Write, text: str, found: list[str]) -> None:
    assert kinds(episode, text) == found


def test_it_may_have_been_disclosed_before(episode: Write) -> None:
    opening = "I own part of Tarn Bars. [aside]"
    assert kinds(episode, "A bar by Tarn Bars. [aside]", opening=opening) == []
    assert kinds(episode, "A bar by Tarn Bars. [aside]", close=opening, order="[hang, row, close]", opening="Hi.") == [
        "interest"
    ]


def test_a_sponsors_passage_discloses_the_sponsor(episode: Write) -> None:
    hang = "Get these Quennick Socks on. [aside]"
    assert kinds(episode, hang, order="[sponsor, hang]") == []
    assert kinds(episode, hang, order="[hang, sponsor]") == ["interest"]


def test_the_recap_says_it_again(episode: Write) -> None:
    hang = "I own part of Tarn Bars. [aside]"
    assert kinds(episode, hang, order="[hang, recap]", recap="An A for the hang. [opinion]") == ["not-in-recap"]
    assert kinds(episode, hang, order="[hang, recap]", recap="I own part of Tarn Bars, mind. [aside]") == []


def test_an_episode_without_interests_has_none(episode: Write) -> None:
    outline = "title: One\nexercises: {hang: {name: Bar hang, grade: A}}\n"
    assert worked_out(episode({"outline.yaml": outline, "segments/hang.md": "A bar by Tarn Bars. [aside]"})).risks == ()
