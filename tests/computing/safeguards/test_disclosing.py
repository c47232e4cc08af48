"""A sponsor's passage tells it is paid for in its first three seconds, by voice and on screen, in clear words."""

from __future__ import annotations

import pytest

from scriptkit.computing.safeguards.disclosing import market, uncovered
from scriptkit.model import Passage
from tests.scripts import Write, with_hang, worked_out

SPONSORED = (
    "title: One\nexercises: {hang: {name: Bar hang}}\nmarkets: [MARKETS]\nsponsor: "
    "{name: Quennick Socks, disclosure: Ad. Quennick Socks paid for this part.}\n"
)
CARD = "[screen: Ad. Quennick Socks paid for this part.] "
LINE = "Ad. Quennick Socks paid for this part. [aside]"


def passage(episode: Write, text: str, markets: str = "", outline: str = SPONSORED) -> Passage:
    files = {"outline.yaml": outline.replace("MARKETS", markets), "segments/sponsor.md": text}
    return worked_out(episode(files)).passages[0]


@pytest.mark.parametrize(
    ("text", "disclosed"),
    [
        ("Ad. Quennick Socks paid for this part.", True),
        ("{{ sponsor.disclosure }} I wear them. [sponsor says]", True),
        ("Hello. [aside] Ad. Quennick Socks paid for this part.", True),
        ("They paid me for this, and I wear them all day long, at home and on the hill. [aside]", True),
        ("This is sponsored by Quennick Socks. [aside]", True),
        ("I wear these socks on every single day of the week, and they paid me for this. [aside]", False),
        (
            "Socks are lovely and grey, and I wear mine all day long. [aside] Ad. Quennick Socks paid for this part.",
            False,
        ),
        ("[hold 6s: socks]\n\nAd. Quennick Socks paid for this part.", False),
        ("[pause 4s] Ad. Quennick Socks paid for this part.", False),
        ("Thanks to Quennick Socks. [aside]", False),
        ("Address the socks first. [aside]", False),
        ("Nobody paid for this part. [aside]", False),
        ("This is not an ad. [aside]", False),
    ],
)
def test_it_is_heard_in_the_first_three_seconds(episode: Write, text: str, disclosed: bool) -> None:
    assert (passage(episode, text).told is not None) is disclosed


def test_without_such_a_passage_there_is_nothing_to_disclose(episode: Write) -> None:
    facts = with_hang(episode, "Hello. [aside]")
    assert facts.passages == ()


def test_of_two_passages_only_the_one_that_does_not_tell_is_named(episode: Write) -> None:
    outline = SPONSORED.replace("MARKETS", "") + "order: [hang, sponsor, {segment: again, kind: sponsor}]\n"
    texts = {"segments/sponsor.md": LINE, "segments/again.md": "Grey socks once more, and the price. [sponsor says]"}
    passages = worked_out(episode({"outline.yaml": outline, **texts})).passages
    assert [one.segment for one in passages if one.told is None] == ["again"]


@pytest.mark.parametrize(
    ("line", "markets", "unclear"),
    [
        ("This part is sponsored by Quennick Socks.", "UK", [("UK", "sponsored by")]),
        ("This part is sponsored by Quennick Socks.", "US", []),
        ("This part is sponsored by Quennick Socks.", "", []),
        ("Ad, sponsored by Quennick Socks.", "UK", []),
        ("Quennick Socks paid for this part.", "UK, US", []),
        ("Quennick Socks gifted me these.", "United Kingdom", [("UK", "gifted")]),
        ("A collab with Quennick Socks.", "US", [("", "collab"), ("US", "collab")]),
        ("Thanks to Quennick Socks.", "", [("", "thanks to")]),
    ],
)
def test_words_are_held_against_the_guidance_of_each_market(
    episode: Write, line: str, markets: str, unclear: list[tuple[str, str]]
) -> None:
    outline = SPONSORED.replace("Ad. Quennick Socks paid for this part.", f"'{line}'")
    assert list(passage(episode, f"{line} [aside]", markets, outline).vague) == unclear


def test_a_claim_before_the_disclosure_is_pointed_at(episode: Write) -> None:
    found = passage(episode, f"Lovely. [aside] Warm, too. [sponsor says] {LINE}")
    assert found.first_claim is not None
    assert found.first_claim.column == 17
    assert passage(episode, f"Lovely. [aside] {LINE} Warm, too. [sponsor says]").first_claim is None


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        (CARD + LINE, True),
        ("[screen: Paid promotion] " + LINE, True),
        (LINE, False),
        ("[screen: Grey socks] " + LINE, False),
        (LINE + " They come in grey and in four sizes. [sponsor says] " + CARD + "Yes. [aside]", False),
    ],
)
def test_it_is_on_screen_at_the_start(episode: Write, text: str, shown: bool) -> None:
    assert (passage(episode, text).card is not None) is shown


def test_a_card_in_words_that_a_market_finds_unclear_does_not_count(episode: Write) -> None:
    text = "[screen: Sponsored] " + LINE
    assert passage(episode, text, "UK").card is None
    assert passage(episode, text, "US").card is not None


def test_reading_takes_a_third_of_a_second_a_word_and_one_more(episode: Write) -> None:
    found = passage(episode, "[screen 2s: Ad. Quennick Socks paid for this part.] " + LINE)
    assert (found.card, round(found.needed, 2)) == (2.0, 3.33)
    assert passage(episode, "[screen: Ad] " + LINE).needed == 3.0


def test_markets_go_by_many_names() -> None:
    assert [market(one) for one in ("GB", "the United States", "usa", "France", "EU", "Japan")] == [
        *("UK", "US", "US", "EU", "EU", "Japan")
    ]
    assert uncovered(("UK", "de", "fr", "Japan")) == ("EU", "Japan")
