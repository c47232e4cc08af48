"""What differs inside a sentence is told as what it is; fillers, second starts and little words are nothing."""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from scriptkit import build
from scriptkit.computing.taking import differing, hearing_out
from scriptkit.model import Facts, Segment, TakeChange
from scriptkit.model.recording import TimedWord
from scriptkit.reading import words
from tests.scripts import Write

OUTLINE = """
    title: One
    exercises:
      hang: {name: Bar hang, grade: A-}
      row: {name: Ring row, grade: B}
      pull: {name: Pull-up, grade: B}
      lift: {name: No-hang lift, grade: C}
    sponsor: {name: Hill Shoes, code: HILL10}
    cautions: {back: {line: If your back hurts, stop and see a licensed clinician.}}
    """


def changes(episode: Write, script: str, said: str) -> list[TakeChange]:
    facts = build.work_out(build.read(episode({"outline.yaml": OUTLINE, "segments/hang.md": script})))
    segments = [one for one in facts.segments if one.id == "hang"]
    return held(facts, segments, said)


def held(facts: Facts, segments: Sequence[Segment], said: str) -> list[TakeChange]:
    """What is told of a recording of some segments."""
    timed = [TimedWord(word, at / 2, at / 2 + 0.4, exact=True) for at, word in enumerate(said.split())]
    lines, recorded = hearing_out.compared(segments, timed)
    watched = differing.Watched(facts.episode, facts.spoken_grades, words.load(), recorded.apart)
    found: list[TakeChange] = []
    for one, match in zip(lines, hearing_out.match(lines, recorded), strict=True):
        assert match is not None
        found += differing.changes(one, differing.stretched(match, -1, len(recorded.keys), recorded), recorded, watched)
    return found


SCRIPT = "In that trial 38 climbers hung for 10 weeks and it did not change their grip much."


@pytest.mark.parametrize(
    ("said", "kinds"),
    [
        (SCRIPT, []),
        ("In that trial thirty-eight climbers hung for ten weeks and it did not change their grip much.", []),
        ("In that trial 38 climbers hung for 10 weeks and it didn't change their grip much.", []),
        ("In um that trial 38 uh climbers hung for 10 weeks and it did not change their grip much.", []),
        ("In that trial In that trial 38 climbers hung for 10 weeks and it did not change their grip much.", []),
        ("In a trial 38 climbers hung for 10 weeks and that did not change their grip much.", []),
        ("In that trial 83 climbers hung for 10 weeks and it did not change their grip much.", ["number"]),
        ("In that trial 38 climbers hung for 10 days and it did not change their grip much.", ["unit"]),
        ("In that trial 38 climbers hung for 10 weeks and it did change their grip much.", ["negation"]),
        ("In that trial 38 climbers hung for 10 weeks and it probably did not change their grip much.", ["certainty"]),
        ("In that trial 38 folks pulled for 10 weeks and it did not alter how firmly people squeeze.", ["wording"]),
    ],
)
def test_each_difference_is_told_as_what_it_is(episode: Write, said: str, kinds: list[str]) -> None:
    assert [one.kind for one in changes(episode, f"{SCRIPT} [aside]", said)] == kinds


def test_grade_and_name_are_watched_word_by_word(episode: Write) -> None:
    script = "I give the bar hang an A minus for being dull. [opinion]"
    assert [one.kind for one in changes(episode, script, "I give the bar hang a B minus for being dull.")] == ["grade"]
    assert [one.kind for one in changes(episode, script, "I give the ring row an A minus for being dull.")] == [
        "exercise"
    ]


def test_of_a_caution_any_other_word_is_told_and_a_little_one_is_not(episode: Write) -> None:
    script = "If your back hurts, stop and see a licensed clinician. [caution back]"
    assert changes(episode, script, "If your back hurts, stop and see licensed clinician.") == []
    (one,) = changes(episode, script, "If your back aches, stop and see a licensed clinician.")
    assert (one.weight, one.kind) == ("stop", "caution")


def test_it_is_told_at_its_word_with_what_stands_around_it(episode: Write) -> None:
    (one,) = changes(episode, f"{SCRIPT} [aside]", SCRIPT.replace("38", "83"))
    assert (one.script, one.said, one.at) == ("that trial 38 climbers hung", "that trial 83 climbers hung", 1.5)
    assert (one.place.line, one.place.column) == (1, 15)


