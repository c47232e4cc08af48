"""Words that say more, or something else, than was measured; and honest sentences of which nothing is said."""

from __future__ import annotations

import pytest

from tests.scripts import Write
from tests.weighed import TRIAL, doubts, kinds, study

EMG = study("emg", "design: crossover, timeframe: acute, n: 40", a="outcome: muscle activity, measure: EMG")
EVEN = study("even", "design: RCT, n: 90", a="outcome: grip strength, effect: 0.0, ci: [-0.2, 0.2]")
OPEN = study("open", "design: RCT, n: 90", a="outcome: grip strength, effect: 0.0, ci: [-0.5, 0.5]")
LEGS = study(
    "legs", "design: RCT, comparison: within-person, n: 38, n_units: 76", a="outcome: muscle growth, measure: MRI"
)
ONE_GROUP = study("one", "design: pre-post, n: 61", a="outcome: grip strength, effect: 0.6")
BARE = study("bare", "design: RCT, n: 90", a="outcome: hang time")
VALUES = study("val", "design: RCT, n: 90", a="outcome: hang time, values: {before: 41 s, after: 50 s}")
MICE = study("mice", "design: animal study, n: 90", a="outcome: muscle growth")
NEW = study("new", "design: RCT, n: 90, training: untrained", a="outcome: grip strength")
EARLY = study("early", "design: RCT, n: 90, duration_weeks: 4", a="outcome: muscle growth, measure: MRI")
TAPE = study("tape", "design: RCT, n: 90, duration_weeks: 9", a="outcome: forearm size, measure: tape")
ALL = TRIAL + EMG + EVEN + OPEN + LEGS + ONE_GROUP + BARE + VALUES + MICE + NEW + EARLY + TAPE


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("Hangs grow your forearms. [from emg a]", "acute"),
        ("Hangs built more muscle than rows. [from emg a]", "acute"),
        ("Hangs make you stronger. [from emg a]", "acute"),
        ("Hangs give you bigger arms. [from emg a]", "acute"),
        ("Hangs may build more muscle than rows. [from emg a]", "acute-hedged"),
        ("Hangs grew the forearm. [from mora grip]", "other-outcome"),
        ("There is no difference between hangs and rows. [from open a]", "no-difference"),
        ("It doesn't matter which of the two makes you stronger. [from open a]", "no-difference"),
        ("The two gained the same. [from open a]", "no-difference"),
        ("Rows were just as good for grip strength. [from open a]", "no-difference"),
        ("Hang time rose by 22 percent. [from bare a]", "percent"),
        ("They hung 20% longer. [from bare a]", "percent"),
        ("Hang time rose by about a fifth. [from bare a]", "percent"),
        ("A trial of 76 climbers saw them grow. [from legs a]", "limbs"),
        ("Seventy-six people grew. [from legs a]", "limbs"),
        ("Hangs built more strength than rows. [from one a]", "nothing-compared"),
        ("Hangs had a large effect on strength. [from one a]", "large-before-after"),
        ("Hangs had a large effect on strength. [from mora grip]", "large-between"),
        ("A long stretch grows muscle. [from mice a]", "animals"),
        ("Hangs make lifters stronger. [from new a]", "untrained"),
        ("Hangs grew the forearm. [from early a]", "early-growth"),
        ("Hangs grew the muscle of the forearm. [from tape a]", "rough-measure"),
    ],
)
def test_it_is_found(episode: Write, text: str, kind: str) -> None:
    assert kind in kinds(episode, text, ALL)


