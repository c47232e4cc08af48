"""Checks of title, question, answer and promises: what they claim, held against what the script says."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.ladder import MAY, instead
from scriptkit.checking.rules import Found, check
from scriptkit.model import LADDER, Facts, Headline
from scriptkit.wording import quoted


def _bears(headline: Headline) -> int:
    return LADDER.get(headline.certainty, 0)


@check("error", "record")
def headline_too_firm(facts: Facts) -> Iterator[Found]:
    """The title, question, answer or a promise says more than what the script says of the same bears.

    A headline is held to the ladder like any sentence, by the best certainty of what the script says of the same
    exercise and effect. "Why ledges beat floors" claims that they do; a plain question claims nothing.

    Rule: GRADE guidelines 26, informative statements by certainty; that headlines are held to it is ours.

    Bad:
        title: Hanging builds grip strength
        exercises: {hang: {name: Bar hang}}
        sources:
          mora-2022:
            {title: Timed hangs, year: 2022, design: case series, n: 9, population: climbers, duration_weeks: 6,
             timeframe: longitudinal, invented: true,
             findings: {grip: {outcome: grip strength, result: rose by 3 kg, certainty: low}}}
        --- segments/hang.md
        Hanging may build grip strength, but the evidence is very uncertain. [from mora-2022 grip]
    Good:
        title: Does hanging build grip strength?
        exercises: {hang: {name: Bar hang}}
        sources:
          mora-2022:
            {title: Timed hangs, year: 2022, design: case series, n: 9, population: climbers, duration_weeks: 6,
             timeframe: longitudinal, invented: true,
             findings: {grip: {outcome: grip strength, result: rose by 3 kg, certainty: low}}}
        --- segments/hang.md
        Hanging may build grip strength, but the evidence is very uncertain. [from mora-2022 grip]
    """
    for one in facts.headlines:
        if 0 < _bears(one) < one.worded.step > MAY:
            said = one.text[slice(*one.worded.words)]
            yield (
                one.place,
                f"The {one.what} says more than the script bears: {quoted(said)}; the certainty is {one.certainty}.",
                instead(one.worded.ready, _bears(one)),
            )


@check("warning", "record")
def headline_unbacked(facts: Facts) -> Iterator[Found]:
    """The title, question, answer or a promise claims an effect that nothing in the script stands behind.

    A viewer who clicked on it waits for it. Only effects count: a title that names a list or a grade claims none.

    Rule: ours; that a headline promises no more than the piece delivers is common practice in editing.

    Bad:
        title: Hanging builds bigger forearms
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        I like it. [opinion]
    Good:
        title: Ways to hang, graded
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        I like it. [opinion]
    """
    for one in facts.headlines:
        if not one.backed and one.worded.step > 1:
            yield (
                one.place,
                f"The {one.what} claims an effect, {quoted(one.text)}, and no sourced sentence speaks of it.",
                "Say in the script what it rests on, or make the headline a question or a list.",
            )
