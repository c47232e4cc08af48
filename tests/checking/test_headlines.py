"""The title, the question and the promises are held to the same rules as a spoken sentence."""

from __future__ import annotations

from tests.checking.test_ladder import SMALL
from tests.scripts import Write, found, with_hang, worked_out


def test_the_title_is_held_to_it(episode: Write) -> None:
    outline = SMALL.replace("Ways to train your grip", "Hanging builds grip strength")
    text = "Hanging may build grip strength, but the evidence is very uncertain. [from mora-2022 grip]"
    facts = with_hang(episode, text, outline)
    assert [place for place, _ in found(facts, "headline-too-firm")] == ["outline.yaml:1:16"]


def test_a_title_with_nothing_behind_it_is_told(episode: Write) -> None:
    outline = "title: Hanging builds bigger forearms\nexercises: {hang: {name: Bar hang}}\n"
    assert len(found(worked_out(episode({"outline.yaml": outline})), "headline-unbacked")) == 1


def test_a_title_of_proof_is_told_at_its_word(episode: Write) -> None:
    outline = "title: Hangs are proven to build your grip\nexercises: {hang: {name: Bar hang}}\n"
    assert [place for place, _ in found(worked_out(episode({"outline.yaml": outline})), "word-of-proof")] == [
        "outline.yaml:1:14"
    ]


def test_a_title_that_asks_what_is_proven_is_not(episode: Write) -> None:
    for title in ("What science says about hanging", "Has anything been proven?", "Bar hangs, graded"):
        outline = f"title: {title}\nexercises: {{hang: {{name: Bar hang}}}}\n"
        assert found(worked_out(episode({"outline.yaml": outline})), "word-of-proof") == []
