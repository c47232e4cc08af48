"""Checks of a study's design, what it compares, and the scale of its effect."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.remarks import doubts
from scriptkit.checking.rules import Found, check
from scriptkit.model import Facts
from scriptkit.wording import quoted


@check("note", "record")
def unknown_design(facts: Facts) -> Iterator[Found]:
    """The design of a study is in words that the tool does not know, so nothing can be said of its certainty.

    Known are, among others: systematic review, meta-analysis, randomised trial, crossover, controlled trial, cohort,
    pre-post, case series, laboratory, survey, textbook, standard, maker's data sheet.

    Rule: ours; the levels are those of the Oxford Centre for Evidence-Based Medicine, 2011.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources: {mora-2022: {title: Hangs, design: randomly trial, n: 60, invented: true}}
        --- segments/hang.md
        In 60 climbers, grip strength rose. [from mora-2022]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources: {mora-2022: {title: Hangs, design: randomised trial, n: 60, invented: true}}
        --- segments/hang.md
        In 60 climbers, grip strength rose. [from mora-2022]
    """
    for doubt in doubts(facts, "design"):
        yield (
            doubt.place,
            f"{quoted(doubt.said)} is no design that is known here, so {doubt.source} gets no level and no certainty.",
            doubt.has or "Say it in plain words, for instance `randomised trial`, `cohort` or `pre-post`.",
        )


@check("warning", "record")
def effect_on_wrong_scale(facts: Facts) -> Iterator[Found]:
    """A "large effect" is none on the scale of its own kind of comparison.

    Between two exercises, standardised differences of 0.14, 0.29 and 0.51 are small, medium and large. From before to
    after, they are several times as large, so that a 0.6 there is nothing special.

    Rule: 3,874 comparisons of 417 studies in strength and conditioning (doi 10.51224/SRXIV.202); that from before to
    after 1.0 is taken as the least that may be called large is ours.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          halm-2018:
            title: Hangs
            design: pre-post
            n: 60
            invented: true
            findings: {a: {outcome: grip strength, effect: 0.6}}
        --- segments/hang.md
        In 60 climbers, hangs had a large effect on grip strength. [from halm-2018 a]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          mora-2022:
            title: Hangs
            design: randomised trial
            n: 60
            invented: true
            findings: {a: {outcome: grip strength, effect: 0.6}}
        --- segments/hang.md
        In 60 climbers, hangs had a large effect on grip strength. [from mora-2022 a]
    """
    for doubt in doubts(facts, "large-between", "large-before-after"):
        between = doubt.kind == "large-between"
        scale = "between exercises large begins at about 0.51" if between else "from before to after that is usual"
        yield (
            doubt.place,
            f"{quoted(doubt.said)} is said, and {doubt.source} has {doubt.has}: {scale}.",
            "Leave the size out, or say the change itself with its unit.",
        )


@check("note", "record")
def strength_across_limbs(facts: Facts) -> Iterator[Found]:
    """Strength is compared between the limbs of the same people.

    Training one limb makes the other stronger too, so that the difference between them is told too small.

    Rule: a pooled estimate of that carry-over, 0.56 with an interval of 0.34 to 0.78 (J Sports Sci Med 16, 180).

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          orre-2021:
            title: Hangs, one hand each
            design: randomised trial
            comparison: within-person
            n: 60
            invented: true
            findings: {a: {outcome: grip strength}}
        --- segments/hang.md
        In 60 climbers, the hand that hung got stronger than the one that squeezed. [from orre-2021 a]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          orre-2021:
            title: Hangs, one hand each
            design: randomised trial
            comparison: within-person
            n: 60
            invented: true
            findings: {a: {outcome: grip strength}}
        --- segments/hang.md
        In 60 climbers, the hand that hung got stronger than the one that squeezed. [from orre-2021 a]
        Some of that carries over to the other hand.
    """
    for doubt in doubts(facts, "other-limb"):
        yield (
            doubt.place,
            f"{quoted(doubt.said)} is compared between limbs of the same people in {doubt.source}.",
            'You may say that "some of it carries over to the other side".',
        )


@check("warning", "record")
def interval_odd(facts: Facts) -> Iterator[Found]:
    """An interval of a finding is written backwards, or its effect lies outside of it.

    Both come from a slip in copying, a lost minus above all, and what is weighed by them would be weighed wrongly.

    Rule: by the meaning of an interval, lowest first, with the estimate inside.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources: {mora-2022: {title: Hangs, invented: true, findings: {a: {effect: 0.2, ci: [0.13, -0.09]}}}}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources: {mora-2022: {title: Hangs, invented: true, findings: {a: {effect: 0.02, ci: [-0.09, 0.13]}}}}
    """
    for name, source in facts.register.items():
        for finding in source.findings.values():
            if len(finding.ci) != 2:
                continue
            low, high = finding.ci
            shown = f"{low:g} to {high:g}"
            if low > high:
                yield finding.at.of("ci"), f"The interval of {name}, {shown}, is written backwards.", _SEE_AGAIN
            elif finding.effect is not None and not low <= finding.effect <= high:
                told = f"The effect of {name}, {finding.effect:g}, lies outside of its own interval, {shown}."
                yield finding.at.of("ci"), told, _SEE_AGAIN


_SEE_AGAIN = "Look it up in the source again, signs above all: `ci: [LOWEST, HIGHEST]`."
