"""A sponsor's passage says first that it is paid for, and has its place in the order."""

from __future__ import annotations

from scriptkit import build
from scriptkit.checking import rules
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
    assert found(worked_out(episode({"outline.yaml": bare})), "sponsor-not-disclosed") == []


def test_the_stock_passage_shows_its_disclosure_for_long_enough(episode: Write) -> None:
    for keys in ("", ", code: HILL10", ", link: example.org/hill", ", code: HILL10, link: example.org/hill"):
        outline = OUTLINE.replace("for this part.}", f"for this part.{keys}}}") + "order: [hang, sponsor]\n"
        facts = worked_out(episode({"outline.yaml": outline}))
        told = {name for name, _ in found(facts, stage="publish")}
        assert told.isdisjoint({"disclosure-card-short", "disclosure-not-on-screen", "code-not-on-screen"})


def test_a_sponsor_without_a_passage_is_told(episode: Write) -> None:
    facts = worked_out(episode({"outline.yaml": OUTLINE + "order: [opening, hang]\n"}))
    assert len(found(facts, "sponsor-not-spoken")) == 1


CARD = "[screen: Ad. Quennick Socks paid for this part.] "
LINE = "Ad. Quennick Socks paid for this part. [aside]"


def test_of_two_passages_only_the_undisclosed_one_is_told(episode: Write) -> None:
    outline = OUTLINE + "order: [hang, sponsor, {segment: again, kind: sponsor}]\n"
    texts = {"segments/sponsor.md": LINE, "segments/again.md": "Grey socks once more, and the price. [sponsor says]"}
    facts = worked_out(episode({"outline.yaml": outline, **texts}))
    assert [place for place, _ in found(facts, "sponsor-not-disclosed")] == ["segments/again.md:1:1"]


def test_what_a_market_finds_unclear_is_quoted_and_no_law_is_promised(episode: Write) -> None:
    outline = OUTLINE.replace("Ad. Quennick Socks paid for this part.", "Sponsored by Quennick Socks.")
    facts = worked_out(episode({"outline.yaml": "markets: [UK]\n" + outline}))
    assert "guidance for the UK" in found(facts, "disclosure-unclear")[0][1]
    (told,) = helps(facts, "disclosure-unclear")
    assert "Ad. Quennick Socks paid for this part." in told
    assert "No check can say that the law is met" in told


def test_a_missing_card_is_a_note_until_the_episode_is_published(episode: Write) -> None:
    facts = worked_out(episode({"outline.yaml": OUTLINE, "segments/sponsor.md": LINE}))
    severities = {
        stage: [one.severity for one in build.check(facts, stage) if one.name == "disclosure-not-on-screen"]
        for stage in ("record", "publish")
    }
    assert severities == {"record": ["note"], "publish": ["error"]}


def test_a_short_card_is_told_at_the_card(episode: Write) -> None:
    text = "[screen 1s: Ad. Quennick Socks paid for this part.] " + LINE
    facts = worked_out(episode({"outline.yaml": OUTLINE, "segments/sponsor.md": text}))
    assert found(facts, "disclosure-card-short") == [
        ("segments/sponsor.md:1:1", "The card of the disclosure is up for 1.0 s, and takes 3.3 s to read.")
    ]


def test_praise_before_the_disclosure_is_told_where_it_stands(episode: Write) -> None:
    text = CARD + "Warm. [sponsor says] " + LINE
    facts = worked_out(episode({"outline.yaml": OUTLINE, "segments/sponsor.md": text}))
    assert [place for place, _ in found(facts, "claim-before-disclosure")] == ["segments/sponsor.md:1:50"]


def test_a_market_without_a_list_is_a_note(episode: Write) -> None:
    facts = worked_out(episode({"outline.yaml": "markets: [EU, US]\n" + OUTLINE}))
    assert len(found(facts, "market-not-covered", "publish")) == 1


def test_a_drafted_passage_passes_every_check_of_a_sponsor(episode: Write) -> None:
    outline = """
        title: One
        markets: [UK, US]
        publish: 2026-03-02
        exercises: {hang: {name: Bar hang}, row: {name: Row}}
        sponsor:
          name: Quennick Socks
          code: HILL10
          link: https://example.org/hill
          valid: [2026-01-01, 2026-12-31]
          must_say: [free returns for sixty days, four sizes]
          never_say: [prevents injury]
          claims: [{say: "In a trial of 60 runners, they had fewer blisters.", sponsor_wording: true, backing: [socks]}]
        sources: {socks: {title: A trial of socks, year: 2024, design: randomised trial, n: 60, invented: true}}
        """
    facts = worked_out(episode({"outline.yaml": outline}))
    told = {name for name, _ in found(facts, stage="publish")}
    assert {name for name in told if rules.kinds()[name].maker.__module__ in PAID} == {"not-approved"}


PAID = {f"scriptkit.checking.{name}" for name in ("agreed", "backing", "contract", "interests", "safety", "sponsor")}
