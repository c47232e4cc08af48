"""Outline and texts become segments of sentences, each with where it stands and what it rests on."""

from __future__ import annotations

from tests.scripts import GRIP, Write, segment, sentence, with_hang, worked_out


def test_a_bare_outline_is_a_whole_script(episode: Write) -> None:
    facts = worked_out(episode({"outline.yaml": GRIP}))
    assert all(one.sentences for one in facts.segments)
    assert facts.bad_marks == ()
    assert facts.tag_troubles == ()


def test_stock_words_stand_at_their_exercise_or_at_line_one(episode: Write) -> None:
    facts = worked_out(
        episode({"outline.yaml": GRIP.replace("    sources:", "    order: [opening, hang, row, close]\n    sources:")})
    )
    assert {one.place[:2] for one in segment(facts, "close").sentences} == {("outline.yaml", 1)}
    assert {one.place[:2] for one in segment(facts, "row").sentences} == {("outline.yaml", 4)}


def test_a_segment_knows_its_file_its_exercise_and_its_title(episode: Write) -> None:
    facts = with_hang(episode, "Hello. [aside]")
    own, stock = segment(facts, "hang"), segment(facts, "row")
    assert (own.file, own.drafted, own.exercise, own.title) == ("segments/hang.md", False, "hang", "Bar hang")
    assert (stock.file, stock.drafted) == ("", True)
    assert segment(facts, "opening").title == "Opening"


def test_a_step_may_call_its_segment_otherwise(episode: Write) -> None:
    outline = (
        GRIP
        + """
    order: [{segment: hang, title: "Hangs, and why"}, hello, {group: Rows, title: All rows}]
    """
    )
    facts = worked_out(episode({"outline.yaml": outline, "segments/hello.md": "Hello. [aside]"}))
    assert [one.title for one in facts.segments] == ["Hangs, and why", "Hello", "All rows"]
    assert segment(facts, "group-rows").sentences[0].text.endswith(": rows.")


def test_a_caution_is_given_by_the_first_exercise_that_calls_for_it_alone(episode: Write) -> None:
    outline = (
        "title: One\nexercises: "
        "{a: {name: A1, cautions: [own]}, b: {name: B1, cautions: [own]}}\ncautions: "
        "{own: {line: Mind your hands.}}\n"
    )
    facts = worked_out(episode({"outline.yaml": outline}))
    said = [part.id for part in facts.segments for one in part.sentences if one.text == "Mind your hands."]
    assert said == ["a"]


def test_a_caution_an_authors_text_gives_is_not_given_again(episode: Write) -> None:
    outline = (
        "title: One\nexercises: {a: {name: A1}, b: {name: B1, cautions: [own]}}\n"
        "cautions: {own: {line: Mind your hands.}}\n"
    )
    facts = worked_out(episode({"outline.yaml": outline, "segments/a.md": "Well, mind your hands! [aside]"}))
    assert "Mind your hands." not in [one.text for one in segment(facts, "b").sentences]


def test_bad_marks_are_kept_with_their_place(episode: Write) -> None:
    facts = with_hang(episode, "Hello. [opnion]\n\n> I say\n> so. [pause\n> soon]")
    assert [(one.raw, one.place.line, one.place.column) for one in facts.bad_marks] == [
        ("opnion", 1, 8),
        ("pause soon", 4, 7),
    ]


def test_marks_of_the_outline_and_of_the_text_are_both_there(episode: Write) -> None:
    facts = with_hang(episode, "It grew. [from mora-2022 hang, lind-2019 against]")
    assert [(link.id, link.finding, link.stance) for link in sentence(facts, "It grew").links] == [
        ("mora-2022", "hang", "supports"),
        ("lind-2019", "", "against"),
    ]
