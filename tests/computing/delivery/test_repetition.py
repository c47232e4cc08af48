"""A listener notices the same beginnings, the same phrase and the same word; what has to come again may."""

from __future__ import annotations

from tests.scripts import Write, worked_out

NAMES = {"hang": "Bar hang", "row": "Ring row", "curl": "Wrist curl", "pinch": "Plate pinch", "carry": "Farmer carry"}
OUTLINE = "title: One\nexercises:\n" + "".join(f"  {key}: {{name: {name}}}\n" for key, name in NAMES.items())


def told(episode: Write, kind: str, *texts: str) -> list[str]:
    files = {f"segments/{name}.md": text for name, text in zip(NAMES, texts, strict=False)}
    facts = worked_out(episode({"outline.yaml": OUTLINE, **files}))
    return [f"{one.segment}: {one.words}" for one in facts.stumbles if one.kind == kind]


def test_three_beginnings_alike_in_a_row_are_told_once_at_the_third(episode: Write) -> None:
    same = [f"Next up, the {name}. [aside]" for name in NAMES.values()]
    assert told(episode, "opening", *same) == ["curl: Next up"]
    assert told(episode, "opening", *same[:2], "And the wrist curl. [aside]", *same[3:]) == []


def test_a_phrase_in_three_texts_of_four_is_told(episode: Write) -> None:
    habit = "The %s works wonders on rainy afternoons, I think. [opinion]"
    other = "I have nothing to say here. [aside]"
    assert told(episode, "phrase", habit % "hang", habit % "row", other, habit % "pinch") == [
        "pinch: works wonders on rainy afternoons"
    ]
    assert told(episode, "phrase", habit % "hang", habit % "row", other, other) == []


def test_small_words_make_no_phrase(episode: Write) -> None:
    assert told(episode, "phrase", *["It is the one that I have here, you know. [aside]"] * 4) == []


def test_reports_and_cautions_may_be_the_same(episode: Write) -> None:
    report = "One small trial measured tired fingers afterwards. [from one]"
    assert told(episode, "phrase", report, report, report) == []


def test_a_word_four_times_in_three_sentences_is_told_once(episode: Write) -> None:
    text = "Brutal. [aside] It's brutal, and brutal again. [aside] A brutal thing. [aside] So brutal. [aside]"
    assert told(episode, "again", text) == ["hang: brutal"]


def test_the_words_of_the_episode_have_to_come_again(episode: Write) -> None:
    assert (
        told(episode, "again", "Wrist, wrist. [aside] Wrist. [aside] Wrist and weeks, weeks, weeks, weeks. [aside]")
        == []
    )
