"""Finds what a sponsor's passage claims of health or performance, and whether listed backing can bear it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from functools import lru_cache
from typing import TYPE_CHECKING

from scriptkit.computing.safeguards.phrases import Phrases, Spot, spots
from scriptkit.computing.safeguards.watching import Lists
from scriptkit.computing.writing.likeness import plain, says_the_same
from scriptkit.model import Claim, Judgement, Risk, Segment, Sentence, Source, Sponsor
from scriptkit.places import place_of

if TYPE_CHECKING:
    from scriptkit.computing.safeguards.guarding import Script

ANIMALS = frozenset("mouse mice rat rats animal animals vitro cell cells rabbit rabbits".split())
ASKING = frozenset(("i", "asked"))
SOMEBODY = frozenset("i i'm i've me my you you're you'll your we us our people body bodies anyone anybody".split())
WATCHED = (
    "sponsor-never",
    "diagnoses",
    "own-use",
    "performance-promises",
    "performance",
    "ailments",
    "clinician-signs",
)
RANDOM = ("randomised", "randomized", "meta-analysis", "systematic review", "crossover", "cross-over")


def find(script: Script, paid: Sequence[Segment], lists: Lists) -> Iterator[Risk]:
    """Claims without backing, words that no paid passage may say, backing that cannot bear it or is lent."""
    sponsor = script.episode.sponsor
    line = plain(sponsor.disclosure) if sponsor else ""
    watched = Phrases(script.words, *WATCHED)
    for segment in paid:
        rows = zip(segment.sentences, script.plain[segment.id], script.judgements[segment.id], strict=True)
        for sentence, own, judged in rows:
            disclosing = judged.kind == "question" or own in line
            if not disclosing and ("health" in judged.flags or watched.may_be_in(own)):
                yield from _of_sentence(script, segment, sentence, own, judged, lists)
    if sponsor:
        yield from _listed(script, sponsor, {segment.id for segment in paid})


def _of_sentence(
    script: Script, segment: Segment, sentence: Sentence, own: str, judged: Judgement, lists: Lists
) -> Iterator[Risk]:
    said = spots(sentence.text)
    never = [*lists.holds("sponsor-never", said), *lists.holds("diagnoses", said)]
    use = lists.holds("own-use", said)
    if use:
        yield _risk("own-use", segment, sentence, said, use[0].first, use[0].last)
    if never:
        yield _risk("never-claimed", segment, sentence, said, never[0].first, never[0].last)
    elif not lists.holds("scope-errors", said) and (span := _effect(said, judged, lists)):
        reason = _unbacked(sentence, own, script)
        if reason:
            yield _risk("unbacked", segment, sentence, said, *span, reason)


def _risk(
    kind: str, segment: Segment, sentence: Sentence, said: Sequence[Spot], a: int, b: int, hint: str = ""
) -> Risk:
    words = sentence.text[said[a].start : said[b].end]
    return Risk(kind, segment.id, sentence.place_of(said[a].start), words, sentence.text, hint)


def _effect(said: Sequence[Spot], judged: Judgement, lists: Lists) -> tuple[int, int] | None:
    """The words that claim an effect on health or performance; what is denied and what defers claims none."""
    promised = lists.holds("performance-promises", said)
    ailments = [*lists.holds("ailments", said), *lists.holds("clinician-signs", said)]
    work = lists.holds("performance", said) if {"causal", "comparative"} & set(judged.flags) else []
    hits = sorted((*promised, *ailments, *work), key=lambda one: one.first)
    if lists.holds("referrals", said) or ASKING.issubset(spot.word for spot in said[:3]):
        return None  # "I asked them about injuries" claims none
    if hits:
        return hits[0].first, hits[0].last
    denials = bool(lists["denials"].find(said)) or any(spot.word.endswith("n't") for spot in said)
    flagged = "health" in judged.flags and judged.kind in ("claim", "opinion") and not denials
    return (0, len(said) - 1) if flagged and _of_a_body(said, lists) else None


def _of_a_body(said: Sequence[Spot], lists: Lists) -> bool:
    """Whether a sentence speaks of people or their bodies: "the bottle leaks" has a word of health and does not."""
    return any(spot.word in SOMEBODY for spot in said) or bool(lists["body-parts"].find(said))


def _unbacked(sentence: Sentence, own: str, script: Script) -> str:
    """Why nothing backs a sentence of the sponsor's passage, `own` in plain words; "" where backing is listed."""
    sponsor = script.episode.sponsor
    claims = sponsor.claims if sponsor else ()
    mine = [one for one in claims if one is sentence.claim or says_the_same(one.say, sentence.text) or _part(own, one)]
    if any(one.backing for one in mine):
        return ""  # whether that backing can bear it is told at the claim
    reasons = [cannot_bear(link.id, script.register) for link in sentence.links]
    if reasons:
        return "" if "" in reasons else reasons[0]
    return (
        "its claim in `sponsor:` lists no `backing:`"
        if mine
        else "no claim under `sponsor: claims:` lists a `backing:` for it"
    )


def _part(own: str, claim: Claim) -> bool:
    """Whether a sentence in plain words is one of several of a claim."""
    return own.count(" ") > 2 and own in _plain(str(claim.say))


@lru_cache(maxsize=4096)
def _plain(say: str) -> str:
    return plain(say)


def cannot_bear(name: str, register: Mapping[str, Source]) -> str:
    """Why a source cannot back a health claim for a product: it is no randomised trial in people; "" where it is."""
    source = register.get(str(name))
    if source is None:
        return f"{name} is not in the register"
    design = source.design.lower()
    if not any(one in design for one in RANDOM) or "non-random" in design:
        return f"{name} is no randomised trial" + (f" but {source.design}" if design else "")
    if not ANIMALS.isdisjoint(plain(f"{source.population} {source.title}").split()):
        return f"{name} looked at animals or cells"
    measures = [one.measure.lower() for one in source.findings.values() if one.measure]
    if measures and all("emg" in one or "electromyogra" in one for one in measures):
        return f"{name} measured muscle activity, which is no effect"
    if source.status == "retracted":
        return f"{name} was retracted"
    return ""


def _listed(script: Script, sponsor: Sponsor, ids: set[str]) -> Iterator[Risk]:
    """Backing of the outline that cannot bear a claim, and backing that the ranking rests on as well."""
    ranking = {
        str(link.id)
        for segment in script.segments
        if segment.id not in ids
        for sentence in segment.sentences
        for link in sentence.links
    }
    for claim in sponsor.claims:
        names = [*claim.backing, *(link.id for link in claim.source)]
        reasons = [cannot_bear(name, script.register) for name in claim.backing]
        place = claim.at.of("backing")
        if reasons and "" not in reasons:
            yield Risk("weak-backing", sponsor.segment, place, claim.backing[0], claim.say, reasons[0])
        for name in names:
            if str(name) in ranking:
                yield Risk("shared-backing", sponsor.segment, place_of(name, place), name, claim.say)