@pytest.mark.parametrize(
    ("script", "said", "kinds"),
    [
        ("I give it an A for being dull.", "I give it a B for being dull.", ["grade"]),
        ("I give it a C for being dull.", "I give it a C plus for being dull.", ["grade"]),
        ("With a C from me it stays low.", "With a D from me it stays low.", ["grade"]),
        ("I give it an A minus for being dull.", "I give it an A- for being dull.", []),
        ("The floor side gained 1.0.", "The floor side gained 1.9.", ["number"]),
        ("I would call it three out of five.", "I would call it three out of six.", ["number"]),
        ("It is education, not advice.", "It is not education, not advice.", ["negation"]),
        ("This one is faster than that.", "This one is slower than that.", ["wording"]),
        ("You can't fall off a floor.", "You cannot fall off a floor.", []),
        ("There's a wall behind it and don't lean.", "There is a wall behind it and do not lean.", []),
        ("It gained 1.6 millimetres in a year.", "It gained 1.6 mm in a year.", []),
    ],
)
def test_small_changes_with_another_meaning_are_told_and_other_spellings_are_not(
    episode: Write, script: str, said: str, kinds: list[str]
) -> None:
    assert [one.kind for one in changes(episode, f"{script} [opinion]", said)] == kinds


CODE = "The code is HILL10 and it is good for a month."


@pytest.mark.parametrize(
    ("script", "said", "kinds"),
    [
        ("The no-hang lift is a good one.", "The nohang lift is a good one.", []),
        ("The no-hang lift is a good one.", "The hang lift is a good one.", ["exercise"]),
        ("A no-hang day is a good day.", "A nohang day is a good day.", []),
        ("A no-hang day is a good day.", "A hang day is a good day.", ["negation"]),
        ("The pull-up is what I would do first.", "The pullup is what I would do first.", []),
        ("The pullup is what I would do first.", "The pull up is what I would do first.", []),
        ("The pull-up is what I would do first.", "The pushup is what I would do first.", ["exercise"]),
        (CODE, CODE.replace("HILL10", "hill one zero"), []),
        (CODE, CODE.replace("HILL10", "H-I-L-L 1 0"), []),
        (CODE, CODE.replace("HILL10", "hill one oh"), []),
        (CODE, CODE.replace("HILL10", "hill one five"), ["code"]),
        (CODE, CODE.replace("HILL10", "hill one"), ["code"]),
        ("I give it an A- for being dull.", "I give it an eh, minus for being dull.", []),
        ("I give it a B- for being dull.", "I give it a bee minus for being dull.", []),
        ("I give it an A- for being dull.", "I give it an eh plus for being dull.", ["grade"]),
        ("I give it an A- for being dull.", "I give it an eh for being dull.", ["grade"]),
        ("I give it a B- for being dull.", "I give it an eh minus for being dull.", ["grade"]),
    ],
)
def test_what_sounds_alike_is_nothing_however_a_recogniser_writes_it(
    episode: Write, script: str, said: str, kinds: list[str]
) -> None:
    assert [one.kind for one in changes(episode, f"{script} [opinion]", said)] == kinds


@pytest.mark.parametrize(
    ("script", "said", "told"),
    [
        ("It took one week for all of them.", "It took week for all of them.", [("stop", "number")]),
        ("It took a week for all of them.", "It took one week for all of them.", []),
        ("It hurts one in ten of them.", "It hurts in ten of them.", [("stop", "number")]),
        ("It hurts in ten of them.", "It hurts one in ten of them.", [("stop", "number")]),
        ("Do 1 set of it on each day.", "Do set of it on each day.", [("stop", "number")]),
        ("In one study of climbers it rose.", "In study of climbers it rose.", [("wording", "wording")]),
        ("This one is what I would do.", "This is what I would do.", [("wording", "wording")]),
        ("This is what I would do.", "This 1 is what I would do.", []),
    ],
)
def test_a_lone_one_is_a_number_where_it_counts_and_a_pronoun_elsewhere(
    episode: Write, script: str, said: str, told: list[tuple[str, str]]
) -> None:
    assert [(one.weight, one.kind) for one in changes(episode, f"{script} [opinion]", said)] == told
