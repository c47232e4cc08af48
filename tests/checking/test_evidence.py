"""Every source, finding and caution that is named has to be there; the place is that of the name."""

from __future__ import annotations

from tests.scripts import GRIP, Write, found, helps, with_hang, worked_out


def test_an_unknown_source_is_told_at_its_word_wherever_it_stands(episode: Write) -> None:
    outline = GRIP.replace("grade: A-}", "grade: A-, claims: [{say: I like it., source: [mora-2022, {id: lnd-2019}]}]}")
    facts = with_hang(
        episode, "It grew. [from mora-2022, mora-2021]\n\n> It grew. It grew.\n>\n> [from\n> lind-2018]\n", outline
    )
    assert [place for place, _ in found(facts, "unknown-source")] == [
        "outline.yaml:3:89", "segments/hang.md:1:27", "segments/hang.md:6:3",
    ]  # fmt: skip
    assert helps(facts, "unknown-source")[0] == 'Did you mean "lind-2019"?'


def test_a_source_that_covers_three_sentences_is_told_once(episode: Write) -> None:
    assert len(found(with_hang(episode, "One. Two. Three.\n\n[from nosuch]"), "unknown-source")) == 1


def test_an_unknown_finding_is_told_with_those_that_are_there(episode: Write) -> None:
    facts = with_hang(episode, "It grew. [from mora-2022 grip]")
    assert found(facts, "unknown-finding") == [
        ("segments/hang.md:1:26", 'The source "mora-2022" has no finding "grip".')
    ]
    assert helps(facts, "unknown-finding") == ["Its findings: hang."]


def test_an_unknown_caution_is_told_in_the_outline_and_in_a_mark(episode: Write) -> None:
    outline = GRIP.replace("grade: A-}", "grade: A-, cautions: [maximal-laod]}")
    facts = with_hang(episode, "Careful now. [caution nosuch]\n\nAnd now.\n\n[caution other]", outline)
    assert [place for place, _ in found(facts, "unknown-caution")] == [
        "outline.yaml:3:48", "segments/hang.md:1:23", "segments/hang.md:5:10",
    ]  # fmt: skip


def test_a_rating_may_rest_on_opinion_or_on_a_source_that_is_there(episode: Write) -> None:
    outline = GRIP.replace(
        "exercises:", "checklist: {criteria: {long: {ask: Long?}, quick: {ask: Quick?}}}\n    exercises:"
    ).replace("grade: A-}", "ratings: {long: {score: 3, source: opinion}, quick: {score: 3, source: nosuch}}}")
    assert len(found(worked_out(episode({"outline.yaml": outline})), "unknown-source")) == 1


def test_a_use_figure_rests_on_a_source_that_is_there(episode: Write) -> None:
    outline = GRIP.replace("grade: A-}", "grade: A-, use: {share: 0.4, source: gym-tally}}")
    assert [place for place, _ in found(worked_out(episode({"outline.yaml": outline})), "unknown-source")] == [
        "outline.yaml:3:63"
    ]
