"""Whether a listener can follow is told in notes, at the words that could be others."""

from __future__ import annotations

from scriptkit import build
from tests.scripts import Write, found, with_hang, worked_out

REST = "Well, I like it a lot. [opinion]\nMy dog does too. [aside] I could go on. [aside] "


def test_an_exercise_named_late_or_never_is_told_at_its_first_sentence(episode: Write) -> None:
    (late,) = found(with_hang(episode, REST + "It's the bar hang. [aside]"), "exercise-not-named")
    assert late == ("segments/hang.md:1:1", 'The text of "Bar hang" says its name only in sentence 4.')
    (never,) = found(with_hang(episode, REST), "exercise-not-named")
    assert never == ("segments/hang.md:1:1", 'The text of "Bar hang" never says its name.')


def test_a_word_is_told_where_it_is_too_many(episode: Write) -> None:
    text = "The bar hang is brutal. [opinion]\nBrutal on skin, and brutal on me. [opinion]\nYes, brutal. [aside]"
    assert found(with_hang(episode, text), "word-repeated") == [
        ("segments/hang.md:3:6", '"brutal" is heard 4 times in three sentences.')
    ]


def test_beginnings_and_phrases_are_told_at_the_third(episode: Write) -> None:
    names = {"hang": "Bar hang", "row": "Ring row", "curl": "Wrist curl"}
    outline = "title: One\nexercises:\n" + "".join(f"  {key}: {{name: {name}}}\n" for key, name in names.items())
    text = "Next up, the %s. [aside]\nIt works wonders on rainy afternoons, I think. [opinion]"
    files = {f"segments/{key}.md": text % name for key, name in names.items()}
    facts = worked_out(episode({"outline.yaml": outline, **files}))
    assert [place for place, _ in found(facts, "openings-alike")] == ["segments/curl.md:1:1"]
    assert [place for place, _ in found(facts, "phrase-repeated")] == ["segments/curl.md:2:1"]


def test_nothing_of_it_is_more_than_a_note(episode: Write) -> None:
    facts = with_hang(episode, REST + "Dull, dull, dull. [aside] Dull. [aside]")
    ours = {"exercise-not-named", "openings-alike", "phrase-repeated", "word-repeated"}
    assert {one.severity for one in build.check(facts, "publish") if one.name in ours} == {"note"}
