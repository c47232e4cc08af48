"""Checks of what is claimed: a source, or words and mark of an opinion, behind every statement."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from scriptkit.checking.rules import Found, check
from scriptkit.model import Claim, Facts, Judgement, Segment, Sentence
from scriptkit.wording import listed, quoted


@check("error", "record")
def claim_without_source(facts: Facts) -> Iterator[Found]:
    """A statement has neither a source nor an opinion mark.

    A stranger with a library could show it to be wrong, so it needs a study behind it, or the words and the mark of an
    opinion. The message names the words that make it a statement. `[aside]` marks a sentence that needs no source, and
    so does the verdict "no claim" in verdicts.yaml, with its reason, for as long as the sentence stays the same. An
    effect on pain, injury or disease needs its source whatever mark it has, unless it is told as what others say or is
    a benefit denied; the tool tells that by its words and gives no medical advice. What a sponsor claims of health, a
    promise of cure and advice beside a sign of illness are checks of their own. A `[caution ...]` mark settles the
    warning, and no gain that is promised beside it.

    Rule: ours; a fact-checker's question, whether somebody else could show the sentence to be wrong.

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
    told = {(one.segment, one.sentence) for one in facts.risks if one.kind in _TOLD_THERE}
    for segment, sentence, judgement in _claims(facts):
        if (segment.id, sentence.text) in told or (segment.kind == "sponsor" and sentence.sponsor_says):
            continue  # what a sponsor may claim is checked with its backing, and what may hurt has its own finding
        words = _gave_away(judgement, 6 if _of_health(judgement) else 4)
        if judgement.sure and not _is_marked(sentence):
            yield (
                sentence.place,
                f"{quoted(sentence.text)} states a fact{words} and nothing stands behind it.",
                _OWN_WORDS if segment.kind == "sponsor" else _SOURCE_OR_OPINION,
            )
        elif _of_health(judgement) and judgement.asserted and _is_marked(sentence):
            yield (
                sentence.place,
                f"{quoted(sentence.text)} states an effect on health{words}, which its mark does not settle.",
                "Put `[from SOURCE]` behind it, or say it without the effect.",
            )


_TOLD_THERE = ("unbacked", "never-claimed", "never-say", "cure", "advice", "advice-in-emergency")
_SOURCE_OR_OPINION = (
    'Put `[from SOURCE]` behind it; or say it as your own view ("I think", "for me") and put `[opinion]` behind it. '
    "`[aside]` marks what needs no source."
)
_OWN_WORDS = "Put `[sponsor says]` behind it if these are the sponsor's own words, or `[from SOURCE]`."


@check("note", "record")
def may_be_a_claim(facts: Facts) -> Iterator[Found]:
    """A sentence may be a statement of fact, and may be a joke, a scene or a word between.

    It has the form of a statement and little of the matter: no effect, no figure, nothing of the body or of a study.
    If a stranger could show it to be wrong it needs what any claim needs; if not, it stays as it is.

    Rule: ours; half a doubt is told and stops nothing.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        Hotel doors have frames.
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        Hotel doors have frames. [aside]
    """
    for _, sentence, judgement in _claims(facts):
        if not (judgement.sure or _is_marked(sentence)):
            yield (
                sentence.place,
                f"{quoted(sentence.text)} may state a fact{_gave_away(judgement, 3)}.",
                "If it does, put `[from SOURCE]` or `[opinion]` behind it; if not, `[aside]` says so.",
            )


def _gave_away(judgement: Judgement, most: int) -> str:
    """The words that made a sentence a statement, in brackets behind a space; nothing where there are none."""
    words = listed((quoted(one, 30) for one in judgement.triggers), most)
    return f" ({words})" if words else ""


def _is_marked(sentence: Sentence) -> bool:
    """Whether the author marked a sentence as theirs, as beside the point, or as the sponsor's."""
    return sentence.opinion or sentence.aside or sentence.sponsor_says


def _of_health(judgement: Judgement) -> bool:
    return "health" in judgement.flags


def _claims(facts: Facts) -> Iterator[tuple[Segment, Sentence, Judgement]]:
    """The statements that rest on no source, are ruled to be claims, and no part of a caution or a disclosure."""
    for segment in facts.segments:
        ruled = facts.ruled.get(segment.id) or (None,) * len(facts.judgements[segment.id])
        rows = zip(segment.sentences, facts.judgements[segment.id], ruled, strict=True)
        for sentence, judgement, verdict in rows:
            # no ruling of an author's settles an effect on health
            settled = verdict and verdict.verdict == "no claim" and not _of_health(judgement)
            if judgement.kind != "claim" or sentence.links or settled:
                continue
            disclosing = segment.kind == "sponsor" and _is_disclosure(facts, sentence.text)
            if not disclosing and not _is_caution(facts, sentence.text):
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

    Rule: ours; nothing is lost in silence.

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
        linked = _linked(segment) if segment.unsaid else []
        for claim in segment.unsaid:
            if _in_other_words(linked, claim):
                continue
            yield (
                claim.at.of("say"),
                f"The claim {quoted(claim.say)} is not said in {segment.file}.",
                "Say it there in these words, put its sources behind a sentence that says it in others, or delete it.",
            )


def _linked(segment: Segment) -> list[frozenset[tuple[str, str]]]:
    """The sources behind each sentence that has some, with their findings and without; each set of them once."""
    found = (
        frozenset((str(link.id), finding) for link in sentence.links for finding in (str(link.finding), ""))
        for sentence in segment.sentences
        if sentence.links
    )
    return list(dict.fromkeys(found))


def _in_other_words(linked: Sequence[frozenset[tuple[str, str]]], claim: Claim) -> bool:
    """Whether a sentence has all the sources of a claim behind it, and the findings that the claim names."""
    wanted = {(str(link.id), str(link.finding)) for link in claim.source}
    return bool(wanted) and any(wanted <= one for one in linked)


@check("error", "record")
def opinion_not_heard(facts: Facts) -> Iterator[Found]:
    """An opinion sounds like a fact.

    It is marked as opinion, and a listener does not see the mark: words such as "I think", "for me" or "my pick"
    have to say so. An effect on health is no matter of opinion; it is told as a claim without its source.

    Rule: ours; common practice of broadcasters, that a viewer can tell comment from fact.

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
            stated = judgement.kind == "claim" and judgement.sure and not _of_health(judgement)
            if sentence.opinion and not sentence.links and stated and not heard:
                yield (
                    sentence.place,
                    f"{quoted(sentence.text)} is marked as opinion and sounds like fact{_gave_away(judgement, 3)}.",
                    (
                        'Say that it is yours: "I think", "for me"; of what you saw, "in my experience". '
                        "Or put `[aside]` in the place of `[opinion]`, where nothing needs a source."
                    ),
                )
