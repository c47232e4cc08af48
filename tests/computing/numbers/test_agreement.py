"""Numbers of a sentence are held against its sources': right and rounded ones pass, wrong and swapped ones are told."""

from __future__ import annotations

import pytest

from scriptkit.computing.hearing.claims import compile_cues, judge
from scriptkit.computing.numbers import agreement
from scriptkit.model import Judgement, Link, Segment, Sentence, Source, StudyFinding
from scriptkit.model.base import NOWHERE
from scriptkit.model.script import Paragraph
from scriptkit.reading.words import load

WORDS = load()
CUES = compile_cues(WORDS)

LEDGE = Source(
    id="ledge",
    title="Two ways to raise a heel",
    year="2021",
    population="trained runners",
    comparison="within-person",
    n=38,
    n_units=76,
    duration_weeks=10,
    findings={
        "growth": StudyFinding(
            id="growth",
            outcome="muscle growth",
            result="1.6 mm against 1.0 mm",
            values={"ledge": "1.6 mm", "floor": "1.0 mm"},
            effect=0.41,
            ci=(0.06, 0.76),
            baseline="19.4 mm",
            absolute="0.6 mm",
        ),
        "setup": StudyFinding(id="setup", outcome="set-up time", values={"ledge": "1 minute", "machine": "6 minutes"}),
    },
)
HANG = Source(
    id="hang",
    year="2022",
    population="climbers",
    n=38,
    duration_weeks=6,
    findings={
        "hang": StudyFinding(
            id="hang", outcome="hang time", result="22 percent", values={"before": "41 s", "after": "50 s"}
        )
    },
)
LOAD = Source(
    id="load",
    population="club runners",
    n=61,
    duration_weeks=52,
    findings={
        "load": StudyFinding(id="load", outcome="weight raised", values={"before": "30 kg", "after": "52 kg"}),
    },
)
BAND = Source(
    id="band",
    population="runners",
    n=18,
    findings={
        "push": StudyFinding(
            id="push",
            outcome="share of the hardest push",
            result="21 percent with the band, 64 percent in a floor raise",
            values={"band": "21 percent", "floor": "64 percent"},
        )
    },
)
TALLY = Source(
    id="tally",
    population="runners in two gyms",
    n=120,
    findings={"flat": StudyFinding(id="flat", values={"flat": "68 runners", "all": "120 runners"})},
)
GROUPS = Source(id="groups", n=44, n_per_group=22, duration_weeks=8, population="boulderers, 30 to 55")
REST = Source(
    id="rest", n=12, findings={"rest": StudyFinding(id="rest", result="pulse fell from 160 to 110 beats a minute")}
)
BARE = Source(id="bare", title="A paper without figures", findings={"growth": StudyFinding(id="growth")})
REGISTER = {one.id: one for one in (LEDGE, HANG, LOAD, BAND, TALLY, GROUPS, REST, BARE)}


def told(text: str, *links: str, opinion: bool = False) -> list[tuple[str, str]]:
    """Kind and words of the troubles of one sentence; a link is "source" or "source finding"."""
    made = tuple(Link(name, finding) for name, _, finding in (link.partition(" ") for link in links))
    sentence = Sentence(text, NOWHERE.place, links=made, opinion=opinion)
    segment = Segment("hang", "verdict", "", "", (Paragraph((sentence,)),), drafted=False, file="", at=NOWHERE)
    judged = judge(text, "", "verdict", CUES)
    found = agreement.troubles((segment,), {"hang": (judged,)}, REGISTER, WORDS)
    return [(one.kind, one.said) for one in found]


