"""A sponsor's passage says first that it is paid for, and has its place in the order."""

from __future__ import annotations

from tests.scripts import Write, found, helps, worked_out

OUTLINE = (
    "title: One\nexercises: {hang: {name: Bar hang}}\nsponsor: "
    "{name: Quennick Socks, disclosure: Ad. Quennick Socks paid for this part.}\n"
)


def test_the_help_is_the_disclosure_as_the_outline_has_it(episode: Write) -> None:
    facts = worked_out(
        episode(
            {
                "outline.yaml": OUTLINE,
                "segments/sponsor.md": "Hi.\n\nI love socks, every day and all day long. [opinion]",
            }
        )
    )
    assert [place for place, _ in found(facts, "sponsor-not-disclosed")] == ["segments/sponsor.md:1:1"]
    assert helps(facts, "sponsor-not-disclosed") == ['Start it with "Ad. Quennick Socks paid for this part.".']


def test_the_stock_passage_discloses_with_or_without_a_line(episode: Write) -> None:
    assert found(worked_out(episode({"outline.yaml": OUTLINE})), "sponsor-not-disclosed") == []
    bare = "title: One\nexercises: {hang: {name: Bar hang}}\nsponsor: {name: Quennick Socks}\n"
    assert worked_out(episode({"outline.yaml": bare})).disclosed is True


def test_a_sponsor_without_a_passage_is_told(episode: Write) -> None:
    facts = worked_out(episode({"outline.yaml": OUTLINE + "order: [opening, hang]\n"}))
    assert len(found(facts, "sponsor-not-spoken")) == 1
