"""Findings on sentences that say more, or something else, than their sources measured."""

from __future__ import annotations

import pytest

from tests.scripts import Write, found, helps
from tests.weighed import HEAD, TRIAL, places, study, told

EMG = study("emg", "design: crossover, timeframe: acute, n: 40", a="outcome: muscle activity, measure: EMG")
OPEN = study("open", "design: RCT, n: 90", a="outcome: grip strength, effect: 0.0, ci: [-0.5, 0.5]")
LEGS = study("legs", "design: RCT, comparison: within-person, n: 38, n_units: 76", a="outcome: muscle growth")
ONE_GROUP = study("one", "design: pre-post, n: 61", a="outcome: grip strength")
BARE = study("bare", "design: RCT, n: 90", a="outcome: hang time")
ALL = TRIAL + EMG + OPEN + LEGS + ONE_GROUP + BARE


@pytest.mark.parametrize(
    ("name", "text", "column"),
    [
        ("acute-behind-growth", "Hangs grow your forearms. [from emg a]", 7),
        ("acute-behind-a-maybe", "Hangs may grow your forearms. [from emg a]", 11),
        ("measured-something-else", "Hangs grew the forearm. [from mora grip]", 7),
        ("no-difference-not-shown", "There is no difference. [from open a]", 10),
        ("percent-of-what", "Hang time rose by 22 percent. [from bare a]", 19),
        ("limbs-as-people", "A trial of 76 climbers saw them grow. [from legs a]", 12),
        ("nothing-compared", "Hangs built more strength than rows. [from one a]", 27),
    ],
)
def test_it_stands_at_the_words(episode: Write, name: str, text: str, column: int) -> None:
    assert places(episode, name, f"Hello. [aside]\n\n{text}\n", ALL) == [f"segments/hang.md:3:{column}"]


LIMITS = [
    "None of it measured pain.",
    "They measured grip, so whether the forearm grew, nobody knows.",
    "It can't speak to muscle growth.",
    "The trial wasn't built to test muscle growth.",
    "No scan was taken, so growth is anyone's guess.",
    "Growth wasn't one of its outcomes.",
    "The trial never asked about pain.",
    "The trial has no data on pain.",
    "Muscle size was outside its scope.",
    "It was six weeks long, far too short to see growth.",
]
CLAIMS = [
    "It wasn't the ledge that built the muscle, it was the hang, and the forearms grew.",
    "Growth wasn't small either: the forearms thickened.",
    "The trial was built to find out, and the forearms grew.",
    "The climbers were big enough to see the growth in the mirror.",
    "Pain was not a problem any more after six weeks.",
    "Nobody knows why, but hangs grew their forearms.",
    "Don't look at the bar, and your forearms grow.",
    "It's not about strength, it's about growth.",
]


@pytest.mark.parametrize(("sentence", "told_of"), [*((one, False) for one in LIMITS), *((one, True) for one in CLAIMS)])
def test_what_a_study_did_not_measure_may_be_said(episode: Write, sentence: str, told_of: bool) -> None:
    facts = told(episode, f"Mora had 40 climbers. [from mora grip] {sentence} [from mora grip]", ALL)
    assert bool(found(facts, "measured-something-else")) is told_of


def test_the_message_says_what_was_measured(episode: Write) -> None:
    [(_, message)] = found(told(episode, "Hangs grow your forearms. [from emg a]", EMG), "acute-behind-growth")
    assert message == '"grow" says what training builds, and emg measured "muscle activity, EMG", within one session.'


def test_the_help_has_the_words_to_say(episode: Write) -> None:
    [told_how] = helps(told(episode, "There is no difference. [from open a]", OPEN), "no-difference-not-shown")
    assert told_how.startswith('Say "no clear difference"')


def test_without_an_interval_the_register_is_named(episode: Write) -> None:
    [(_, message)] = found(told(episode, "There is no difference. [from bare a]", BARE), "no-difference-not-shown")
    assert message.endswith("more than bare shows: the register has no interval.")


def test_a_drafted_claim_is_told_of_in_the_outline(episode: Write) -> None:
    outline = HEAD.replace("Bar hang}", "Bar hang, claims: [{say: Hangs grow arms., source: emg}]}")
    from tests.scripts import worked_out

    facts = worked_out(episode({"outline.yaml": f"{outline}sources:\n{EMG}"}))
    assert [place for place, _ in found(facts, "acute-behind-growth")] == ["outline.yaml:2:57"]
