"""The ledger's rows say what the facts say: place, kind, what a sentence rests on, what is open, what was ruled."""

from __future__ import annotations

from itertools import pairwise
from typing import Any

import pytest

from scriptkit import keys
from scriptkit.model import Facts, Pair, Weight
from scriptkit.rendering import ledger
from scriptkit.session import Session
from tests.running import SMALLEST
from tests.scripts import Write

TEXT = """
In one trial hang time rose by 22 percent. [from mora-2022 hang] I think it is the one to start with. [opinion]

It costs nothing. [aside] A thick grip builds more strength than a thin one.

So it is an A for me. [opinion] Hang time doubled. [from nobody against]
"""
VERDICTS = """
verdicts:
  - {sentence: I think it is the one to start with., verdict: no claim, note: taste, initials: QN, date: 2026-03-01}
  - {sentence: In one trial hang time rose by 21 percent., verdict: verified, initials: AB}
"""
PAIR = Pair("mora-2022", "hang", "supports", 2, "moderate", ("a randomised trial: level 2", "38 people: one down"))
WEIGHT = Weight("activity", (PAIR,), "moderate", "low", ("one trial: moderate", "the author sets it to low"))


def rows(work: Session, **changes: object) -> list[dict[str, Any]]:
    assert work.facts is not None
    facts: Facts = work.facts._replace(**changes)  # type: ignore[arg-type]
    return [row for row in ledger.sentences(facts, work.found) if row["segment"] == "bar-hang"]


@pytest.fixture
def work(episode: Write) -> Session:
    outline = SMALLEST.replace(
        "result: 22 percent", "result: 22 percent, page: 7, quote: It rose., values: {gain: 9 s}"
    )
    files = {"outline.yaml": outline, "segments/bar-hang.md": TEXT, "verdicts.yaml": VERDICTS}
    return Session(episode(files))


def test_sentences_come_in_script_order_each_with_its_place_its_kind_and_its_key(work: Session) -> None:
    made = rows(work)
    assert [(row["line"], row["column"], row["text"].split()[0]) for row in made] == [
        (1, 1, "In"), (1, 66, "I"), (3, 1, "It"), (3, 27, "A"), (5, 1, "So"), (5, 33, "Hang"),
    ]  # fmt: skip
    assert {row["file"] for row in made} == {"segments/bar-hang.md"}
    assert all(row["key"] == keys.of(row["text"]) for row in made)
    assert all(one["start_s"] < other["start_s"] for one, other in pairwise(made))
    assert made[0]["kind"] == "claim"
    assert "numeric" in made[0]["flags"]
    assert (made[1]["kind"], made[1]["strength"], made[1]["marks"]) == ("opinion", None, ["opinion"])


def test_a_source_is_shown_with_what_it_says_and_one_that_is_not_there_as_such(work: Session) -> None:
    made = rows(work, weights={})
    assert made[0]["sources"] == ["mora-2022"]
    assert made[0]["evidence"] == [
        {
            "source": "mora-2022", "title": "Six weeks of timed hangs", "known": True, "finding": "hang",
            "stance": "supports", "level": None, "certainty": None, "why": [], "unnamed": [], "outcome": "hang time",
            "result": "22 percent", "values": {"gain": "9 s"}, "quote": "It rose.", "page": "7",
        }
    ]  # fmt: skip
    (gone,) = made[-1]["evidence"]
    assert (gone["source"], gone["known"], gone["stance"]) == ("nobody", False, "against")


def test_a_source_of_which_no_finding_is_named_says_which_it_has(episode: Write) -> None:
    outline = SMALLEST.replace("findings: {", "findings: {grip: {outcome: grip strength}, ")
    text = "For 6 weeks, 38 climbers took part. [from mora-2022]\n"
    (row,) = rows(Session(episode({"outline.yaml": outline, "segments/bar-hang.md": text})))
    assert [one["unnamed"] for one in row["evidence"]] == [["grip", "hang"]]


def test_level_and_certainty_come_with_their_steps(work: Session) -> None:
    assert work.facts is not None
    weights = {"bar-hang": (WEIGHT, None, None, None, None, None)}
    first, second, *_ = rows(work, weights=weights)
    assert (first["certainty"], first["computed"], first["why"]) == ("low", "moderate", list(WEIGHT.steps))
    (pair,) = first["evidence"]
    assert (pair["level"], pair["certainty"], pair["why"]) == (2, "moderate", list(PAIR.steps))
    assert (second["certainty"], second["computed"], second["why"]) == (None, None, [])


