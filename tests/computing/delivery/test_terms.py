"""Trade words are explained at their first use in the running order, in the outline's words or the author's own."""

from __future__ import annotations

import pytest

from tests.scripts import Write, worked_out

OUTLINE = """
    title: One
    terms: {soleus: {gloss: the flat muscle under the big one}}
    exercises: {hang: {name: Bar hang}, row: {name: Ring row}}
    order: [%s]
    """


def told(episode: Write, kind: str, order: str = "hang, row", **texts: str) -> list[str]:
    files = {f"segments/{name}.md": text for name, text in texts.items()}
    facts = worked_out(episode({"outline.yaml": OUTLINE % order, **files}))
    return [f"{one.place.file}:{one.place.line}:{one.place.column}" for one in facts.stumbles if one.kind == kind]


def test_a_term_is_explained_near_its_first_use_and_not_later(episode: Write) -> None:
    filler = "And " + "on " * 30 + "it went. [aside]"
    late = f"I feel my soleus. [opinion] {filler} That's the flat muscle under the other one. [aside]"
    assert told(episode, "term", hang=late) == ["segments/hang.md:1:11"]
    soon = "I feel my soleus, and that's the flat muscle under the other one. [opinion]"
    assert told(episode, "term", hang=soon, row="I feel my soleus. [opinion]") == []


def test_another_order_makes_another_use_the_first(episode: Write) -> None:
    texts = {
        "hang": "I feel my soleus, {{ terms.soleus.gloss }}. [opinion]",
        "row": "Hello.\nI feel my soleus. [opinion]",
    }
    assert told(episode, "term", "hang, row", **texts) == []
    assert told(episode, "term", "row, hang", **{**texts, "row": texts["row"] + " " + "On we go. [aside] " * 12}) == [
        "segments/row.md:2:11"
    ]


def test_a_gloss_may_come_before_its_term(episode: Write) -> None:
    text = "There is a flat muscle under the big one. [aside] The soleus is what I feel. [opinion]"
    assert told(episode, "term", hang=text) == []


@pytest.mark.parametrize(
    ("text", "explained"),
    [
        ("I like it for hypertrophy. [opinion]", False),
        ("I like it for Hypertrophy: muscles that grow. [opinion]", True),
        ("I like it for hypertrophy, that is, getting big. [opinion]", True),
        ("I like it for hypertrophy, which means bigger arms. [opinion]", True),
        ("I like it for hypertrophy, the bigger-arms thing. [opinion]", True),
        ("I like it for what is called hypertrophy. [opinion]", True),
        ("I like it for hypertrophy. [opinion] Hypertrophy is just arms getting bigger. [aside]", True),
        ("I like it for my biceps, with three sets and ten reps. [opinion]", True),
    ],
)
def test_a_word_of_the_trade_is_explained_somewhere(episode: Write, text: str, explained: bool) -> None:
    assert bool(told(episode, "trade", hang=text)) is not explained


def test_a_word_of_the_trade_that_is_a_term_of_the_outline_is_told_as_such(episode: Write) -> None:
    text = "I feel my soleus. [opinion]"
    assert (len(told(episode, "term", hang=text)), told(episode, "trade", hang=text)) == (1, [])
