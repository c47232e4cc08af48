"""The way in says for each stage what is missing: what checks ask for by then, and what nobody has done."""

from __future__ import annotations

from scriptkit import build
from scriptkit.rendering import ledger, stages
from scriptkit.rendering.rows import Row
from tests.running import SMALLEST
from tests.scripts import Write, worked_out

OUTLINE = """
    title: One
    publish: 2026-03-02
    exercises: {hang: {name: Bar hang, grade: A}}
    order: [hang]
    """


def missing(episode: Write, files: dict[str, str], stage: str = "record") -> dict[str, Row]:
    facts = worked_out(episode(files))
    found = build.check(facts, stage)
    tally = ledger.tally(ledger.sentences(facts, found))
    return {row["stage"]: row for row in stages.stages(facts, found, stage, tally)}


def test_what_a_stage_asks_for_counts_before_it_is_reached(episode: Write) -> None:
    files = {"outline.yaml": OUTLINE, "segments/hang.md": "It builds a stronger grip."}
    for stage in ("draft", "record"):
        rows = missing(episode, files, stage)
        assert rows["record"]["open"] >= 1
        assert any("It builds a stronger grip." in one for one in rows["record"]["first"])
        assert not rows["record"]["ready"]


def test_claims_without_a_verdict_are_still_to_do(episode: Write) -> None:
    rows = missing(episode, {"outline.yaml": SMALLEST})
    assert "1 claim has no verdict of a fact-checker" in rows["record"]["todo"]


def test_a_text_of_the_tool_s_own_is_a_draft(episode: Write) -> None:
    assert missing(episode, {"outline.yaml": OUTLINE})["draft"]["todo"] == [
        "1 exercise is still in the words of the first draft"
    ]
    own = {"outline.yaml": OUTLINE, "segments/hang.md": "[shot FS side: hang] I like it: an A. [opinion]"}
    assert missing(episode, own)["draft"]["ready"]


def test_an_approval_that_is_not_given_is_still_to_do(episode: Write) -> None:
    outline = OUTLINE.replace("order: [hang]", "sponsor: {name: Q, disclosure: Ad. Q paid.}")
    rows = missing(episode, {"outline.yaml": outline})
    assert "the sponsor has not approved this text" in rows["record"]["todo"]


def test_publication_waits_for_the_recording_and_a_day(episode: Write) -> None:
    rows = missing(episode, {"outline.yaml": OUTLINE.replace("publish: 2026-03-02", "")})
    assert [one.partition(":")[0] for one in rows["publish"]["todo"]] == [
        "the recording is not held against the script", "the outline has no day of publication",
    ]  # fmt: skip
