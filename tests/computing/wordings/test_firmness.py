"""How firmly a sentence speaks is read clause by clause: plain verbs, hedges, negation, studies that speak, reports."""

from __future__ import annotations

import pytest

from scriptkit.computing.hearing.clauses import compile_cues, take_apart
from scriptkit.computing.wordings.firmness import MOST_CLAUSES, Firmness, is_past, weigh
from scriptkit.computing.wordings.rungs import rungs
from scriptkit.reading.words import load

WORDS = load()
CUES = compile_cues(WORDS)
LADDER = rungs(WORDS, CUES)


def heard(text: str, *, effect: bool = False) -> Firmness:
    return weigh(take_apart(text, CUES), LADDER, effect=effect)


def step(text: str) -> int:
    top = heard(text).firmest
    return top.step if top else 0


RESULTS = [
    "Hanging has corrected their posture.",
    "Hanging builds more grip than a gripper.",
    "Ledge raises build bigger calves.",
    "The ledge results in more growth.",
    "The ledge is better for growth than the floor.",
    "Hanging doesn't result in more strength.",
    "Ledge raises do not build more muscle than floor raises.",
    "The ledge never fails to build muscle.",
    "Not only does the ledge build muscle, but it strengthens the tendon too.",
    "The ledge not only builds muscle but strengthens the tendon.",
    "Hanging will make your grip stronger.",
    "Hanging has been shown to increase grip strength.",
    "The study finds that hanging builds more grip.",
    "Researchers found that ledge raises build more calf.",
    "In trained runners, the ledge builds more muscle.",
    "Deep squats hurt your knees.",
    "The ledge builds muscle and strengthens tendons.",
    "We know that hanging builds grip.",
    "More sets result in more growth.",
    "Seated raises grow the soleus more than standing raises.",
    "The exercise that loads the calf most builds more muscle.",
    "Stretching before a run reduces injuries.",
    "Seated raises are as good as standing raises for the soleus.",
    "That builds strength.",
    "It increases strength.",
    "Promising early work: hanging builds grip.",
    "A pilot study shows hanging builds grip strength.",
    "Hanging for ten weeks makes fingers stronger, so do it.",
    "Hanging was easy to learn, and it builds grip.",
    "Heavy hangs beat light ones for strength.",
    "Your calves grow faster off a ledge.",
    "When you bend the knee, the soleus works harder.",
    "Longer hangs lead to stronger fingers.",
    "A bent knee shortens the calf muscle.",
    "Three sets cause more growth than one.",
    "The seated raise works the soleus better than the standing one.",
    "Off a ledge, the calf grows more.",
    "The ledge is definitely better than the floor.",
    "The ledge clearly builds more.",
    "The best trial we have says the ledge builds more.",
    "Climbers who hang get stronger fingers.",
    "The ledge gives you more growth.",
    "The ledge does build more muscle.",
    "The ledge has a bigger effect on growth than the floor.",
    "Skipping improves running economy.",
    "Skipping won't make you faster.",
    "Skipping can't make you faster.",
]


@pytest.mark.parametrize("text", RESULTS)
def test_a_plain_verb_is_the_fourth_step(text: str) -> None:
    assert step(text) == 4


PROBABLY = [
    "Hanging probably builds more grip.",
    "The ledge is likely to build more muscle.",
    "The ledge will probably build more.",
    "Hanging likely results in more strength.",
    "Ledge raises tend to build more muscle.",
    "The ledge usually builds more.",
    "The ledge is probably better than the floor.",
    "Hanging likely results in more strength.",
]


@pytest.mark.parametrize("text", PROBABLY)
def test_a_word_of_likelihood_is_the_third_step(text: str) -> None:
    assert step(text) == 3


MAY = [
    "The ledge may build more muscle.",
    "The ledge may not build more muscle.",
    "So the ledge may build more, and I wouldn't bet my shoes on it.",
    "Hanging might strengthen your fingers.",
    "Hanging could increase your grip strength.",
    "Hanging seems to build grip.",
    "The trial suggests that hanging builds grip.",
    "Perhaps the ledge builds more.",
    "The ledge builds more, maybe.",
    "The ledge can build more muscle.",
    "Ledge raises may build muscle and strengthen tendons.",
    "I think hanging builds grip.",
    "The ledge makes no clear difference to growth.",
    "So two short hang sessions a week may make your fingers stronger than climbing alone.",
    "In adults who'd never lifted, the machine may build more pulling strength than a band.",
    "The evidence suggests the ledge builds more muscle.",
    "Hanging may result in more strength.",
    "Hanging may not result in more strength.",
    "The ledge might lead to more growth.",
    "The ledge builds more, but the evidence is thin.",
]


@pytest.mark.parametrize("text", MAY)
def test_a_word_of_possibility_is_the_second_step(text: str) -> None:
    assert step(text) == 2


UNCERTAIN = [
    "Finger rolls may add a little muscle to the forearm, though the evidence is one short trial.",
    "The ledge may build more, but the evidence is very uncertain.",
    "Nobody knows whether the ledge builds more.",
    "It's unclear whether hanging builds grip.",
    "We don't know if the ledge builds more.",
    "The ledge may build more, but that is one small trial.",
]


