"""Checks of links: every source, finding, caution and criterion that is named has to be there."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.placing import in_mark
from scriptkit.checking.rules import Found, check
from scriptkit.model import Claim, Exercise, Facts, Link, Mark
from scriptkit.places import Place, place_of
from scriptkit.wording import did_you_mean, listed, quoted

MOST_NEAR = 50  # near names looked for: more unknown sources than these are no slips of the finger
Where = Place | Mark  # where a link stands: in the outline, or in a mark of the author's text


def _outline_links(facts: Facts) -> Iterator[tuple[Where, Link]]:
    """All links of the outline and their places."""
    for exercise in facts.episode.exercises.values():
        yield from _exercise_links(exercise)
    if facts.episode.sponsor:
        for claim in facts.episode.sponsor.claims:
            yield from _claim_links(claim)


def _claim_links(claim: Claim) -> Iterator[tuple[Where, Link]]:
    for link in claim.source:
        yield link.at.of("id"), link
    for name in claim.backing:
        yield claim.at.of("backing"), Link(name)


def _exercise_links(exercise: Exercise) -> Iterator[tuple[Where, Link]]:
    for claim in exercise.claims:
        yield from _claim_links(claim)
    for rating in exercise.ratings.values():
        for link in rating.source:
            if link.id != "opinion":
                yield link.at.of("id"), link
    for link in exercise.use.source if exercise.use else ():
        yield link.at.of("id"), link


def links(facts: Facts) -> Iterator[tuple[Where, Link]]:
    """All links of the outline and of the author's own texts."""
    yield from _outline_links(facts)
    for mark in _own_marks(facts):
        for link in mark.links:
            yield mark, link


def _own_marks(facts: Facts) -> Iterator[Mark]:
    """All marks of the author's own texts."""
    for segment, timed in zip(facts.segments, facts.timeline.segments, strict=True):
        if segment.file:
            yield from (one.mark for one in timed.marks)


def _place_of_finding(facts: Facts, where: Where, link: Link) -> Place:
    """Where the finding of a link is named."""
    return in_mark(facts, where, link.finding, link.id) if isinstance(where, Mark) else link.at.of("finding")


@check("error")
def unknown_source(facts: Facts) -> Iterator[Found]:
    """A claim names a source that is not in the register.

    Sources stand under `sources:` in the outline or in a register named under `evidence:`. While a register cannot be
    read, or only in part, that is told and this is not: which sources are missing is not known then.

    Rule: ours; what a claim stands on has to be found again.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang, claims: [{say: Hang time rose in one trial., source: mora-2021}]}}
        sources: {mora-2022: {title: Timed hangs, invented: true}}
    Good:
        title: One
        exercises: {hang: {name: Bar hang, claims: [{say: Hang time rose in one trial., source: mora-2022}]}}
        sources: {mora-2022: {title: Timed hangs, invented: true}}
    """
    if facts.library.unread:
        return  # which sources are missing is known only when all registers can be read
    looked = 0
    for where, link in links(facts):
        if link.id not in facts.register:
            looked += 1
            known = listed(facts.register)
            yield (
                in_mark(facts, where, link.id) if isinstance(where, Mark) else where,
                f"There is no source {quoted(link.id)} in the register.",
                (did_you_mean(link.id, facts.register) if looked <= MOST_NEAR else "")
                or f"Add it under `sources:`{f', or name one that is there: {known}' if known else ''}.",
            )


@check("error")
def unknown_finding(facts: Facts) -> Iterator[Found]:
    """A claim names a finding that its source does not have.

    Findings stand under `findings:` of a source, by id.

    Rule: ours; what a claim stands on has to be found again.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang, claims: [{say: Hang time rose., source: {id: mora-2022, finding: hand}}]}}
        sources: {mora-2022: {title: Timed hangs, invented: true, findings: {hang: {outcome: hang time}}}}
    Good:
        title: One
        exercises: {hang: {name: Bar hang, claims: [{say: Hang time rose., source: {id: mora-2022, finding: hang}}]}}
        sources: {mora-2022: {title: Timed hangs, invented: true, findings: {hang: {outcome: hang time}}}}
    """
    for where, link in links(facts):
        source = facts.register.get(link.id)
        if source is not None and link.finding and link.finding not in source.findings:
            known = listed(source.findings) or "none"
            yield (
                _place_of_finding(facts, where, link),
                f"The source {quoted(link.id)} has no finding {quoted(link.finding)}.",
                did_you_mean(link.finding, source.findings) or f"Its findings: {known}.",
            )


@check("error")
def unknown_caution(facts: Facts) -> Iterator[Found]:
    """An exercise calls for a caution that has no line.

    The line stands under `cautions:` in the outline or channel.yaml; some usual tags have stock lines.

    Rule: ours; a caution without a line cannot be heard.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang, cautions: [grip-slip]}}
    Good:
        title: One
        exercises: {hang: {name: Bar hang, cautions: [grip-slip]}}
        cautions: {grip-slip: {line: Put something soft under the bar before you hang from it.}}
    """
    for exercise in facts.episode.exercises.values():
        for tag in exercise.cautions:
            if tag not in facts.cautions:
                yield (
                    place_of(tag, exercise.at.of("cautions")),
                    f"There is no line for the caution {quoted(tag)}.",
                    did_you_mean(tag, facts.cautions) or f"Write it under `cautions:` as `{tag}: {{line: ...}}`.",
                )
    for mark in _own_marks(facts):
        for tag in mark.ids if mark.name == "caution" else ():
            if tag not in facts.cautions:
                yield (
                    in_mark(facts, mark, tag),
                    f"No exercise calls for a caution {quoted(tag)}.",
                    did_you_mean(tag, facts.cautions) or "Correct the mark, or add the caution to the exercise.",
                )
