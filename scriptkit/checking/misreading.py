"""Checks of sentences that say more, or something else, than their sources measured."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.remarks import doubts
from scriptkit.checking.rules import Found, check
from scriptkit.model import Facts
from scriptkit.wording import quoted


@check("error", "record")
def acute_behind_growth(facts: Facts) -> Iterator[Found]:
    """A claim of growth or strength rests on what was measured within one session.

    Muscle activity, soreness, a pump or a hormone tells what happens in a session, and not what comes of it after
    weeks. Say what was measured, and that it is activity, not growth; or name a study that measured growth.

    Rule: surface EMG of one session is no validated predictor of growth (a review of 2022,
    doi 10.1007/s40279-021-01619-2); that it is an error is ours.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          orr-2020: {title: Hangs, design: crossover, n: 40, invented: true, findings: {a: {outcome: EMG activity}}}
        --- segments/hang.md
        In 40 climbers, bar hangs built more forearm muscle than grippers. [from orr-2020 a]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          orr-2020: {title: Hangs, design: crossover, n: 40, invented: true, findings: {a: {outcome: EMG activity}}}
        --- segments/hang.md
        In 40 climbers, the forearm was more active in a bar hang. That's activity, and not growth. [from orr-2020 a]
    """
    for doubt in doubts(facts, "acute"):
        yield (
            doubt.place,
            (
                f"{quoted(doubt.said)} says what training builds, and {doubt.source} measured {quoted(doubt.has)}, "
                "within one session."
            ),
            'Say what was measured and add "that\'s activity, and not growth"; or name a study that measured growth.',
        )


@check("warning", "record")
def acute_behind_a_maybe(facts: Facts) -> Iterator[Found]:
    """A "may grow" rests only on what was measured within one session, and nobody says so.

    The hedge is right, and a listener still takes it that growth was looked at.

    Rule: as for `acute-behind-growth`; a hedge makes it a warning, which is ours.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          orr-2020: {title: Hangs, design: crossover, n: 40, invented: true, findings: {a: {outcome: EMG activity}}}
        --- segments/hang.md
        Bar hangs may build forearm muscle, going by 40 climbers. [from orr-2020 a]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          orr-2020: {title: Hangs, design: crossover, n: 40, invented: true, findings: {a: {outcome: EMG activity}}}
        --- segments/hang.md
        Bar hangs may build forearm muscle, but what rose in 40 climbers is activity, and not growth. [from orr-2020 a]
    """
    for doubt in doubts(facts, "acute-hedged"):
        yield (
            doubt.place,
            f"{quoted(doubt.said)} rests on {quoted(doubt.has)} of {doubt.source}, measured within one session.",
            'Tell the viewer: "that\'s activity, and not growth".',
        )


@check("warning", "record")
def measured_something_else(facts: Facts) -> Iterator[Found]:
    """A sentence claims one outcome, and its source measured another.

    Strength can rise without growth, and growth without strength; neither says much of pain.

    Rule: GRADE, indirectness: the outcome that is claimed and the one that was measured.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          mora-2022:
            {title: Hangs, design: randomised trial, n: 60, invented: true, findings: {a: {outcome: grip strength}}}
        --- segments/hang.md
        In one trial of 60 climbers, hangs added more muscle to the forearm. [from mora-2022 a]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          mora-2022:
            {title: Hangs, design: randomised trial, n: 60, invented: true, findings: {a: {outcome: grip strength}}}
        --- segments/hang.md
        In one trial of 60 climbers, hangs made the grip stronger. [from mora-2022 a]
    """
    for doubt in doubts(facts, "other-outcome"):
        yield (
            doubt.place,
            f"{quoted(doubt.said)} is said, and what {doubt.source} measured is {quoted(doubt.has)}.",
            "Say what was measured, or name the finding or the study that measured this.",
        )


@check("error", "record")
def no_difference_not_shown(facts: Facts) -> Iterator[Found]:
    """It is said that two things do the same, and no interval shows it.

    A small study that finds no difference has mostly not looked closely enough. "No difference" is shown where the
    whole interval of the standardised effect lies within 0.29 either way, about what exercises usually differ by;
    otherwise it is "no clear difference".

    Rule: the size of a usual difference, 0.29, is that of a survey of 417 studies (doi 10.51224/SRXIV.202); that the
    whole interval has to lie within it is ours.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          lind-2019:
            title: Hangs again
            design: randomised trial
            n: 24
            invented: true
            findings: {a: {outcome: grip strength, effect: 0.1, ci: [-0.7, 0.9]}}
        --- segments/hang.md
        A small trial of 24 climbers found no difference in grip. [from lind-2019 a]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          lind-2019:
            title: Hangs again
            design: randomised trial
            n: 24
            invented: true
            findings: {a: {outcome: grip strength, effect: 0.1, ci: [-0.7, 0.9]}}
        --- segments/hang.md
        A small trial of 24 climbers found no clear difference in grip. [from lind-2019 a]
    """
    for doubt in doubts(facts, "no-difference"):
        shown = f"its interval, {doubt.has}, leaves a difference open" if doubt.has else "the register has no interval"
        yield (
            doubt.place,
            f"{quoted(doubt.said)} is more than {doubt.source} shows: {shown}.",
            'Say "no clear difference"; or give the finding an `effect` with a `ci` that lies within 0.29 either way.',
        )
    for doubt in doubts(facts, "denied"):
        yield (
            doubt.place,
            f"{quoted(doubt.said)} is the opposite of what {doubt.source} shows: there is an effect, {doubt.has}.",
            "Say what the source found; or name the source that found no effect.",
        )


@check("warning", "record")
def percent_of_what(facts: Facts) -> Iterator[Found]:
    """A change is told in percent, and neither sentence nor register says of what.

    Twenty percent of little is little. The register needs the value before and the change with its unit, so that a
    fact-checker can see it; better still, say them.

    Rule: common practice in reporting results: a relative change needs its baseline and the absolute change.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          mora-2022:
            {title: Hangs, design: randomised trial, n: 60, invented: true, findings: {a: {outcome: hang time}}}
        --- segments/hang.md
        In one trial of 60 climbers, hang time rose by 22 percent. [from mora-2022 a]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          mora-2022:
            title: Hangs
            design: randomised trial
            n: 60
            invented: true
            findings: {a: {outcome: hang time, baseline: 41 s, absolute: 9 s, result: 22 percent}}
        --- segments/hang.md
        In one trial of 60 climbers, hang time rose by 22 percent. [from mora-2022 a]
    """
    for doubt in doubts(facts, "percent"):
        yield (
            doubt.place,
            f"{quoted(doubt.said)} of what? The register does not say it of {doubt.source} either.",
            "The register is enough: `baseline:` and `absolute:` of the finding, with units; or say from what to what.",
        )


@check("error", "record")
def limbs_as_people(facts: Facts) -> Iterator[Found]:
    """The number of limbs in a study is told as the number of its people.

    Where each person trains one leg this way and one that way, 38 people give 76 legs, and still only 38 people.

    Rule: common practice in statistics: the limbs of one person are no separate people.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources: {orre-2021: {title: Hangs, design: randomised trial, n: 38, n_units: 76, invented: true}}
        --- segments/hang.md
        A trial of 76 climbers tested it. [from orre-2021]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources: {orre-2021: {title: Hangs, design: randomised trial, n: 38, n_units: 76, invented: true}}
        --- segments/hang.md
        A trial of 38 climbers, 76 arms, tested it. [from orre-2021]
    """
    for doubt in doubts(facts, "limbs"):
        yield (
            doubt.place,
            f"{quoted(doubt.said)} counts limbs: {doubt.source} has {doubt.has} people.",
            f"Say {doubt.has}; or say that the larger number is that of limbs.",
        )


@check("error", "record")
def nothing_compared(facts: Facts) -> Iterator[Found]:
    """A comparison rests on a study that compared nothing.

    Where one group is followed from before to after, nobody knows what the other exercise would have done.

    Rule: GRADE, risk of bias: no comparison group; that it is an error is ours.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          halm-2018: {title: Hangs, design: pre-post, n: 61, invented: true, findings: {a: {outcome: grip strength}}}
        --- segments/hang.md
        In 61 climbers, hangs built more strength than grippers. [from halm-2018 a]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          halm-2018: {title: Hangs, design: pre-post, n: 61, invented: true, findings: {a: {outcome: grip strength}}}
        --- segments/hang.md
        In 61 climbers, grip strength rose over ten weeks of hangs. [from halm-2018 a]
    """
    for doubt in doubts(facts, "nothing-compared"):
        yield (
            doubt.place,
            f"{quoted(doubt.said)} compares, and {doubt.source} followed one group and compared it with nothing.",
            "Say what changed from before to after, and that there was no comparison group.",
        )
