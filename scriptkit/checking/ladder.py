"""Checks of words against weight: how firmly a sentence speaks of people, held against how certain it is."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.rules import Found, check
from scriptkit.model import LADDER, Facts, Segment, Sentence, Source, Weight, Worded
from scriptkit.places import Text
from scriptkit.wording import quoted

MOST_REASONS = 5
MAY = 2  # the step of "may"
_FORMS = {  # by the step that the evidence bears
    3: '"... probably results in ..."',
    2: '"... may result in ..."',
    1: '"... may result in ..., but the evidence is very uncertain"',
}


def _sentences(facts: Facts) -> Iterator[tuple[Segment, Sentence, Worded, Weight | None]]:
    """All sentences with how they are worded and what they weigh."""
    for segment in facts.segments:
        rows = zip(segment.sentences, facts.worded[segment.id], facts.weights[segment.id], strict=True)
        for sentence, worded, weight in rows:
            yield segment, sentence, worded, weight


def _why(weight: Weight) -> str:
    """The reasons for a certainty, in brackets: where it starts, and what takes it down."""
    steps = [step.strip().rstrip(".") for step in weight.steps[:MOST_REASONS]]
    return f" ({'; '.join(steps)})" if steps else ""


def instead(ready: str, bears: int) -> str:
    """What to say instead: the ready sentence, or the form that fits."""
    return f"Say: {quoted(ready, 300)}" if ready else f"Put it in this form: {_FORMS[bears]}."


@check("error", "record")
def worded_too_firmly(facts: Facts) -> Iterator[Found]:
    """A sentence says more than the certainty of its sources bears.

    The ladder has four steps: high certainty bears a plain verb ("builds"), moderate bears "probably", low bears "may",
    and very low only "may ..., but the evidence is very uncertain". It is for what is said of people in general: what
    one study found in its own people, told in the past ("hang time rose"), is not held against it. "Promising",
    "preliminary" and "pilot" are heard as praise and bring nothing down. Where the register says too little for a
    certainty, nothing is said here.

    Rule: GRADE guidelines 26, informative statements by certainty (its wording table was read in part, the rest is
    ours).

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          mora-2022:
            {title: Timed hangs, year: 2022, design: case series, n: 9, population: climbers, duration_weeks: 6,
             timeframe: longitudinal, invented: true,
             findings: {grip: {outcome: grip strength, result: rose by 3 kg, certainty: low}}}
        --- segments/hang.md
        Hanging builds grip strength. [from mora-2022 grip]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          mora-2022:
            {title: Timed hangs, year: 2022, design: case series, n: 9, population: climbers, duration_weeks: 6,
             timeframe: longitudinal, invented: true,
             findings: {grip: {outcome: grip strength, result: rose by 3 kg, certainty: low}}}
        --- segments/hang.md
        Hanging may build grip strength, but the evidence is very uncertain. [from mora-2022 grip]
    """
    for _, sentence, worded, weight in _sentences(facts):
        bears = LADDER.get(weight.certainty, 0) if weight else 0
        too_firm = 0 < bears < worded.step > MAY  # a "may" that says too little of its doubt is told more softly
        if weight and too_firm and all(doubt.kind != "acute" for doubt in weight.doubts):
            said = sentence.text[slice(*worded.words)]
            yield (
                sentence.place_of(worded.words[0]),
                f"{quoted(said)} says more than its sources bear: their certainty is {weight.certainty}{_why(weight)}.",
                instead(worded.ready, bears),
            )


@check("note", "record")
def worded_too_softly(facts: Facts) -> Iterator[Found]:
    """A sentence says much less than the certainty of its sources bears.

    Nothing is wrong with caution, and one step of it is never told. Two are, because a viewer who hears "may"
    everywhere cannot tell the firm results from the thin ones.

    Rule: GRADE guidelines 26, informative statements by certainty.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          pool-2022:
            {title: Hangs in many trials, year: 2022, design: systematic review, n: 2400, population: climbers,
             training: trained, duration_weeks: 12, timeframe: longitudinal, comparison: between-group,
             funding: none declared, status: published, registration: MADE-UP-1, invented: true,
             findings: {grip: {outcome: grip strength, measure: dynamometer, result: 4 kg more, effect: 0.6,
              ci: [0.5, 0.7], baseline: 40 kg, absolute: 4 kg, certainty: high}}}
        --- segments/hang.md
        Hanging may build grip strength. [from pool-2022 grip]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          pool-2022:
            {title: Hangs in many trials, year: 2022, design: systematic review, n: 2400, population: climbers,
             training: trained, duration_weeks: 12, timeframe: longitudinal, comparison: between-group,
             funding: none declared, status: published, registration: MADE-UP-1, invented: true,
             findings: {grip: {outcome: grip strength, measure: dynamometer, result: 4 kg more, effect: 0.6,
              ci: [0.5, 0.7], baseline: 40 kg, absolute: 4 kg, certainty: high}}}
        --- segments/hang.md
        In trials of 2,400 climbers, hanging built more grip strength. [from pool-2022 grip]
    """
    for _, sentence, worded, weight in _sentences(facts):
        bears = LADDER.get(weight.certainty, 0) if weight else 0
        if weight and 0 < worded.step < bears - 1:
            said = sentence.text[slice(*worded.words)]
            yield (
                sentence.place_of(worded.words[0]),
                f"{quoted(said)} says less than its sources bear: their certainty is {weight.certainty}{_why(weight)}.",
                "You may say it more firmly, or leave it.",
            )


@check("error", "record")
def word_of_proof(facts: Facts) -> Iterator[Found]:
    """A statement is called proven, guaranteed or settled.

    No study proves that an exercise works for the viewer, however good it is; a result has a certainty, and that is
    what can be said. The same goes for "studies show" where no study is named.

    Rule: ours; GRADE's wording by certainty has no such step.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        Hanging is scientifically proven to build grip. [from mora-2022]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        Hanging may build grip. [from mora-2022]
    """
    for _, sentence, worded, _weight in _sentences(facts):
        for start, end in worded.banned:
            yield (
                sentence.place_of(start),
                f"{quoted(sentence.text[start:end])} is more than any study can give.",
                'Say which study found it and how sure that makes it: "probably", "may".',
            )
    for one in facts.headlines:
        for start, end in one.worded.banned:
            yield (
                one.text.place(start) if isinstance(one.text, Text) else one.place,
                f"{quoted(one.text[start:end])} in the {one.what} is more than any study can give.",
                "Leave it out, or make the headline a question or a list.",
            )


@check("warning", "record")
def word_of_certainty(facts: Facts) -> Iterator[Found]:
    """An effect is said to hold always, never or for everyone, or to be significant with no size.

    Averages are what trials report, so "always" and "for everyone" are nearly never true of an effect. "Significant"
    means large to a listener and something else to a statistician. A rule for the viewer ("never bounce") is not meant.

    Rule: ours; common practice in reporting trials.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        Hanging always builds grip strength. [from mora-2022]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        Hanging may build grip strength. [from mora-2022]
    """
    for _, sentence, worded, _weight in _sentences(facts):
        for start, end in worded.loose:
            said = sentence.text[start:end]
            sized = said.lower().startswith("significant")
            yield (
                sentence.place_of(start),
                f"{quoted(said)} tells no size." if sized else f"{quoted(said)} leaves no room for anyone it fails.",
                "Say how much it was, with its unit." if sized else "Leave it out, or say in whom it was seen.",
            )


@check("warning", "record")
def report_without_people(facts: Facts) -> Iterator[Found]:
    """A result is told and nobody says in whom it was found.

    "Hang time rose by a fifth" is a fact about the people of one study. Who they were has to be heard by then: in the
    sentence, in the one before, or where the study was first spoken of.

    Rule: ours; a spoken citation is who, how many, how long, what was measured.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          mora-2022: {title: Timed hangs, population: climbers, n: 38, invented: true}
        --- segments/hang.md
        Hang time rose a lot. [from mora-2022]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sources:
          mora-2022: {title: Timed hangs, population: climbers, n: 38, invented: true}
        --- segments/hang.md
        In 38 climbers, hang time rose a lot. [from mora-2022]
    """
    asked: set[frozenset[str]] = set()  # the sources whose people were asked for: to name them once is enough
    for _, sentence, worded, _weight in _sentences(facts):
        ids = frozenset(str(link.id) for link in sentence.links)
        if worded.report and not worded.named and ids not in asked:
            asked.add(ids)
            sources = [facts.register[link.id] for link in sentence.links if link.id in facts.register]
            people = next((_people(one) for one in sources), "people")
            yield (
                sentence.place,
                f"{quoted(sentence.text)} tells a result, and nobody has said whose.",
                f"Say who they were: {quoted(f'In {people}, ...')}",
            )


def _people(source: Source) -> str:
    """The people of a study as they may be named: "38 climbers"."""
    who = str(source.population or "people")
    counted = source.n is None or source.n == 1 or who.partition(" ")[0].lower() in ("one", "a", "an", f"{source.n}")
    return who if counted else f"{source.n} {who}"
