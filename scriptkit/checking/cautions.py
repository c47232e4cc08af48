"""Checks of cautions. They see that a line is spoken; they give no medical advice."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.rules import Found, check
from scriptkit.model import CautionSpoken, Facts
from scriptkit.places import Place
from scriptkit.wording import quoted


@check("error", "record", protects=True)
def caution_not_spoken(facts: Facts) -> Iterator[Found]:
    """A caution that an exercise calls for is not spoken.

    Training can hurt. The line has to be heard in the exercise's segment or before it. In other words than the
    outline's, the mark `[caution ID]` says that a sentence gives it. This is no medical advice; local rules and
    licensed practice come first.

    Rule: ours; which tag calls for which line is our choice, and local rules and licensed practice come first.

    Bad:
        title: One
        exercises: {raise: {name: Ledge raise, cautions: [achilles]}}
        cautions: {achilles: {line: "If your heel hurts, ask a licensed clinician before you load it."}}
        --- segments/raise.md
        [shot FS side: ledge raise] I like this one. [opinion]
    Good:
        title: One
        exercises: {raise: {name: Ledge raise, cautions: [achilles]}}
        cautions: {achilles: {line: "If your heel hurts, ask a licensed clinician before you load it."}}
        --- segments/raise.md
        [shot FS side: ledge raise] I like this one. [opinion]

        If your heel hurts, ask a licensed clinician before you load it.
    """
    for one in facts.spoken_cautions:
        if one.state == "missing":
            exercise = facts.episode.exercises[one.exercise]
            line = facts.cautions[one.caution].line
            yield (
                one.place,
                f"{quoted(exercise.name)} calls for the caution {quoted(one.caution)}, and nobody says it by then.",
                (
                    f"Say {quoted(line, 160)} in its segment or before it, or put `[caution {one.caution}]` behind "
                    "the sentence that does."
                ),
            )


@check("warning", "record", protects=True)
def caution_reworded(facts: Facts) -> Iterator[Found]:
    """A sentence comes near to a caution and is not its line.

    If it gives the same caution in other words, the mark `[caution ID]` behind it says so.

    Rule: ours; whether other words warn as well is for the author to say.

    Bad:
        title: One
        exercises: {raise: {name: Ledge raise, cautions: [achilles]}}
        cautions: {achilles: {line: "If your heel hurts, ask a licensed clinician before you load it."}}
        --- segments/raise.md
        [shot FS side: ledge raise] Is your heel sore? See a licensed clinician before you load it.
    Good:
        title: One
        exercises: {raise: {name: Ledge raise, cautions: [achilles]}}
        cautions: {achilles: {line: "If your heel hurts, ask a licensed clinician before you load it."}}
        --- segments/raise.md
        [shot FS side: ledge raise] Is your heel sore? See a licensed clinician before you load it. [caution achilles]
    """
    for one in _once_each(facts, "reworded"):
        yield (
            one.place,
            f"{quoted(one.sentence)} comes near to the caution {quoted(one.caution)} in other words.",
            (
                f"Put `[caution {one.caution}]` behind it if it gives the same caution, or say the line as it is: "
                f"{quoted(facts.cautions[one.caution].line, 160)}."
            ),
        )


def _once_each(facts: Facts, state: str) -> Iterator[CautionSpoken]:
    """The sentences that leave a caution in this state, each once, whatever number of exercises calls for it."""
    first: dict[tuple[Place, str], CautionSpoken] = {}
    for one in facts.spoken_cautions:
        if one.state == state:
            first.setdefault((one.place, one.caution), one)
    return iter(first.values())


@check("error", "record", protects=True)
def caution_softened(facts: Facts) -> Iterator[Found]:
    """A caution is taken back or played down by the sentence that gives it, or by one beside it.

    "You can skip this", "that's for the lawyers", "unless you're tough": a mark does not change that, for a viewer
    hears the words. The words are in scriptkit/words/softeners.txt and wave-offs.txt.

    Rule: ours; a caution that is taken back protects nobody.

    Bad:
        title: One
        exercises: {raise: {name: Ledge raise, cautions: [achilles]}}
        cautions: {achilles: {line: "If your heel hurts, ask a licensed clinician before you load it."}}
        --- segments/raise.md
        [shot FS side: ledge raise] If your heel hurts, you don't need to ask a clinician. [caution achilles]
    Good:
        title: One
        exercises: {raise: {name: Ledge raise, cautions: [achilles]}}
        cautions: {achilles: {line: "If your heel hurts, ask a licensed clinician before you load it."}}
        --- segments/raise.md
        [shot FS side: ledge raise] If your heel hurts, ask a licensed clinician before you load it.
    """
    for one in _once_each(facts, "softened"):
        yield (
            one.place,
            f"{quoted(one.sentence)} takes the caution {quoted(one.caution)} back.",
            f"Say it plainly: {quoted(facts.cautions[one.caution].line, 160)}.",
        )
