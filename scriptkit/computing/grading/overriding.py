"""Grades that their ratings do not earn: the reason has to be given, and spoken."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Mapping, Sequence

from scriptkit.computing.grading.moving import dominates
from scriptkit.computing.grading.scale import GradeScale
from scriptkit.model import Episode, Graded, GradeDoubt, Segment

_WORD = re.compile(r"[^\W_]+(?:['’][^\W_]+)?")
_END = re.compile(r"[.!?]+(?:\s|$)")


def find(
    episode: Episode, graded: Mapping[str, Graded], segments: Sequence[Segment], little: Collection[str]
) -> Iterator[GradeDoubt]:
    """Grades without a reason, or with one that is not spoken; and reasons for nothing. `little` words say nothing."""
    homes = {segment.exercise: segment for segment in segments if segment.exercise}
    for name, exercise in episode.exercises.items():
        one = graded[name]
        if one.agrees:
            if exercise.override and one.earned:
                yield GradeDoubt("idle-override", exercise.at.of("override"), one.grade, str(name), one.earned)
            continue
        earned = one.earned or f"{one.earned_low} to {one.earned_high}"
        if not exercise.override:
            yield GradeDoubt("no-override", exercise.at.of("grade"), one.grade, str(name), earned)
        elif name in homes and not _is_spoken(exercise.override, homes[name], little):
            yield GradeDoubt("unspoken-override", exercise.at.of("override"), one.grade, str(name), earned)


def _is_spoken(reason: str, segment: Segment, little: Collection[str]) -> bool:
    """Whether most of its content words are in one sentence (or in as many in a row as it has), or its mark stands."""
    if any(one.override for one in segment.sentences):
        return True
    wanted = _content(reason, little)
    length = sum(bool(sentence.strip()) for sentence in _END.split(reason))
    texts = [one.text for one in segment.sentences]
    rows = (" ".join(texts[at : at + length]) for at in range(len(texts)))
    return bool(wanted) and any(len(wanted & _content(row, little)) > len(wanted) / 2 for row in rows)


def _content(text: str, little: Collection[str]) -> frozenset[str]:
    words = (word.replace("’", "'") for word in _WORD.findall(text.lower()))
    return frozenset(word.removesuffix("s") for word in words if word not in little)


def dominated(episode: Episode, graded: Mapping[str, Graded], on: GradeScale | None) -> Iterator[GradeDoubt]:
    """Exercises that are graded lower than one that they equal or beat on every criterion."""
    if on is None:
        return
    rated = [one for one in graded.values() if one.score is not None and one.grade]
    spans = {one.id: on.span(one.grade) for one in rated}
    astray = [one for one in rated if not one.agrees]
    for worse in rated:
        grade = spans[worse.id]
        if grade is None:
            continue
        # grades that the ratings earn follow them, so one of the two has to be another one
        others = rated if not worse.agrees else astray
        over = [one for one in others if _is_lower(spans[one.id], grade) and dominates(one, worse)]
        if over:
            best = max(over, key=lambda one: one.score or 0.0)
            overridden = any(episode.exercises[one.id].override for one in (worse, best))
            kind = "overridden-order" if overridden else "dominated"
            place = episode.exercises[best.id].at.of("grade")
            yield GradeDoubt(kind, place, best.grade, best.id, worse.id, worse.grade)


def _is_lower(grade: tuple[int, int] | None, than: tuple[int, int]) -> bool:
    """Whether a grade is certainly worse: all its steps lie below all those of the other."""
    return grade is not None and grade[0] > than[1]
