"""Words that say how firmly an exercise comes first are found, with whom they are about; look-alikes are not."""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from scriptkit import build
from scriptkit.computing.grading import firm_words
from scriptkit.computing.grading.firm_words import FirmWords
from scriptkit.reading.words import load
from tests.ranked import AHEAD, outline
from tests.scripts import Write


def heard(episode: Write, text: str, segment: str = "hang", more: str = "") -> Sequence[FirmWords]:
    folder = episode({"outline.yaml": outline(AHEAD, more=more), f"segments/{segment}.md": text})
    facts = build.work_out(build.read(folder))
    passages = tuple(firm_words.passages(facts.episode, facts.segments, facts.cards))
    return firm_words.find(passages, facts.episode, facts.segments, load())


def only(episode: Write, text: str, segment: str = "hang") -> FirmWords:
    (one,) = heard(episode, text, segment)
    return one


@pytest.mark.parametrize(
    ("text", "kind", "words"),
    [
        ("It's the clear winner. [opinion]", "clear", "clear winner"),
        ("It wins hands down. [opinion]", "clear", "wins hands down"),
        ("By my weights this wins. [opinion]", "ahead", "wins"),
        ("By my weights, hangs win outright. [opinion]", "clear", "win outright"),
        ("I changed the weights until the bar hang wins. [opinion]", "ahead", "wins"),
        ("It's by far the best. [opinion]", "clear", "by far the best"),
        ("Nothing else comes close. [opinion]", "clear", "Nothing else comes close"),
        ("It's the best exercise here. [opinion]", "best", "the best exercise"),
        ("This is the best of the lot. [opinion]", "best", "best of the lot"),
        ("This is the best of the three. [opinion]", "best", "best of the three"),
        ("It comes out ahead. [opinion]", "ahead", "comes out ahead"),
        ("First place goes to this one. [opinion]", "ahead", "First place goes to"),
        ("It depends on what you value. [opinion]", "depends", "depends on what you"),
        ("They are neck and neck. [opinion]", "tied", "neck and neck"),
    ],
)
def test_each_way_to_say_it_has_its_kind(episode: Write, text: str, kind: str, words: str) -> None:
    one = only(episode, text)
    assert (one.kind, one.words) == (kind, words)


@pytest.mark.parametrize(
    "text",
    [
        "Is it the best exercise here?",
        "It isn't the best exercise here. [opinion]",
        "It's not the clear winner. [opinion]",
        "It's the best one for small rooms. [opinion]",
        "It's the best one to travel with. [opinion]",
        "Do your best. [aside]",
        "The best evidence is old. [opinion]",
        "To me it wins some and loses some. [opinion]",
        "I hold on until gravity wins. [aside]",
        "I hold on, and gravity usually wins. [aside]",
        "I like it first thing in the morning. [opinion]",
    ],
)
def test_what_is_asked_denied_or_of_less_than_the_list_claims_nothing(episode: Write, text: str) -> None:
    assert heard(episode, text) == ()


def test_for_the_people_the_episode_is_made_for_is_all_of_the_list(episode: Write) -> None:
    assert only(episode, "It's the best exercise for boulderers. [opinion]").kind == "best"


@pytest.mark.parametrize(
    ("text", "segment", "exercise"),
    [
        ("The ring row is the clear winner. [opinion]", "hang", "row"),
        ("It's the clear winner. [opinion]", "hang", "hang"),
        ("There's a clear winner. [opinion]", "recap", ""),
    ],
)
def test_it_is_about_whom_it_names_else_about_the_segments_own(
    episode: Write, text: str, segment: str, exercise: str
) -> None:
    assert only(episode, text, segment).exercise == exercise


def test_a_pair_is_who_beats_whom(episode: Write) -> None:
    one = only(episode, "The ring row beats the bar hang. [opinion]")
    assert (one.kind, one.exercise, one.other) == ("pair", "row", "hang")
    assert heard(episode, "The ring row doesn't beat the bar hang. [opinion]") == ()


def test_by_my_weights_is_owned_and_a_flat_word_is_not(episode: Write) -> None:
    assert only(episode, "By my weights it comes out ahead. [aside]").owned
    assert not only(episode, "It comes out ahead. [aside]").owned
    assert only(episode, "It comes out ahead. [opinion]").owned


def test_the_title_and_a_promise_count_and_a_list_in_the_title_does_not(episode: Write) -> None:
    promise = "promises: {top: which one is the clear winner}\n"
    one, *_ = heard(episode, "I like it. [opinion]", more=promise)
    assert (one.passage.what, one.place.line) == ("the promise top", 11)


def test_what_explains_a_rating_in_the_checklist_segment_is_no_claim(episode: Write) -> None:
    assert heard(episode, "Five means the best of the lot. [aside]", "checklist") == ()


def test_it_stands_where_its_words_stand(episode: Write) -> None:
    one = only(episode, "I like it. [opinion]\nFor me it's the\nclear winner. [opinion]")
    assert (one.place.file, one.place.line, one.place.column) == ("segments/hang.md", 3, 1)


def test_every_entry_of_the_list_holds_one_of_the_signs_that_are_looked_for_first() -> None:
    entries = [line.partition(" = ")[0] for line in load()["firmness-said"]]
    first_spellings = [" ".join(part.partition("/")[0] for part in entry.split()) for entry in entries]
    assert [one for one in first_spellings if not any(sign in one + " " for sign in firm_words.SIGNS)] == []


def test_a_word_of_a_name_says_nothing(episode: Write) -> None:
    folder = episode(
        {
            "outline.yaml": outline(AHEAD).replace("Bar hang", "No-hang best pull"),
            "segments/hang.md": "For me the no-hang best pull comes out ahead. [opinion]",
        }
    )
    facts = build.work_out(build.read(folder))
    passages = tuple(firm_words.passages(facts.episode, facts.segments, facts.cards))
    (one,) = firm_words.find(passages, facts.episode, facts.segments, load())
    assert (one.kind, one.words, one.exercise) == ("ahead", "comes out ahead", "hang")
