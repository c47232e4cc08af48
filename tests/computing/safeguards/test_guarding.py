"""What guards a viewer is gathered for every episode, and what an episode lacks is not looked for."""

from __future__ import annotations

from tests.scripts import Write, with_hang, worked_out


def test_an_episode_with_nothing_to_guard_gives_nothing(episode: Write) -> None:
    facts = with_hang(episode, "I like it. [opinion]")
    assert (facts.passages, facts.uncovered_markets, facts.sponsor_hash, facts.risks) == ((), (), "", ())


def test_the_sponsor_and_the_markets_come_with_a_passage(episode: Write) -> None:
    outline = (
        "title: One\nmarkets: [UK, EU]\nexercises: {hang: {name: Bar hang}}\n"
        "sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid for this part.}\n"
    )
    facts = worked_out(episode({"outline.yaml": outline}))
    assert [one.segment for one in facts.passages] == ["sponsor"]
    assert facts.uncovered_markets == ("EU",)
    assert len(facts.sponsor_hash) == 12


def test_marks_and_comments_do_not_change_the_text_that_a_sponsor_approves(episode: Write) -> None:
    outline = (
        "title: One\nexercises: {hang: {name: Bar hang}}\nsponsor: {name: Quennick Socks, disclosure: Ad. They paid.}\n"
    )
    kept = worked_out(episode({"outline.yaml": outline, "segments/sponsor.md": "Ad. They paid. [aside]"}))
    text = "[shot CU: socks] Ad. They paid.\n\n<!-- ask them -->\n"
    again = worked_out(episode({"outline.yaml": outline, "segments/sponsor.md": text}))
    assert kept.sponsor_hash == again.sponsor_hash != ""


def test_a_fault_that_breaks_two_rules_is_told_once(episode: Write) -> None:
    outline = (
        "title: One\nexercises: {hang: {name: Bar hang}}\n"
        "sponsor: {name: Quennick Socks, disclosure: Ad. They paid., never_say: [prevents injury]}\n"
    )
    for text, kind in (("It prevents injury.", "never-say"), ("It prevents shin splints.", "never-claimed")):
        facts = worked_out(episode({"outline.yaml": outline, "segments/sponsor.md": f"Ad. They paid. {text}"}))
        assert [risk.kind for risk in facts.risks] == [kind]
