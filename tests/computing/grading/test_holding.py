"""What is said of first places is held against the share of weightings behind it, at the edges too."""

from __future__ import annotations

import pytest

from scriptkit.computing.grading.ranking import AHEAD as HALF
from scriptkit.computing.grading.ranking import CLEAR as PLAIN
from scriptkit.computing.grading.ranking import may_say
from tests.ranked import AHEAD, BEHIND, CLEAR, LEVEL, kinds, says
from tests.scripts import Write


def test_the_edges_are_eighty_and_fifty_in_a_hundred() -> None:
    assert (PLAIN, HALF) == (0.8, 0.5)
    assert [may_say(share) for share in (1, 0.8, 0.79, 0.5, 0.49, 0)] == [
        "clear", "clear", "ahead", "ahead", "depends", "depends",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("text", "ratings", "kind"),
    [
        ("For me it's the clear winner. [opinion]", CLEAR, ""),
        ("For me it's the clear winner. [opinion]", AHEAD, "too-firm"),
        ("It's the best exercise here. [aside]", CLEAR, ""),
        ("It's the best exercise here. [aside]", AHEAD, "said-flat"),
        ("On my checklist it's the best exercise here. [opinion]", AHEAD, ""),
        ("By my weights it comes out ahead. [opinion]", AHEAD, ""),
        ("For me it comes out ahead. [opinion]", BEHIND, "not-first"),
        ("For me it's the clear winner. [opinion]", BEHIND, "not-first"),
        ("Who comes first depends on what you value. [opinion]", AHEAD, ""),
        ("Who comes first depends on what you value. [opinion]", CLEAR, "firm-though"),
    ],
)
def test_each_word_needs_its_share(episode: Write, text: str, ratings: tuple[int, ...], kind: str) -> None:
    assert kinds(says(episode, text, ratings)) == ([kind] if kind else [])


# three exercises of which the first is first for fewer than half of all weightings
THREE = """
    title: One
    checklist: {criteria: {a: {ask: A?, weight: 50}, b: {ask: B?, weight: 25}, c: {ask: C?, weight: 25}}}
    exercises:
      hang: {name: Bar hang, ratings: {a: 5, b: 3, c: 3}}
      row: {name: Ring row, ratings: {a: 3, b: 5, c: 3}}
      dip: {name: Ring dip, ratings: {a: 3, b: 3, c: 5}}
    """


def test_below_half_it_has_to_be_said_that_it_depends(episode: Write) -> None:
    from tests.scripts import worked_out

    ahead = "By my weights it comes out ahead. [opinion]"
    for text, kind in ((ahead, ["too-firm"]), (f"It depends on what you value. [opinion] {ahead}", [])):
        facts = worked_out(episode({"outline.yaml": THREE, "segments/hang.md": text}))
        assert facts.ranking is not None
        assert (facts.ranking.standings["hang"].first_all or 0) < HALF
        assert kinds(facts) == kind


def test_level_ones_are_tied_and_no_winners(episode: Write) -> None:
    assert kinds(says(episode, "For me it comes out ahead. [opinion]", LEVEL)) == ["tie-won"]
    assert kinds(says(episode, "For me the bar hang beats the ring row. [opinion]", LEVEL)) == ["tie-won"]
    assert kinds(says(episode, "For me the bar hang and the ring row are tied. [opinion]", LEVEL)) == []


def test_who_beats_whom_has_to_be_ahead(episode: Write) -> None:
    text = "For me the bar hang beats the ring row. [opinion]"
    assert kinds(says(episode, text, CLEAR)) == []
    assert kinds(says(episode, text, BEHIND)) == ["behind"]


def test_a_result_of_a_study_is_no_word_on_the_ranking(episode: Write) -> None:
    sources = "\n    sources: {mora: {title: Hangs, year: 2022, design: randomised trial, n: 60, invented: true}}\n"
    from tests.ranked import outline
    from tests.scripts import worked_out

    text = "In that trial the bar hang beat the ring row. [from mora] Here the bar hang beats the ring row. [from mora]"
    facts = worked_out(episode({"outline.yaml": outline(BEHIND, more=sources), "segments/hang.md": text}))
    assert kinds(facts) == []


def test_first_of_its_group_is_held_against_its_group(episode: Write) -> None:
    grouped = """
    title: One
    checklist: {criteria: {a: {ask: A?}, b: {ask: B?}}}
    exercises:
      hang: {name: Bar hang, group: Straight arm, ratings: {a: 5, b: 5}}
      row: {name: Ring row, group: Bent arm, ratings: {a: 4, b: 4}}
      dip: {name: Ring dip, group: Bent arm, ratings: {a: 2, b: 2}}
    """
    from tests.scripts import worked_out

    for text, kind in (
        ("Of the bent-arm ones it's the clear winner for me. [opinion]", []),
        ("It's the clear winner for me. [opinion]", ["not-first"]),
    ):
        assert kinds(worked_out(episode({"outline.yaml": grouped, "segments/row.md": text}))) == kind


def test_without_ratings_nothing_is_held(episode: Write) -> None:
    from tests.scripts import with_hang

    facts = with_hang(episode, "For me it's the clear winner. [opinion]")
    assert (kinds(facts), facts.ranking) == ([], None)


# what presenters say: two exercises, the bar hang well ahead, the ring row behind
WRONG = (
    "The ring row wins today. [opinion]",
    "The gold medal goes to the ring row. [opinion]",
    "Top spot: the ring row. [opinion]",
    "No contest: the ring row. [opinion]",
    "Sorry, bar hang: the winner is the ring row. [opinion]",
    "Unlike the bar hang, the ring row comes out on top. [opinion]",
    "The bar hang loses to the ring row. [opinion]",
    "The bar hang comes second, behind the ring row. [opinion]",
    "No doubt about it, I'd say the ring row beats the bar hang. [opinion]",
    "For me the ring row is a better pick than the bar hang. [opinion]",
    "Ring rows come out on top, if you ask me. [opinion]",
    "[screen: WINNER: Ring row] I like it. [opinion]",
)
HONEST = (
    "Unlike the ring row, the bar hang comes out on top. [opinion]",
    "After the ring row, the winner for me is the bar hang. [opinion]",
    "Sorry, ring row: the winner is the bar hang. [opinion]",
    "If you care most about speed, the ring row comes out on top. [opinion]",
    "With my weights the bar hang edges it, and with yours it may not. [opinion]",
    "I'd do the ring row ahead of the bar hang. [opinion]",
    "On set-up alone the ring row ranks above the bar hang. [opinion]",
    "For small rooms the ring row is better than the bar hang. [opinion]",
    "I used to say that the ring row beats the bar hang. [opinion]",
    "The ring row was the winner in last year's video. [opinion]",
    "To me the ring row wins some and loses some. [opinion]",
    "The bar hang beats the ring row, on my checklist. [opinion]",
)


@pytest.mark.parametrize("text", WRONG)
def test_a_wrong_order_is_noticed_however_it_is_said(episode: Write, text: str) -> None:
    assert set(kinds(says(episode, text, AHEAD, "recap"))) & {"not-first", "behind", "too-firm"}


@pytest.mark.parametrize("text", HONEST)
def test_an_honest_word_on_the_order_is_left_alone(episode: Write, text: str) -> None:
    assert set(kinds(says(episode, text, AHEAD, "recap"))) <= {"said-flat"}
