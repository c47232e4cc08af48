"""Weighs what a claim stands on: the level of each pair of study and claim, and the certainty of the claim."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from scriptkit.computing.evidence import appraising, doubting, outcomes
from scriptkit.computing.evidence.appraising import CERTAINTIES, ENOUGH, Appraisal, Ladder, Said, supporters
from scriptkit.computing.evidence.designs import HIGH
from scriptkit.computing.evidence.lexicon import Lexicon
from scriptkit.model import Claim, Episode, Judgement, Link, Pair, Segment, Sentence, Source, Weight

Weights = dict[str, tuple[Weight | None, ...]]


def weigh(
    segments: Sequence[Segment],
    judgements: Mapping[str, tuple[Judgement, ...]],
    register: Mapping[str, Source],
    episode: Episode,
    words: Mapping[str, tuple[str, ...]],
) -> Weights:
    """By segment, one a sentence; None where no source is linked."""
    scales = Scales(register, episode, Lexicon(words))
    weighed: dict[tuple[str, int], Weight] = {}
    cases: list[doubting.Case] = []
    for segment in segments:
        for number, sentence in enumerate(segment.sentences):
            if sentence.links:
                judgement = judgements[segment.id][number]
                weighed[segment.id, number], appraisals, said = scales.weigh(sentence, judgement)
                cases.append(doubting.Case(segment, number, sentence, judgement, said, appraisals))
    for key, doubts in doubting.find(cases, judgements, scales.lexicon, episode, register).items():
        weighed[key] = weighed[key]._replace(doubts=doubts)
    return {one.id: tuple(weighed.get((one.id, number)) for number in range(len(one.sentences))) for one in segments}


class Scales:
    """Weighs the sentences of one episode."""

    def __init__(self, register: Mapping[str, Source], episode: Episode, lexicon: Lexicon) -> None:
        self.register, self.lexicon = register, lexicon
        self.for_trained = outcomes.says_of_trained(episode.audience, lexicon) is not None

    def weigh(self, sentence: Sentence, judgement: Judgement) -> tuple[Weight, tuple[Appraisal, ...], Said]:
        """The weight of a sentence, with the appraisal of each of its sources and what it says."""
        text, lexicon = sentence.text, self.lexicon
        words = outcomes.kind_of(text, lexicon)
        studies = [
            appraising.study(link, self.register.get(link.id), words, lexicon) for link in _once_each(sentence.links)
        ]
        denies = "activity" in lexicon.kinds("evidence-said", text)  # "that's force and not growth"
        outcome = outcomes.claimed("" if denies else words, [one.tested for one in studies])
        of_new = "untrained" in lexicon.kinds("people-kinds", text)  # "in beginners": it is said of no one else
        trained = not of_new and (self.for_trained or outcomes.says_of_trained(text, lexicon) is not None)
        said = Said(
            outcome,
            outcomes.is_effect(outcome, judgement),
            trained,
            "comparative" in judgement.flags,
            outcomes.says_more(text, lexicon),
        )
        appraisals = tuple(appraising.appraise(one, said, lexicon) for one in studies)
        rank, steps = together(appraisals)
        counted, more = _as_the_author_says(rank, sentence.claim)
        pairs = tuple(_pair(one) for one in appraisals)
        return Weight(outcome, pairs, CERTAINTIES[rank], CERTAINTIES[counted], (*steps, *more)), appraisals, said


def _once_each(links: Sequence[Link]) -> list[Link]:
    """Links without repeats; one that only names a source is left out where another names a finding of it."""
    told = {link.id for link in links if link.finding}
    kept = {
        (link.id, link.finding, link.stance): link for link in links if link.finding or link.id not in told
    }  # fmt: skip
    return list(kept.values())


def _pair(one: Appraisal) -> Pair:
    finding = str(one.finding.id or one.link.finding) if one.finding else str(one.link.finding)
    return Pair(str(one.link.id), finding, str(one.link.stance), one.level, CERTAINTIES[one.rank], one.steps)


def together(appraisals: Sequence[Appraisal]) -> tuple[int, tuple[str, ...]]:
    """The rank that all sources of a sentence give it, and the steps to it."""
    for_it = [one for one in supporters(appraisals) if one.rank]
    if not for_it:
        return _nothing(appraisals)
    best = max(for_it, key=lambda one: (one.rank, -(one.level or 9)))
    if len(appraisals) == 1 and best.link.stance != "mixed":
        return best.rank, best.steps
    ladder = Ladder(best.rank, f"{best.link.id} alone gives {CERTAINTIES[best.rank]}")
    alike = {one.link.id: one for one in for_it if one.level == best.level}
    people = sum(one.source.n or 0 for one in alike.values())
    if best.few and len(alike) > 1 and people >= ENOUGH and ladder.rank < HIGH:
        ladder.rank += 1
        ladder.steps.append(f"{people} people in all, no longer fewer than {ENOUGH}: that step is taken back")
    ladder.down(int(_disagree(appraisals, best)), "the sources do not agree")
    return ladder.rank, tuple(ladder.steps)


def _nothing(appraisals: Sequence[Appraisal]) -> tuple[int, tuple[str, ...]]:
    """Nothing can be said; of retracted work alone, that it is very low."""
    steps = tuple(f"{one.link.id}: {step}" for one in appraisals for step in one.steps)
    gone = bool(appraisals) and all(one.source.status == "retracted" for one in appraisals)
    return int(gone), steps


def _disagree(appraisals: Sequence[Appraisal], best: Appraisal) -> bool:
    """Whether a source of equal or better level points elsewhere than the best one."""
    if best.link.stance == "mixed":
        return True
    return any(
        one.link.stance != best.link.stance and one.level is not None and one.level <= (best.level or 5)
        for one in appraisals
    )


def _as_the_author_says(rank: int, claim: Claim | None) -> tuple[int, tuple[str, ...]]:
    """What counts after the author's own judgement: lower always, higher with a reason, any where nothing was said."""
    if claim is None or not claim.certainty:
        return rank, ()
    theirs = CERTAINTIES.index(claim.certainty)
    if theirs == rank:
        return rank, ()
    if theirs < rank:
        return theirs, (f"the author calls it {claim.certainty}: so it is",)
    if claim.reason:
        return theirs, (f"the author calls it {claim.certainty}, because: {claim.reason}",)
    if not rank:
        return theirs, (f"the author calls it {claim.certainty}, and nothing could be worked out",)
    return rank, (f"the author calls it {claim.certainty} and gives no reason: it stays {CERTAINTIES[rank]}",)
