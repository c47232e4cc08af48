"""Checks of the structure: the running order, ids, texts, promises."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.rules import Found, check
from scriptkit.model import KINDS, Facts
from scriptkit.places import Place, place_of
from scriptkit.wording import did_you_mean, listed, quoted


@check("error")
def no_exercises(facts: Facts) -> Iterator[Found]:
    """The outline lists no exercise.

    An episode grades exercises; there has to be one at least.

    Rule: ours; an episode of this tool grades exercises.

    Bad:
        title: One
        exercises: {}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
    """
    if not facts.episode.exercises and "exercises" in facts.episode.at.keys:
        yield (
            facts.episode.at.of("exercises"),
            "There is no exercise under `exercises`.",
            "Add one: an id, a colon, and below it `name:`.",
        )


@check("error")
def segment_twice(facts: Facts) -> Iterator[Found]:
    """The running order names a segment twice.

    It is spoken where it stands first.

    Rule: ours; a segment has one text, and is spoken once.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        order: [opening, hang, hang, close]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        order: [opening, hang, close]
    """
    for step in facts.twice:
        # groups that differ in punctuation only have one id, and so one text
        place = step.at.of("segment" if step.segment else "group")
        named = step.segment or step.group
        yield place, f"{quoted(named)} stands in the running order a second time.", "Delete one of the two."


@check("warning", "record")
def exercise_left_out(facts: Facts) -> Iterator[Found]:
    """The running order leaves an exercise out.

    It is graded and never spoken.

    Rule: ours; what is graded should be heard.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}, row: {name: Row}}
        order: [opening, hang, close]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}, row: {name: Row}}
        order: [opening, hang, row, close]
    """
    spoken = {segment.id for segment in facts.segments}
    for name, exercise in facts.episode.exercises.items():
        if facts.episode.order and name not in spoken:
            yield (
                exercise.at.place,
                f"{quoted(exercise.name or name)} is not in the running order, so it is never spoken.",
                f"Add `{name}` to `order:`, or delete the exercise.",
            )


@check("error")
def segment_without_text(facts: Facts) -> Iterator[Found]:
    """The running order names a segment that has no text.

    It is neither an exercise nor a stock segment, and there is no file of its name in segments/.

    Rule: ours; a segment without words is a gap in the script.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        order: [opening, hand, close]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        order: [opening, hang, close]
    """
    known = [*facts.episode.exercises, *facts.texts, *(kind for kind in KINDS if kind != "talk")]
    troubled = {trouble.segment for trouble in facts.tag_troubles}
    for segment in facts.segments:
        if segment.kind == "talk" and not segment.file:
            help_ = did_you_mean(segment.id, known) or f"Write its text into segments/{segment.id}.md."
            yield segment.at.place, f"There is no text for the segment {quoted(segment.id)}.", help_
        elif segment.sentences or segment.id in troubled or any(one.loose for one in segment.paragraphs):
            continue
        elif segment.file or facts.episode.order:  # a stock text that has nothing to say is nobody's fault
            yield (
                segment.at.place,
                f"Nothing is spoken in the segment {quoted(segment.id)}.",
                f"Write its text into {segment.file or f'segments/{segment.id}.md'}, or take it out of `order:`.",
            )


@check("warning")
def text_not_used(facts: Facts) -> Iterator[Found]:
    """A text in segments/ belongs to no segment of the running order.

    Its file name has to be the id of an exercise or of a segment in `order`.

    Rule: ours; what was written is meant to be spoken.

    Bad:
        title: One
        exercises: {bar-hang: {name: Bar hang}}
        --- segments/bar-hangs.md
        I like this one. [opinion]
    Good:
        title: One
        exercises: {bar-hang: {name: Bar hang}}
        --- segments/bar-hang.md
        I like this one. [opinion]
    """
    spoken = {segment.id for segment in facts.segments}
    for name, file in facts.texts.items():
        if name not in spoken and name not in KINDS and not file.startswith("../"):
            help_ = (
                (f"Add `{name}` to `order:`." if name in facts.episode.exercises else "")
                or did_you_mean(name, spoken)
                or "Rename the file to the id of a segment, or put the segment into `order:`."
            )
            yield (
                Place(file, 1, 1),
                f"The text {quoted(file)} is not spoken: the running order has no segment {quoted(name)}.",
                help_,
            )


@check("error")
def id_taken(facts: Facts) -> Iterator[Found]:
    """An exercise or a group has the id of another segment.

    Exercises, groups and the sponsor's passage share one set of ids with the stock segments, since each is the name
    of a text.

    Rule: ours; ids are file names here.

    Bad:
        title: One
        exercises: {recap: {name: Bar hang}}
    Good:
        title: One
        exercises: {bar-hang: {name: Bar hang}}
    """
    sponsor = str(facts.episode.sponsor.segment) if facts.episode.sponsor else ""
    for name, exercise in facts.episode.exercises.items():
        if name in KINDS or name == sponsor:
            yield (
                exercise.at.place,
                f"The id {quoted(name)} belongs to a segment of its own.",
                "Give the exercise another id.",
            )
    for segment in facts.segments:
        if facts.episode.sponsor and segment.kind == "group" and segment.id == sponsor:
            yield (
                facts.episode.sponsor.at.of("segment"),
                f"The id {quoted(sponsor)} belongs to a group of exercises, so the sponsor has no passage.",
                "Give the sponsor's `segment:` an id of its own, and put that into `order:`.",
            )


@check("warning", "record")
def group_without_exercises(facts: Facts) -> Iterator[Found]:
    """A group in the running order has no exercise.

    An exercise joins a group by `group:` with the same words.

    Rule: ours; a group that is announced should come.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang, group: Grip}}
        order: [opening, group: Grips, hang, close]
    Good:
        title: One
        exercises: {hang: {name: Bar hang, group: Grip}}
        order: [opening, group: Grip, hang, close]
    """
    groups = {str(exercise.group) for exercise in facts.episode.exercises.values() if exercise.group}
    for step in facts.episode.order:
        if step.group and step.group not in groups:
            yield (
                step.at.of("group"),
                f"No exercise belongs to the group {quoted(step.group)}.",
                did_you_mean(step.group, groups) or "Give the exercises of it `group:` with these words.",
            )


@check("warning")
def pace_for_no_kind(facts: Facts) -> Iterator[Found]:
    """A pace is given for something that is no kind of segment.

    Rule: ours; the kinds of segment are those of this tool.

    Bad:
        title: One
        paces: {openning: 170}
        exercises: {hang: {name: Bar hang}}
    Good:
        title: One
        paces: {opening: 170}
        exercises: {hang: {name: Bar hang}}
    """
    for kind in facts.episode.paces:
        if kind not in KINDS:
            yield (
                place_of(kind, facts.episode.at.of("paces")),
                f"{quoted(kind)} is no kind of segment.",
                did_you_mean(kind, KINDS) or f"Kinds are {listed(KINDS)}.",
            )
