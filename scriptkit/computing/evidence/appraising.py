"""What one study alone gives one claim: its level, its certainty, and the steps that lead there in words."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from scriptkit.computing.evidence import designs, outcomes
from scriptkit.computing.evidence.designs import LOW, VERY_LOW, Design
from scriptkit.computing.evidence.lexicon import Lexicon
from scriptkit.computing.evidence.outcomes import Measured
from scriptkit.model import LADDER, Link, Source, StudyFinding

CERTAINTIES = ("", *reversed(LADDER))  # by rank
ENOUGH = 400  # people in all; about what it takes to see a usual difference between exercises
ENOUGH_OBSERVED = 100  # what starts low does so for its design; only a handful of people takes it down once more
FEW = 20  # people in a group
MATTERS = 0.29  # a usual standardised difference between exercises; smaller ones hardly matter
SETTLED_WEEKS = 6  # before that, swelling is hard to tell from growth
UNPRECISE = ("opinion", "sheet", "animal", "overview", "survey")  # the number of people says nothing of these
STEPS = {1: "one step down", 2: "two steps down"}


class Said(NamedTuple):
    """What a sentence claims: the outcome, whether that is an effect, and whether of people who have trained."""

    outcome: str
    effect: bool
    trained: bool
    comparative: bool
    more: bool = False  # one thing is said to do more than another, and nothing in the sentence takes it back


class Ladder:
    """A certainty on its way down, with what was said at each step."""

    def __init__(self, start: int, told: str) -> None:
        self.rank, self.steps = start, [told]

    def down(self, by: int, why: str) -> None:
        """Some steps down; nothing is lower than very low."""
        if by:
            self.rank = max(VERY_LOW, self.rank - by)
            self.steps.append(f"{why}: {STEPS[by]}")

    def most(self, rank: int, why: str) -> None:
        """No more than this."""
        self.steps.append(f"{why}: {CERTAINTIES[rank]} at most")
        self.rank = min(self.rank, rank)


class Appraisal(NamedTuple):
    """One study behind one claim. `known` is whether the register has the study.

    `rank` is its certainty, `alone` that of its finding before it is held against the claim. `few` tells that there was
    a step for fewer than 400 people, `mismatch` that another outcome was measured.
    """

    link: Link
    source: Source
    finding: StudyFinding | None
    design: Design
    tested: Measured
    known: bool
    level: int | None = None
    alone: int = 0
    rank: int = 0
    steps: tuple[str, ...] = ()
    few: bool = False
    mismatch: bool = False
    indirect_people: bool = False

    def interval(self) -> tuple[float, float] | None:
        """The interval of its finding, lowest end first; None where none is given."""
        ci = sorted(self.finding.ci) if self.finding else []
        return (ci[0], ci[1]) if len(ci) == 2 else None


def supporters(appraisals: Sequence[Appraisal]) -> list[Appraisal]:
    """The sources that speak for the sentence; all of them, where none is said to support it."""
    for_it = [one for one in appraisals if one.link.stance == "supports"]
    return for_it or list(appraisals)


def study(link: Link, source: Source | None, said: str, lexicon: Lexicon) -> Appraisal:
    """What a link stands for; `said` is the kind of outcome in the sentence's words."""
    if source is None:
        return Appraisal(link, Source(), None, designs.UNKNOWN, Measured("", acute=False), known=False)
    kind = designs.design(source, lexicon)
    finding = outcomes.pick(source, str(link.finding), said, kind.kind, lexicon)
    return Appraisal(link, source, finding, kind, outcomes.measured(source, finding, kind.kind, lexicon), known=True)


def appraise(one: Appraisal, said: Said, lexicon: Lexicon) -> Appraisal:
    """The pair of a study and a claim."""
    source, kind = one.source, one.design.kind
    if not one.known:
        return _nothing(one, "there is no such source in the register")
    if source.status == "retracted":
        return _nothing(one, "retracted: it counts for nothing")
    if not kind:
        told = f'"{source.design}" is no design that is known here' if source.design else one.design.told
        return _nothing(one, told)
    if _is_plain(kind, said):
        return _nothing(one, _plainly(one.design))
    ladder = Ladder(one.design.start, one.design.told)
    few = _of_the_study(ladder, one)
    alone = ladder.rank
    ladder.down(2 * int(said.more and _shows_none(one)), "that is little or no difference, and one is claimed")
    level = one.design.level or 5
    misses = outcomes.differ(said.outcome, one.tested.outcome)
    of_session = one.tested.acute and said.outcome in outcomes.TRAINED_FOR and said.effect
    if of_session:
        level = 5
        ladder.most(LOW, f"{_what(one.tested)} was measured, within a session, and {said.outcome} is said")
    elif misses:
        level = min(5, level + 1)
        ladder.down(1, f"{_what(one.tested)} was measured and {said.outcome} is said")
    strangers = said.trained and outcomes.untrained(source, lexicon)
    ladder.down(int(strangers), "its people had not trained, and it is said of people who have")
    _as_the_author_has_it(ladder, one)
    return one._replace(
        level=level,
        alone=alone,
        rank=ladder.rank,
        steps=tuple(ladder.steps),
        few=few,
        mismatch=misses and not of_session,
        indirect_people=strangers,
    )


