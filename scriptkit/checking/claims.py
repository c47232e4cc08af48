"""Checks of what is claimed: a source, or words and mark of an opinion, behind every statement."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.rules import Found, check
from scriptkit.model import Claim, Facts, Judgement, Segment, Sentence
from scriptkit.wording import listed, quoted


@check("error", "record")
def claim_without_source(facts: Facts) -> Iterator[Found]:
    """A statement has neither a source nor an opinion mark.

    A stranger with a library could show it to be wrong, so it needs a study behind it, or the words and the mark of an
    opinion. The message names the words that make it a statement. `[aside]` marks a sentence that needs no source.
    An effect on pain,
    injury or disease needs its source whatever mark it has.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        Hanging from a bar strengthens your fingers more than any gripper.
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        I think a bar beats a gripper for me. [opinion]
    """
    for segment, sentence, judgement in _claims(facts):
        words = listed((quoted(one, 30) for one in judgement.triggers), 4)
        if not (sentence.opinion or sentence.aside or sentence.sponsor_says):
            yield (
                sentence.place,
                f"{quoted(sentence.text)} states a fact ({words}) and nothing stands behind it.",
                _OWN_WORDS if segment.kind == "sponsor" else _SOURCE_OR_OPINION,
            )
        elif "health" in judgement.flags:
            yield (
                sentence.place,
                f"{quoted(sentence.text)} states an effect on health ({words}), which its mark does not settle.",
                "Put `[from SOURCE]` behind it, or say it without the effect.",
            )


_SOURCE_OR_OPINION = (
    'Put `[from SOURCE]` behind it; or say it as your own view ("I think", "for me") and put `[opinion]` behind it.'
)
_OWN_WORDS = "Put `[sponsor says]` behind it if these are the sponsor's own words, or `[from SOURCE]`."


def _claims(facts: Facts) -> Iterator[tuple[Segment, Sentence, Judgement]]:
    """The statements that rest on no source, give no caution and are no part of the sponsor's disclosure."""
    for segment in facts.segments:
        for sentence, judgement in zip(segment.sentences, facts.judgements[segment.id], strict=True):
            open_ = judgement.kind == "claim" and not sentence.links and not sentence.cautions
            disclosing = segment.kind == "sponsor" and _is_disclosure(facts, sentence.text)
            if open_ and not disclosing and not _is_caution(facts, sentence.text):
                yield segment, sentence, judgement


def _is_caution(facts: Facts, text: str) -> bool:
    """Whether a sentence is a caution's line, or one of several sentences of it."""
    return any(caution.line and (text in caution.line or caution.line in text) for caution in facts.cautions.values())


def _is_disclosure(facts: Facts, text: str) -> bool:
    """Whether a sentence is the sponsor's disclosure, or one of several sentences of it."""
    sponsor = facts.episode.sponsor
    return bool(sponsor and text in sponsor.disclosure)


@check("note", "record")
def claim_not_said(facts: Facts) -> Iterator[Found]:
    """A claim of the outline is not said in the text of its segment.

    The text is of your own hand, none of its sentences says the same, and none has all the claim's sources behind it.
    Nothing is wrong with that; it is told because those sources then stand behind no sentence.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang, claims: [{say: I like a long hang best., opinion: true}]}}
        --- segments/hang.md
        I'd do it on a tree. [opinion]
    Good:
        title: One
        exercises: {hang: {name: Bar hang, claims: [{say: I like a long hang best., opinion: true}]}}
        --- segments/hang.md
        I like a long hang best.
    """
    for segment in facts.segments:
        for claim in segment.unsaid:
            if _in_other_words(segment, claim):
                continue
            yield (
                claim.at.of("say"),
                f"The claim {quoted(claim.say)} is not said in {segment.file}.",
                "Say it there in these words, put its sources behind a sentence that says it in others, or delete it.",
            )


def _in_other_words(segment: Segment, claim: Claim) -> bool:
    """Whether a sentence has all the sources of a claim behind it, and the findings that the claim names."""
    wanted = {(link.id, link.finding) for link in claim.source}
    return bool(wanted) and any(
        wanted <= {(link.id, finding) for link in sentence.links for finding in (link.finding, "")}
        for sentence in segment.sentences
    )


@check("error", "record")
def opinion_not_heard(facts: Facts) -> Iterator[Found]:
    """An opinion sounds like a fact.

    It is marked as opinion, and a listener does not see the mark: words such as "I think", "for me" or "my pick"
    have to say so.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        Hanging builds more strength than any gripper. [opinion]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        I think hanging builds more strength than a gripper. [opinion]
    """
    for segment in facts.segments:
        rows = zip(segment.sentences, facts.judgements[segment.id], facts.heard[segment.id], strict=True)
        for sentence, judgement, heard in rows:
            if sentence.opinion and not sentence.links and judgement.kind == "claim" and not heard:
                words = listed((quoted(one, 30) for one in judgement.triggers), 3)
                yield (
                    sentence.place,
                    f"{quoted(sentence.text)} is marked as opinion and sounds like fact ({words}).",
                    'Say that it is yours: "I think", "for me", "in my view".',
                )
