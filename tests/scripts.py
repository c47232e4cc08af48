"""Small episodes worked out, and what tests ask of them: what is spoken, when, and what is found."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path

from scriptkit import build
from scriptkit.model import Facts, Segment, Sentence, TimedSegment

Write = Callable[[Mapping[str, str | bytes]], Path]

GRIP = """
    title: Ways to train your grip
    exercises:
      hang: {name: Bar hang, grade: A-}
      row: {name: Ring row, grade: B}
    sources:
      mora-2022: {title: Timed hangs, year: 2022, invented: true, findings: {hang: {outcome: hang time}}}
      lind-2019: {title: Timed hangs again, year: 2019, invented: true}
    """


def worked_out(folder: Path, pace: float | None = None) -> Facts:
    return build.work_out(build.read(folder), pace)


def with_hang(episode: Write, text: str, outline: str = GRIP) -> Facts:
    """The episode whose exercise `hang` has this text of its own."""
    return worked_out(episode({"outline.yaml": outline, "segments/hang.md": text}))


def segment(facts: Facts, name: str = "hang") -> Segment:
    return next(one for one in facts.segments if one.id == name)


def timed(facts: Facts, name: str = "hang") -> TimedSegment:
    return next(one for one in facts.timeline.segments if one.id == name)


def sentence(facts: Facts, starts: str) -> Sentence:
    """The sentence of the script that starts with these words."""
    return next(one for part in facts.segments for one in part.sentences if one.text.startswith(starts))


def words(facts: Facts, name: str = "hang") -> list[str]:
    return [one.text for one in segment(facts, name).sentences]


def order(facts: Facts) -> list[str]:
    return [one.id for one in facts.segments]


def found(facts: Facts, name: str = "", stage: str = "record") -> list[tuple[str, str]]:
    """Place and message of the findings of one name that no comment allows, or name and place of all of them."""
    listed = [one for one in build.check(facts, stage) if not one.allowed]
    places = [f"{one.place.file}:{one.place.line}:{one.place.column}" for one in listed]
    if not name:
        return [(one.name, place) for one, place in zip(listed, places, strict=True)]
    return [(place, one.message) for one, place in zip(listed, places, strict=True) if one.name == name]


def helps(facts: Facts, name: str) -> list[str]:
    return [one.help for one in build.check(facts, "record") if one.name == name]
