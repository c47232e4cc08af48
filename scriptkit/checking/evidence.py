"""Checks of links: every source, finding, caution and criterion that is named has to be there."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.rules import Found, check
from scriptkit.wording import did_you_mean, listed, quoted
from scriptkit.model import Exercise, Facts, Link
from scriptkit.places import Place


def _outline_links(facts: Facts) -> Iterator[tuple[Place, Link]]:
    """All links of the outline and their places."""
    for exercise in facts.episode.exercises.values():
        yield from _exercise_links(exercise)
    if facts.episode.sponsor:
        for claim in facts.episode.sponsor.claims:
            for link in claim.source:
                yield link.at.of("id"), link
            for name in claim.backing:
                yield claim.at.of("backing"), Link(name)


def _exercise_links(exercise: Exercise) -> Iterator[tuple[Place, Link]]:
    for claim in exercise.claims:
        for link in claim.source:
            yield link.at.of("id"), link
        for name in claim.backing:
            yield claim.at.of("backing"), Link(name)
    for rating in exercise.ratings.values():
        for link in rating.source:
            if link.id != "opinion":
                yield link.at.of("id"), link


def _links(facts: Facts) -> Iterator[tuple[Place, Link]]:
    """All links of the outline and of the author's own texts."""
    yield from _outline_links(facts)
    for segment in facts.segments:
        if segment.file:
            for timed in next(one.marks for one in facts.timeline.segments if one.id == segment.id):
                for link in timed.mark.links:
                    yield timed.mark.place, link
            yield from _paragraph_links(facts, segment.id)


def _paragraph_links(facts: Facts, segment_id: str) -> Iterator[tuple[Place, Link]]:
    """Links of marks that cover a whole paragraph: they stand on no clock."""
    on_clock = {timed.mark.place for one in facts.timeline.segments if one.id == segment_id for timed in one.marks}
    seen: set[tuple[Place, str]] = set()
    for segment in facts.segments:
        if segment.id == segment_id:
            for sentence in segment.sentences:
                for link in sentence.links:
                    key = (link.at.place, link.id)
                    if link.at.place.file == segment.file and link.at.place not in on_clock and key not in seen:
                        seen.add(key)
                        yield link.at.place, link


@check("error")
def unknown_source(facts: Facts) -> Iterator[Found]:
    """A claim names a source that is not in the register.

    Sources stand under `sources:` in the outline or in a register named under `evidence:`.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang, claims: [{say: Hang time rose in one trial., source: mora-2021}]}}
        sources: {mora-2022: {title: Timed hangs, invented: true}}
    Good:
        title: One
        exercises: {hang: {name: Bar hang, claims: [{say: Hang time rose in one trial., source: mora-2022}]}}
        sources: {mora-2022: {title: Timed hangs, invented: true}}
    """
    for place, link in _links(facts):
        if link.id not in facts.register:
            yield (
                place,
                f"There is no source {quoted(link.id)} in the register.",
                did_you_mean(link.id, facts.register)
                or f"Add it under `sources:`, or name one that is there: {listed(facts.register) or 'none yet'}.",
            )


@check("error")
def unknown_finding(facts: Facts) -> Iterator[Found]:
    """A claim names a finding that its source does not have.

    Findings stand under `findings:` of a source, by id.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang, claims: [{say: Hang time rose in one trial., source: {id: mora-2022, finding: hand}}]}}
        sources: {mora-2022: {title: Timed hangs, invented: true, findings: {hang: {outcome: hang time}}}}
    Good:
        title: One
        exercises: {hang: {name: Bar hang, claims: [{say: Hang time rose in one trial., source: {id: mora-2022, finding: hang}}]}}
        sources: {mora-2022: {title: Timed hangs, invented: true, findings: {hang: {outcome: hang time}}}}
    """
    for place, link in _links(facts):
        source = facts.register.get(link.id)
        if source is not None and link.finding and link.finding not in source.findings:
            known = listed(source.findings) or "none"
            yield (
                place,
                f"The source {quoted(link.id)} has no finding {quoted(link.finding)}.",
                did_you_mean(link.finding, source.findings) or f"Its findings: {known}.",
            )


@check("error")
def unknown_caution(facts: Facts) -> Iterator[Found]:
    """An exercise calls for a caution that has no line.

    The line stands under `cautions:` in the outline or channel.yaml; some usual tags have stock lines.

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
                place = tag.place() if hasattr(tag, "place") else exercise.at.of("cautions")
                yield (
                    place,
                    f"There is no line for the caution {quoted(tag)}.",
                    did_you_mean(tag, facts.cautions) or f"Write it under `cautions:` as `{tag}: {{line: ...}}`.",
                )
    for segment in facts.segments:
        for sentence in segment.sentences:
            for _, mark in sentence.cues:
                for tag in mark.ids if mark.name == "caution" else ():
                    if tag not in facts.cautions and segment.file:
                        yield (
                            mark.place,
                            f"No exercise calls for a caution {quoted(tag)}.",
                            did_you_mean(tag, facts.cautions) or "Correct the mark, or add the caution to the exercise.",
                        )


@check("error", "record")
def claim_without_source(facts: Facts) -> Iterator[Found]:
    """A statement has neither a source nor an opinion mark.

    A stranger with a library could show it to be wrong, so it needs a study behind it, or the words and the mark of an opinion.
    The message names the words that make it a statement. `[aside]` marks a sentence that needs no source.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        Hanging from a bar strengthens your fingers more than any gripper.
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        I think a bar beats a gripper for me. [opinion]
    """
    for segment in facts.segments:
        for sentence, judgement in zip(segment.sentences, facts.judgements[segment.id], strict=True):
            if (
                judgement.kind != "claim"
                or sentence.links
                or sentence.opinion
                or sentence.aside
                or sentence.sponsor_says
            ):
                continue
            if sentence.cautions or _is_caution(facts, sentence.text):
                continue
            words = listed((quoted(one, 30) for one in judgement.triggers), 4)
            mark = (
                "`[sponsor says]`, if these are the sponsor's own words, or a source"
                if segment.kind == "sponsor"
                else "`[from SOURCE]` behind it, or say it as your opinion and put `[opinion]`"
            )
            yield (
                sentence.place,
                f"{quoted(sentence.text)} states a fact ({words}) and nothing stands behind it.",
                f"Put {mark}.",
            )


def _is_caution(facts: Facts, text: str) -> bool:
    return any(caution.line and (text in caution.line or caution.line in text) for caution in facts.cautions.values())


@check("error", "record")
def opinion_not_heard(facts: Facts) -> Iterator[Found]:
    """An opinion sounds like a fact.

    It is marked as opinion, and a listener does not see the mark: words such as "I think", "for me" or "my pick" have to say so.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        Hanging builds more strength than any gripper. [opinion]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        I think hanging builds more strength than a gripper. [opinion]
    """
    for segment in facts.segments:
        rows = zip(segment.sentences, facts.judgements[segment.id], facts.heard[segment.id], strict=True)
        for sentence, judgement, heard in rows:
            if sentence.opinion and not sentence.links and judgement.kind == "claim" and not heard:
                words = listed((quoted(one, 30) for one in judgement.triggers), 3)
                yield (
                    sentence.place,
                    f"{quoted(sentence.text)} is marked as opinion and sounds like fact ({words}).",
                    'Say that it is yours: "I think", "for me", "in my view".',
                )
