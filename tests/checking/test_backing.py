"""A sponsor's claims of health and performance are told with why nothing backs them."""

from __future__ import annotations

from scriptkit import build
from tests.scripts import Write, found, worked_out

OUTLINE = """
    title: One
    exercises: {hang: {name: Bar hang}}
    sponsor:
      name: Quennick Socks
      disclosure: Ad. Quennick Socks paid.
      claims: [{say: "In a trial of 60 runners, they had fewer blisters.", sponsor_wording: true, backing: [BACKING]}]
    sources:
      sock-trial: {title: Socks, year: 2024, design: randomised trial, n: 60, invented: true}
      sock-mice: {title: Socks, year: 2024, design: randomised trial, population: mice, n: 60, invented: true}
    """


def told(episode: Write, text: str, backing: str = "sock-trial") -> list[tuple[str, str]]:
    text = f"Ad. Quennick Socks paid.\n\n{text} [sponsor says]"
    facts = worked_out(episode({"outline.yaml": OUTLINE.replace("BACKING", backing), "segments/sponsor.md": text}))
    names = ("sponsor-claim-unbacked", "sponsor-claim-forbidden", "backing-too-weak", "backing-shared", "own-use-said")
    return [one for one in found(facts) if one[0] in names]


def test_a_claim_is_told_at_the_words_that_make_it_one(episode: Write) -> None:
    assert told(episode, "The wool is fine, and it boosts your recovery.") == [
        ("sponsor-claim-unbacked", "segments/sponsor.md:3:38")
    ]


def test_a_listed_claim_with_its_trial_passes_and_with_mice_does_not(episode: Write) -> None:
    claim = "In a trial of 60 runners, they had fewer blisters."
    assert told(episode, claim) == []
    assert told(episode, claim, "sock-mice") == [("backing-too-weak", "outline.yaml:6:104")]


def test_words_that_need_proof_of_their_own_are_told_whatever_is_listed(episode: Write) -> None:
    assert [name for name, _ in told(episode, "It's clinically proven.")] == ["sponsor-claim-forbidden"]


def test_a_source_of_the_ranking_is_not_lent(episode: Write) -> None:
    episode({"segments/hang.md": "In a trial of 60 runners, socks helped. [from sock-trial]"})
    assert "backing-shared" in [name for name, _ in told(episode, "Grey.")]


def test_allowing_such_a_claim_leaves_it_in_sight(episode: Write) -> None:
    text = "Ad. Quennick Socks paid.\n\nIt boosts your recovery. [sponsor says]\n"
    text += "<!-- allow: sponsor-claim-unbacked because they asked -->"
    facts = worked_out(episode({"outline.yaml": OUTLINE.replace("BACKING", "sock-trial"), "segments/sponsor.md": text}))
    (one,) = (one for one in build.check(facts, "record") if one.name == "sponsor-claim-unbacked")
    assert (one.allowed, one.protects) == ("they asked", True)
