"""What a listener trips over is told where it stands, with words to say in its place."""

from __future__ import annotations

from scriptkit import build
from tests.scripts import GRIP, Write, found, helps, with_hang


def test_many_figures_are_told_at_the_first_of_them(episode: Write) -> None:
    text = "Well, the bar hang. [aside]\nIt took me from 41 kilos to 52, then 63 percent\nand 74 degrees. [aside]"
    facts = with_hang(episode, text)
    assert found(facts, "too-many-figures") == [
        (
            "segments/hang.md:2:17",
            (
                '"It took me from 41 kilos to 52, then 63 percent and 74 degrees." has 3 figures to keep in the ear: '
                "41 kilos to 52, 63, 74."
            ),
        )
    ]


def test_a_word_comes_with_plainer_ones(episode: Write) -> None:
    facts = with_hang(episode, "The bar hang. [aside] I like it for abduction. [opinion]")
    assert found(facts, "word-misheard") == [
        (
            "segments/hang.md:1:37",
            '"abduction" in "I like it for abduction." is easily heard as "adduction".',
        )
    ]
    assert '"moving out, away from the body"' in helps(facts, "word-misheard")[0]


def test_a_number_comes_with_a_card(episode: Write) -> None:
    facts = with_hang(episode, "In one trial hang time rose by 15 percent. [from mora-2022]")
    ((place, message),) = found(facts, "number-misheard")
    assert (place, '"fifteen"' in message, '"fifty"' in message) == ("segments/hang.md:1:32", True, True)
    assert helps(facts, "number-misheard")[0].startswith("Show it: `[screen: 15 ...]`")


def test_a_term_comes_with_the_sentence_to_say(episode: Write) -> None:
    facts = with_hang(
        episode,
        "The bar hang. [aside] I feel my soleus. [opinion]",
        GRIP.rstrip() + "\n    terms: {soleus: the flat calf muscle}\n",
    )
    assert [place for place, _ in found(facts, "term-not-explained")] == ["segments/hang.md:1:33"]
    assert helps(facts, "term-not-explained") == ['Say what it is right there: "soleus, the flat calf muscle".']


def test_a_trade_word_comes_with_its_gloss_and_is_only_a_note(episode: Write) -> None:
    facts = with_hang(episode, "The bar hang. [aside] I like it for Hypertrophy. [opinion]")
    (told,) = (one for one in build.check(facts, "publish") if one.name == "trade-word-unexplained")
    assert (told.severity, told.place.column) == ("note", 37)
    assert '"muscle growth"' in told.help


def test_a_cue_in_round_brackets_is_told_where_it_opens(episode: Write) -> None:
    facts = with_hang(episode, "The bar hang. (Look at Bob.) I like it. [opinion]")
    assert [place for place, _ in found(facts, "cue-spoken")] == ["segments/hang.md:1:15"]
