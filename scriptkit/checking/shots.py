"""Checks of pictures."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.rules import Found, check
from scriptkit.model import Facts
from scriptkit.wording import quoted


@check("warning", "record")
def exercise_not_shown(facts: Facts) -> Iterator[Found]:
    """The movement of an exercise is never shown.

    Its text has no `[shot ...]` and the outline no `shots:` for it, so a viewer would hear of it and not see it.

    Rule: ours; to show each movement that is graded is common practice.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        I like this one. [opinion]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        [shot FS side: bar hang] I like this one. [opinion]
    """
    for segment, timed in zip(facts.segments, facts.timeline.segments, strict=True):
        exercise = facts.episode.exercises.get(segment.exercise)
        if exercise and segment.paragraphs and not segment.shots and not any(one.mark.shot for one in timed.marks):
            yield (
                exercise.at.place,
                f"{quoted(exercise.name)} is never shown: only the presenter is in the picture.",
                "Put a mark such as `[shot FS side: ...]` into its text, or `shots:` into the outline.",
            )