RIGHT = [
    ("For 10 weeks, 38 trained runners raised one heel off a ledge and the other flat on the floor.", "ledge"),
    ("The ledge side gained 1.6 millimetres of muscle, and the floor side 1.0.", "ledge growth"),
    ("The ledge side gained one point six millimetres, and the floor side one.", "ledge growth"),
    ("In the ledge trial the floor side still gained 1.0 millimetre in 10 weeks.", "ledge growth"),
    ("The ledge gained 0.6 millimetres more than the floor.", "ledge growth"),
    ("The floor gained 0.6 millimetres less than the ledge.", "ledge growth"),
    ("Off the ledge the muscle gained 60 percent more.", "ledge growth"),
    ("The ledge side gained 0.16 centimetres.", "ledge growth"),
    ("Muscle grew from 19.4 to 21.0 millimetres on the ledge.", "ledge growth"),
    ("That is about 8 percent of where they began.", "ledge growth"),
    ("It took ten weeks and seventy-six legs.", "ledge"),
    ("The standardised effect was 0.41, and the interval ran from 0.06 to 0.76.", "ledge growth"),
    ("Compared with the floor's 1.0 millimetres, the ledge gained 1.6.", "ledge growth"),
    ("The ledge and the floor gained 1.6 and 1.0 millimetres.", "ledge growth"),
    ("They gained 1.6 millimetres on the ledge against 1.0 on the floor.", "ledge growth"),
    ("In a 2021 trial of 38 runners, the ledge won.", "ledge"),
    ("One leg went off the ledge, and in the two conditions three sets were done.", "ledge growth"),
    ("They trained three times a week for ten weeks.", "ledge"),
    ("In one trial of 38 climbers, hang time rose by about a fifth.", "hang hang"),
    ("In one trial of 38 climbers, hang time rose by 22 percent.", "hang hang"),
    ("Hang time rose by 9 seconds, from 41 to 50.", "hang hang"),
    ("Hang time rose from 41 to 50 seconds in six weeks.", "hang hang"),
    ("They hung 1.2 times as long.", "hang hang"),
    ("About 40 climbers hung for a month and a half.", "hang hang"),
    ("Nearly 40 climbers took part.", "hang"),
    ("More than 30 climbers took part.", "hang"),
    ("Hang time rose by 20 to 25 percent.", "hang hang"),
    ("In a study of 61 club runners, their weights went from 30 kilos to 52 in a year.", "load load"),
    ("They went from 30 kilos to 52 in 12 months.", "load load"),
    ("They added 22 kilos in a year.", "load load"),
    ("Their weights rose by almost three quarters.", "load load"),
    ("Their weights rose by 73 percent.", "load load"),
    ("Sixty-one runners trained for 52 weeks.", "load"),
    ("The band asked for 21 percent of their hardest push, and a floor raise for 64.", "band push"),
    ("The band asked for about a fifth of their hardest push, the floor for almost two thirds.", "band push"),
    ("The floor raise asked for three times as much.", "band push"),
    ("The floor raise asked for 43 percentage points more.", "band push"),
    ("The band asked for a third of what the floor did.", "band push"),
    ("In a count of 120 runners in two gyms, 68 did theirs flat on the floor.", "tally flat"),
    ("57 percent of 120 runners did theirs flat.", "tally flat"),
    ("Fifty-two of the 120 did not.", "tally flat"),
    ("More than half of the 120 runners did theirs flat.", "tally flat"),
    ("It gave 44 hill runners 8 weeks of this.", "groups"),
    ("There were 22 in each group, and nobody dropped out.", "groups"),
    ("It followed 44 boulderers for two months, aged 30 to 55.", "groups"),
    ("Boulderers over forty were in it too.", "groups"),
    ("Their pulse fell from 160 to 110 beats a minute.", "rest rest"),
    ("A dozen people rested.", "rest"),
    ("That makes 82 people in two trials.", "hang groups"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "link"), RIGHT)
def test_a_right_number_is_passed_over(text: str, link: str) -> None:
    links = link.split() if link == "hang groups" else [link]
    assert told(text, *links) == []


WRONG = [
    ("For 12 weeks, 38 trained runners raised one heel.", "ledge", "12 weeks"),
    ("For 10 weeks, 83 trained runners raised one heel.", "ledge", "83 trained runners"),
    ("The ledge side gained 1.7 millimetres of muscle, and the floor side 1.0.", "ledge growth", "1.7 millimetres"),
    ("The ledge side gained 1.6 millimetres of muscle, and the floor side 1.1.", "ledge growth", "1.1"),
    ("The ledge gained 0.5 millimetres more than the floor.", "ledge growth", "0.5 millimetres"),
    ("Off the ledge the muscle gained 40 percent more.", "ledge growth", "40 percent"),
    ("The standardised effect was 0.51.", "ledge growth", "0.51"),
    ("In a 2012 trial of 38 runners, the ledge won.", "ledge", "2012"),
    ("In one trial of 39 climbers, hang time rose by about a fifth.", "hang hang", "39 climbers"),
    ("In one trial of 38 climbers, hang time rose by about a third.", "hang hang", "a third"),
    ("In one trial of 38 climbers, hang time rose by 32 percent.", "hang hang", "32 percent"),
    ("In one trial of 38 climbers, hang time doubled.", "hang hang", "doubled"),
    ("Hang time rose by 7 seconds.", "hang hang", "7 seconds"),
    ("Hang time rose from 41 to 60 seconds.", "hang hang", "60 seconds"),
    ("In one trial of 40 climbers, hang time rose.", "hang hang", "40 climbers"),
    ("Nearly 60 climbers took part.", "hang", "60 climbers"),
    ("More than 40 climbers took part.", "hang", "40 climbers"),
    ("Their weights went from 30 kilos to 62 in a year.", "load load", "62"),
    ("Their weights went from 20 kilos to 52 in a year.", "load load", "20 kilos"),
    ("They added 32 kilos in a year.", "load load", "32 kilos"),
    ("They trained for 18 months.", "load", "18 months"),
    ("The band asked for 31 percent of their hardest push, and a floor raise for 64.", "band push", "31 percent"),
    ("The band asked for 21 percent of their hardest push, and a floor raise for 46.", "band push", "46"),
    ("The floor raise asked for twice as much.", "band push", "twice"),
    ("In a count of 120 runners in two gyms, 86 did theirs flat on the floor.", "tally flat", "86"),
    ("75 percent of the runners did theirs flat.", "tally flat", "75 percent"),
    ("One in four did theirs flat.", "tally flat", "One"),
    ("It gave 46 hill boulderers 8 weeks of this.", "groups", "46 hill boulderers"),
    ("It gave 44 boulderers 9 weeks of this.", "groups", "9 weeks"),
    ("Their pulse fell from 160 to 100 beats a minute.", "rest rest", "100 beats"),
    ("Two dozen people rested.", "rest", "Two dozen people"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "link", "said"), WRONG)
