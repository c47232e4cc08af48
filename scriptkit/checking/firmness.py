"""Checks of how firmly first places are said against how firm they are."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.remarks import grade_doubts
from scriptkit.checking.rules import Found, check
from scriptkit.model import Facts, GradeDoubt
from scriptkit.wording import quoted

SEE = "`scriptkit grades` shows what would change it."


def _names(facts: Facts, one: GradeDoubt) -> tuple[str, str]:
    exercises = facts.episode.exercises
    return quoted(exercises[one.exercise].name), quoted(exercises[one.other].name) if one.other in exercises else ""


@check("error", "record")
def winner_not_first(facts: Facts) -> Iterator[Found]:
    """An exercise is said to come first, and the checklist puts another one there.

    Rule: ours; what is said of the order has to be what the ratings and weights say.

    Bad:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?}}}
        exercises: {hang: {name: Bar hang, ratings: {steady: 5}}, row: {name: Ring row, ratings: {steady: 2}}}
        --- segments/row.md
        For me this is the best exercise of them all. [opinion]
    Good:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?}}}
        exercises: {hang: {name: Bar hang, ratings: {steady: 5}}, row: {name: Ring row, ratings: {steady: 2}}}
        --- segments/hang.md
        For me this is the best exercise of them all. [opinion]
    """
    for one in grade_doubts(facts, "not-first"):
        name, first = _names(facts, one)
        yield (
            one.place,
            f"{quoted(one.words)} is said of {name}, and by the checklist {first} comes first.",
            "Say it of the one that comes first, or say what your own choice rests on that no question asks.",
        )


@check("error", "record")
def winner_still_open(facts: Facts) -> Iterator[Found]:
    """A first place is given away while an exercise that is not rated yet could have it.

    Rule: ours; a missing rating is no nought.

    Bad:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?}, quick: {ask: Is it quick?}}}
        exercises: {hang: {name: Bar hang, ratings: {steady: 4, quick: 4}}, row: {name: Ring row, ratings: {steady: 5}}}
        --- segments/hang.md
        For me it comes out ahead. [opinion]
    Good:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?}, quick: {ask: Is it quick?}}}
        exercises: {hang: {name: Bar hang, ratings: {steady: 4, quick: 4}}, row: {name: Ring row, ratings: {steady: 2}}}
        --- segments/hang.md
        For me it comes out ahead. [opinion]
    """
    for one in grade_doubts(facts, "still-open"):
        name, rival = _names(facts, one)
        yield (
            one.place,
            f"{quoted(one.words)} is said of {name}, and {rival} is not rated whole yet and could come first.",
            "Rate it on every question.",
        )


@check("error", "record")
def winner_too_firm(facts: Facts) -> Iterator[Found]:
    """A first place is said more firmly than the weights bear.

    Somebody who weighs your questions otherwise gets another winner. The share of all possible weightings that keep it
    first says how much may be said: from 80 in 100 it is a clear winner, from 50 it comes out ahead, below that it
    depends on what you value.

    Rule: ours; the steps are a convention of this tool, the share is the first-rank acceptability of decision analysis.

    Bad:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?}, quick: {ask: Is it quick?}}}
        exercises:
          hang: {name: Bar hang, ratings: {steady: 5, quick: 3}}
          row: {name: Ring row, ratings: {steady: 3, quick: 4}}
        --- segments/hang.md
        For me it's the clear winner. [opinion]
    Good:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?}, quick: {ask: Is it quick?}}}
        exercises:
          hang: {name: Bar hang, ratings: {steady: 5, quick: 3}}
          row: {name: Ring row, ratings: {steady: 3, quick: 4}}
        --- segments/hang.md
        By my weights it comes out ahead. [opinion]
    """
    for one in grade_doubts(facts, "too-firm"):
        name, rival = _names(facts, one)
        share = float(one.has)
        may = (
            "say that it comes out ahead under your weights"
            if share >= 0.5
            else "say that it depends on what you value"
        )
        yield (
            one.place,
            f"{quoted(one.words)} is too firm for {name}: {share:.0%} of all ways to weigh the questions put it first"
            + (f", and {rival} is next." if rival else "."),
            f"Rather {may}. {SEE}",
        )


@check("warning", "record")
def best_said_flatly(facts: Facts) -> Iterator[Found]:
    """An exercise is called the best, without a word on whose weights make it so.

    Rule: ours; with 50 to 80 in 100 weightings behind it, a first place is first by a certain checklist.

    Bad:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?}, quick: {ask: Is it quick?}}}
        exercises:
          hang: {name: Bar hang, ratings: {steady: 5, quick: 3}}
          row: {name: Ring row, ratings: {steady: 3, quick: 4}}
        --- segments/hang.md
        It's simply the best exercise here. [aside]
    Good:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?}, quick: {ask: Is it quick?}}}
        exercises:
          hang: {name: Bar hang, ratings: {steady: 5, quick: 3}}
          row: {name: Ring row, ratings: {steady: 3, quick: 4}}
        --- segments/hang.md
        On my checklist it's the best exercise here. [opinion]
    """
    for one in grade_doubts(facts, "said-flat"):
        name, _ = _names(facts, one)
        yield (
            one.place,
            f"{quoted(one.words)} is said flatly of {name}; {float(one.has):.0%} of all weightings put it first.",
            "Add whose scales those are: “on my checklist”, “under my weights”.",
        )


@check("warning", "record")
def tie_called_a_win(facts: Facts) -> Iterator[Found]:
    """One exercise is said to beat another, and their scores lie closer than one step on the lightest question.

    Rule: ours; a gap that one step on the question that weighs least would close is a tie.

    Bad:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?, weight: 1}, quick: {ask: Is it quick?, weight: 1.1}}}
        exercises:
          hang: {name: Bar hang, ratings: {steady: 3, quick: 4}}
          row: {name: Ring row, ratings: {steady: 4, quick: 3}}
        --- segments/hang.md
        For me the bar hang beats the ring row. [opinion]
    Good:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?, weight: 1}, quick: {ask: Is it quick?, weight: 1.1}}}
        exercises:
          hang: {name: Bar hang, ratings: {steady: 3, quick: 4}}
          row: {name: Ring row, ratings: {steady: 4, quick: 3}}
        --- segments/hang.md
        For me the bar hang and the ring row are tied. [opinion]
    """
    for one in grade_doubts(facts, "tie-won"):
        name, other = _names(facts, one)
        yield (
            one.place,
            f"{quoted(one.words)} makes {name} a winner, and it is level with {other}: one step on a question decides.",
            "Call it a tie, or say that there is hardly anything between them.",
        )


@check("error", "record")
def behind_said_ahead(facts: Facts) -> Iterator[Found]:
    """One exercise is said to beat another that scores higher.

    Rule: ours; what is said of the order has to be what the ratings and weights say.

    Bad:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?}}}
        exercises: {hang: {name: Bar hang, ratings: {steady: 2}}, row: {name: Ring row, ratings: {steady: 5}}}
        --- segments/hang.md
        For me the bar hang beats the ring row. [opinion]
    Good:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?}}}
        exercises: {hang: {name: Bar hang, ratings: {steady: 5}}, row: {name: Ring row, ratings: {steady: 2}}}
        --- segments/hang.md
        For me the bar hang beats the ring row. [opinion]
    """
    for one in grade_doubts(facts, "behind"):
        name, other = _names(facts, one)
        yield (
            one.place,
            f"{name} is said to be ahead of {other}, and by the checklist it is behind.",
            "Turn it round, or say in what it is ahead.",
        )


@check("note", "record")
def said_to_depend(facts: Facts) -> Iterator[Found]:
    """The script says that the first place depends on the weights, and hardly any weights change it.

    Rule: ours; less firm than the figures is not wrong, and more may be said.

    Bad:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?}, quick: {ask: Is it quick?}}}
        exercises:
          hang: {name: Bar hang, ratings: {steady: 5, quick: 5}}
          row: {name: Ring row, ratings: {steady: 3, quick: 4}}
        --- segments/recap.md
        Who comes first depends on what you value. [opinion]
    Good:
        title: One
        checklist: {criteria: {steady: {ask: Is it steady?}, quick: {ask: Is it quick?}}}
        exercises:
          hang: {name: Bar hang, ratings: {steady: 5, quick: 3}}
          row: {name: Ring row, ratings: {steady: 3, quick: 5}}
        --- segments/recap.md
        Who comes first depends on what you value. [opinion]
    """
    for one in grade_doubts(facts, "firm-though"):
        name, _ = _names(facts, one)
        yield (
            one.place,
            f"{quoted(one.words)}, and {float(one.has):.0%} of all ways to weigh the questions put {name} first.",
            "You may call it a clear winner.",
        )
