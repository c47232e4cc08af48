"""What an ear can keep of figures, and which words and numbers it takes for others."""

from __future__ import annotations

import pytest

from scriptkit.model import Stumble
from tests.scripts import GRIP, Write, with_hang, worked_out


def heard(episode: Write, kind: str, text: str, outline: str = GRIP) -> list[Stumble]:
    facts = with_hang(episode, text, outline)
    return [one for one in facts.stumbles if one.kind == kind and one.segment == "hang"]


@pytest.mark.parametrize(
    "text",
    [
        "The ledge side gained 1.6 millimetres of muscle, and the floor side 1.0.",
        "A small trial, with 24 runners over 8 weeks, found 12 percent against 7.",
        "In a study of 61 club rowers, their weights went from 30 kilos to 52 in a year.",
        "Do three sets of eight to twelve, twice a week, with two minutes of rest.",
        "For me it's three out of five here, four out of five there, and two out of five for the rest.",
        "I tried two grips, three bars, four gyms and one towel.",
        "Hold it for between 20 and 30 seconds, for 10 weeks.",
        "It worked in 2019, in 2020, in 2021 and in 2022.",
    ],
)
def test_two_results_with_people_weeks_ranges_and_small_counts_are_kept(episode: Write, text: str) -> None:
    assert heard(episode, "figures", text) == []


@pytest.mark.parametrize(
    ("text", "figures"),
    [
        ("It rose by 12 percent, then 19 percent, then 23 percent.", "12; 19; 23"),
        ("The pad gave 2.1 millimetres, the bench 1.8 millimetres and the floor 1.2.", "2.1; 1.8; 1.2"),
        ("From 41 seconds it went to 50 kilos and twenty-two degrees.", "41; 50; twenty-two"),
    ],
)
def test_three_results_are_too_many(episode: Write, text: str, figures: str) -> None:
    (told,) = heard(episode, "figures", text)
    assert told.words == figures
    assert told.place.column == text.index(figures.partition(";")[0]) + 1


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("I like it for abduction. [opinion]", "abduction / adduction"),
        ("Adductors first. [aside]", "adductors / abductors"),
        ("A walk is an aerobic effort. [aside]", "an aerobic / anaerobic"),
        ("Mind the inter-set rest. [aside]", "inter set / intra set"),
    ],
)
def test_a_word_is_told_where_its_opposite_sounds_alike(episode: Write, text: str, word: str) -> None:
    assert [one.words for one in heard(episode, "word", text)] == [word]


def test_plain_words_or_a_way_to_say_it_settle_a_word(episode: Write) -> None:
    plain = "I like it for abduction, moving the leg away from the body. [opinion] Abduction it is. [aside]"
    assert heard(episode, "word", plain) == []
    say = GRIP.rstrip() + "\n    terms: {hip abduction: {say: A-B duction, gloss: out}}\n"
    assert heard(episode, "word", "I like it for abduction, so out. [opinion]", say) == []


def test_a_word_is_told_once(episode: Write) -> None:
    assert len(heard(episode, "word", "Abduction. [aside] And abduction again. [aside]")) == 1


def test_cannot_is_clearer_in_a_caution_and_matters_nowhere_else(episode: Write) -> None:
    text = "You can't hang on a sore elbow. [caution elbow]"
    outline = GRIP.rstrip() + "\n    cautions: {elbow: {line: Do not hang on a sore elbow.}}\n"
    assert [one.words for one in heard(episode, "word", text, outline)] == ["can't / can"]
    assert heard(episode, "word", "You can't fall off a floor. [aside]") == []


@pytest.mark.parametrize(
    ("text", "digits"),
    [
        ("In one trial hang time rose by 15 percent. [from mora-2022]", "15"),
        ("In one trial hang time rose by fifty percent. [from mora-2022]", "50"),
        ("I did 13 on the bar. [aside] On the ring I did 30. [aside]", "30"),
        ("I'd say 15 percent of it is grip. [opinion]", ""),
        ("In one trial hang time rose by 12 percent. [from mora-2022]", ""),
        ("[screen: plus 15 percent] In one trial hang time rose by 15 percent. [from mora-2022]", ""),
        ("I hold it for 15 seconds. [aside]", ""),
    ],
)
def test_fifteen_and_fifty_are_told_where_it_matters(episode: Write, text: str, digits: str) -> None:
    assert [one.words for one in heard(episode, "number", text)] == ([digits] if digits else [])


@pytest.mark.parametrize(
    ("text", "cue"),
    [
        ("Well (look at Bob), that is it. [aside]", "(look at Bob)"),
        ("Well. (Pause.) That is it. [aside]", "(Pause.)"),
        ("(smiles) That is it. [aside]", "(smiles)"),
        ("Hang from it (both hands) and breathe. [aside]", ""),
        ("Hang from it (look at the wall in front of you while you do it). [aside]", ""),
    ],
)
def test_a_cue_in_round_brackets_is_told(episode: Write, text: str, cue: str) -> None:
    assert [one.words for one in heard(episode, "cue", text)] == ([cue] if cue else [])


def test_a_drafted_sentence_is_told_at_the_claim_it_comes_from(episode: Write) -> None:
    outline = GRIP.replace(
        "grade: A-}", "grade: A-, claims: [{say: 'I did 41 kilos, 52 kilos and 63.', opinion: true}]}"
    )
    facts = worked_out(episode({"outline.yaml": outline}))
    assert [one.place.file for one in facts.stumbles if one.kind == "figures"] == ["outline.yaml"]