def test_each_finding_stands_at_the_sentence_it_is_about(work: Session) -> None:
    names = [{one["name"] for one in row["findings"]} for row in rows(work)]
    assert "claim-without-source" in names[3]
    assert "unknown-source" in names[5]
    assert all("claim-without-source" not in own for number, own in enumerate(names) if number != 3)


def test_it_is_told_how_each_sentence_stands(work: Session) -> None:
    made = rows(work)
    assert (made[0]["state"], made[0]["status"].split(";")[0]) == ("void", "void: verified by AB, in other words")
    assert (made[1]["state"], made[1]["status"]) == ("no-claim", "no claim by QN on 2026-03-01")
    assert (made[3]["state"], made[3]["status"]) == ("open", "needs a source")
    assert (made[4]["state"], made[4]["status"]) == ("opinion", "opinion")
    assert made[5]["status"].startswith("1 error to mend")
    assert made[1]["ruling"] == {
        "verdict": "no claim", "note": "taste", "page": "", "initials": "QN", "date": "2026-03-01",
    }  # fmt: skip


def test_a_verdict_is_asked_for_on_claims_that_the_author_calls_nothing_else(work: Session) -> None:
    made = rows(work)
    assert [row["to_verify"] for row in made] == [True, False, False, True, False, True]
    tally = ledger.tally(made)
    assert (tally["to_verify"], tally["verified"], tally["left"]) == (3, 0, 3)


def test_a_claim_that_nobody_is_to_verify_says_why(episode: Write) -> None:
    text = "It builds grip strength. [aside] Hanging builds stronger fingers. [from mora-2022]\n"
    made = rows(Session(episode({"outline.yaml": SMALLEST, "segments/bar-hang.md": text})))
    tally = ledger.tally(made)
    assert (tally["claims"], tally["to_verify"]) == (2, 1)
    assert tally["not_to_verify"] == [("the author's own asides", 1)]


def test_a_claim_that_may_go_without_a_source_says_that_nobody_backed_it_and_why(episode: Write) -> None:
    text = "It builds grip strength. <!-- allow: claim-without-source because every climber saw it -->\n"
    work = Session(episode({"outline.yaml": SMALLEST, "segments/bar-hang.md": text}))
    (row,) = rows(work)
    assert (row["state"], row["status"]) == ("allowed", "no source, allowed because every climber saw it")
    assert [one["name"] for one in row["allowed"]] == ["claim-without-source"]
    assert ledger.tally([row])["allowed"] == 1


def test_what_is_wrong_with_the_headline_is_told_apart_from_the_sentences(episode: Write) -> None:
    outline = "title: Hanging builds bigger forearms\nexercises: {hang: {name: Bar hang}}\n"
    work = Session(episode({"outline.yaml": outline, "segments/hang.md": "I like it. [opinion]\n"}))
    assert [one["name"] for one in ledger.of_headlines(work.found)] == ["headline-unbacked"]


def test_a_void_verdict_is_listed_with_what_is_said_now(work: Session) -> None:
    assert work.facts is not None
    (one,) = ledger.void(work.facts)
    assert (one["text"], one["told"]) == ("In one trial hang time rose by 21 percent.", "verified by AB")
    assert (one["now"], one["file"], one["line"]) == (
        "In one trial hang time rose by 22 percent.", "segments/bar-hang.md", 1,
    )  # fmt: skip


def test_claims_are_counted_as_they_stand(work: Session) -> None:
    tally = ledger.tally(rows(work, weights={"bar-hang": (WEIGHT, None, None, None, None, None)}))
    assert tally["bare"] == 1
    assert tally["open"] >= 2
    assert (tally["no-claim"], tally["verified"], tally["certainty"]) == (1, 0, [("low", 1)])


def test_a_drafted_sentence_gets_the_findings_of_its_line_in_the_outline(episode: Write) -> None:
    outline = SMALLEST.replace("source: mora-2022", "source: nobody-2020")
    made = rows(Session(episode({"outline.yaml": outline})))
    found = [(row["text"].split()[0], [one["name"] for one in row["findings"]]) for row in made if row["findings"]]
    assert ("In", "unknown-source") in [(word, name) for word, names in found for name in names]
