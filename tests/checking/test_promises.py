"""A promise is made, and kept after it."""

from __future__ import annotations

from tests.scripts import Write, found, worked_out

TWO = "title: One\nexercises: {hang: {name: Bar hang}, row: {name: Row}}\n"
PROMISE = TWO + "promises: {swap: which one to drop}\n"
MADE = {"segments/opening.md": "I'll tell you which. [promise swap] [aside]"}


def places(facts: object, name: str) -> list[str]:
    return [place for place, _ in found(facts, name)]  # type: ignore[arg-type]


def test_a_promise_that_is_made_and_not_kept_is_told_at_its_mark(episode: Write) -> None:
    assert places(worked_out(episode({"outline.yaml": PROMISE, **MADE})), "promise-not-paid") == [
        "segments/opening.md:1:31"
    ]


def test_a_promise_the_stock_opening_makes_is_told_in_the_outline(episode: Write) -> None:
    assert places(worked_out(episode({"outline.yaml": PROMISE})), "promise-not-paid") == ["outline.yaml:3:18"]


def test_a_payoff_keeps_it_behind_the_promise_and_not_before(episode: Write) -> None:
    kept = "I'd drop the row. [payoff swap] [opinion]"
    assert (
        places(worked_out(episode({"outline.yaml": PROMISE, **MADE, "segments/close.md": kept})), "promise-not-paid")
        == []
    )
    early = {"segments/opening.md": kept, "segments/close.md": "I told you which. [promise swap] [aside]"}
    (told,) = found(worked_out(episode(early)), "promise-not-paid")
    assert "(its payoff comes before it)" in told[1]


def test_a_payoff_alone_in_its_paragraph_counts(episode: Write) -> None:
    files = {"outline.yaml": PROMISE, **MADE, "segments/close.md": "I'd drop the row. [opinion]\n\n[payoff swap]"}
    assert places(worked_out(episode(files)), "promise-not-paid") == []


def test_a_promise_nobody_makes_and_one_nobody_knows_are_told(episode: Write) -> None:
    facts = worked_out(episode({"outline.yaml": PROMISE, "segments/opening.md": "Hello. [promise swop] [aside]"}))
    assert places(facts, "promise-not-made") == ["outline.yaml:3:18"]
    assert places(facts, "unknown-promise") == ["segments/opening.md:1:17"]
