"""The certainty of a claim from all its sources, and after the author's own judgement."""

from __future__ import annotations

from tests.scripts import GRIP, Write, with_hang
from tests.weighed import HEAD, TRIAL, study, told, weight

LARGE = study("lind", "design: randomised trial, n: 350", grip="outcome: grip strength")
COHORT = study("halm", "design: cohort, n: 500", grip="outcome: grip strength")
SAYS = "Hangs make your grip stronger."


def test_only_sentences_with_sources_are_weighed(episode: Write) -> None:
    facts = told(episode, f"Hello. [aside] {SAYS} [from mora grip]", TRIAL)
    assert [one is None for one in facts.weights["hang"]] == [True, False]
    assert set(with_hang(episode, "Hello. [aside]", GRIP).weights["hang"]) == {None}


def test_one_source_gives_its_own_steps(episode: Write) -> None:
    found = weight(episode, f"{SAYS} [from mora grip]", TRIAL)
    assert (found.outcome, found.computed, found.steps) == ("strength", "moderate", found.pairs[0].steps)


def test_the_best_source_counts_and_people_add_up(episode: Write) -> None:
    found = weight(episode, f"{SAYS} [from mora grip, lind grip]", TRIAL + LARGE)
    assert found.computed == "high"
    assert found.steps[-1] == "410 people in all, no longer fewer than 400: that step is taken back"


def test_sources_that_disagree_are_a_step_down(episode: Write) -> None:
    found = weight(episode, f"{SAYS} [from mora grip, lind grip against]", TRIAL + LARGE)
    assert (found.computed, found.steps[-1]) == ("low", "the sources do not agree: one step down")


def test_a_weaker_source_that_disagrees_takes_nothing_down(episode: Write) -> None:
    assert weight(episode, f"{SAYS} [from mora grip, halm grip against]", TRIAL + COHORT).computed == "moderate"


def test_a_source_named_twice_counts_once(episode: Write) -> None:
    assert len(weight(episode, f"{SAYS} [from mora, mora grip]", TRIAL).pairs) == 1


def test_a_source_that_is_not_there_gives_nothing(episode: Write) -> None:
    found = weight(episode, f"{SAYS} [from nobody]", TRIAL)
    assert (found.pairs[0].level, found.certainty) == (None, "")


def test_retracted_work_alone_gives_very_low(episode: Write) -> None:
    gone = study("s", "design: randomised trial, n: 500, status: retracted", a="outcome: grip strength")
    assert weight(episode, f"{SAYS} [from s a]", gone).computed == "very low"
    assert weight(episode, f"{SAYS} [from s a, mora grip]", gone + TRIAL).computed == "moderate"


def by_author(certainty: str) -> str:
    claim = f'say: "{SAYS}", source: {{id: mora, finding: grip}}, {certainty}'
    return f"title: One\nexercises: {{hang: {{name: Bar hang, claims: [{{{claim}}}]}}}}\n"


def test_the_author_may_set_it_lower(episode: Write) -> None:
    found = weight(episode, SAYS, TRIAL, by_author("certainty: very low"))
    assert (found.computed, found.certainty) == ("moderate", "very low")


def test_the_author_may_set_it_higher_with_a_reason(episode: Write) -> None:
    assert weight(episode, SAYS, TRIAL, by_author("certainty: high")).certainty == "moderate"
    reasoned = weight(episode, SAYS, TRIAL, by_author("certainty: high, reason: the effect is huge"))
    assert (reasoned.certainty, reasoned.steps[-1]) == ("high", "the author calls it high, because: the effect is huge")


def test_the_author_may_set_what_cannot_be_worked_out(episode: Write) -> None:
    bare = study("mora", "year: 2020", grip="outcome: grip strength")
    assert weight(episode, SAYS, bare, by_author("certainty: low")).certainty == "low"


def test_a_sentence_knows_the_claim_it_says(episode: Write) -> None:
    own = told(episode, f"{SAYS} I like it.", TRIAL, by_author("certainty: low"))
    assert [one.claim is not None for one in own.segments[1].sentences] == [True, False]


def test_hundreds_of_sources_take_no_time(episode: Write) -> None:
    many = "".join(study(f"s{i}", "design: RCT, n: 20", a="outcome: grip strength") for i in range(300))
    text = "\n".join(f"{SAYS} [from s{i} a, s{(i + 7) % 300} a against]" for i in range(300))
    assert len(told(episode, text, many, HEAD).weights["hang"]) == 300


def test_who_it_is_said_of_may_stand_in_the_sentence(episode: Write) -> None:
    new = study("new", "design: randomised trial, n: 90, training: untrained", a="outcome: grip strength")
    for_lifters = "audience: lifters\n" + HEAD
    assert weight(episode, f"{SAYS} [from new a]", new, for_lifters).computed == "low"
    assert weight(episode, "Hangs make beginners stronger. [from new a]", new, for_lifters).computed == "moderate"


def test_more_is_not_borne_by_an_interval_around_none(episode: Write) -> None:
    even = study("even", "design: randomised trial, n: 640", a="outcome: grip strength, effect: 0.0, ci: [-0.1, 0.1]")
    assert weight(episode, "Hangs build more strength than rows. [from even a]", even).computed == "low"
    assert weight(episode, "Hangs build no more strength than rows. [from even a]", even).computed == "high"


def test_what_starts_low_goes_lower_only_for_a_handful_of_people(episode: Write) -> None:
    for people, certainty in ((210, "low"), (61, "very low")):
        source = study("s", f"design: controlled trial, n: {people}", a="outcome: grip strength")
        assert weight(episode, f"{SAYS} [from s a]", source).computed == certainty
