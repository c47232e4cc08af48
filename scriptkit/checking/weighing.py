"""Checks of whom and how a source measured, and of the certainty that the author gives it."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.remarks import doubts
from scriptkit.checking.rules import Found, check
from scriptkit.model import LADDER, Facts
from scriptkit.wording import quoted


@check("warning", "record")
def beginners_for_lifters(facts: Facts) -> Iterator[Found]:
    """What is said of people who train was measured in people who did not.

    Beginners gain from nearly anything, so what is best for them may not be best for lifters. It counts when the
    sentence or the outline's `audience:` speaks of lifters, athletes or trained people.

    Rule: GRADE, indirectness: the people that it is said of and those who were measured.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          tarn-2023:
            title: Hangs
            design: randomised trial
            n: 60
            training: untrained
            invented: true
            findings: {a: {outcome: grip strength}}
        --- segments/hang.md
        Hangs probably make lifters' grip stronger, by a trial of 60. [from tarn-2023 a]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          tarn-2023:
            title: Hangs
            design: randomised trial
            n: 60
            training: untrained
            invented: true
            findings: {a: {outcome: grip strength}}
        --- segments/hang.md
        Hangs may make lifters' grip stronger, by a trial of 60 beginners. [from tarn-2023 a]
    """
    for doubt in doubts(facts, "untrained"):
        yield (
            doubt.place,
            (
                f"The people of {doubt.source} had not trained ({quoted(doubt.has)}), and this is for people who have: "
                f"{quoted(doubt.said)}"
            ),
            'Name them, for instance "in beginners", and say that it may differ for people who have trained for long.',
        )


@check("error", "record")
def animals_for_people(facts: Facts) -> Iterator[Found]:
    """An effect of training rests on animals or cells, and the segment does not say so.

    Rule: GRADE, indirectness; that it has to be heard is common practice in reporting on research.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          rask-2011: {title: Wings, design: animal study, n: 20, invented: true, findings: {a: {outcome: growth}}}
        --- segments/hang.md
        A long hang may grow muscle, by a study of 20. [from rask-2011 a]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          rask-2011: {title: Wings, design: animal study, n: 20, invented: true, findings: {a: {outcome: growth}}}
        --- segments/hang.md
        In 20 quail a long stretch grew muscle, and nobody knows whether it does in us. [from rask-2011 a]
    """
    for doubt in doubts(facts, "animals"):
        yield (
            doubt.place,
            f"{doubt.source} studied no people, and this segment does not say so: {quoted(doubt.said)}",
            'Say whom it studied, for instance "in mice", and that it may not hold for people.',
        )


@check("warning", "record")
def rough_measure(facts: Facts) -> Iterator[Found]:
    """Growth is said plainly, and the muscle was measured in a rough way.

    A tape measures fat and water too, and a scan of lean mass counts water and organs. Magnetic resonance and
    ultrasound look at the muscle.

    Rule: GRADE, indirectness; which measure is how direct is ours, by studies that compare them.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          tesk-2018:
            title: Rolls
            design: randomised trial
            n: 60
            duration_weeks: 10
            invented: true
            findings: {a: {outcome: forearm size, measure: tape}}
        --- segments/hang.md
        In 60 climbers the forearm muscle grew. [from tesk-2018 a]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          tesk-2018:
            title: Rolls
            design: randomised trial
            n: 60
            duration_weeks: 10
            invented: true
            findings: {a: {outcome: forearm size, measure: tape}}
        --- segments/hang.md
        In 60 climbers the forearm grew, by tape. [from tesk-2018 a]
    """
    for doubt in doubts(facts, "rough-measure"):
        yield (
            doubt.place,
            f"{quoted(doubt.said)} is said plainly, and {doubt.source} measured {quoted(doubt.has)}.",
            'Say how it was measured, or say "may".',
        )


@check("warning", "record")
def growth_too_early(facts: Facts) -> Iterator[Found]:
    """Growth was measured after less than six weeks, and nobody says how soon.

    In the first weeks a muscle also swells, which looks like growth.

    Rule: ours, by common practice in the field; there is no agreed number of weeks.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          tesk-2018:
            title: Rolls
            design: randomised trial
            n: 60
            duration_weeks: 4
            invented: true
            findings: {a: {outcome: muscle growth, measure: ultrasound}}
        --- segments/hang.md
        In 60 climbers the forearm muscle grew. [from tesk-2018 a]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          tesk-2018:
            title: Rolls
            design: randomised trial
            n: 60
            duration_weeks: 4
            invented: true
            findings: {a: {outcome: muscle growth, measure: ultrasound}}
        --- segments/hang.md
        In 60 climbers the forearm muscle grew in 4 weeks, and some of that may be swelling. [from tesk-2018 a]
    """
    for doubt in doubts(facts, "early-growth"):
        yield (
            doubt.place,
            f"{quoted(doubt.said)} rests on {doubt.source}, which lasted {doubt.has} weeks.",
            f'Say how long it was, and that "some of it may be swelling": {doubt.has} weeks are short.',
        )


@check("error", "record")
def certainty_without_reason(facts: Facts) -> Iterator[Found]:
    """A claim is called more certain than its sources make it, and no reason is given.

    You may set it lower as you like, and higher with a `reason:`. The message shows how the tool came to its own.

    Rule: GRADE: the certainty of a body of evidence, and a written reason for each judgement.

    Bad:
        title: One
        exercises:
          hang:
            name: Bar hang
            claims: [{say: "In 60 climbers, grip strength rose.", source: halm-2018, certainty: high}]
        sources:
          halm-2018: {title: Hangs, design: pre-post, n: 60, invented: true, findings: {a: {outcome: grip strength}}}
    Good:
        title: One
        exercises:
          hang:
            name: Bar hang
            claims: [{say: "In 60 climbers, grip strength rose.", source: halm-2018, certainty: very low}]
        sources:
          halm-2018: {title: Hangs, design: pre-post, n: 60, invented: true, findings: {a: {outcome: grip strength}}}
    """
    for segment in facts.segments:
        for sentence, weight in zip(segment.sentences, facts.weights[segment.id], strict=True):
            claim = sentence.claim
            if weight is None or claim is None or claim.reason or weight.computed not in LADDER:
                continue
            if LADDER.get(claim.certainty, 0) > LADDER[weight.computed]:
                yield (
                    claim.at.of("certainty"),
                    (
                        f"{quoted(claim.certainty)} is more than its sources give, {weight.computed}: "
                        f"{'; '.join(weight.steps[:-1])}."
                    ),
                    f"Set it to `{weight.computed}`, or give a `reason:` for more.",
                )


def _above(facts: Facts, kind: str) -> Iterator[Found]:
    for doubt in doubts(facts, kind):
        yield (
            doubt.place,
            f"{quoted(doubt.said)} is more than {doubt.source} gives by its design and people: {doubt.has}.",
            "The lower one counts. Set it lower, or say in a claim's `certainty:` and `reason:` why it is more.",
        )


@check("warning", "record")
def certainty_far_above(facts: Facts) -> Iterator[Found]:
    """The register calls a finding more certain, by two steps or more, than its design and people make it.

    The message shows the steps. The lower one counts.

    Rule: GRADE: where a study starts and what takes it down; how many people are few is common practice.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          halm-2018:
            {title: Hangs, design: pre-post, n: 60, invented: true, findings: {a: {outcome: grip, certainty: high}}}
        --- segments/hang.md
        In 60 climbers, grip strength rose. [from halm-2018 a]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          halm-2018:
            {title: Hangs, design: pre-post, n: 60, invented: true, findings: {a: {outcome: grip, certainty: low}}}
        --- segments/hang.md
        In 60 climbers, grip strength rose. [from halm-2018 a]
    """
    yield from _above(facts, "far-above")


@check("note", "record")
def certainty_a_step_above(facts: Facts) -> Iterator[Found]:
    """The register calls a finding one step more certain than its design and people make it.

    Two careful people may differ by a step, so it is only told. The lower one counts.

    Rule: GRADE: where a study starts and what takes it down; how many people are few is common practice.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          halm-2018:
            {title: Hangs, design: pre-post, n: 60, invented: true, findings: {a: {outcome: grip, certainty: low}}}
        --- segments/hang.md
        In 60 climbers, grip strength rose. [from halm-2018 a]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          halm-2018:
            {title: Hangs, design: pre-post, n: 60, invented: true, findings: {a: {outcome: grip, certainty: very low}}}
        --- segments/hang.md
        In 60 climbers, grip strength rose. [from halm-2018 a]
    """
    yield from _above(facts, "step-above")
