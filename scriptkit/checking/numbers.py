"""Checks of spoken numbers: each has to be the source's, with its unit, its label and its direction."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.rules import Found, check
from scriptkit.model import Facts, NumberTrouble
from scriptkit.wording import quoted


def _of_kind(facts: Facts, *kinds: str) -> Iterator[NumberTrouble]:
    return (one for one in facts.number_troubles if one.kind in kinds)


@check("error", "record")
def number_not_in_source(facts: Facts) -> Iterator[Found]:
    """A spoken number is not one that its source has.

    It is held against the values, result, interval, people, weeks and year of every source behind the sentence, and
    against what people make of them: a difference, a percent change, "about a third", "twice". Rounding is understood;
    "about", "nearly" and "more than" widen it.

    Rule: ours; a figure that is read aloud has to be the figure that was read.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          mora-2022: {title: Timed hangs, population: climbers, n: 38, duration_weeks: 6, invented: true}
        --- segments/hang.md
        In one trial, 83 climbers hung for 6 weeks. [from mora-2022]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          mora-2022: {title: Timed hangs, population: climbers, n: 38, duration_weeks: 6, invented: true}
        --- segments/hang.md
        In one trial, 38 climbers hung for 6 weeks. [from mora-2022]
    """
    for one in _of_kind(facts, "unknown"):
        has = f" It has {one.has}." if one.has else ""
        yield (
            one.place,
            f"{quoted(one.said)} is not a number of {one.source}.{has}",
            "Say the source's number; if this one is right, write it under the finding in the register.",
        )


@check("error", "record")
def numbers_swapped(facts: Facts) -> Iterator[Found]:
    """A number of the source is spoken of the wrong thing, or as a change in the wrong direction.

    The numbers of a finding have labels. Two of them in one sentence are taken in the order in which their labels are
    said, and "rose", "fell" and "more than" have to agree with what was before and after.

    Rule: ours.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          orre-2021:
            title: Two ways to hang
            invented: true
            findings: {grip: {outcome: grip, values: {towel: 16 kg, bar: 10 kg}}}
        --- segments/hang.md
        The towel group gained 10 kilos, and the bar group 16. [from orre-2021 grip]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          orre-2021:
            title: Two ways to hang
            invented: true
            findings: {grip: {outcome: grip, values: {towel: 16 kg, bar: 10 kg}}}
        --- segments/hang.md
        The towel group gained 16 kilos, and the bar group 10. [from orre-2021 grip]
    """
    for one in _of_kind(facts, "swapped"):
        yield (
            one.place,
            f"{quoted(one.said)} is said of the wrong thing: {one.source} has {one.has}.",
            "Put each number with its own label, and the change the right way round.",
        )


@check("error", "record")
def number_in_wrong_unit(facts: Facts) -> Iterator[Found]:
    """A number of the source is spoken in another unit, or as percent of nothing.

    Millimetres are no centimetres, and 22 kilos are no 22 percent. A unit that is converted comes with another number.

    Rule: ours.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          orre-2021:
            title: Two ways to hang
            invented: true
            findings: {grip: {outcome: forearm, values: {towel: 1.6 mm, bar: 1.1 mm}}}
        --- segments/hang.md
        The towel group gained 1.6 centimetres. [from orre-2021 grip]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          orre-2021:
            title: Two ways to hang
            invented: true
            findings: {grip: {outcome: forearm, values: {towel: 1.6 mm, bar: 1.1 mm}}}
        --- segments/hang.md
        The towel group gained 1.6 millimetres. [from orre-2021 grip]
    """
    for one in _of_kind(facts, "unit"):
        yield (
            one.place,
            f"{quoted(one.said)} has another unit than in {one.source}, which has {one.has}.",
            "Say the source's unit with the source's number.",
        )


@check("warning", "record")
def number_misleads(facts: Facts) -> Iterator[Found]:
    """A number is rounded so far, or put so, that it tells something else.

    Two millimetres for 1.6 is a quarter too much; a difference between two percentages is told in percentage points;
    and a number of another finding of the source needs that finding behind the sentence.

    Rule: ours.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          orre-2021:
            title: Two ways to hang
            invented: true
            findings: {grip: {outcome: forearm, values: {towel: 1.6 mm, bar: 1.1 mm}}}
        --- segments/hang.md
        The towel group gained 2 millimetres. [from orre-2021 grip]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          orre-2021:
            title: Two ways to hang
            invented: true
            findings: {grip: {outcome: forearm, values: {towel: 1.6 mm, bar: 1.1 mm}}}
        --- segments/hang.md
        The towel group gained 1.6 millimetres. [from orre-2021 grip]
    """
    told = {
        "rounding": ("is rounded too far", 'Say a place more, or put "about" before it and stay within a tenth.'),
        "points": ("is a difference between two percentages", 'Say "percentage points", or how many times as much.'),
        "finding": ("belongs to another finding", "Name that finding behind the sentence too."),
    }
    for one in _of_kind(facts, *told):
        what, do = told[one.kind]
        yield one.place, f"{quoted(one.said)} {what}: {one.source} has {one.has}.", do


@check("note", "record")
def number_not_recorded(facts: Facts) -> Iterator[Found]:
    """A spoken number has nothing in the register that it could be held against.

    The source is there, and it holds no number of this sort; or the number was converted into another system of units.
    It is told so that a fact-checker looks at it.

    Rule: ours.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          mora-2022: {title: Timed hangs, population: climbers, n: 38, invented: true}
        --- segments/hang.md
        The 38 climbers gained 14 seconds. [from mora-2022]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          mora-2022:
            {title: Timed hangs, population: climbers, n: 38, invented: true,
             findings: {hang: {outcome: hang time, values: {gain: 14 s}}}}
        --- segments/hang.md
        The 38 climbers gained 14 seconds. [from mora-2022 hang]
    """
    for one in _of_kind(facts, "unheld"):
        yield (
            one.place,
            f"The register holds no number of {one.source} to hold {quoted(one.said)} against.",
            "Write it under the finding, as a value with its unit, so that it can be checked.",
        )
    for one in _of_kind(facts, "converted"):
        yield (
            one.place,
            f"{quoted(one.said)} is converted: {one.source} has {one.has}.",
            "Nothing to do if that is meant; one system of units first, then the other, is easier on the ear.",
        )
