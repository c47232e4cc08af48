"""Each spoken sentence is a claim, an opinion, an instruction, a question or none of these, and says by which words."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scriptkit.computing.hearing.claims import Judgement, compile_cues, has_opinion_marker, judge
from scriptkit.reading.words import load

CUES = compile_cues(load())


def judged(sentence: str, previous: str = "", segment: str = "talk") -> Judgement:
    return judge(sentence, previous, segment, CUES)


@pytest.mark.parametrize(
    "sentence",
    [
        "The peroneals pull the foot outward.",
        "Nordics make the hamstrings longer.",
        "In one trial of 24 rowers, grip rose by a tenth.",
        "You don't need to squat below parallel to grow your quads.",
        "Nobody has tested this in older lifters.",
        "Keep the bar close, because a longer lever loads the spine.",
        "Open the grip and the forearms take over.",
        "I love this one, but it stresses the elbow more than a curl does.",
        "I suspect the tendon adapts later than the muscle.",
        "People say lunges ruin your knees.",
        "Did you know that the heart grows with training?",
        "Slow reps build more muscle, don't they?",
        "Every client I've coached got stronger on it.",
        "We have no trial on children.",
        "My guess is that the tendon adapts later.",
        "Beetroot raises endurance.",
        "It soaks up the heat.",
        "In my view it protects your knees from tears.",
    ],
)
def test_what_a_stranger_could_show_false_is_a_claim(sentence: str) -> None:
    assert judged(sentence).kind == "claim"


@pytest.mark.parametrize(
    "sentence",
    [
        "The Zercher squat is overrated.",
        "I'd rather do these on a quiet Sunday.",
        "It gets a B minus.",
        "My favourite is the sled.",
        "For me it's worth the hassle.",
        "I think it's boring.",
        "Sled pushes look rude and feel brilliant.",
        "To my eye this is the prettiest lift of the ten.",
    ],
)
def test_what_only_the_speaker_can_settle_is_an_opinion(sentence: str) -> None:
    assert judged(sentence).kind == "opinion"


@pytest.mark.parametrize(
    "sentence",
    [
        "Lower the bar slowly, then drive your feet into the floor.",
        "Don't rush the first rep.",
        "Elbows in, ribs down.",
        "You should feel this in the side of the hip.",
        "If it wobbles, take a lighter bell.",
        "Please share this with your training partner.",
        "Aim for three sets of eight.",
        "Do two sets and go home.",
        "Row with straight wrists.",
        "Set the bench so that your feet lie flat.",
        "A swollen calf is another matter: stop and call a doctor.",
        "Elbows where you'd rest them on a table.",
        "Type GRIP at the till.",
    ],
)
def test_what_tells_the_viewer_to_do_something_is_an_instruction(sentence: str) -> None:
    assert judged(sentence).kind == "instruction"


@pytest.mark.parametrize(
    "sentence", ["How deep should you go?", "Is it worth it, though?", "Priya wants to know whether belts help."]
)
def test_what_asks_is_a_question_a_reported_one_too(sentence: str) -> None:
    assert judged(sentence).kind == "question"


@pytest.mark.parametrize(
    "sentence",
    [
        "Welcome back.",
        "Let's get into it.",
        "Next up, the hip hinge.",
        "Quick story.",
        "I dropped a plate on my foot in 2015.",
        "",
        "!!!",
    ],
)
def test_greetings_roadmaps_and_episodes_of_ones_own_are_none_of_these(sentence: str) -> None:
    assert judged(sentence).kind == "other"


def test_a_comma_splice_does_not_hide_a_fact_in_a_command() -> None:
    assert judged("Brace hard, the diaphragm stiffens the trunk.").kind == "claim"
    assert judged("Brace hard, then breathe out.").kind == "instruction"


def test_a_word_that_is_a_verb_or_a_noun_is_read_by_what_follows() -> None:
    assert judged("Curl the bar to your chin.").kind == "instruction"
    assert judged("Curl strength predicts nothing about rowing.").kind == "claim"


def test_a_fragment_states_something_where_it_answers_the_sentence_before() -> None:
    answer = "About ninety degrees."
    assert judged(answer, previous="How far does the knee bend?").kind == "claim"
    assert judged(answer, previous="Let's go on.").kind == "other"


def test_a_bare_copula_is_small_talk_in_an_opening_and_a_statement_elsewhere() -> None:
    assert judged("It is a long one.", segment="opening").kind == "other"
    assert judged("It is a long one.", segment="talk").kind == "claim"


def test_the_triggers_are_the_words_that_decided_as_written_and_in_order() -> None:
    assert judged("Sleds, oddly, BUILD the calves.").triggers == ("BUILD",)
    assert judged("This is Overrated, and gets a C Plus.").triggers == ("Overrated", "C Plus")
    assert judged("Then Squeeze the bar and Pull it apart.").triggers == ("Squeeze the", "Pull it")


def test_a_word_of_health_is_among_the_triggers_whatever_the_kind() -> None:
    assert judged("It builds the calves after a sprain.").triggers == ("builds", "sprain")
    assert judged("I love it for a sore knee.").triggers == ("I love", "sore", "knee")


@pytest.mark.parametrize(
    "sentence", ["Sleds build the calves.", "I find it fun.", "Press the floor away.", "The evidence is thin."]
)
def test_whatever_needs_a_source_or_a_mark_says_why(sentence: str) -> None:
    assert judged(sentence).triggers


def test_strength_is_told_of_claims_alone() -> None:
    assert judged("It may help the ankle.").strength == "hedged"
    assert judged("I like it.").strength is None


def test_every_line_of_a_sponsors_passage_is_flagged_so() -> None:
    assert judged("The strap is two metres long.", segment="sponsor").flags == ("numeric", "sponsor")
    assert judged("The strap is two metres long.").flags == ("numeric",)


@pytest.mark.parametrize(
    "sentence",
    [
        "I think it earns its place.",
        "I still rather like it.",
        "In my view this is enough.",
        "For me it's a C.",
        "My pick is the step-up.",
        "I'd rather walk.",
        "It's good, if you ask me.",
        "I give the sled an A.",
    ],
)
def test_a_listener_can_hear_an_opinion(sentence: str) -> None:
    assert has_opinion_marker(sentence, CUES)


@pytest.mark.parametrize("sentence", ["It is overrated.", "This gets a C.", "I gave my coach a lift home."])
def test_a_listener_cannot_hear_an_opinion_that_sounds_like_fact(sentence: str) -> None:
    assert not has_opinion_marker(sentence, CUES)


def test_without_word_lists_nothing_breaks() -> None:
    bare = compile_cues({})
    assert judge("The soleus is a muscle.", "", "talk", bare).kind in ("claim", "other")


@given(st.text(max_size=200), st.text(max_size=40))
def test_any_text_is_judged_and_its_triggers_stand_in_it_in_order(sentence: str, previous: str) -> None:
    got = judged(sentence, previous)
    at = 0
    for trigger in got.triggers:
        at = sentence.index(trigger, at)
    assert got == judged(sentence, previous)
    assert bool(got.strength) == (got.kind == "claim")


@pytest.mark.parametrize("unit", ["and ", "a, ", "if ", "can grow ", "one hundred ", "9", "every one ", "grip of "])
def test_a_sentence_without_end_is_judged_all_the_same(unit: str) -> None:
    assert judged(unit * 20_000).kind


@pytest.mark.parametrize(
    "text", ["This prevents shoulder injuries.", "This fixes shoulder pain.", "That builds muscle."]
)
def test_an_effect_of_this_or_that_is_a_claim(text: str) -> None:
    assert judge(text, "", "verdict", CUES).kind == "claim"


@pytest.mark.parametrize(
    ("sentence", "kind"),
    [
        ("By tempo I mean the speed of the way down.", "other"),
        ("When I say warm-up, I mean five easy sets.", "other"),
        ("If it tingles, stop and have someone look at it.", "instruction"),
        ("The rest is a matter for your midwife.", "instruction"),
        ("Save for one bundle, the muscle crosses two joints.", "claim"),
        ("The trialists, to their credit, report the losses.", "claim"),
        ("Heave it and your traps bosh the whole load.", "claim"),
        ("The spurt peaks at about twelve.", "claim"),
        ("Somebody's moved the bins again.", "other"),
        ("Love that curve, hits the triceps harder than a kickback.", "claim"),
    ],
)
def test_what_a_whole_sentence_does_beside_its_clauses(sentence: str, kind: str) -> None:
    assert judged(sentence).kind == kind


@pytest.mark.parametrize("sentence", ["I found no trial of it.", "We know of no study in teenagers."])
def test_an_empty_search_is_heard_as_the_speakers_own(sentence: str) -> None:
    assert has_opinion_marker(sentence, CUES)
    assert judged(sentence).kind == "claim"


@pytest.mark.parametrize(
    ("sentence", "kind"),
    [
        ("Set-up time fell by 40 percent.", "claim"),
        ("Follow-through speed rose by a tenth.", "claim"),
        ("Set-up the bar at hip height.", "instruction"),
        ("Set up the bar and step back.", "instruction"),
        ("Nine out of ten people hinge wrong.", "claim"),
        ("Four out of five squats end too high.", "claim"),
        ("Nine times out of ten, people hinge wrong.", "claim"),
        ("I give it nine out of ten.", "opinion"),
        ("Nine out of ten goes to the hang.", "opinion"),
        ("Nine out of ten from me.", "opinion"),
    ],
)
def test_a_verb_in_a_name_commands_nothing_and_a_share_of_people_rates_nothing(sentence: str, kind: str) -> None:
    assert judged(sentence).kind == kind


@pytest.mark.parametrize(
    ("sentence", "kind"),
    [
        ("Skipping sharpens you up.", "claim"),
        ("Hanging unlocks your shoulders.", "claim"),
        ("Brisk walking bucks people up.", "claim"),
        ("Paddling uncorks them.", "claim"),
        ("Crawling reacquaints you with the floor.", "claim"),
        ("Kneeling rows.", "other"),
        ("Climbing shoes a size too small.", "other"),
        ("Hanging leg raises first, then you.", "other"),
        ("Something else for you.", "other"),
    ],
)
def test_what_is_done_does_something_to_people_in_words_that_no_list_knows(sentence: str, kind: str) -> None:
    assert judged(sentence).kind == kind
