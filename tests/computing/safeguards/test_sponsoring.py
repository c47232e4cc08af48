"""What was agreed with a sponsor is found in the passage: points, words to leave out, code, link."""

from __future__ import annotations

import pytest

from tests.scripts import Write, worked_out

OUTLINE = """
    title: One
    exercises: {hang: {name: Bar hang}}
    sponsor:
      name: Quennick Socks
      disclosure: Ad. Quennick Socks paid.
      code: HILL10
      link: https://example.org/hill
      must_say: [free returns for sixty days]
      never_say: [prevents injury]
    """


def kinds(episode: Write, text: str, other: str = "Hello. [aside]", *wanted: str) -> list[str]:
    files = {
        "outline.yaml": OUTLINE,
        "segments/sponsor.md": f"Ad. Quennick Socks paid. {text}",
        "segments/hang.md": other,
    }
    return [risk.kind for risk in worked_out(episode(files)).risks if risk.kind in wanted]


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("You get free returns for sixty days.", []),
        ("You get FREE returns, for 60 days!", []),
        ("You get free returns. For sixty days.", []),
        ("You can return them for free.", ["must-say"]),
        ("You get free returns for sixteen days.", ["must-say"]),
    ],
)
def test_a_point_is_said_word_for_word_with_numbers_either_way(episode: Write, text: str, found: list[str]) -> None:
    assert kinds(episode, text, "Hello.", "must-say") == found


@pytest.mark.parametrize("text", ["[screen: HILLS10] Hello.", "Enter HLIL10 there.", "[screen: HILL01] Hello."])
def test_a_misspelt_code_is_found_on_a_card_and_by_ear(episode: Write, text: str) -> None:
    assert kinds(episode, text, "Hello.", "other-code") == ["other-code"]


@pytest.mark.parametrize(
    "text", ["[screen: HILL10, 2026] Hello.", "It's MADE in the EU.", "[screen: HILL WALKS] Hello."]
)
def test_other_words_are_no_misspelt_code(episode: Write, text: str) -> None:
    assert kinds(episode, text, "Hello.", "other-code") == []


def test_a_near_wording_is_quoted(episode: Write) -> None:
    files = {
        "outline.yaml": OUTLINE,
        "segments/sponsor.md": "Ad. Quennick Socks paid. Returns are free for sixty days.",
    }
    (risk,) = (one for one in worked_out(episode(files)).risks if one.kind == "must-say")
    assert risk.sentence == "Returns are free for sixty days."
    assert (risk.place.line, risk.place.column) == (8, 14)


@pytest.mark.parametrize(
    "words", ["It prevents injury.", "It is preventing injuries.", "Prevented injuries, they say."]
)
def test_words_to_leave_out_are_found_in_any_form(episode: Write, words: str) -> None:
    assert kinds(episode, words, "Hello.", "never-say") == ["never-say"]


def test_they_are_the_sponsors_words_where_a_mark_or_a_card_says_so(episode: Write) -> None:
    said = "They told me it prevents injury. [sponsor says]"
    assert kinds(episode, "Hello.", said, "never-say") == ["never-say"]
    assert kinds(episode, "Hello.", said.replace(" [sponsor says]", " [opinion]"), "never-say") == []
    assert kinds(episode, "[screen: Prevents injury] Hello.", "Hello.", "never-say") == ["never-say"]


@pytest.mark.parametrize(
    "text", ["The code is HILL10.", "Use H-I-L-L ten.", "Type hill 10.", "Hill ten, all one word."]
)
def test_a_code_is_the_same_as_written_and_as_spelled(episode: Write, text: str) -> None:
    assert kinds(episode, text, "Hello.", "code-not-spoken", "other-code") == []


@pytest.mark.parametrize("text", ["The code is HILL15.", "Use H-I-L-L fifteen.", "My code is QUENNICK."])
def test_another_code_is_told(episode: Write, text: str) -> None:
    assert kinds(episode, f"{text} [screen: HILL10]", "Hello.", "other-code") == ["other-code"]


@pytest.mark.parametrize(
    "text", ["It has 4K video and vitamin B12.", "The BBC and the NHS have codes of dress.", "Type it in."]
)
def test_other_capitals_and_figures_are_no_codes(episode: Write, text: str) -> None:
    assert kinds(episode, f"{text} The code is HILL10.", "Hello.", "other-code") == []


def test_a_code_on_a_card_counts_as_shown_and_not_as_spoken(episode: Write) -> None:
    assert kinds(
        episode, "[screen: HILL10, example.org/hill] Look.", "Hello.", "code-not-spoken", "code-not-shown"
    ) == ["code-not-spoken"]


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("Go to example.org/hill.", []),
        ("Go to www.example.org.", []),
        ("Go to https://example.org/hill, or don't.", []),
        ("Go to example.com/hill.", ["other-link"]),
        ("Go to example.org/valley.", ["other-link"]),
    ],
)
def test_a_link_leads_where_the_outlines_does(episode: Write, text: str, found: list[str]) -> None:
    assert kinds(episode, text, "Hello.", "other-link") == found
