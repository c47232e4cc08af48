"""Messages on first places and grades say what was said, what the figures are, and what may be said."""

from __future__ import annotations

from tests.ranked import AHEAD, BEHIND, found, outline, says
from tests.scripts import Write, helps, worked_out


def test_a_winner_that_is_too_firm_is_told_with_its_share_and_what_may_be_said(episode: Write) -> None:
    facts = says(episode, "I like it. [opinion]\nFor me it's the clear winner. [opinion]", AHEAD)
    (place, message), *more = found(facts, "winner-too-firm")
    assert (place, more) == ("segments/hang.md:2:17", [])
    assert message == (
        '"clear winner" is too firm for "Bar hang": 67% of all ways to weigh the questions put it first, '
        'and "Ring row" is next.'
    )
    assert "comes out ahead under your weights" in helps(facts, "winner-too-firm")[0]


def test_who_comes_first_instead_is_named(episode: Write) -> None:
    facts = says(episode, "For me it comes out ahead. [opinion]", BEHIND)
    assert [message for _, message in found(facts, "winner-not-first")] == [
        '"comes out ahead" is said of "Bar hang", and by the checklist "Ring row" comes first.'
    ]


def test_a_first_place_that_is_still_open_names_who_could_have_it(episode: Write) -> None:
    text = outline((4, 4, 5, 1)).replace("steady: 5, quick: 1", "steady: 5")
    said = {"segments/hang.md": "For me it comes out ahead. [opinion]"}
    facts = worked_out(episode({"outline.yaml": text, **said}))
    assert [message for _, message in found(facts, "winner-still-open")] == [
        '"comes out ahead" is said of "Bar hang", and "Ring row" is not rated whole yet and could come first.'
    ]
    low = worked_out(episode({"outline.yaml": text.replace("steady: 5}", "steady: 2}"), **said}))
    assert found(low, "winner-still-open") == []


def test_an_allow_comment_covers_it(episode: Write) -> None:
    text = "For me it's the clear winner. [opinion] <!-- allow: winner-too-firm because the title is a joke -->"
    assert found(says(episode, text, AHEAD), "winner-too-firm") == []