def test_a_wrong_number_is_told(text: str, link: str, said: str) -> None:
    assert ("unknown", said) in told(text, link)


SWAPPED = [
    ("The ledge side gained 1.0 millimetres of muscle, and the floor side 1.6.", "ledge growth", "1.0 millimetres"),
    ("The ledge side gained 1.0 millimetres.", "ledge growth", "1.0 millimetres"),
    ("They gained 1.0 millimetres on the ledge against 1.6 on the floor.", "ledge growth", "1.0 millimetres"),
    ("The ledge gained 0.6 millimetres less than the floor.", "ledge growth", "0.6 millimetres"),
    ("The floor gained 60 percent more than the ledge.", "ledge growth", "60 percent"),
    ("Their weights went from 52 kilos to 30 in a year.", "load load", "52 kilos"),
    ("Hang time fell by 9 seconds.", "hang hang", "9 seconds"),
    ("Hang time dropped by 22 percent.", "hang hang", "22 percent"),
    ("The band asked for 64 percent of their hardest push, and a floor raise for 21.", "band push", "64 percent"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "link", "said"), SWAPPED)
def test_a_number_that_stands_with_another_ones_label_is_told(text: str, link: str, said: str) -> None:
    assert told(text, link) == [("swapped", said)]


OTHERWISE = [
    ("The ledge side gained 1.6 centimetres.", "ledge growth", "unit"),
    ("They added 22 percent in a year.", "load load", "unknown"),
    ("They started with 30 percent.", "load load", "unit"),
    ("They started with 30 pounds.", "load load", "unit"),
    ("They started with 66 pounds.", "load load", "converted"),
    ("The ledge side gained 2 millimetres.", "ledge growth", "rounding"),
    ("The floor raise asked for 43 percent more.", "band push", "points"),
    ("The walk to the box took 6 minutes.", "ledge growth", "finding"),
    ("They held each one for 4 seconds.", "ledge growth", "unheld"),
    ("The muscle gained 14 millimetres.", "bare growth", "unheld"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "link", "kind"), OTHERWISE)
def test_what_is_wrong_is_told_by_kind(text: str, link: str, kind: str) -> None:
    assert [one for one, _ in told(text, link)] == [kind]


def test_a_number_of_any_linked_source_is_right() -> None:
    text = "Over 10 weeks and over 6 weeks, hang time rose by 9 seconds and muscle by 1.6 millimetres."
    assert told(text, "ledge growth", "hang hang") == []
    assert told(text, "hang hang") != []


@pytest.mark.parametrize("text", ["Do three sets of 14 hangs.", "Would 14 climbers do it?"])
def test_a_command_and_a_question_are_not_judged(text: str) -> None:
    assert told(text, "hang hang") == []


def test_a_rating_in_an_opinion_is_no_number_of_the_source() -> None:
    assert told("I give it four out of five for this.", "hang hang", opinion=True) == []


def test_of_an_endless_sentence_the_first_numbers_are_judged() -> None:
    assert 0 < len(told("The ledge gained 7 millimetres and the floor 9 " * 2000, "ledge growth")) < 100


def test_a_source_that_is_not_there_has_no_numbers_to_hold_against() -> None:
    assert told("Hang time rose by 14 percent.", "gone") == []
    judged = (Judgement("claim", "plain", (), (), (14.0,)),)
    assert agreement.troubles((), {"hang": judged}, REGISTER, WORDS) == ()
