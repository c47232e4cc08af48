"""Checks of what a script does not say of its sources: few people, a preprint, a correction, dissent."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.remarks import doubts
from scriptkit.checking.rules import Found, check
from scriptkit.model import Facts
from scriptkit.wording import quoted


@check("warning", "record")
def few_people_unsaid(facts: Facts) -> Iterator[Found]:
    """A study has fewer than twenty people in a group, and nobody says that it is small.

    With so few, a real difference is mostly missed, and one that is found is mostly told too large. Saying their number
    or "small" once, where the study is spoken of, is enough.

    Rule: ours; computed for two groups: with 20 in each and a true difference of 0.29, 15 of 100 trials find it.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources: {lind-2019: {title: Hangs, design: randomised trial, n: 24, invented: true}}
        --- segments/hang.md
        One trial gave climbers eight weeks of hangs. [from lind-2019]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources: {lind-2019: {title: Hangs, design: randomised trial, n: 24, invented: true}}
        --- segments/hang.md
        One small trial gave 24 climbers eight weeks of hangs. [from lind-2019]
    """
    for doubt in doubts(facts, "few"):
        yield (
            doubt.place,
            f"{doubt.source} has {doubt.has}, and the script never says that it is small.",
            f'Say it where you speak of it: "a small study, with {doubt.has.partition(",")[0]}".',
        )


@check("warning", "record")
def very_uncertain_unsaid(facts: Facts) -> Iterator[Found]:
    """A "may" rests on evidence of very low certainty, and nothing says how little it is.

    "May" is what low certainty bears. Below that, a viewer should hear that the evidence is hardly any: "but the
    evidence is very uncertain", "that's one small study", "nobody knows yet".

    Rule: GRADE guidelines 26, informative statements by certainty (its row for very low was not seen at the source);
    that it is a warning and no error is ours.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          mora-2022:
            {title: Timed hangs, year: 2022, design: case series, n: 9, population: climbers, duration_weeks: 6,
             invented: true, findings: {grip: {outcome: grip strength, result: rose by 3 kg}}}
        --- segments/hang.md
        Hanging may build grip strength. [from mora-2022 grip]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          mora-2022:
            {title: Timed hangs, year: 2022, design: case series, n: 9, population: climbers, duration_weeks: 6,
             invented: true, findings: {grip: {outcome: grip strength, result: rose by 3 kg}}}
        --- segments/hang.md
        Hanging may build grip strength. [from mora-2022 grip]
        That's nine climbers, so I'd not bet on it. [from mora-2022 grip]
    """
    for segment in facts.segments:
        rows = list(zip(segment.sentences, facts.worded[segment.id], facts.weights[segment.id], strict=True))
        for number, (sentence, worded, weight) in enumerate(rows):
            if worded.step == 2 and weight and weight.certainty == "very low" and _is_bare(facts, segment.id, number):
                said = sentence.text[slice(*worded.words)]
                yield (
                    sentence.place_of(worded.words[0]),
                    f"{quoted(said)} is for low certainty, and this is very low ({'; '.join(weight.steps[:5])}).",
                    f"Say: {quoted(worded.ready, 300)}"
                    if worded.ready
                    else 'Add "but the evidence is very uncertain".',
                )


def _is_bare(facts: Facts, segment: str, number: int) -> bool:
    """Whether no sentence beside one on the same sources owns how little they are."""
    here = facts.weights[segment][number]
    ids = {pair.source for pair in here.pairs} if here else set()
    for k in (number - 1, number + 1):
        weight = facts.weights[segment][k] if 0 <= k < len(facts.weights[segment]) else None
        if weight and ids & {pair.source for pair in weight.pairs}:
            return False
    return True


@check("error", "record")
def preprint_unsaid(facts: Facts) -> Iterator[Found]:
    """A preprint stands behind a sentence, and its segment does not say that it is one.

    Nobody has reviewed it yet. Say it, or show it on screen, in each segment that rests on it.

    Rule: ours, by common practice in reporting on preprints: "not yet peer reviewed" is said.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources: {brook-2024: {title: Hangs, design: randomised trial, n: 90, status: preprint, invented: true}}
        --- segments/hang.md
        One trial gave 90 climbers eight weeks of hangs. [from brook-2024]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources: {brook-2024: {title: Hangs, design: randomised trial, n: 90, status: preprint, invented: true}}
        --- segments/hang.md
        One trial, not yet peer reviewed, gave 90 climbers eight weeks of hangs. [from brook-2024]
    """
    for doubt in doubts(facts, "preprint"):
        yield (
            doubt.place,
            f"{doubt.source} is a preprint, and this segment does not say so: {quoted(doubt.said)}",
            'Say "a preprint, not yet peer reviewed", or put `[screen: Not yet peer reviewed]` here.',
        )


@check("error", "record")
def concern_unsaid(facts: Facts) -> Iterator[Found]:
    """A work with an expression of concern stands behind a sentence, and its segment does not say so.

    Its own journal doubts it. Say that, or leave the work out.

    Rule: ours; a reader of the journal is told of the concern, so a listener is too.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources: {brook-2024: {title: Hangs, design: randomised trial, n: 90, status: concern, invented: true}}
        --- segments/hang.md
        One trial gave 90 climbers eight weeks of hangs. [from brook-2024]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources: {brook-2024: {title: Hangs, design: randomised trial, n: 90, status: concern, invented: true}}
        --- segments/hang.md
        One trial, on which the journal has put an expression of concern, gave 90 climbers hangs. [from brook-2024]
    """
    for doubt in doubts(facts, "concern"):
        yield (
            doubt.place,
            f"The journal has expressed concern about {doubt.source}, and this segment does not say so.",
            'Say "the journal has put an expression of concern on it", or leave it out.',
        )


@check("warning", "record")
def correction_unread(facts: Facts) -> Iterator[Found]:
    """A corrected work stands behind a sentence, and nobody says that it was read again.

    The number you quote may be the one that was corrected. Read it again, and write into its `note:` what the
    correction changes, or say that it was corrected.

    Rule: ours; a correction is a reason to read again.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources: {brook-2024: {title: Hangs, design: randomised trial, n: 90, status: corrected, invented: true}}
        --- segments/hang.md
        One trial gave 90 climbers eight weeks of hangs. [from brook-2024]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          brook-2024:
            title: Hangs
            design: randomised trial
            n: 90
            status: corrected
            invented: true
            note: Reread. The correction changes an author's address.
        --- segments/hang.md
        One trial gave 90 climbers eight weeks of hangs. [from brook-2024]
    """
    for doubt in doubts(facts, "correction"):
        yield (
            doubt.place,
            f"{doubt.source} was corrected after it came out.",
            "Read it again, and write into its `note:` what the correction changes.",
        )


@check("error", "record")
def dissent_unsaid(facts: Facts) -> Iterator[Found]:
    """A source of equal or better level disagrees, and the segment does not mention it.

    It is linked with `against`, `null` or `mixed` to the same exercise, for the same outcome. A link is not heard: a
    sentence has to tell of it.

    Rule: GRADE, inconsistency; that a listener has to hear of it is ours.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          mora-2022: {title: Hangs, design: randomised trial, n: 60, invented: true}
          lind-2019: {title: Hangs again, design: randomised trial, n: 90, invented: true}
        --- segments/hang.md
        In 60 climbers hangs made the grip stronger. [from mora-2022, lind-2019 against]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          mora-2022: {title: Hangs, design: randomised trial, n: 60, invented: true}
          lind-2019: {title: Hangs again, design: randomised trial, n: 90, invented: true}
        --- segments/hang.md
        In 60 climbers hangs made the grip stronger. [from mora-2022]
        A larger trial of 90 found no clear gain. [from lind-2019 against]
    """
    told = {"against": "speaks against this", "null": "finds nothing", "mixed": "points both ways"}
    for doubt in doubts(facts, "dissent"):
        yield (
            doubt.place,
            f"{doubt.source} {told.get(doubt.has, 'disagrees')}, and this segment never says so: {quoted(doubt.said)}",
            (
                f"Add a sentence on it with `[from {doubt.source} {doubt.has}]`, such as "
                '"Another trial found no clear difference."'
            ),
        )


@check("note", "record")
def source_left_out(facts: Facts) -> Iterator[Found]:
    """The register holds another study of the same outcome, and nothing links to it.

    Who names one study and leaves out its neighbours may be picking. Link to it with its stance, or take it out.

    Rule: ours; a fact-checker asks what else was found on the same question.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          mora-2022:
            {title: Hangs, design: randomised trial, n: 60, invented: true, findings: {a: {outcome: grip strength}}}
          lind-2019:
            {title: Again, design: randomised trial, n: 90, invented: true, findings: {a: {outcome: grip strength}}}
        --- segments/hang.md
        In 60 climbers, hangs made the grip stronger. [from mora-2022 a]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          mora-2022:
            {title: Hangs, design: randomised trial, n: 60, invented: true, findings: {a: {outcome: grip strength}}}
          lind-2019:
            {title: Again, design: randomised trial, n: 90, invented: true, findings: {a: {outcome: grip strength}}}
        --- segments/hang.md
        In 60 climbers, and in 90 others, hangs made the grip stronger. [from mora-2022 a, lind-2019 a]
    """
    for doubt in doubts(facts, "left-out"):
        yield (
            doubt.place,
            f"{doubt.source} measured {quoted(doubt.has)} too, and nothing links to it.",
            "Link to it with what it says of this, supports, against, null or mixed, or delete it from the register.",
        )
