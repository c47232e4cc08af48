"""Words on screen are told of where they cannot be read, and where the next ones cut them off."""

from __future__ import annotations

import pytest

from tests.scripts import Write, found, worked_out

OUTLINE = "title: One\ncoverage: [side]\nexercises: {hang: {name: Bar hang}}\norder: [hang]\n"
SENTENCE = "I like to hang from it for as long as the song goes on. [opinion]"


def told(episode: Write, name: str, text: str) -> list[str]:
    facts = worked_out(episode({"outline.yaml": OUTLINE, "segments/hang.md": f"[shot FS side: hang] {text}"}))
    return [message for _, message in found(facts, name)]


@pytest.mark.parametrize(
    ("text", "count"),
    [
        (f"[screen: Bar hang] {SENTENCE}", 0),
        (f"[screen 1s: Bar hang] {SENTENCE}", 1),
        (f"[screen 2s: one two three four five six seven] {SENTENCE}", 1),
        (f"{SENTENCE} [screen: Bar hang]", 1),
        (f"{SENTENCE} [screen: Bar hang] [pause 2s]", 0),
    ],
)
def test_a_card_stands_long_enough_to_be_read(episode: Write, text: str, count: int) -> None:
    assert len(told(episode, "card-too-short", text)) == count


@pytest.mark.parametrize(("seconds", "count"), [(2, 0), (20, 1)])
def test_a_card_that_is_to_stand_longer_than_until_the_next_one(episode: Write, seconds: int, count: int) -> None:
    text = f"[screen {seconds}s: Bar hang] {SENTENCE} [screen: Let go] {SENTENCE}"
    assert len(told(episode, "card-cut-off", text)) == count


def test_a_label_does_not_cut_a_card_off(episode: Write) -> None:
    text = f"[screen 4s: Bar hang] [shot FS side fault: shrug; label Fault: shrug] {SENTENCE}"
    assert told(episode, "card-cut-off", text) == []


@pytest.mark.parametrize(("text", "count"), [("#595959", 0), ("#767676", 0), ("#777777", 1), ("#999", 1)])
def test_words_on_white_have_the_contrast_that_is_asked_for(episode: Write, text: str, count: int) -> None:
    outline = f'title: One\ncards: {{text: "{text}", ground: "#FFF"}}\nexercises: {{hang: {{name: Bar hang}}}}\n'
    assert len(found(worked_out(episode({"outline.yaml": outline})), "card-contrast-low")) == count


def test_a_colour_that_is_none_is_told_and_ours_is_used(episode: Write) -> None:
    outline = "title: One\ncards: {text: white}\nexercises: {hang: {name: Bar hang}}\n"
    facts = worked_out(episode({"outline.yaml": outline}))
    assert [place for place, _ in found(facts, "wrong-type")] == ["outline.yaml:2:15"]
    assert facts.card_look.text == "#FFFFFF"


def test_a_card_of_a_drafted_text_is_nobody_s_mistake(episode: Write) -> None:
    outline = "title: One\nexercises: {" + ", ".join(f"{one}: {{name: {one} raise, grade: B}}" for one in "abc") + "}\n"
    assert found(worked_out(episode({"outline.yaml": outline})), "card-too-short") == []