def _nothing(one: Appraisal, why: str) -> Appraisal:
    return one._replace(steps=(why,))


def _is_plain(kind: str, said: Said) -> bool:
    """Whether a source only says what there is, or is asked only that: neither is weighed as an effect."""
    if said.outcome == "plain" or kind in designs.NO_EFFECTS:
        return True
    asked = kind == "survey" and not (said.effect and (said.comparative or said.outcome != "pain"))
    return asked or (kind in ("sheet", "opinion") and not said.effect)


def _plainly(design: Design) -> str:
    if design.kind in designs.NO_EFFECTS:
        return design.told
    return "it is counted, measured or told as it is, and no effect: nothing is weighed"


def _what(tested: Measured) -> str:
    return tested.words or tested.outcome or "something else"


def _of_the_study(ladder: Ladder, one: Appraisal) -> bool:
    """Steps for how the study was made and how precise it is. Gives whether there was one for fewer than 400 people."""
    source, kind = one.source, one.design.kind
    unequal = source.volume_equated is False and source.comparison != "pre-post"
    ladder.down(int(designs.has_no_comparison(source, kind)), "no comparison group")
    ladder.down(int(unequal), "one side did more work than the other")
    ladder.down(int(source.status == "concern"), "its journal has expressed concern")
    if source.status == "preprint":
        ladder.steps.append("a preprint: nobody has reviewed it yet")
    few = kind not in UNPRECISE and _precision(ladder, one)
    if one.tested.outcome == "growth" and not one.tested.acute:
        ladder.down(int(one.tested.how in ("indirect", "rough")), f"a rough way to measure muscle: {_measure(one)}")
        weeks = source.duration_weeks
        early = weeks is not None and weeks < SETTLED_WEEKS
        ladder.down(int(early), f"measured after {weeks or 0:g} weeks, when swelling may still count")
    return few


def _measure(one: Appraisal) -> str:
    return str(one.finding.measure or one.finding.outcome) if one.finding else "other means"


def _precision(ladder: Ladder, one: Appraisal) -> bool:
    """Steps for an interval that leaves all open, and for few people; two at most."""
    source, kind = one.source, one.design.kind
    ci = one.interval()
    wide = 0
    if ci and is_narrow(ci):
        ladder.steps.append(f"the interval from {ci[0]:g} to {ci[1]:g} leaves out any effect that matters")
        return False
    if ci and ci[0] <= 0 <= ci[1]:
        wide = 1
        ladder.down(1, f"the interval from {ci[0]:g} to {ci[1]:g} holds both no effect and one that matters")
    if source.n is None:
        ladder.down(int(kind != "review"), "how many people took part is not said")
        return False
    enough = ENOUGH if one.design.start > LOW else ENOUGH_OBSERVED
    if source.n >= enough:
        return False
    group = designs.people_in_a_group(source, kind) if kind != "review" else None
    tiny = group is not None and group < FEW and not wide and kind in ("randomised", "controlled", "crossover")
    words = f"{source.n} people, fewer than {enough}"
    ladder.down(1, words)
    ladder.down(int(tiny), f"and only {group} on each side" if group != source.n else "and very few of them")
    return True


def _shows_none(one: Appraisal) -> bool:
    """Whether the interval of a comparison lies around no effect, and near it."""
    ci = one.interval()
    return ci is not None and ci[0] <= 0 <= ci[1] and is_narrow(ci)


def is_narrow(ci: tuple[float, float]) -> bool:
    """Whether a whole interval lies so near to no effect that nothing that matters is left."""
    return -MATTERS <= ci[0] <= ci[1] <= MATTERS


def _as_the_author_has_it(ladder: Ladder, one: Appraisal) -> None:
    """The author's own judgement of a finding counts where it is lower."""
    theirs = CERTAINTIES.index(one.finding.certainty) if one.finding and one.finding.certainty in CERTAINTIES else 0
    if 0 < theirs < ladder.rank:
        ladder.rank = theirs
        ladder.steps.append(f"the register calls it {CERTAINTIES[theirs]}: so it is")
