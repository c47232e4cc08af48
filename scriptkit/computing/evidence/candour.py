"""Finds what a script does not say of its sources: few people, a preprint, a correction, a journal's concern."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence

from scriptkit.computing.evidence import designs
from scriptkit.computing.evidence.appraising import CERTAINTIES, FEW, Appraisal
from scriptkit.computing.evidence.doubting import Case, Doubts, Talk
from scriptkit.model import Doubt, Judgement, Source

TO_BE_SAID = {"preprint": "preprint", "concern": "concern", "corrected": "correction"}
COUNTED = frozenset("randomised crossover controlled laboratory cohort case-control before-after".split())


def unsaid(cases: Sequence[Case], judgements: Mapping[str, Sequence[Judgement]], talk: Talk) -> Doubts:
    """What goes unsaid, at the first sentence of the segment, or of the script, that should say it."""
    found: dict[tuple[str, int], list[Doubt]] = {}
    told: set[tuple[str, str]] = set()
    counts = _Counts(cases, judgements, talk)
    for case in cases:
        for one in case.appraisals:
            if not one.known:
                continue
            for doubt, key in (*_status(case, one, talk), *_few(case, one, counts), *_design(one, talk), *_author(one)):
                if key not in told:
                    told.add(key)
                    found.setdefault((case.segment.id, case.number), []).append(doubt)
    return {key: tuple(every) for key, every in found.items()}


def _status(case: Case, one: Appraisal, talk: Talk) -> Iterator[tuple[Doubt, tuple[str, str]]]:
    """A preprint, a correction or a concern that the segment does not speak of."""
    source = one.source
    word = TO_BE_SAID.get(source.status)
    if word is None or word in talk.kinds(case.segment):
        return
    if word == "correction" and "correction" in talk.lexicon.kinds("evidence-said", source.note):
        return
    yield case.doubt(word, None, one.link.id), (case.segment.id, str(one.link.id))


def _few(case: Case, one: Appraisal, counts: _Counts) -> Iterator[tuple[Doubt, tuple[str, str]]]:
    """Few people, and no word of it in the whole script."""
    source, kind = one.source, one.design.kind
    group = designs.people_in_a_group(source, kind)
    if case.judgement.kind != "claim" or kind not in COUNTED or group is None or group >= FEW:
        return
    if not counts.are_said(str(one.link.id), source):
        people = f"{source.n} people" if source.n is not None else f"{group} people in a group"
        if source.n is not None and group != source.n:
            people += f", {group} in a group"
        people = "one person" if source.n == 1 else people
        yield case.doubt("few", None, one.link.id, people), ("few", str(one.link.id))


def _design(one: Appraisal, talk: Talk) -> Iterator[tuple[Doubt, tuple[str, str]]]:
    """A design in words that are not known, with the nearest that are."""
    source = one.source
    if source.design and not one.design.kind:
        from scriptkit.wording import did_you_mean

        near = did_you_mean(source.design, talk.lexicon.names("designs"))
        doubt = Doubt("design", source.at.of("design"), str(source.design), str(one.link.id), near)
        yield doubt, ("design", str(one.link.id))


def _author(one: Appraisal) -> Iterator[tuple[Doubt, tuple[str, str]]]:
    """The author's own certainty of a finding where it is higher than the study bears."""
    finding = one.finding
    if finding is None or not one.alone or finding.certainty not in CERTAINTIES:
        return
    above = CERTAINTIES.index(finding.certainty) - one.alone
    if above > 0:
        has = f"{CERTAINTIES[one.alone]} ({'; '.join(one.steps)})"
        kind = "far-above" if above > 1 else "step-above"
        doubt = Doubt(kind, finding.at.of("certainty"), str(finding.certainty), str(one.link.id), has)
        yield doubt, ("certainty", f"{one.link.id} {finding.id}")


class _Counts:
    """Whether the script says how many people a study had, where it speaks of that study."""

    def __init__(self, cases: Sequence[Case], judgements: Mapping[str, Sequence[Judgement]], talk: Talk) -> None:
        self.judgements, self.talk = judgements, talk
        self.about: dict[str, list[Case]] = {}
        for case in cases:
            for name in {str(link.id) for link in case.sentence.links}:
                self.about.setdefault(name, []).append(case)
        self._said: dict[str, bool] = {}

    def are_said(self, name: str, source: Source) -> bool:
        """In a sentence with the study behind it, in the one before or after, or on a card of that segment."""
        if name not in self._said:
            wanted = {float(one) for one in (source.n, source.n_per_group) if one is not None}
            about = self.about[name]
            self._said[name] = any(self._in_numbers(case, wanted) for case in about) or any(
                self._in_words(case, wanted) for case in about
            )
        return self._said[name]

    def _in_numbers(self, case: Case, wanted: set[float]) -> bool:
        near = self.judgements[case.segment.id][max(0, case.number - 1) : case.number + 2]
        return any(not wanted.isdisjoint(judgement.numbers) for judgement in near)

    def _in_words(self, case: Case, wanted: set[float]) -> bool:
        near = self.talk.sentences(case.segment)[max(0, case.number - 1) : case.number + 2]
        if any(self.talk.lexicon.kinds("evidence-said", sentence.text) & {"few", "short"} for sentence in near):
            return True
        if wanted == {1.0} and any(re.search(r"\b(?:one|a single|a)\b", sentence.text.lower()) for sentence in near):
            return True
        shown = self.talk.shown(case.segment)
        return any(re.search(rf"(?<![\d.]){one:g}(?![\d.])", shown) for one in wanted)