@pytest.mark.parametrize(
    "text",
    [
        "Forearm activity was higher in a hang. [from emg a]",
        "Activity was higher, and that's not growth. [from emg a]",
        "EMG can't tell you what builds muscle. [from emg a]",
        "Does more activity build muscle? [from emg a]",
        "Hangs grew the forearm. [from mora size]",
        "The two made no difference. [from even a]",
        "One trial of 90 found no clear difference. [from open a]",
        "There may be no difference. [from open a]",
        "That isn't proof of no difference. [from open a]",
        "Both groups did the same number of sets. [from open a]",
        "The groups didn't differ in age. [from open a]",
        "The same climbers came back a week later. [from open a]",
        "Hang time rose by 22 percent. [from val a]",
        "Hang time rose by about a fifth. [from val a]",
        "It rose by 22 percent, from 41 seconds to 50. [from bare a]",
        "It took 22 percent of their hardest pull. [from bare a]",
        "Thirty-eight people, so 76 arms, took part. [from legs a]",
        "They got stronger than they were at the start. [from one a]",
        "With no comparison group, they got stronger than anyone had hoped. [from one a]",
        "In beginners, hangs are good for lifters too. [from new a]",
        "In mice, a long stretch grew muscle. [from mice a]",
        "The forearm grew in 4 weeks. [from early a]",
        "The forearm grew, by tape. [from tape a]",
    ],
)
def test_an_honest_sentence_is_left_alone(episode: Write, text: str) -> None:
    assert [kind for kind in kinds(episode, text, ALL) if kind != "left-out"] == []


def test_a_word_on_activity_elsewhere_in_the_segment_settles_it(episode: Write) -> None:
    text = "Hangs build more forearm. [from emg a]\n\nMind you, that's activity, and not growth. [from emg a]\n"
    assert kinds(episode, text, EMG) == []


def test_one_study_that_measured_growth_is_enough(episode: Write) -> None:
    assert "acute" not in kinds(episode, "Hangs grow your forearms. [from emg a, mora size]", EMG + TRIAL)


def test_strength_between_the_limbs_of_the_same_people(episode: Write) -> None:
    limbs = study("s", "design: RCT, comparison: within-person, n: 60", a="outcome: grip strength")
    text = "The hand that hung got stronger than the other one did. [from s a]"
    assert kinds(episode, "The hung hand got stronger than the lazy one. [from s a]", limbs) == ["other-limb"]
    assert kinds(episode, f"{text} Some of it carries over.", limbs) == []


def test_the_widest_interval_is_told(episode: Write) -> None:
    [doubt] = doubts(episode, "There is no difference. [from open a]", OPEN)
    assert doubt.has == "-0.5 to 0.5"


def test_a_plain_claim_is_not_made_good_by_what_was_said_before_it(episode: Write) -> None:
    before = "The forearm was more active in a hang, and that's not growth. [from emg a]"
    assert "acute" in kinds(episode, f"{before} Hangs built more muscle than rows. [from emg a]", ALL)
    assert "acute-hedged" not in kinds(episode, f"{before} Hangs may build more muscle. [from emg a]", ALL)


def test_a_segment_is_asked_once_how_soon_growth_was_measured(episode: Write) -> None:
    text = "In 90 climbers the forearm grew. [from early a] The hand grew too. [from early a]"
    assert kinds(episode, text, ALL).count("early-growth") == 1


def test_no_growth_needs_no_fine_measure(episode: Write) -> None:
    assert "rough-measure" not in kinds(episode, "Rolls made no difference to the forearm. [from tape a]", ALL)


@pytest.mark.parametrize(
    "text",
    [
        "In 90 office workers, hangs made the grip stronger. [from desk a]",
        "Hangs may make your grip stronger. [from desk a]",
        "Whether hangs make you stronger, this trial can't say. [from desk a]",
    ],
)
def test_people_who_are_named_or_hedged_are_not_taken_for_the_viewers(episode: Write, text: str) -> None:
    desk = study(
        "desk", "design: RCT, n: 90, population: office staff, training: untrained", a="outcome: grip strength"
    )
    head = "title: One\naudience: lifters\nexercises: {hang: {name: Bar hang}}\n"
    assert "untrained" not in kinds(episode, text, desk, head)
    assert "untrained" in kinds(episode, "Hangs make your grip stronger. [from desk a]", desk, head)


def test_what_a_trial_disowns_is_not_growth(episode: Write) -> None:
    text = "Nobody has shown that hangs grow your forearms more, and this one only measured activity. [from emg a]"
    assert "acute" not in kinds(episode, text, ALL)


def test_strength_work_is_a_means_and_no_outcome(episode: Write) -> None:
    hurt = study("hurt", "design: cohort, n: 2400", a="outcome: injuries")
    assert "other-outcome" not in kinds(episode, "Strength work may go with fewer injuries. [from hurt a]", hurt)
