"""Checks of what each movement is filmed from."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit.checking.rules import Found, check
from scriptkit.model import Coverage, Facts
from scriptkit.wording import listed, quoted

MOST = 3  # exercises that a note names
_NAMES = {
    "side": "from the side", "front": "from the front", "45": "from three quarters", "back": "from behind",
    "top": "from above", "start": "held at the start", "end": "held at the end", "close-up": "in a close-up",
    "fault": "with its usual fault", "correct": "in correct form",
}  # fmt: skip
_MARKS = {
    "side": "[shot FS side correct: ...]", "front": "[shot FS front correct: ...]", "45": "[shot FS 45 correct: ...]",
    "back": "[shot FS back correct: ...]", "top": "[shot FS top correct: ...]", "close-up": "[shot CU side: ...]",
    "start": "[shot FS side start: ...]", "end": "[shot FS side end: ...]", "correct": "[shot FS side correct: ...]",
    "fault": "[shot FS side fault: ...; label Fault: ...]",
}  # fmt: skip


@check("error", "record")
def movement_not_covered(facts: Facts) -> Iterator[Found]:
    """An exercise is filmed, and not from the side, or not in correct form.

    From the side most movements can be judged, and without correct form nobody can copy it. What `coverage:` in the
    outline or the channel leaves out is not asked for.

    Rule: ours, after the practice of filming movement square to its plane.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        [shot FS front: bar hang] I like this one. [opinion]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        [shot FS side: bar hang] I like this one. [opinion]
    """
    for one in facts.coverage:
        if one.needed:
            yield _told(facts, one, one.needed, "is never filmed")


@check("warning", "record")
def coverage_incomplete(facts: Facts) -> Iterator[Found]:
    """An exercise lacks a view that `coverage:` asks for.

    Rule: the author's own list.

    Bad:
        title: One
        coverage: [side, front]
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        [shot FS side: bar hang] I like this one. [opinion]
    Good:
        title: One
        coverage: [side, front]
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        [shot FS side: bar hang] I like this one. [opinion] [shot FS front: bar hang] It's cold here. [aside]
    """
    for one in facts.coverage if facts.episode.coverage else ():
        if one.others:
            yield _told(facts, one, one.others, "is not filmed")


@check("note", "record")
def coverage_worth_filming(facts: Facts) -> Iterator[Found]:
    """An exercise lacks a view that most demonstrations have: front, three quarters, start, end, close-up, fault.

    Asked where an exercise has two shots or more: one picture alone is no demonstration yet.

    Rule: the trade's; a list of your own in `coverage:` takes its place.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        [shot FS side: bar hang] I like this one. [opinion] [shot CU side: hands] It's cold here. [aside]
    Good:
        title: One
        coverage: [side, close-up]
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        [shot FS side: bar hang] I like this one. [opinion] [shot CU side: hands] It's cold here. [aside]
    """
    planned = [one for one in facts.coverage if one.shots > 1] if not facts.episode.coverage else []
    without: dict[str, list[str]] = {}
    for one in planned:
        for view in one.others:
            without.setdefault(view, []).append(str(facts.episode.exercises[one.exercise].name))
    if not without:
        return
    first = next(facts.episode.exercises[one.exercise] for one in planned if one.others)
    told = "; ".join(f"{_NAMES[view]}: {listed(names, MOST)}" for view, names in without.items())
    yield (
        first.at.place,
        f"Views that are not filmed. {told[0].upper()}{told[1:]}.",
        "Film what a viewer needs, or say in `coverage:` what you want of each exercise.",
    )


def _told(facts: Facts, one: Coverage, views: tuple[str, ...], how: str) -> Found:
    exercise = facts.episode.exercises[one.exercise]
    names = [_NAMES[view] for view in views]
    said = ", ".join(names[:-1]) + (" or " if len(names) > 1 else "") + names[-1]
    return exercise.at.place, f"{quoted(exercise.name)} {how} {said}.", f"Put `{_MARKS[views[0]]}` into its text."


@check("warning", "record")
def fault_without_twin(facts: Facts) -> Iterator[Found]:
    """A fault is filmed, and correct form is not filmed in the same size, from the same side, with the same lens.

    Side by side only the form should differ; with another framing a viewer compares cameras.

    Rule: the trade's.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        [shot FS side correct: bar hang] I like this one. [opinion]
        [shot MS front fault: shoulders up; label Fault: shoulders up] It's cold here. [aside]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        [shot FS side correct: bar hang] I like this one. [opinion]
        [shot FS side fault: shoulders up; label Fault: shoulders up] It's cold here. [aside]
    """
    numbers = {number for one in facts.coverage for number in one.no_twin}
    for shot in facts.shots:
        if shot.number in numbers:
            framing = "".join(f"{part} " for part in (str(shot.shot.size), str(shot.shot.plane)) if part)
            yield (
                shot.place,
                f"The fault {quoted(shot.shot.of)} has no correct twin in the same size, from the same side.",
                f"Film correct form in the same framing too: `[shot {framing}correct: ...]`.",
            )


@check("error", "publish", protects=True)
def fault_not_labelled(facts: Facts) -> Iterator[Found]:
    """A fault is seen, and no words on screen call it one for all the time that it is seen.

    A still of it, or a viewer without sound, would take it for what to do. A `label` on the shot stands as long as the
    shot is seen; so do words of `[screen: ...]` such as "fault", "mistake" or "not like this".

    Rule: the trade's; faults are labelled for their whole length.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        [shot FS side correct: bar hang] I like this one. [opinion]
        [shot FS side fault: shoulders up] It's cold here. [aside]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        --- segments/hang.md
        [shot FS side correct: bar hang] I like this one. [opinion]
        [shot FS side fault: shoulders up; label Fault: shoulders up] It's cold here. [aside]
    """
    bare = set(facts.bare_faults)
    for shot in facts.shots:
        if shot.number in bare:
            yield (
                shot.place,
                f"The fault {quoted(shot.shot.of)} is seen without words on screen that call it one.",
                "Put a label on the shot: `; label Fault: ...` in the mark, `label:` under `shots:`.",
            )
