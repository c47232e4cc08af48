"""Checks of what a fact-checker ruled: what is unsupported, what should be changed, what nobody looked at yet."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.rules import Found, check
from scriptkit.model import Facts, Sentence, Verdict
from scriptkit.wording import quoted, signed


def _ruled(facts: Facts, word: str) -> Iterator[tuple[Sentence, Verdict]]:
    """The sentences with this verdict."""
    for segment in facts.segments if facts.ruled else ():
        for sentence, verdict in zip(segment.sentences, facts.ruled[segment.id], strict=True):
            if verdict is not None and verdict.verdict == word:
                yield sentence, verdict


def _why(one: Verdict) -> str:
    page = f", page {one.page}" if one.page else ""
    return f": {quoted(one.note, 200)}{page}" if one.note else page


@check("error", "record")
def verdict_unsupported(facts: Facts) -> Iterator[Found]:
    """A fact-checker found that the sources do not bear a sentence, and it is still there.

    The verdict stands in verdicts.yaml. It is void as soon as the sentence changes, and the new words wait for a
    verdict of their own.

    Rule: common practice of fact-checking: what was found unsupported is changed or cut before it is recorded.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources: {mora-2022: {title: Timed hangs, invented: true}}
        --- segments/hang.md
        In one trial, hang time rose. [from mora-2022]
        --- verdicts.yaml
        verdicts:
          - {sentence: "In one trial, hang time rose.", verdict: unsupported, initials: QN, date: 2026-03-02}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources: {mora-2022: {title: Timed hangs, invented: true}}
        --- segments/hang.md
        In one trial, hang time stayed the same. [from mora-2022]
        --- verdicts.yaml
        verdicts:
          - {sentence: "In one trial, hang time rose.", verdict: unsupported, initials: QN, date: 2026-03-02}
    """
    for sentence, one in _ruled(facts, "unsupported"):
        whose = signed("found unsupported", one.initials, one.date)
        yield (
            sentence.place,
            f"{quoted(sentence.text)} was {whose}{_why(one)}.",
            "Say what the source says, name one that bears it, or cut the sentence; other words need a new verdict.",
        )


@check("warning", "record")
def verdict_asks_for_change(facts: Facts) -> Iterator[Found]:
    """A fact-checker asked for other words, and the sentence still says the old ones.

    The verdict "changed" says that the sentence is right only once it is changed; its note says how. It is void as
    soon as the sentence changes.

    Rule: common practice of fact-checking: a change that was asked for is made or answered.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources: {mora-2022: {title: Timed hangs, invented: true}}
        --- segments/hang.md
        In one trial, hang time rose by half. [from mora-2022]
        --- verdicts.yaml
        verdicts:
          - {sentence: "In one trial, hang time rose by half.", verdict: changed, note: by a third, initials: QN}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources: {mora-2022: {title: Timed hangs, invented: true}}
        --- segments/hang.md
        In one trial, hang time rose by a third. [from mora-2022]
        --- verdicts.yaml
        verdicts:
          - {sentence: "In one trial, hang time rose by half.", verdict: changed, note: by a third, initials: QN}
    """
    for sentence, one in _ruled(facts, "changed"):
        whose = signed("A change", one.initials, one.date)
        yield (
            sentence.place,
            f"{whose} is asked for in {quoted(sentence.text)}{_why(one)}.",
            "Change the sentence, then have the new words looked at.",
        )


@check("note", "record")
def verdict_void(facts: Facts) -> Iterator[Found]:
    """A verdict is void: the sentence it was given on is not in the script any more.

    A sentence may move and keeps its verdict; with other words it needs a new one. The finding stands at the sentence
    that took its place, or, where nothing like it is said, at the verdict.

    Rule: ours; a verdict is about words, and other words were not looked at.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources: {mora-2022: {title: Timed hangs, invented: true}}
        --- segments/hang.md
        In two trials, hang time rose. [from mora-2022]
        --- verdicts.yaml
        verdicts:
          - {sentence: "In one trial, hang time rose.", verdict: verified, initials: QN, date: 2026-03-02}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources: {mora-2022: {title: Timed hangs, invented: true}}
        --- segments/hang.md
        In one trial, hang time rose. [from mora-2022]
        --- verdicts.yaml
        verdicts:
          - {sentence: "In one trial, hang time rose.", verdict: verified, initials: QN, date: 2026-03-02}
    """
    for one in facts.void_verdicts:
        old = f"{quoted(one.verdict.sentence)} ({signed(one.verdict.verdict, one.verdict.initials, one.verdict.date)})"
        if one.sentence:
            yield (
                one.sentence.place,
                f"The verdict on {old} is void: the sentence says something else now.",
                "Have the new words looked at: `scriptkit claims` makes the sheet for it.",
            )
        else:
            yield (
                one.verdict.at.of("sentence"),
                f"The verdict on {old} is void: that sentence is not in the script any more.",
                "Nothing has to be done. It counts again if the sentence comes back.",
            )


@check("warning", "publish")
def claims_not_verified(facts: Facts) -> Iterator[Found]:
    """A fact-checker has begun, and some claims have no verdict yet.

    It is told once, at the first of them, and only where there is a verdict of a fact-checker at all. The ledger
    (`scriptkit claims`) shows which ones are left.

    Rule: ours; a check that was begun should be over before an episode is published.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources: {mora-2022: {title: Timed hangs, invented: true}}
        --- segments/hang.md
        In one trial, hang time rose. [from mora-2022] In another trial, hang time fell. [from mora-2022]
        --- verdicts.yaml
        verdicts:
          - {sentence: "In one trial, hang time rose.", verdict: verified, initials: QN, date: 2026-03-02}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources: {mora-2022: {title: Timed hangs, invented: true}}
        --- segments/hang.md
        In one trial, hang time rose. [from mora-2022]
        --- verdicts.yaml
        verdicts:
          - {sentence: "In one trial, hang time rose.", verdict: verified, initials: QN, date: 2026-03-02}
    """
    if all(one.verdict == "no claim" for one in facts.verdicts.values()):
        return
    left: list[Sentence] = []
    every = 0
    for segment in facts.segments:
        rows = zip(segment.sentences, facts.judgements[segment.id], facts.ruled[segment.id], strict=True)
        for sentence, judgement, verdict in rows:
            owned = sentence.opinion or sentence.aside or sentence.cautions
            if judgement.kind == "claim" and judgement.sure and not owned:
                every += 1
                left += [] if verdict else [sentence]
    if left:
        yield (
            left[0].place,
            f"{len(left)} of {every} claims have no verdict yet; the first is {quoted(left[0].text)}.",
            "`scriptkit claims` shows which ones; have them looked at, or go without.",
        )