@pytest.mark.parametrize("text", UNCERTAIN)
def test_what_nobody_knows_is_the_first_step(text: str) -> None:
    assert step(text) == 1


NOTHING = [
    "It has been corrected since it came out.",
    "What it leaves open is whether the muscle grows.",
    "Muscle size is another matter.",
    "I wouldn't say it builds more.",
    "There's no evidence that the ledge builds more.",
    "That doesn't mean the ledge builds more.",
    "People say that squats wreck knees.",
    "A fair warning: on the very first one, two trials disagree.",
    "That's force and not growth: the study didn't measure muscle.",
    "There's a preprint on this, a paper that's online and not yet peer reviewed.",
    "That's one trial, and the wall that paid for it sells hangboards.",
    "Twenty-six people is a small trial, so hold that loosely.",
    "The study is smaller than the other one.",
    "The soleus sits under the gastrocnemius.",
    "With so few people, that gap may be chance.",
    "Nobody has tested whether hanging builds grip.",
]


@pytest.mark.parametrize("text", NOTHING)
def test_what_claims_no_effect_on_people_has_no_step(text: str) -> None:
    assert step(text) == 0


REPORTS = [
    "Runners trained on a ledge gain more muscle.",
    "In one trial of 38 climbers, hang time rose.",
    "The ledge side gained 1.6 millimetres of muscle, and the floor side 1.0.",
    "A small trial, with 24 runners over 8 weeks, found no clear difference.",
    "For 10 weeks, 38 trained runners raised one heel off a ledge and the other flat on the floor.",
    "In a lab study of 15 people, a small one, the foot bent back 14 degrees on the press and 20 off a ledge.",
    "In a study of 61 club runners, with no comparison group, their weights went from 30 kilos to 52 in a year.",
    "It gave 44 hill runners 8 weeks of this or of their usual gym work.",
    "Up a test hill the ledge group got 11 seconds faster, and the others 6.",
    "In a lab study of 15 adults, bending the knee that far made the big calf muscle 31 millimetres shorter.",
    "In a lab study of 18 runners, the band asked for 21 percent of their push, and a floor raise for 64.",
    "In one trial of 44 climbers, the ones who hung from an edge could hold 5.1 kilos more after eight weeks.",
    "The group that only climbed could hold 2 kilos more.",
    "In a trial of 26 club swimmers, stroke rate was the same after pulldowns and after band pulls.",
    "Both groups gained, and one of them got to stay by the sea.",
    "The trial found that the ledge built more.",
    "Hang time rose by about a fifth.",
    "Growth was greater on the ledge.",
    "Seated, the soleus gained 21 millilitres, and standing, 19: no clear difference.",
    "Their calves grew more.",
    "The ledge group got stronger.",
    "The trial showed more growth on the ledge.",
    "In the ledge trial the floor side still gained 1.0 millimetre in 10 weeks, so it may well do something.",
]


@pytest.mark.parametrize("text", REPORTS)
def test_a_report_in_the_past_is_no_step_and_is_a_report(text: str) -> None:
    assert step(text) == 0
    assert heard(text).report


@pytest.mark.parametrize(
    ("text", "negated"),
    [
        ("Hanging doesn't result in more strength.", True),
        ("The ledge is not better than the floor.", True),
        ("Not only does the ledge build muscle, it strengthens the tendon.", False),
        ("The ledge never fails to build muscle.", False),
        ("The ledge builds more muscle.", False),
    ],
)
def test_a_negation_is_understood(text: str, negated: bool) -> None:
    assert heard(text).statements[0].negated is negated


def test_a_sentence_known_to_state_an_effect_is_judged_without_a_word_for_it() -> None:
    assert heard("Band walks will armour your knees.").firmest is None
    top = heard("Band walks will armour your knees.", effect=True).firmest
    assert top is not None
    assert top.step == 4


def test_the_past_is_heard() -> None:
    assert is_past(take_apart("The foot bent back.", CUES), CUES)
    assert not is_past(take_apart("The foot bends back.", CUES), CUES)


def test_of_an_endless_sentence_the_first_clauses_are_judged() -> None:
    assert len(heard("it builds grip and " * 3000).statements) == MOST_CLAUSES


@pytest.mark.parametrize(
    "text",
    [
        "So if you're new to lifting, and you work nights, this probably makes you stronger.",
        "The best I have in our age group is a before-and-after study.",
    ],
)
def test_a_condition_and_the_name_of_a_design_state_nothing_firm(text: str) -> None:
    assert step(text) <= 3


@pytest.mark.parametrize(
    "text",
    [
        "That's a link, and it isn't a cause.",
        "It measures the signal, which is not the same thing as size.",
        "A fifth of a millimetre is thinner than a credit card.",
        "Nobody was told how much to do, so the two groups differ in other ways.",
    ],
)
def test_a_limit_and_a_comparison_for_the_ear_state_no_effect(text: str) -> None:
    assert heard(text, effect=True).firmest is None


@pytest.mark.parametrize(
    "text", ["If I had to bet, the incline builds more.", "It looks as if the incline builds more."]
)
def test_a_hedge_over_the_whole_sentence_holds_for_all_of_it(text: str) -> None:
    assert step(text) == 2


def test_the_study_that_is_named_first_is_no_verb() -> None:
    assert heard("In that study the incline grew the upper chest more.").report
