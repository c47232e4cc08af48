"""Finds sources that disagree with a sentence, or were measured for the same and left out, and are not mentioned."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import islice
from typing import NamedTuple

from scriptkit.computing.evidence import appraising
from scriptkit.computing.evidence.doubting import Case, Doubts, Talk
from scriptkit.computing.writing.likeness import plain
from scriptkit.model import Doubt, Episode, Link, Source
from scriptkit.wording import listed

MOST_AGAINST = 100  # sources against one exercise that are looked at
MOST_TOLD = 3  # of them that are told of one sentence


class _Against(NamedTuple):
    """A source that speaks against, and the links that it was set against."""

    link: Link
    rivals: set[tuple[str, str]]


def find(cases: Sequence[Case], talk: Talk, episode: Episode, register: Mapping[str, Source]) -> Doubts:
    """The unmentioned, at each sentence that should mention them."""
    dissent = _Dissent(cases, talk, episode, register)
    found: dict[tuple[str, int], tuple[Doubt, ...]] = {}
    for case in cases if dissent.by_exercise else ():
        doubts = tuple(islice(dissent.unmentioned(case), MOST_TOLD))
        if doubts:
            found[case.segment.id, case.number] = doubts
    for key, doubt in _left_out(cases, episode, register):
        found[key] = (*found.get(key, ()), doubt)
    return found


class _Dissent:
    """Who speaks against what is said of which exercise."""

    def __init__(self, cases: Sequence[Case], talk: Talk, episode: Episode, register: Mapping[str, Source]) -> None:
        self.talk, self.register = talk, register
        self.names = {name: plain(one.name) for name, one in episode.exercises.items() if one.name}
        self.by_exercise: dict[str, dict[tuple[str, str], _Against]] = {}
        self._alone: dict[str, frozenset[str]] = {}
        self._asked: set[tuple[str, str]] = set()  # segments that were asked for a source: one sentence there is enough
        self._levels: dict[tuple[str, str, appraising.Said], tuple[str, int | None]] = {}
        for name, exercise in episode.exercises.items():
            for claim in exercise.claims:
                self._keep(name, claim.source)
        for case in cases:
            if any(link.stance != "supports" for link in case.sentence.links):
                for name in self._exercises(case):
                    self._keep(name, case.sentence.links)

    def _keep(self, name: str, links: Iterable[Link]) -> None:
        against = [link for link in links if link.stance != "supports"]
        rivals = {(str(one.id), str(one.finding)) for one in links if one.stance == "supports"} if against else set()
        for link in against[:MOST_AGAINST]:
            known = self.by_exercise.setdefault(name, {})
            key = (str(link.id), str(link.finding))
            if key in known or len(known) < MOST_AGAINST:
                known.setdefault(key, _Against(link, set())).rivals.update(rivals)

    def _exercises(self, case: Case) -> tuple[str, ...]:
        """The exercise a sentence speaks of: its segment's, or in other segments those that it names."""
        if case.segment.exercise:
            return (case.segment.exercise,)
        text = f" {plain(case.sentence.text)} "
        return tuple(name for name, words in self.names.items() if f" {words} " in text)

    def unmentioned(self, case: Case) -> Iterator[Doubt]:
        """Sources of equal or better level against a sentence of which its segment says nothing."""
        best = min((one.level for one in case.for_it() if one.level and one.link.stance == "supports"), default=0)
        if case.judgement.kind != "claim" or not best:
            return
        told = {str(link.id) for link in case.sentence.links if link.stance == "supports"}
        for one in self._against(case):
            name = str(one.link.id)
            if name in told or name not in self.register:
                continue
            outcome, level = self._level(one.link, case)
            same = outcome == case.said.outcome != "" or _is_rival(case, one)
            asked = (case.segment.id, name)
            if (
                same
                and level is not None
                and level <= best
                and asked not in self._asked
                and not self._is_told(case, name)
            ):
                self._asked.add(asked)
                yield case.doubt("dissent", None, name, str(one.link.stance))

    def _against(self, case: Case) -> list[_Against]:
        """What is set against the exercise of a sentence; where it names none, against what stands behind it."""
        names = self._exercises(case)
        if names:
            return [one for name in names for one in self.by_exercise.get(name, {}).values()]
        every = (one for against in self.by_exercise.values() for one in against.values())
        return list(islice((one for one in every if _is_rival(case, one)), MOST_AGAINST))

    def _level(self, link: Link, case: Case) -> tuple[str, int | None]:
        """What a source measured, and its level for what a sentence says."""
        key = (str(link.id), str(link.finding), case.said)
        if key not in self._levels:
            lexicon = self.talk.lexicon
            study = appraising.study(link, self.register[link.id], case.said.outcome, lexicon)
            self._levels[key] = study.tested.outcome, appraising.appraise(study, case.said, lexicon).level
        return self._levels[key]

    def _is_told(self, case: Case, name: str) -> bool:
        """Whether the segment says that sources disagree, or has a sentence on that source alone."""
        alone = self._alone.get(case.segment.id)
        if alone is None:
            without = (
                sentence.links
                for sentence in self.talk.sentences(case.segment)
                if all(link.stance != "supports" for link in sentence.links)
            )
            alone = self._alone[case.segment.id] = frozenset(str(link.id) for links in without for link in links)
        own = self.talk.lexicon.first("evidence-said", case.sentence.text, "dissent")
        return name in alone or own is not None or "dissent" in self.talk.kinds(case.segment)


def _is_rival(case: Case, one: _Against) -> bool:
    """Whether a source was set against one that stands behind this sentence."""
    return any(
        (str(link.id), finding) in one.rivals
        for link in case.sentence.links
        if link.stance == "supports"
        for finding in (str(link.finding), "")
    )


def _left_out(
    cases: Sequence[Case], episode: Episode, register: Mapping[str, Source]
) -> Iterator[tuple[tuple[str, int], Doubt]]:
    """Sources of the register that measured the same and that nobody links to, at the first sentence they belong to."""
    used = {str(link.id) for case in cases for link in case.sentence.links} | set(_linked(episode))
    spare = _spare(register, used)
    for case in cases if spare else ():
        findings = [one.finding for one in case.appraisals if one.finding and case.judgement.kind == "claim"]
        for finding in findings:
            alike = spare.get(plain(finding.outcome), {}) if finding.outcome else {}
            names = [name for name, site in alike.items() if not site or not finding.site or site == finding.site]
            for name in names:
                del alike[name]
            if names:
                has = str(finding.outcome)
                yield (case.segment.id, case.number), case.doubt("left-out", None, listed(names, 3), has)


def _spare(register: Mapping[str, Source], used: set[str]) -> dict[str, dict[str, str]]:
    """By outcome, the sources that nobody links to, each with the site that was measured."""
    found: dict[str, dict[str, str]] = {}
    for name, source in register.items():
        if name not in used and source.status != "retracted":
            for one in source.findings.values():
                if one.outcome:
                    found.setdefault(plain(one.outcome), {}).setdefault(name, str(one.site))
    return found


def _linked(episode: Episode) -> Iterator[str]:
    """Ids of the sources that the outline links to."""
    for exercise in episode.exercises.values():
        for claim in exercise.claims:
            yield from (str(link.id) for link in claim.source)
        for rating in exercise.ratings.values():
            yield from (str(link.id) for link in rating.source)
        yield from (str(link.id) for link in (exercise.use.source if exercise.use else ()))
