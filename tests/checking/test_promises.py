"""A promise is made, and kept after it."""

from __future__ import annotations

from time import process_time

from scriptkit.checking import rules
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


def test_the_first_promise_begins_in_fifteen_seconds_by_the_clock(episode: Write) -> None:
    for seconds, late in ((14, False), (16, True)):
        opening = f"[hold {seconds}s: logo]\n\nI'll tell you which. [promise swap] [aside]"
        files = {"outline.yaml": PROMISE, "segments/opening.md": opening}
        told = found(worked_out(episode(files)), "promise-made-late")
        assert told == ([("segments/opening.md:3:31", "The first promise begins at 0:16.")] if late else [])


def test_a_promise_whose_mark_stands_alone_begins_with_the_sentence_before(episode: Write) -> None:
    words = "I'll tell you which one to drop, and before you ask, it isn't the one with the dog in it, no."
    opening = f"[hold 12s: logo]\n\n{words} [aside]\n\n[promise swap]"
    assert (
        places(worked_out(episode({"outline.yaml": PROMISE, "segments/opening.md": opening})), "promise-made-late")
        == []
    )


def test_one_promise_in_time_is_enough(episode: Write) -> None:
    two = TWO + "promises: {swap: which one to drop, add: which one to add}\n"
    opening = (
        "I'll tell you which. [promise swap] [aside]\n\n[hold 60s: logo]\n\nAnd what to add. [promise add] [aside]"
    )
    facts = worked_out(episode({"outline.yaml": two, "segments/opening.md": opening}))
    assert places(facts, "promise-made-late") == []


def test_a_promise_kept_only_where_somebody_pays_is_told(episode: Write) -> None:
    sponsor = PROMISE + "sponsor: {name: Q, disclosure: Ad. Q paid for this.}\n"
    paid = {"segments/sponsor.md": "Ad. Q paid for this. [aside] I'd drop the row. [payoff swap] [opinion]"}
    kept = {"segments/close.md": "So I'd drop the row. [payoff swap] [opinion]"}
    assert places(worked_out(episode({"outline.yaml": sponsor, **MADE, **paid})), "payoff-in-sponsor") == [
        "segments/sponsor.md:1:56"
    ]
    assert places(worked_out(episode({"outline.yaml": sponsor, **MADE, **paid, **kept})), "payoff-in-sponsor") == []


def test_three_thousand_promises_take_no_time(episode: Write) -> None:
    names = [f"p{number}" for number in range(3000)]
    outline = TWO + "promises:\n" + "".join(f"  {name}: a thing\n" for name in names)
    text = "\n\n".join(f"You'll hear it. [promise {name}] [aside]" for name in names)
    facts = worked_out(episode({"outline.yaml": outline, "segments/opening.md": text}))
    started = process_time()
    assert len(places(facts, "promise-not-paid")) == rules.MOST_IN_A_TEXT + 1
    assert process_time() - started < 5
