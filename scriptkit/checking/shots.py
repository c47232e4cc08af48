"""Checks of pictures."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.rules import Found, check
from scriptkit.model import Facts, Shot
from scriptkit.wording import quoted

UNEVEN = 0.01  # of a multiple: 119.88 is 120


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
    shown = {one.segment for one in facts.shots if not one.talking}
    for segment in facts.segments:
        exercise = facts.episode.exercises.get(segment.exercise)
        if exercise and segment.paragraphs and segment.id not in shown:
            yield (
                exercise.at.place,
                f"{quoted(exercise.name)} is never shown: only the presenter is in the picture.",
                "Put a mark such as `[shot FS side: ...]` into its text, or `shots:` into the outline.",
            )


@check("warning", "record")
def reps_do_not_fit(facts: Facts) -> Iterator[Found]:
    """A shot is seen for less time than its repetitions take.

    A repetition takes what its tempo says, or four seconds; slow motion makes it longer by the capture rate over the
    rate of the film.

    Rule: ours; a viewer who sees half a repetition sees no movement.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        [shot FS side: bar hang; reps 9] I like this one. [opinion]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        [shot FS side: bar hang; reps 9] I like this one. [opinion] [hold 40s: nine slow ones]
    """
    for one in facts.shots:
        if one.start is None or one.reps_fit is None or not one.shot.reps or one.reps_fit >= one.shot.reps:
            continue
        slow = f", {one.slow:.3g} times slower than filmed" if one.slow > 1 else ""
        asked = "A repetition" if one.shot.reps == 1 else f"{one.shot.reps} repetitions"
        takes = "takes" if one.shot.reps == 1 else "take"
        yield (
            one.place,
            f"{asked} of {quoted(one.shot.of)} {takes} {one.needs:.0f} s{slow}; it is seen for {one.duration:.0f} s.",
            "Ask for fewer, give the text behind it a `[hold]`, or let the shot go on longer.",
        )


@check("warning", "record")
def slow_motion_with_speech(facts: Facts) -> Iterator[Found]:
    """A shot is filmed faster than the film runs, and asks for sound with the picture.

    Slowed down, speech is no speech; most cameras record no sound at such rates at all.

    Rule: the trade's.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        [shot FS side: bar hang; fps 100; sound sync] I like this one. [opinion]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        [shot FS side: bar hang; fps 100; sound MOS] I like this one. [opinion]
    """
    for one in facts.shots:
        if one.slow > 1 and one.shot.sound == "sync":
            yield (
                one.place,
                f"{quoted(one.shot.of)} is seen {one.slow:.3g} times slower than filmed, and asks for its sound.",
                "Film it without sound (`sound MOS`), or take the sound apart (`sound wild`).",
            )


@check("note", "record")
def slow_motion_uneven(facts: Facts) -> Iterator[Found]:
    """A capture rate is no whole multiple of the film's rate, so that slow motion stutters.

    Rule: the trade's; frames are then left out or doubled unevenly.

    Bad:
        title: One
        rate: 25
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        [shot FS side: bar hang; fps 120] I like this one. [opinion]
    Good:
        title: One
        rate: 25
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        [shot FS side: bar hang; fps 100] I like this one. [opinion]
    """
    for one in facts.shots:
        if abs(one.slow - round(one.slow)) > UNEVEN:
            yield (
                one.place,
                f"{quoted(one.shot.of)} is filmed at {one.shot.fps}, which is {one.slow:.3g} times the film's rate.",
                "Choose a whole multiple of the film's rate, if the camera has one.",
            )


@check("warning", "record")
def capture_rate_unclear(facts: Facts) -> Iterator[Found]:
    """The capture rate of a shot is no number of frames a second, so slow motion cannot be worked out.

    Rule: ours.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        [shot FS side: bar hang; fps fast] I like this one. [opinion]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        [shot FS side: bar hang; fps 100] I like this one. [opinion]
    """
    for one in facts.shots:
        if not one.slow:
            yield one.place, f"{quoted(one.shot.fps)} is no number of frames a second.", "Write it as `fps 100`."


@check("note", "record")
def shot_perhaps_twice(facts: Facts) -> Iterator[Found]:
    """A shot of the outline and one of the text are framed alike: the same picture is perhaps filmed twice.

    What `shots:` ask for is filmed as well as what the text asks for, unless both say the very same.

    Rule: ours; the day of a shoot is short.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang, shots: [{size: FS, plane: side, of: hang}]}}
        --- segments/hang.md
        [shot FS side: bar hang] I like this one. [opinion]
    Good:
        title: One
        exercises: {hang: {name: Bar hang, shots: [{size: FS, plane: side, of: bar hang}]}}
        --- segments/hang.md
        [shot FS side: bar hang] I like this one. [opinion]
    """
    listed = {id(shot) for segment in facts.segments for shot in segment.shots}
    marked = {(one.segment, _framing(one.shot)): one for one in facts.shots if id(one.shot) not in listed}
    for one in facts.shots:
        twin = marked.get((one.segment, _framing(one.shot)))
        if twin and id(one.shot) in listed and one.shot.size:
            yield (
                one.place,
                f"The outline asks for {quoted(one.shot.of)}, the text for {quoted(twin.shot.of)}: framed alike.",
                f"If shots {twin.number} and {one.number} are one picture, take one out, or say both alike.",
            )


def _framing(shot: Shot) -> tuple[str, ...]:
    """What two shots that may be one picture have in common."""
    return (shot.size, shot.plane, shot.form, shot.phase, shot.angle, shot.lens, shot.fps)


@check("warning", "record")
def tempo_unclear(facts: Facts) -> Iterator[Found]:
    """The tempo of a shot cannot be read, so its repetitions count four seconds each.

    Rule: ours.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        [shot FS side: bar hang; tempo slow] I like this one. [opinion]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        [shot FS side: bar hang; tempo 3-1-2] I like this one. [opinion]
    """
    for one in facts.shots:
        if not one.tempo_clear:
            yield (
                one.place,
                f"{quoted(one.shot.tempo)} is no tempo.",
                "Write the seconds down, held and up: `tempo 3-1-2`; a fourth number is a hold at the top.",
            )
